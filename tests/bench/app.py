"""The quick check in the built app: the Python part of a check, and from a tap to its verdict."""

import json
import statistics
import tempfile
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import Playwright, sync_playwright

from tests.hello_site import build_hello
from tests.measured import Row, median_seconds
from tests.phone import Phone
from tests.served_site import built, served

CHECKS = 200
TAPS = 60
STARTS = 5
REST = 4000
"""Time for the browser to write its own caches, as between two uses of a phone [ms]."""
PAUSE = 250
"""Between two taps [ms]."""
P95 = 0.95

# One line and one key: what tap, transport and screen take by themselves.
COUNTER = """
import flet as ft


def main(page):
    told = ft.Semantics(identifier="told", label="0", container=True, content=ft.Text("0"))

    def tapped(_event):
        told.label = str(int(told.label) + 1)
        page.update()

    key = ft.Container(width=64, height=64, bgcolor="#888888", on_click=tapped)
    page.add(ft.Semantics(identifier="key", container=True, button=True, content=key), told)


ft.run(main)
"""

CHECKED = """
import json, random, statistics, time
from mobile.app.state.entry import Entry
from mobile.app.state.told import tell

def entry(seed):
    rng = random.Random(seed)
    go = rng.uniform(6, 14)
    sizes = {
        "go": go,
        "no-go": go + rng.uniform(0.5, 3),
        "gasket": rng.uniform(30, 60),
        "wire": rng.uniform(40.5, 41.5),
        "groove-width": rng.uniform(39.5, 40.4),
        "groove-depth": rng.uniform(28, 32),
    }
    texts = {field: f"{size:.2f} thou" for field, size in sizes.items()}
    return Entry(texts={**texts, "shelf": "0.032 in; 0.040 in; 0.050 in; 0.0646 in"})
"""
TIMED = """
tell(entry(-1))
times = []
for seed in range(CHECKS):
    asked = entry(seed)
    started = time.perf_counter()
    tell(asked)
    times.append(time.perf_counter() - started)
json.dumps(statistics.median(times))
"""

# From the finger on the glass until the screen reader's text of one node is another.
WATCH = """(id) => {
  window.taps = [];
  let start = null, before = null;
  addEventListener("pointerdown", () => {
    [start, before] = [performance.now(), phraseOf(id)];
  }, true);
  new MutationObserver(() => {
    const now = phraseOf(id);
    if (start === null || !now || now === before) return;
    taps.push(performance.now() - start);
    start = null;
  }).observe(document.body, {
    subtree: true, childList: true, attributes: true, characterData: true,
  });
}"""


def rows() -> Iterator[Row]:
    with tempfile.TemporaryDirectory() as place, sync_playwright() as playwright:
        counter = Path(place) / "counter"
        counter.mkdir()
        build_hello(counter, COUNTER)
        with served(built()) as ours, served(counter) as peer:
            yield from app(playwright, Path(place), ours, peer)


def app(playwright: Playwright, place: Path, ours: str, peer: str) -> Iterator[Row]:
    bare = Phone(playwright, place / "peer", f"{peer}/")
    bare.open()
    bare.read_aloud()
    bare_times = tapped(bare, "told", ["key"] * TAPS)
    bare.close()

    phone = Phone(playwright, place / "ours", f"{ours}/")
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.read_aloud()
    yield checked(phone)
    phone.close()
    yield from taps(phone, bare_times)
    yield from starts(phone)


def checked(phone: Phone) -> Row:
    code = CHECKED + TIMED.replace("CHECKS", str(CHECKS))
    own: dict[str, object] = {}
    exec(CHECKED, own)
    entries = [own["entry"](seed) for seed in range(CHECKS)]
    return Row(
        what=f"whole check, entry to verdicts, browser, median of {CHECKS} different ones",
        value=1e3 * json.loads(phone.python(code)),
        unit="ms",
        goal=8.0,
        peer="the same in CPython",
        peer_value=1e3 * median_seconds(own["tell"], entries),
    )


def taps(phone: Phone, bare: list[float]) -> Iterator[Row]:
    """A phone opened again, so that the first tap is a first one."""
    phone.open(offline=True)
    phone.read_aloud()
    phone.page.wait_for_timeout(REST)
    (first,) = tapped(phone, "height", ["leaf-0.0110"])
    yield Row(what="first tap after a start to the height's phrase", value=first, unit="ms")
    phone.tap("stops-0.0130")
    phone.phrase("suggestion", holding="Run")
    phone.page.wait_for_timeout(PAUSE)
    leaves = ["leaf-0.0120", "leaf-0.0110"] * (TAPS // 2)
    times = tapped(phone, "shelf-0.0500", leaves)
    for what, at in (("median", 0.5), ("p95", P95)):
        yield Row(
            what=f"tap on a leaf to the verdict's phrase, {what} of {TAPS}",
            value=part(times, at),
            unit="ms",
            goal=150.0 if at == P95 else None,
            peer="a Flet app of one key and one line",
            peer_value=part(bare, at),
        )
    phone.close()


def tapped(phone: Phone, watched: str, keys: list[str]) -> list[float]:
    """Milliseconds from each tap to the changed phrase of the watched node."""
    phone.phrase(watched)
    phone.page.evaluate(WATCH, watched)
    for done, key in enumerate(keys, start=1):
        phone.tap(key)
        phone.page.wait_for_function("(done) => taps.length >= done", arg=done)
        phone.page.wait_for_timeout(PAUSE)
    times: list[float] = phone.page.evaluate("() => taps")
    return times


def part(times: list[float], at: float) -> float:
    """The time that this part of all times does not pass."""
    return sorted(times)[min(len(times) - 1, int(at * len(times)))]


def starts(phone: Phone) -> Iterator[Row]:
    """Offline, warm, with the last check on the disk."""
    times = []
    for _ in range(STARTS):
        phone.open(offline=True)
        times.append(phone.page.evaluate(SHOWN_AT))
        phone.page.wait_for_timeout(REST)
        phone.close()
    yield Row(
        what=f"warm offline start with a check on the disk, navigation to its view, "
        f"median of {STARTS}",
        value=statistics.median(times) / 1e3,
        unit="s",
    )


SHOWN_AT = """() => new Promise((resolve) => {
  const look = () => document.getElementById("first-picture")
    ? requestAnimationFrame(look) : resolve(performance.now());
  look();
})"""
