"""The book at 10 and at many jobs, beside TinyDB's own storage with the same readings.

8 cylinders × 8 readings a job, written by the codec that the book uses. The peer keeps one document
a job with the bare values, no history and no author, in one JSON file.
STANDPROUD_BENCH_JOBS sets the number of jobs (CI: 2000).
"""

import gc
import os
import random
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from dataclasses import astuple
from pathlib import Path

from tinydb import TinyDB

from core.records import open_book
from core.records.codec import FORMAT, event_to_json, to_bytes
from core.records.event import Event
from core.records.file_storage import FileHome
from core.records.fold import Fold
from core.records.job_book import JobBook
from core.records.job_index import JobIndex, line_of
from core.records.lines import write_line
from core.records.model import Length, Measured, ReadingKind, Tapped
from core.records.shapes import to_json
from core.records.stamp import Stamp
from tests.homes import at_once
from tests.measured import Row

JOBS = int(os.environ.get("STANDPROUD_BENCH_JOBS", "10000"))
FEW_JOBS = 10
CYLINDERS = READINGS = 8
SAVES = 200
SEARCHES = 50
OPENINGS = 5
PEER_SAVES = 2
PLACES = ("12", "3", "6", "9", "bridge", "joint before", "joint after", "1")
START = 1_700_000_000_000
LATER = 1_800_000_000_000
MEMORY = """
import asyncio, sys
from pathlib import Path
from core.records import open_book
from core.records.file_storage import FileHome
book = asyncio.run(open_book(FileHome(Path(sys.argv[1])), lambda: {now}, lambda n: bytes(n)))
book.jobs("engine 77")
status = Path("/proc/self/status").read_text()
print(status.split("VmRSS:")[1].split()[0])
"""


def rows() -> Iterator[Row]:
    with tempfile.TemporaryDirectory(prefix="standproud-bench-") as place:
        folder = Path(place)
        started = time.perf_counter()
        size = write_book(folder / "many", JOBS)
        write_book(folder / "few", FEW_JOBS)
        (folder / "none").mkdir()
        yield Row(
            what=f"(made {JOBS} jobs, {JOBS * CYLINDERS * READINGS} readings)",
            value=time.perf_counter() - started,
            unit="s",
        )
        yield Row(
            what=f"{JOBS} jobs on disk, {size / JOBS:.0f} bytes a job", value=size, unit="bytes"
        )
        peer_size, peer_open, peer_save = peer(folder / "peer.json")
        yield Row(what="the peer's file", value=peer_size, unit="bytes")
        yield open_row(folder / "many", peer_open)
        wear_list(folder / "many")
        yield open_row(folder / "many", peer_open, "; list as long as it ever gets before tidying")
        yield from job_rows(folder)
        yield from save_rows(folder, peer_save)
        yield from search_rows(folder / "many")
        yield memory_row(folder)


def open_row(folder: Path, peer_open: float, how: str = "") -> Row:
    times = []
    for _ in range(OPENINGS):
        started = time.perf_counter()
        book = book_in(folder)
        listed = book.jobs()
        times.append(time.perf_counter() - started)
        assert len(listed) == JOBS
        book.close()
    return Row(
        what=f"open the book to its list of {JOBS} jobs{how}, median of {OPENINGS}",
        value=statistics.median(times),
        unit="s",
        goal=1.0,
        peer="TinyDB JSONStorage reading its file once",
        peer_value=peer_open,
    )


def wear_list(folder: Path) -> None:
    """Write the list as many visits leave it: every line by itself and twice."""
    home = FileHome(folder)
    index = JobIndex(at_once(home.open("list")))
    bodies = [
        entry for line in index.lines() for entry in (["open", line.id], ["job", *astuple(line)])
    ]
    index.close()
    home.close()
    title = write_line(0, to_bytes({"standproud": "list", "format": FORMAT, "of": ""}))
    lines = (write_line(n, to_bytes([body])) for n, body in enumerate(bodies, start=1))
    (folder / "list").write_bytes(title + b"".join(lines))


