"""The demo job with everything that limits its sheet, as a file that the app exports."""

import math
from pathlib import Path
from typing import Any

from core.records.demo import demo_events
from core.records.event import Event
from core.records.model import JOB_KINDS, SHOP_KINDS, Amount, Length
from core.records.parcel import ParcelWriter
from core.records.shapes import entered
from core.records.stamp import Stamp

INCH = 25.4
AT = 1_770_000_000_000


def inches(size: float) -> Length:
    return Length(typed=f"{size} in", mm=size * INCH)


def events_of(entries: list[tuple[str, str, Any]]) -> list[Event]:
    kinds = {**JOB_KINDS, **SHOP_KINDS}
    stamp = Stamp(AT, 0, "test-0001")
    return [
        Event(
            id=f"{stamp}.{index:x}",
            at=AT,
            who="test",
            record=record,
            field=field,
            value=entered(kinds[record.partition("/")[0]], field, value),
        )
        for index, (record, field, value) in enumerate(entries)
    ]


LIMITS: list[tuple[str, str, Any]] = [
    ("limits", "sheet_on", inches(0.043)),
    ("limits", "rod", "steel"),
    *((f"cylinder/demo-{number}", "piston_deck", inches(0.005)) for number in "1234"),
    ("limits", "stroke", inches(3.75)),
    ("limits", "gasket_bore", inches(4.2)),
    ("limits", "chamber", Amount(typed="64 cc", value=64_000.0)),
    ("limits", "dish", Amount(typed="5 cc", value=5_000.0)),
    ("limits", "highest_ratio", Amount(typed="11.4", value=11.4)),
    ("limits", "bank_angle", Amount(typed="90°", value=math.radians(90.0))),
    ("limits", "face_angle", Amount(typed="80°", value=math.radians(80.0))),
    ("limits", "largest_offset", inches(0.030)),
    ("limits", "valve_gear", "pushrods"),
    ("limits", "pushrod_length", inches(7.8)),
]
SHELF: list[tuple[str, str, Any]] = [
    (f"sheet/{index}", "thickness", inches(size))
    for index, size in enumerate((0.032, 0.043, 0.050, 0.062, 0.080))
]


def write(path: Path, ledgers: dict[str, list[Event]]) -> Path:
    """A file with these ledgers, as the app exports one."""
    writer = ParcelWriter()
    lines = [writer.title()]
    lines += [writer.event(name, event) for name, events in ledgers.items() for event in events]
    path.write_bytes(b"".join([*lines, writer.end()]))
    return path


def write_limited_job(path: Path) -> Path:
    """The demo job, its limits, and a shelf of five."""
    demo = [*demo_events(), *events_of(LIMITS)]
    return write(path, {"job-demo": demo, "shop": events_of(SHELF)})
