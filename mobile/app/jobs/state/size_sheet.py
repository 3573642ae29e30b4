"""Which sizes a form asks, where each goes in the records, and back."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from core.records.model import CLOCK_PLACES, Length
from core.records.shapes import AT
from core.units import Bare, Dimension, Field, read_quantity
from mobile.app.state.sizes_form import Kinds
from mobile.app.state.typing import WIRE_FIELD

INCH = 25.4
AREA = "job-"
PART = "#"
"""A size that is one of several in one field: ``miked#0``."""


def _length(low: float, high: float, bare: Bare = Bare.THOU_OR_INCH) -> Field:
    return Field(name="", dimension=Dimension.LENGTH, low=low * INCH, high=high * INCH, bare=bare)


LARGE = _length(0.5, 30.0, Bare.INCH)
SMALL = _length(0.0, 0.25)
PRINT = _length(0.0, 0.1)
SHEET = _length(0.005, 0.25)
FINE = _length(0.0, 0.05)


@dataclass(frozen=True, slots=True)
class Size:
    """One size: what it is called, its field in the record, and what it takes."""

    called: str
    field: str
    kind: Field

    @property
    def name(self) -> str:
        """Its name on the form."""
        return f"{AREA}{self.called}"


def _round(name: str, field: str, kind: Field) -> tuple[Size, ...]:
    return tuple(Size(f"{name}-{place}", f"{field}{AT}{place}", kind) for place in CLOCK_PLACES)


CYLINDER = (
    Size("bore", "bore", LARGE),
    Size("centre-diameter", "centre_diameter", LARGE),
    Size("wire-size", "wire", WIRE_FIELD),
)
GROOVE = (*_round("width", "groove_width", SMALL), *_round("depth", "groove_depth", SMALL))
EVIDENCE = (*_round("print", "print_depth", PRINT), *_round("again", "wire_again", PRINT))
SQUEEZE = (Size("scrap", "sheet", SHEET), *_round("print", "print_depth", PRINT))
FACE = (Size("face-depth", "depth", PRINT),)
DECISION = (Size("sheet-to-run", "sheet", SHEET),)
SHOP = {
    "spool": (
        Size("nominal", "nominal", WIRE_FIELD),
        *(Size(f"miked-{place}", f"miked{PART}{place - 1}", WIRE_FIELD) for place in (1, 2, 3)),
    ),
    "cutter": (Size("cutter-width", "width", SMALL),),
    "test_groove": (
        Size("test-width", "width", SMALL),
        Size("test-depth", "depth", SMALL),
        Size("test-interference", "interference", FINE),
    ),
    "instrument": (
        Size("resolution", "resolution", FINE),
        Size("tolerance", "tolerance", FINE),
    ),
}
EVERY = (
    *CYLINDER,
    *GROOVE,
    *EVIDENCE,
    *SQUEEZE,
    *FACE,
    *DECISION,
    *(size for sizes in SHOP.values() for size in sizes),
)
KINDS: Kinds = {size.name: size.kind for size in EVERY}
VALUE = f"{AREA}value"
"""Name of the one size that a walk with an instrument types."""
VALUE_KINDS: Kinds = {VALUE: _length(0.0001, 0.1)}


def shown(entry: object, sizes: Iterable[Size]) -> dict[str, str]:
    """Texts of a record's sizes, by their name on the form."""
    found = {size.name: _kept(entry, size.field) for size in sizes}
    return {name: length.typed for name, length in found.items() if length}


def _kept(entry: object, field: str) -> Length | None:
    base, at, place = field.partition(AT)
    if at:
        by_place: Mapping[str, Length] = getattr(entry, base)
        return by_place.get(place)
    base, part, index = field.partition(PART)
    if part:
        several: tuple[Length, ...] = getattr(entry, base)
        return several[int(index)] if int(index) < len(several) else None
    value: Length | None = getattr(entry, base)
    return value


def length_of(size: Size, typed: str) -> Length | None:
    """A text of the form as a kept length; none for an empty one."""
    if not typed:
        return None
    read = read_quantity(typed, size.kind)
    return Length(typed=read.echo, mm=read.value)


def entered(record: str, size: Size, typed: str, entry: object) -> tuple[str, str, Any]:
    """What is written for a size that was typed or cleared."""
    base, part, index = size.field.partition(PART)
    length = length_of(size, typed)
    if not part:
        return record, size.field, length
    several = list(getattr(entry, base)) if entry else []
    del several[int(index) : int(index) + 1]
    if length:
        several.insert(int(index), length)
    return record, base, tuple(several)
