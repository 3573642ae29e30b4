"""What was shown as saved survives a killed browser and a second window, in the built app."""

import os
import random
import time

from playwright.sync_api import Page

from tests.phone import NewPhone, Phone

KILLS = 50 if os.environ.get("STANDPROUD_LONG") == "1" else 5
THE_JOBS = """
import gc
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.walking import saved_words
gc.unfreeze()
jobs = next(each for each in gc.get_objects() if isinstance(each, Jobs))
"""
# The words shown as saved, as soon as they stand on the screen.
WATCH = """
() => {
  let last = "";
  setInterval(() => {
    const told = window.phraseOf("told") ?? "";
    if (told !== last && told.startsWith("Saved")) window.heard(told);
    last = told;
  }, 5);
}
"""


def listen(page: Page, heard: list[str]) -> None:
    """Note every sentence that says that something is saved."""
    page.expose_function("heard", lambda words: heard.append(words))
    page.evaluate(WATCH)


def begin_job(phone: Phone) -> None:
    """A job with twelve cylinders, and the walk round its first ring."""
    phone.tap("new-job")
    for _ in range(8):
        phone.tap("more")
    phone.phrase("layout", holding="12")
    phone.tap("begin")
    phone.tap("cylinder-1")
    phone.tap("walk")


def read_until_killed(phone: Phone, seconds: float) -> None:
    """Tap leaf after leaf until the time is up, then pull the battery in the middle of it."""
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        for leaf in ("leaf-0.0100", "stops-0.0110"):
            box = phone.page.evaluate("(id) => window.nodeOf(id)?.getBoundingClientRect()", leaf)
            if box:
                phone.page.mouse.click(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
            phone.page.wait_for_timeout(40)
    phone.kill()


def test_every_reading_shown_as_saved_is_there_after_the_browser_was_killed(
    new_phone: NewPhone, capsys
) -> None:
    phone = new_phone(viewport={"width": 390, "height": 1400})
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.read_aloud()
    phone.tap("way-jobs")
    phone.tap("name-later")
    begin_job(phone)
    rng = random.Random(7)
    shown: list[str] = []
    for turn in range(KILLS):
        heard: list[str] = []
        listen(phone.page, heard)
        read_until_killed(phone, rng.uniform(0.4, 2.5))
        shown += heard
        phone.open(offline=True)
        phone.read_aloud()
        phone.phrase("back")
        missing = [words for words in heard if words not in everything_saved(phone)]
        assert missing == [], f"kill {turn}"
        if phone.page.evaluate("() => window.nodeOf('walk-done') !== null"):
            phone.tap("back")
            phone.tap("back")
            phone.tap("back")
            begin_job(phone)
    assert len(set(shown)) >= KILLS
    with capsys.disabled():
        print(
            f"\ncounted: {KILLS} kills of the built app, {len(shown)} readings shown as saved, "
            "none lost"
        )
    phone.forgive()


def everything_saved(phone: Phone) -> list[str]:
    """What the app would say of every reading in the book."""
    told: list[str] = phone.python(TOLD)
    return told


TOLD = (
    THE_JOBS
    + """
from pyodide.ffi import to_js
told = [
    saved_words(jobs, reading.measured)
    for cylinder in jobs.the_job.cylinders
    for reading in cylinder.readings
]
to_js(told)
"""
)


def test_a_second_window_says_so_checks_all_the_same_and_can_have_the_book(
    new_phone: NewPhone,
) -> None:
    phone = new_phone(viewport={"width": 390, "height": 1400})
    phone.open()
    phone.read_aloud()
    phone.tap("way-jobs")
    phone.tap("name-later")
    begin_job(phone)

    second = phone.context.new_page()
    second.goto(phone.address)
    phone.tab = 1
    phone.read_aloud()
    phone.tap("leaf-0.0100")
    assert "over 0.0100 inch" in phone.phrase("height", holding="over")
    phone.tap("way-jobs")
    assert "open in another window" in phone.phrase("elsewhere", holding="since today")

    phone.tap("ask-for-book")
    phone.phrase("place", holding="12 o'clock")
    phone.tap("leaf-0.0100")
    phone.tap("stops-0.0110")
    phone.phrase("told", holding="Saved")

    phone.tab = 0
    assert "another window" in phone.phrase("elsewhere", holding="another window")

    # The window that has it now falls asleep: the other is told which one to close.
    second.workers[0].evaluate(
        "() => { setTimeout(() => { const end = Date.now() + 60000; while (Date.now() < end); }) }"
    )
    phone.tap("ask-for-book")
    assert "Close the window" in phone.phrase("elsewhere", holding="does not answer")
    second.close()
    phone.tap("ask-for-book")
    phone.phrase("place", holding="3 o'clock")
    phone.forgive()
