"""Every reading of a job as a table for a spreadsheet: CSV (RFC 4180) in UTF-8."""

import csv
import io
from collections.abc import Iterator

from core.errors import InputError
from core.forms.kept_heights import height_of
from core.forms.kept_verdicts import JudgedRing
from core.records.model import Length, Reading, Shop
from core.records.view import live
from core.report.account import Account
from core.report.plain import cell
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.texts import text
from core.texts.length import Length as Shown

BYTE_ORDER_MARK = "\ufeff"
"""Without it some spreadsheets take UTF-8 for something else."""
COLUMNS = (
    "bank", "cylinder", "place", "tapped", "by", "go_in", "no_go_in", "values_in", "go_mm",
    "no_go_mm", "values_mm", "height_in", "height_mm", "low_mm", "high_mm", "u_mm", "counts",
    "who", "at", "note",
)  # fmt: skip
"""Texts of the head, each with its unit."""


def readings_table(account: Account, shop: Shop | None) -> bytes:
    """The table; a text that a spreadsheet would calculate is marked as text."""
    written = io.StringIO()
    table = csv.writer(written, quoting=csv.QUOTE_ALL)
    zone = account.printed.zone_name
    table.writerow(text(f"report.column.{name}", zone=zone) for name in COLUMNS)
    for bank in account.banks:
        for ring in bank.rings:
            table.writerows(_rows(account, shop, bank.bank.name, ring))
    return (BYTE_ORDER_MARK + written.getvalue()).encode("utf-8")


def _rows(
    account: Account, shop: Shop | None, bank: str, ring: JudgedRing
) -> Iterator[tuple[str, ...]]:
    counting = {place.reading.id for place in ring.places}
    for reading in live(ring.cylinder.readings):
        kept = reading.measured
        if kept is None:
            continue
        yield (
            cell(bank),
            cell(ring.cylinder.number),
            cell(kept.place),
            text(f"kept.tapped.{kept.tapped}"),
            text(f"kept.by.{kept.kind.replace(' ', '-')}"),
            *_sizes(reading, "in"),
            *_sizes(reading, "mm"),
            *_height(reading, shop),
            text("kept.value.yes" if reading.id in counting else "kept.value.no"),
            cell(reading.who),
            account.printed.minute(reading.at),
            cell(reading.note or (text("kept.read.rocks") if kept.rocks else "")),
        )


def _sizes(reading: Reading, unit: str) -> tuple[str, str, str]:
    kept = reading.measured
    assert kept
    values = " ".join(f"{Shown(each.mm):{unit}}" for each in kept.values)
    return _size(kept.go, unit), _size(kept.no_go, unit), values


def _size(length: Length | None, unit: str) -> str:
    return f"{Shown(length.mm):{unit}}" if length else ""


def _height(reading: Reading, shop: Shop | None) -> tuple[str, ...]:
    """Height in inch and mm, range and standard uncertainty; blank where it says none."""
    instruments = {each.id: each for each in shop.instruments} if shop else {}
    try:
        height = height_of(reading, instruments, ASSUMED_HALF_WIDTHS)
    except InputError:
        height = None
    if height is None:
        return ("",) * 5
    ends = (f"{Shown(end):mm}" if end is not None else "" for end in (height.low, height.high))
    value = Shown(height.value)
    return f"{value:in}", f"{value:mm}", *ends, f"{height.u:.4f}"
