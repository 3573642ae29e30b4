"""The form of the clamp for a whole engine: cylinders, wire heights, places of the fasteners."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from core.calc.clamp import Cylinder, Joint
from core.calc.engine_clamp import check_sizes
from core.calc.fastener_layout import (
    FastenerRow,
    FastenerShare,
    HeadPattern,
    counted,
    head_pattern,
    share_fasteners,
)
from core.forms.check_form import HEIGHT_FIELD, SHEET_FIELD, WIRE_FIELD
from core.forms.clamp_form import (
    COUNT_FIELD,
    RING_FIELD,
    height_spread,
    read_joint,
    read_pressure,
    required,
)
from core.forms.entries import Entries
from core.unit_types import Millimetre
from core.units import Bare, Dimension, Field

ROW_FIELDS = ("between-above", "between-below", "beside-above", "beside-below")
"""Rows of fasteners, each by its distance from the line of bores."""
OWN_HEIGHT = "height-{cylinder}"
"""Field of a cylinder whose wire has a height of its own."""


def _whole_field(high: float) -> Field:
    return Field(name="", dimension=Dimension.RATIO, low=1.0, high=high, bare=Bare.NUMBER)


def _place_field(low: float, high: float) -> Field:
    return Field(name="", dimension=Dimension.LENGTH, low=low, high=high)


BANKS_FIELD = _whole_field(2.0)
CYLINDERS_FIELD = _whole_field(10.0)
SPACING_FIELD = _place_field(25.0, 600.0)
ROW_FIELD = _place_field(5.0, 400.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class ClampEngineForm:
    """The clamp of an engine as read.

    Parameters
    ----------
    cylinders
        Of every bank, shape (n,).
    sheet
        Sheet thickness; none if not typed [mm].
    pattern
        Of one head; none where only a number of fasteners was typed.
    """

    joint: Joint
    cylinders: tuple[Cylinder, ...]
    sheet: Millimetre | None
    pattern: HeadPattern | None


def read_clamp_engine(
    texts: Mapping[str, Sequence[str]], name: Callable[[str], str]
) -> ClampEngineForm:
    """Read the whole form.

    Parameters
    ----------
    texts
        What was typed, by field: those of `clamp_form`, besides `banks`, `cylinders`, `spacing`,
        `ROW_FIELDS`, and `OWN_HEIGHT` of a cylinder.
    name
        How a sentence names a field.

    Raises
    ------
    InputError
        With every fault of the form, each naming its field.
    """
    entries = Entries(texts, name)
    joint = read_joint(entries)
    in_a_bank = _whole(entries, "cylinders", CYLINDERS_FIELD)
    banks = _whole(entries, "banks", BANKS_FIELD)
    pattern = _pattern(entries, in_a_bank)
    shares = entries.attempt(lambda: _shares(entries, in_a_bank, pattern)) or ()
    cylinders = _cylinders(entries, shares * banks)
    sheet = entries.value("gasket", SHEET_FIELD)
    entries.finish()
    assert joint is not None
    entries.attempt(lambda: check_sizes(joint, cylinders))
    entries.finish()
    return ClampEngineForm(joint=joint, cylinders=cylinders, sheet=sheet, pattern=pattern)


def _whole(entries: Entries, field: str, kind: Field) -> int:
    """A whole number; one where nothing was typed."""
    number = entries.value(field, kind) or 1.0
    if not number.is_integer():
        entries.add_fault(field, "clamp.whole")
    return int(number)


def _pattern(entries: Entries, bores: int) -> HeadPattern | None:
    rows = [row for field in ROW_FIELDS for row in _row(entries, field)]
    if not rows:
        return None
    spacing = required(entries, "spacing", SPACING_FIELD)
    return None if spacing is None else head_pattern(bores, spacing, rows)


def _row(entries: Entries, field: str) -> list[FastenerRow]:
    offset = entries.value(field, ROW_FIELD)
    if offset is None:
        return []
    along, _, side = field.partition("-")
    return [FastenerRow(between=along == "between", offset=offset if side == "above" else -offset)]


def _shares(entries: Entries, bores: int, pattern: HeadPattern | None) -> tuple[FastenerShare, ...]:
    if pattern is not None:
        return share_fasteners(pattern.bores, pattern.fasteners)
    count = required(entries, "fasteners", COUNT_FIELD)
    return () if count is None else (counted(count),) * bores


def _cylinders(entries: Entries, shares: Sequence[FastenerShare]) -> tuple[Cylinder, ...]:
    ring = required(entries, "ring", RING_FIELD)
    wire = required(entries, "wire", WIRE_FIELD)
    height = required(entries, "height", HEIGHT_FIELD)
    u, pressure = height_spread(entries), read_pressure(entries)
    names = [str(1 + place) for place in range(len(shares))]
    heights = [entries.value(OWN_HEIGHT.format(cylinder=each), HEIGHT_FIELD) for each in names]
    if ring is None or wire is None or height is None or pressure is None:
        return ()
    return tuple(
        Cylinder(
            name=name,
            ring_diameter=ring,
            wire_diameter=wire,
            height=own or height,
            height_u=u,
            fasteners=share,
            pressure=pressure,
        )
        for name, own, share in zip(names, heights, shares, strict=True)
    )
