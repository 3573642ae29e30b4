"""A whole job of our own invention on an engine of eight cylinders, entered as a person would."""

import random
from collections.abc import Coroutine, Iterator
from typing import Any

from core.handover.packing import ANY_LENGTH
from core.records import STEPS, Book, JobBook, open_book
from core.records.model import (
    Amount,
    HeadFace,
    HeadFaceKind,
    JobState,
    Length,
    Measured,
    ReadingKind,
    Tapped,
)
from core.units import read_quantity
from tests.homes import MemoryHome

BEGUN = 1_790_000_000_000
PLACES = ("12", "3", "6", "9")
BANKS = (("left", "1357"), ("right", "2468"))


def inches(typed: str) -> Length:
    text = f"{typed} in"
    return Length(typed=text, mm=read_quantity(text, ANY_LENGTH).value)


def clock(rng: random.Random) -> Iterator[int]:
    """A person's pace: a tap every few seconds."""
    at = BEGUN
    while True:
        at += rng.randrange(2_000, 90_000)
        yield at


def finish(coroutine: Coroutine[Any, Any, Any]) -> Any:
    """Result of a coroutine that never waits, as those of a book in memory."""
    try:
        coroutine.send(None)
    except StopIteration as done:
        return done.value
    raise RuntimeError("it waits")


def new_book(seed: int = 8, name: str = "Bench phone", files: dict | None = None) -> Book:
    rng = random.Random(seed)
    times = clock(rng)
    home = MemoryHome({} if files is None else files)
    book = finish(open_book(home, lambda: next(times), rng.randbytes))
    book.name_device(name)
    return book


def eight_cylinders(book: Book, seed: int = 8) -> JobBook:
    """The job, from the laying out to the teardown."""
    rng = random.Random(seed)
    job = finish(book.new_job(**IDENTITY))
    for name, numbers in BANKS:
        common = {
            "bore": inches("4.125"),
            "centre_diameter": inches("4.375"),
            "wire": inches("0.041"),
            "joint": "5",
        }
        job.add_bank(name, numbers, common)
    for cylinder in job.job.cylinders:
        enter_groove(job, cylinder.id, rng)
    for cylinder in job.job.cylinders:
        enter_readings(job, cylinder.id, rng)
    for step in STEPS:
        job.tick(step)
    enter_limits(job)
    decide(job)
    for cylinder in job.job.cylinders:
        enter_evidence(job, cylinder.id, rng)
    job.enter("job", state=JobState.TORN_DOWN)
    book.refresh(job.id)
    return job


IDENTITY = {
    "title": "Pulling engine, second build",
    "engine": "Eight cylinders in vee, alcohol",
    "owner": "Team Copper",
    "block": "B-204",
    "head": "H-17 / H-18",
    "head_face": HeadFace(kind=HeadFaceKind.FLAT),
    "note": "Left deck was cut by five thousandths last winter.",
}


def enter_groove(job: JobBook, cylinder: str, rng: random.Random) -> None:
    for place in PLACES:
        width, depth = rng.choice((398, 399, 400, 401)), rng.choice((308, 309, 310, 311))
        job.enter_all(
            [
                (cylinder, f"groove_width@{place}", inches(f"0.0{width}")),
                (cylinder, f"groove_depth@{place}", inches(f"0.0{depth}")),
            ]
        )
    job.enter_all(
        [
            (cylinder, "piston_deck", inches(f"0.0{rng.randrange(40, 70)}")),
            (cylinder, "intake_valve", inches(f"0.{rng.randrange(100, 130)}")),
            (cylinder, "exhaust_valve", inches(f"0.{rng.randrange(120, 150)}")),
        ]
    )


def enter_readings(job: JobBook, cylinder: str, rng: random.Random) -> None:
    for place in PLACES:
        job.add_reading(leaves(cylinder, place, Tapped.BEFORE, rng.choice((9, 10, 11))))
    job.add_reading(leaves(cylinder, "3", Tapped.AFTER, 9))
    job.add_reading(
        Measured(
            cylinder=cylinder,
            kind=ReadingKind.CALIPER,
            place="bridge",
            tapped=Tapped.AFTER,
            values=(inches("0.0100"), inches("0.0105")),
        )
    )


def leaves(cylinder: str, place: str, tapped: Tapped, go: int) -> Measured:
    return Measured(
        cylinder=cylinder,
        kind=ReadingKind.LEAVES,
        place=place,
        tapped=tapped,
        go=inches(f"0.{go:03}"),
        no_go=inches(f"0.{go + 1:03}"),
    )


def enter_limits(job: JobBook) -> None:
    job.enter(
        "limits",
        sheet_on=inches("0.043"),
        rod="aluminium",
        stroke=inches("3.75"),
        gasket_bore=inches("4.200"),
        chamber=Amount(typed="64 cc", value=64_000.0),
        highest_ratio=Amount(typed="11.9", value=11.9),
        valve_gear="pushrods",
        pushrod_length=inches("7.8"),
        intake_least=inches("0.080"),
        exhaust_least=inches("0.100"),
    )


def decide(job: JobBook) -> None:
    first = job.add("squeeze", cylinder=job.job.cylinders[0].id, sheet=inches("0.050"))
    job.enter_all([(first, "print_depth@12", inches("0.008"))])
    job.add(
        "decision",
        about="Sheet for the first start",
        sheet=inches("0.050"),
        reason="All rings bite and the highest is under the limit; pushrods leave room.",
    )


def enter_evidence(job: JobBook, cylinder: str, rng: random.Random) -> None:
    record = job.add("evidence", cylinder=cylinder, sheet_annealed=1)
    job.enter_all(
        [
            (record, "print_depth@12", inches(f"0.00{rng.randrange(6, 9)}")),
            (record, "print_depth@6", inches(f"0.00{rng.randrange(6, 9)}")),
            (record, "soot@12", "none outside the print"),
            (record, "wire_again@12", inches("0.0095")),
        ]
    )


def add_shelf(book: Book) -> None:
    for size in ("0.032", "0.043", "0.050", "0.062", "0.080"):
        book.shop.add("sheet", thickness=inches(size))
