"""The book at many jobs in a real browser: list, one reading, search, on its own disk.

The host writes the jobs, by the codec that the book uses, into the browser's disk; then the page's
Python worker opens the book as the app does. STANDPROUD_BENCH_JOBS sets the number of jobs.
"""

import json
import os
import statistics
import tempfile
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import Playwright, sync_playwright

from mobile.opfs_storage import MARK_SIZE, slot_mark
from tests.bench.store import FEW_JOBS, JOBS, SAVES, key, write_book
from tests.browser_disk import Browser, Window, folder, served
from tests.measured import Row

FILES_A_PARCEL = 250
SAVES_A_TURN = 10
FILL = """
import js
from pyodide.code import run_js
fill = run_js('''async (url, names, sizes) => {
  const root = await navigator.storage.getDirectory();
  const folder = await root.getDirectoryHandle("standproud", {create: true});
  const content = new Uint8Array(await (await fetch(url)).arrayBuffer());
  let start = 0;
  for (let i = 0; i < names.length; i++) {
    for (const [end, part] of [[".a", content.subarray(start, start + sizes[i])], [".b", null]]) {
      const file = await folder.getFileHandle(names[i] + end, {create: true});
      const handle = await file.createSyncAccessHandle();
      if (part) handle.write(part, {at: 0});
      handle.close();
    }
    start += sizes[i];
  }
}''')
from pyodide.ffi import to_js
await fill(URL, to_js(NAMES), to_js(SIZES))
"1"
"""
OPEN = """
import time
started = time.perf_counter()
import json, os
from core.records import open_book
from core.records.model import Length, Measured, ReadingKind, Tapped
from mobile.opfs_storage import open_browser_home
imported = time.perf_counter()
home = await open_browser_home()
book = await open_book(home, lambda: time.time_ns() // 1_000_000, os.urandom)
count = len(book.jobs())
opened = time.perf_counter()
json.dumps([imported - started, opened - imported, count])
"""
BEGIN = """
started = time.perf_counter()
job = await book.open_job(KEY)
cylinders = job.job.cylinders
opened = time.perf_counter() - started
length = Length(typed="0.010 in", mm=0.254)
json.dumps(opened)
"""
SAVE = """
saves = []
for turn in range(COUNT):
    measured = Measured(cylinder=cylinders[turn % 8].id, kind=ReadingKind.LEAVES, place="12",
                        tapped=Tapped.BEFORE, go=length, no_go=length, instrument="leaf_set/1")
    started = time.perf_counter()
    job.add_reading(measured)
    saves.append(time.perf_counter() - started)
json.dumps(saves)
"""
LOOK = """
searches = []
for turn in range(50):
    query = f"engine {turn * 7919 % 10000} own"[: 4 + turn % 14]
    started = time.perf_counter()
    book.jobs(query)
    searches.append(time.perf_counter() - started)
started = time.perf_counter()
job.job
json.dumps([searches, time.perf_counter() - started])
"""


def rows() -> Iterator[Row]:
    with tempfile.TemporaryDirectory() as place, sync_playwright() as playwright, served() as at:
        few = Browser(playwright, filled(playwright, Path(place) / "few", at, FEW_JOBS), at)
        many = Browser(playwright, filled(playwright, Path(place) / "many", at, JOBS), at)
        yield from figures(few.window(), many.window())
        few.close()
        many.close()


def figures(few: Window, many: Window) -> Iterator[Row]:
    where = f"real browser, {JOBS} jobs"
    few.run(OPEN)
    _, opened, count = many.run(OPEN)
    assert count == JOBS
    yield Row(what=f"{where}: open the book to its list", value=opened, unit="s", goal=2.5)
    begin = BEGIN.replace("KEY", repr(key(3)))
    few.run(begin)
    yield Row(what=f"{where}: open one job", value=1e3 * many.run(begin), unit="ms")
    yield from save_figures(few, many, where)
    searches, view = many.run(LOOK)
    yield Row(what=f"{where}: the first search", value=1e3 * searches[0], unit="ms", goal=50.0)
    yield Row(
        what=f"{where}: search, median of {len(searches)}",
        value=1e3 * statistics.median(searches),
        unit="ms",
        goal=50.0,
    )
    yield Row(what=f"{where}: view of a job after a save", value=1e3 * view, unit="ms")


def save_figures(few: Window, many: Window, where: str) -> Iterator[Row]:
    save = SAVE.replace("COUNT", str(SAVES_A_TURN))
    times: dict[Window, list[float]] = {few: [], many: []}
    for turn in range(SAVES // SAVES_A_TURN):
        for window in (few, many) if turn % 2 else (many, few):
            times[window] += window.run(save)
    median = {window: 1e3 * statistics.median(each) for window, each in times.items()}
    yield Row(
        what=f"{where}: save one reading, flush included, median of {SAVES}",
        value=median[many],
        unit="ms",
        goal=30.0,
    )
    yield Row(
        what=f"{where}: the same, goal 1.2 × that at {FEW_JOBS} jobs + 0.5 ms, interleaved",
        value=median[many],
        unit="ms",
        goal=1.2 * median[few] + 0.5,
        peer=f"{FEW_JOBS} jobs",
        peer_value=median[few],
    )
    yield Row(what=f"{where}: slowest of those", value=1e3 * max(times[many]), unit="ms")


def filled(playwright: Playwright, folder: Path, address: str, jobs: int) -> Path:
    """Profile of a browser whose disk has that many jobs."""
    profile = folder / "profile"
    browser = Browser(playwright, profile, address)
    fill(browser.window(), folder / "book", jobs)
    browser.close()
    os.sync()
    return profile


def fill(window: Window, source: Path, jobs: int) -> None:
    source.parent.mkdir(exist_ok=True)
    write_book(source, jobs)
    (source / "book.lock").unlink()
    files = sorted(source.iterdir())
    for start in range(0, len(files), FILES_A_PARCEL):
        part = files[start : start + FILES_A_PARCEL]
        contents = [slot_mark(1) + file.read_bytes() for file in part]
        parcel = folder() / f"{os.getpid()}-parcel"
        parcel.write_bytes(b"".join(contents))
        code = FILL.replace("URL", repr(parcel.name))
        code = code.replace("NAMES", json.dumps([file.name for file in part]))
        window.run(code.replace("SIZES", json.dumps([len(each) for each in contents])))
        parcel.unlink()
    assert len(contents[-1]) > MARK_SIZE