def job_rows(folder: Path) -> Iterator[Row]:
    book = book_in(folder / "few")
    times = []
    for number in range(FEW_JOBS):
        started = time.perf_counter()
        assert at_once(book.open_job(key(number))).job.cylinders
        times.append(time.perf_counter() - started)
    yield Row(
        what=f"open one job of {CYLINDERS * READINGS} readings, note in the list synced",
        value=1e3 * statistics.median(times),
        unit="ms",
    )
    started = time.perf_counter()
    at_once(book.rebuild_list())
    yield Row(
        what="make a lost list anew from the jobs, each job",
        value=1e3 * (time.perf_counter() - started) / FEW_JOBS,
        unit="ms",
    )
    book.close()


def save_rows(folder: Path, peer_save: float) -> Iterator[Row]:
    books = {name: book_in(folder / name) for name in ("few", "many")}
    jobs = {name: at_once(book.open_job(key(3))) for name, book in books.items()}
    times: dict[str, list[float]] = {"few": [], "many": []}
    for turn in range(SAVES):
        for name in ("few", "many") if turn % 2 else ("many", "few"):
            times[name].append(timed_save(jobs[name], turn))
    few, many = (1e3 * statistics.median(times[name]) for name in ("few", "many"))
    for book in books.values():
        book.close()
    yield Row(
        what=f"save one reading at {JOBS} jobs, fsync included, median of {SAVES}",
        value=many,
        unit="ms",
        goal=5.0,
        peer=f"TinyDB JSONStorage at {JOBS} jobs, median of {PEER_SAVES}",
        peer_value=1e3 * peer_save,
    )
    yield Row(what="slowest of those saves", value=1e3 * max(times["many"]), unit="ms")
    yield Row(
        what=f"the same median, goal 1.2 × that at {FEW_JOBS} jobs + 0.5 ms, interleaved",
        value=many,
        unit="ms",
        goal=1.2 * few + 0.5,
        peer=f"{FEW_JOBS} jobs",
        peer_value=few,
    )
    yield Row(
        what="time of one save, in shares of the peer's (goal: 200 times faster)",
        value=many / (1e3 * peer_save),
        unit="",
        goal=1 / 200,
    )


def timed_save(job: JobBook, turn: int) -> float:
    measured = reading(job.job.cylinders[turn % CYLINDERS].id, turn)
    started = time.perf_counter()
    job.add_reading(measured)
    return time.perf_counter() - started


def search_rows(folder: Path) -> Iterator[Row]:
    book = book_in(folder)
    rng = random.Random(5)
    times = []
    for turn in range(SEARCHES):
        query = f"engine {rng.randrange(JOBS)} own"[: 4 + turn % 14]
        started = time.perf_counter()
        book.jobs(query)
        times.append(1e3 * (time.perf_counter() - started))
    book.close()
    what = f"search {JOBS} jobs as typed"
    yield Row(what=f"{what}, the first search", value=times[0], unit="ms", goal=50.0)
    yield Row(
        what=f"{what}, median of {SEARCHES}", value=statistics.median(times), unit="ms", goal=50.0
    )
    yield Row(what=f"{what}, slowest of {SEARCHES}", value=max(times), unit="ms")


def memory_row(folder: Path) -> Row:
    empty, full = (resident(folder / name) for name in ("none", "many"))
    return Row(
        what=f"growth of memory from an empty list to {JOBS} jobs, listed and searched",
        value=(full - empty) / 1024,
        unit="MB",
        goal=60.0,
    )


def resident(folder: Path) -> int:
    """Resident size of a process that opened the book and searched [kB]."""
    command = [sys.executable, "-c", MEMORY.format(now=LATER), str(folder)]
    environment = {**os.environ, "PYTHONPATH": str(Path(__file__).parents[2])}
    done = subprocess.run(command, capture_output=True, check=True, text=True, env=environment)
    return int(done.stdout)


