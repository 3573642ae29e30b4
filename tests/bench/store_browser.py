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

from playwright.sync_api import sync_playwright

from mobile.opfs_storage import MARK_SIZE, slot_mark
from tests.bench.store import FEW_JOBS, JOBS, SAVES, key, write_book
from tests.browser_disk import Browser, Window, folder, served
from tests.measured import Row

FILES_A_PARCEL = 250
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
WORK = """
started = time.perf_counter()
job = await book.open_job(KEY)
cylinders = job.job.cylinders
open_job = time.perf_counter() - started
saves = []
length = Length(typed="0.010 in", mm=0.254)
for turn in range(SAVES):
    measured = Measured(cylinder=cylinders[turn % 8].id, kind=ReadingKind.LEAVES, place="12",
                        tapped=Tapped.BEFORE, go=length, no_go=length, instrument="leaf_set/1")
    started = time.perf_counter()
    job.add_reading(measured)
    saves.append(time.perf_counter() - started)
searches = []
for turn in range(50):
    query = f"engine {turn * 7919 % 10000} own"[: 4 + turn % 14]
    started = time.perf_counter()
    book.jobs(query)
    searches.append(time.perf_counter() - started)
started = time.perf_counter()
job.job
view = time.perf_counter() - started
json.dumps([open_job, saves, searches, view])
"""


def rows() -> Iterator[Row]:
    few_save, *_ = measured(FEW_JOBS)
    saves, opened, open_job, searches, view = measured(JOBS)
    where = f"real browser, {JOBS} jobs"
    few, many = 1e3 * statistics.median(few_save), 1e3 * statistics.median(saves)
    yield Row(what=f"{where}: open the book to its list", value=opened, unit="s", goal=2.5)
    yield Row(what=f"{where}: open one job and fold it", value=1e3 * open_job, unit="ms")
    yield Row(
        what=f"{where}: save one reading, flush included, median of {SAVES}",
        value=many,
        unit="ms",
        goal=min(30.0, 1.2 * few + 0.5),
        peer=f"{FEW_JOBS} jobs",
        peer_value=few,
    )
    yield Row(what=f"{where}: slowest of those", value=1e3 * max(saves), unit="ms")
    yield Row(what=f"{where}: the first search", value=1e3 * searches[0], unit="ms", goal=50.0)
    yield Row(
        what=f"{where}: search, median of {len(searches)}",
        value=1e3 * statistics.median(searches),
        unit="ms",
        goal=50.0,
    )
    yield Row(what=f"{where}: view of a job after a save", value=1e3 * view, unit="ms")


def measured(jobs: int) -> tuple[list[float], float, float, list[float], float]:
    with tempfile.TemporaryDirectory() as place, sync_playwright() as playwright, served() as at:
        profile = Path(place) / "profile"
        browser = Browser(playwright, profile, at)
        fill(browser.window(), Path(place) / "book", jobs)
        browser.close()
        browser = Browser(playwright, profile, at)
        window = browser.window()
        _, opened, count = window.run(OPEN)
        assert count == jobs
        work = WORK.replace("KEY", repr(key(3))).replace("SAVES", str(SAVES))
        open_job, saves, searches, view = window.run(work)
        browser.close()
    return saves, opened, open_job, searches, view


def fill(window: Window, source: Path, jobs: int) -> None:
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
