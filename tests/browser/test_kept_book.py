"""The kept book on a real browser's disk: contract, two windows, the plug pulled out."""

import json
import os
import random
import time
from collections import Counter

import pytest

from tests.browser_disk import Browser, served

OPEN = """
import json, js, os, time
from core.errors import *
from core.records import open_book
from core.records.model import *
from mobile.opfs_storage import open_browser_home
home = await open_browser_home()
"""
CONTRACT = (
    OPEN
    + """
seen = []
port = await home.open("notes")
seen.append(port.read() == b"")
port.append(b"one,"); port.append(b"two,")
port.replace(b"new,"); port.append(bytes(range(256)))
port.replace(b"newer,"); port.append(b"end")
try:
    await home.open("notes")
except StoreBusy:
    seen.append(True)
port.close()
for save in (port.append, port.replace):
    try:
        save(b"lost")
    except NotSaved:
        seen.append(True)
port = await home.open("notes")
seen.append(port.read() == b"newer,end")
port.append(b"!" * 300_000)
port.close()
port = await home.open("notes")
seen.append(port.read() == b"newer,end" + b"!" * 300_000)
port.close()
seen.append(await home.names() == ("notes",))
json.dumps(seen)
"""
)
BOOK = (
    OPEN
    + """
book = await open_book(home, lambda: time.time_ns() // 1_000_000, os.urandom)
"""
)
BEGIN = (
    BOOK
    + """
job = await book.new_job(title="Kill")
job.add_bank("deck", ("1",))
json.dumps(job.id)
"""
)
READ = (
    BOOK
    + """
job = await book.open_job({job!r})
json.dumps([sorted(event.id for event in job.fold), list(map(str, job.told))])
"""
)
WRITE = """
import asyncio, itertools, random
rng = random.Random({seed})
cylinder = job.job.cylinders[0].id
for turn in itertools.count():
    note = "{seed}-" + str(turn) + "x" * rng.randrange(3000)
    entries = [(job.new("reading"), "note", note), (cylinder, "note", note)]
    ids = [event.id for event in job.enter_all(entries).events]
    if rng.random() < 0.1:
        book.refresh(job.id)
    if rng.random() < 0.1:
        book.notebook.put("draft", note)
    js.say(json.dumps(ids))
    await asyncio.sleep(0)
"""


@pytest.fixture(scope="module")
def page_address():
    with served() as address:
        yield address


@pytest.fixture
def new_browser(playwright, page_address, tmp_path):
    started = []

    def start():
        started.append(Browser(playwright, tmp_path / "profile", page_address))
        return started[-1]

    yield start
    for browser in started:
        browser.kill()


def test_the_contract_of_kept_files_holds_on_the_browsers_disk(new_browser):
    seen = new_browser().window().run(CONTRACT)
    assert seen == [True] * 7


def test_a_second_window_is_told_and_gets_the_book_when_the_first_is_closed(new_browser):
    browser = new_browser()
    first, second = browser.window(), browser.window()
    first.run(BEGIN)
    with pytest.raises(Exception, match="The book is open in another window"):
        second.run(BOOK + "json.dumps(1)")
    first.page.close()
    time.sleep(0.3)
    titles = second.run(BOOK + "json.dumps([line.title for line in book.jobs()])")
    assert titles == ["Kill"]


def test_every_acknowledged_entry_is_there_after_the_browser_was_killed(new_browser, capsys):
    kills = 50 if os.environ.get("STANDPROUD_LONG") == "1" else 5
    browser = new_browser()
    job = browser.window().run(BEGIN)
    browser.close()
    acknowledged, told = set(), []
    rng = random.Random(11)
    for turn in range(kills):
        browser = new_browser()
        heard = []
        window = browser.window(lambda words, heard=heard: heard.append(words))
        found, sentences = window.run(READ.format(job=job))
        assert acknowledged <= set(found), turn
        assert no_half(found), turn
        told += sentences
        window.start(WRITE.format(seed=turn))
        until = time.monotonic() + rng.uniform(0.05, 1.5)
        while time.monotonic() < until:
            window.page.wait_for_timeout(10)
        browser.kill()
        acknowledged |= {each for words in heard for each in json.loads(words)}
    found, _ = new_browser().window().run(READ.format(job=job))
    assert acknowledged <= set(found)
    assert no_half(found)
    assert len(acknowledged) > kills
    with capsys.disabled():
        print(
            f"\ncounted: {kills} kills of a real browser, {len(acknowledged)} entries "
            f"acknowledged, none lost, {len(told)} torn tails told"
        )


def no_half(found):
    """Every action written by `WRITE` has both of its events; the two that begin the job differ."""
    sizes = Counter(event.rpartition(".")[0] for event in found)
    return set(list(sizes.values())[2:]) <= {2}
