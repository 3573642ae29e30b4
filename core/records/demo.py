"""A job to look at: an engine, an owner and readings of our own invention, the same every time."""

from collections.abc import Iterator
from typing import Any

from core.records.event import Event, kind_of
from core.records.model import (
    JOB_KINDS,
    HeadFace,
    HeadFaceKind,
    JobState,
    Length,
    Measured,
    ReadingKind,
    Tapped,
)
from core.records.shapes import entered
from core.records.stamp import Stamp
from core.records.view import JOB
from core.texts import text
from core.unit_types import INCH

DEMO_JOB = "demo"
AUTHOR = "demo-0000"
BEGUN = 1_767_607_200_000
"""Monday 5 January 2026, 10:00 UTC [ms since 1970]."""
MINUTE = 60_000
PLACES = ("12", "3", "6", "9")
WIRE = "0.041 in"
GROOVE_DEPTH = ("0.0310 in", "0.0312 in", "0.0311 in", "0.0310 in")
GROOVE_WIDTH = ("0.0400 in", "0.0401 in", "0.0400 in", "0.0399 in")
LEAVES = {
    "1": (("0.009 in", "0.011 in"),) * 4,
    "2": (*(("0.009 in", "0.011 in"),) * 3, ("0.009 in", "0.010 in")),
    "3": (("0.009 in", "0.011 in"), ("0.012 in", "0.013 in"), *(("0.009 in", "0.011 in"),) * 2),
    "4": (("0.009 in", "0.010 in"),) * 4,
}
PROUD = ("3", "3")
TAPPED_TO = ("0.010 in", "0.011 in")
Entries = list[tuple[str, str, Any]]


def demo_events() -> tuple[Event, ...]:
    """Events of the demo job."""
    events = []
    for minute, entries in enumerate(_actions()):
        at = BEGUN + minute * MINUTE
        stamp = Stamp(at, 0, AUTHOR)
        events += [
            Event(
                id=f"{stamp}.{index:x}",
                at=at,
                who=text("records.demo.who"),
                record=record,
                field=field,
                value=entered(JOB_KINDS[kind_of(record)], field, value),
            )
            for index, (record, field, value) in enumerate(entries)
        ]
    return tuple(events)


def inches(typed: str) -> Length:
    """A length typed in inches, such as ``0.041 in``.

    Examples
    --------
    >>> inches("0.010 in").mm
    0.254
    """
    return Length(typed=typed, mm=float(typed.removesuffix(" in")) * INCH)


def _actions() -> Iterator[Entries]:
    yield _job()
    for number in LEAVES:
        yield _cylinder(number)
    for number, leaves in LEAVES.items():
        for place, (go, no_go) in zip(PLACES, leaves, strict=True):
            yield [_reading(number, place, Tapped.BEFORE, go, no_go)]
    yield [_reading(*PROUD, Tapped.AFTER, *TAPPED_TO)]
    yield [(f"step/{key}", "done", True) for key in ("deck_finished", "wire_miked", "pressed_in")]
    yield _decision()
    for number in LEAVES:
        yield _evidence(number)


def _job() -> Entries:
    words = {name: text(f"records.demo.{name}") for name in ("title", "engine", "owner", "note")}
    return [
        *((JOB, name, value) for name, value in words.items()),
        (JOB, "block", "DEMO-B1"),
        (JOB, "head", "DEMO-H1"),
        (JOB, "head_face", HeadFace(kind=HeadFaceKind.FLAT)),
        (JOB, "state", JobState.TORN_DOWN),
        (JOB, "demo", True),
        ("bank/demo", "name", text("records.demo.bank")),
        ("bank/demo", "order", 0),
    ]


def _cylinder(number: str) -> Entries:
    record = f"cylinder/demo-{number}"
    widths = zip(PLACES, GROOVE_WIDTH, strict=True)
    depths = zip(PLACES, GROOVE_DEPTH, strict=True)
    return [
        (record, "bank", "bank/demo"),
        (record, "number", number),
        (record, "bore", inches("4.125 in")),
        (record, "centre_diameter", inches("4.375 in")),
        (record, "wire", inches(WIRE)),
        (record, "joint", "5"),
        *((record, f"groove_width@{place}", inches(typed)) for place, typed in widths),
        *((record, f"groove_depth@{place}", inches(typed)) for place, typed in depths),
    ]


def _reading(number: str, place: str, tapped: Tapped, go: str, no_go: str) -> tuple[str, str, Any]:
    measured = Measured(
        cylinder=f"cylinder/demo-{number}",
        kind=ReadingKind.LEAVES,
        place=place,
        tapped=tapped,
        go=inches(go),
        no_go=inches(no_go),
    )
    return f"reading/demo-{number}-{place}-{tapped}", "measured", measured


def _decision() -> Entries:
    record = "decision/demo-sheet"
    return [
        (record, "about", text("records.demo.decision_about")),
        (record, "sheet", inches("0.043 in")),
        (record, "reason", text("records.demo.decision_reason")),
    ]


def _evidence(number: str) -> Entries:
    record = f"evidence/demo-{number}"
    return [
        (record, "cylinder", f"cylinder/demo-{number}"),
        (record, "print_depth@12", inches("0.008 in")),
        (record, "print_depth@6", inches("0.007 in")),
        (record, "soot@12", text("records.demo.soot")),
        (record, "wire_again@12", inches("0.0095 in")),
        (record, "sheet_annealed", 1),
    ]