def book_in(folder: Path):
    now = time.time_ns
    home = FileHome(folder)
    return at_once(open_book(home, lambda: now() // 1_000_000, os.urandom))


def peer(path: Path) -> tuple[int, float, float]:
    """Size of the peer's file, and the times to read it and to save one reading."""
    database = TinyDB(path)
    database.insert_multiple(peer_job(number) for number in range(JOBS))
    database.close()
    database = TinyDB(path)
    started = time.perf_counter()
    assert len(database) == JOBS
    opened = time.perf_counter() - started
    times = []
    for turn in range(PEER_SAVES):

        def add(document, turn=turn):
            document["cylinders"][0]["readings"].append(to_json(reading("1", turn)))

        started = time.perf_counter()
        database.update(add, doc_ids=[4])
        times.append(time.perf_counter() - started)
    database.close()
    gc.collect()
    return path.stat().st_size, opened, statistics.median(times)


def peer_job(number: int) -> dict[str, object]:
    return {
        "title": f"Engine {number}",
        "engine": f"Engine {number % 97}",
        "owner": f"Owner {number % 400}",
        "cylinders": [
            {
                "number": str(cylinder + 1),
                "readings": [to_json(reading(str(cylinder), turn)) for turn in range(READINGS)],
            }
            for cylinder in range(CYLINDERS)
        ],
    }


def write_book(folder: Path, jobs: int) -> int:
    """Write a book by the real codec without asking the disk to sync; returns its size [bytes]."""
    folder.mkdir()
    lines = []
    size = 0
    for number in range(jobs):
        batches = job_batches(number)
        data = b"".join(journal_lines(key(number), batches))
        (folder / f"job-{key(number)}").write_bytes(data)
        size += len(data)
        lines.append(line_of(key(number), Fold(event for batch in batches for event in batch)))
    home = FileHome(folder)
    index = JobIndex(at_once(home.open("list")))
    index.refill(lines)
    index.close()
    home.close()
    return size + (folder / "list").stat().st_size


def journal_lines(job_id: str, batches: list[list[Event]]) -> Iterator[bytes]:
    yield write_line(0, to_bytes({"standproud": "job", "format": FORMAT, "of": job_id}))
    for number, batch in enumerate(batches, start=1):
        yield write_line(number, to_bytes([event_to_json(event) for event in batch]))


def job_batches(number: int) -> list[list[Event]]:
    start = START + number * 1_000_000
    laid_out = [
        ("job", "title", f"Engine {number}"),
        ("job", "engine", f"Engine {number % 97}"),
        ("job", "owner", f"Owner {number % 400}"),
        ("bank/1", "name", "left"),
    ]
    for cylinder in range(CYLINDERS):
        laid_out += [
            (f"cylinder/{cylinder}", "bank", "bank/1"),
            (f"cylinder/{cylinder}", "number", str(cylinder + 1)),
            (f"cylinder/{cylinder}", "wire", to_json(length(1.0414))),
        ]
    batches = [batch(start, laid_out)]
    for turn in range(CYLINDERS * READINGS):
        measured = to_json(reading(f"cylinder/{turn // READINGS}", turn))
        batches.append(
            batch(start + 1 + turn, [(f"reading/{number:06x}{turn:06x}", "measured", measured)])
        )
    return batches


def batch(at: int, entries: list[tuple[str, str, object]]) -> list[Event]:
    stamp = Stamp(at, 0, "1c2d3e4f-0a1b")
    return [
        Event(
            id=f"{stamp}.{n:x}", at=at, who="Stand phone", record=record, field=field, value=value
        )
        for n, (record, field, value) in enumerate(entries)
    ]


def reading(cylinder: str, turn: int) -> Measured:
    go = 0.2286 + 0.001 * (turn % 37)
    return Measured(
        cylinder=cylinder,
        kind=ReadingKind.LEAVES,
        place=PLACES[turn % READINGS],
        tapped=Tapped.BEFORE,
        go=length(go),
        no_go=length(go + 0.0508),
        instrument="leaf_set/0123456789ab",
    )


def length(mm: float) -> Length:
    return Length(typed=f"{mm / 25.4:.4f} in", mm=round(mm, 6))


def key(number: int) -> str:
    return f"{number:016x}"
