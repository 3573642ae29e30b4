"""The report of a job of eight cylinders, and how small the job travels; here and in a browser.

The browser's Python takes the job in by its link, as the app does, and makes the report from its
own book; the first report of a start also reads and compiles the templates.
"""

import statistics
import tempfile
import time
import zlib
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from playwright.sync_api import sync_playwright

from core.handover.codes import codes
from core.handover.packing import pack
from core.handover.parts import split
from core.records import Book, JobBook
from core.records.codec import event_to_json, to_bytes
from core.report.account import Printed, account
from core.report.page import report_page
from tests.eight_cylinders import add_shelf, eight_cylinders, new_book
from tests.measured import Row
from tests.phone import Phone
from tests.served_site import built, served

RUNS = 15
ADDRESS = "https://ring.team-copper.example/standproud/"
PRINTED = Printed(at=1_790_000_000_000)
KILOBYTE = 1e3
REST = 3000


def rows() -> Iterator[Row]:
    book = new_book()
    job = eight_cylinders(book)
    add_shelf(book)
    yield from here(book, job)
    yield from travelling(job)
    yield from in_a_browser(job)


def here(book: Book, job: JobBook) -> Iterator[Row]:
    def whole() -> str:
        return report_page(account(job, book.shop.shop, PRINTED))

    first = seconds(whole)
    yield Row(
        what=f"report of {len(job)} entries on 8 cylinders, CPython, median of {RUNS}",
        value=1e3 * statistics.median(seconds(whole) for _ in range(RUNS)),
        unit="ms",
        goal=50,
        peer="the first one of a start",
        peer_value=1e3 * first,
    )
    yield Row(
        what="its size without pictures",
        value=len(whole().encode()) / KILOBYTE,
        unit="kB",
        goal=150,
    )


def travelling(job: JobBook) -> Iterator[Row]:
    ledgers = {f"job-{job.id}": list(job.fold)}
    plain = b"".join(to_bytes(event_to_json(event)) for event in job.fold)
    yield Row(
        what="the same job packed for link and codes",
        value=len(pack(ledgers)) / KILOBYTE,
        unit="kB",
        peer="its JSON under zlib -9",
        peer_value=len(zlib.compress(plain, 9)) / KILOBYTE,
    )
    drawn = codes(ledgers, ADDRESS)
    yield Row(what="codes for the same job", value=len(drawn), unit="codes", goal=4)
    yield Row(
        what="modules a side of the largest code",
        value=max(len(code.rows) for code in drawn),
        unit="modules",
        goal=97,
    )


def in_a_browser(job: JobBook) -> Iterator[Row]:
    (part,) = split({f"job-{job.id}": list(job.fold)})
    with (
        tempfile.TemporaryDirectory() as place,
        sync_playwright() as playwright,
        served(built()) as origin,
    ):
        phone = Phone(playwright, Path(place) / "profile", f"{origin}/")
        phone.open()
        phone.read_aloud()
        phone.phrase("height")
        phone.page.wait_for_timeout(REST)
        first, *again = phone.python(f"part, runs = {str(part)!r}, {RUNS + 1}\n{IN_THE_BROWSER}")
        phone.close()
    yield Row(
        what=f"the same report in Chromium's Python, median of {RUNS}",
        value=1e3 * statistics.median(again),
        unit="ms",
        goal=300,
        peer="the first one of a start",
        peer_value=1e3 * first,
    )


def seconds(work: Callable[[], Any]) -> float:
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


IN_THE_BROWSER = """
import random, time
from core.handover.parts import find_parts, join
from core.records import Parcel, open_book
from core.report.account import Printed, account
from core.report.page import report_page

class Port:
    def __init__(self): self.data = b""
    def read(self): return self.data
    def append(self, data): self.data += data
    def replace(self, data): self.data = data
    def close(self): pass

class Home:
    def __init__(self): self.files = {}
    async def open(self, name): return self.files.setdefault(name, Port())
    async def names(self): return tuple(self.files)
    def close(self): pass

book = await open_book(Home(), lambda: 1_790_000_000_000, random.Random(1).randbytes)
ledgers = join(find_parts(part).parts)
await book.take(Parcel(ledgers=ledgers))
job = await book.open_job(next(iter(ledgers)).removeprefix("job-"))
times = []
for _ in range(runs):
    start = time.perf_counter()
    report_page(account(job, book.shop.shop, Printed(at=1_790_000_000_000)))
    times.append(time.perf_counter() - start)
times
"""
