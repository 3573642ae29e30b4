"""The form of a deck: from a few numbers to every bank, then coordinates one by one."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from core.calc.deck_layout import (
    Along,
    BankNumbers,
    Bore,
    DeckLayout,
    Hole,
    HoleKind,
    HoleRow,
    Point,
    build,
)
from core.calc.ring_map import PlaceReading
from core.forms.check_form import HEIGHT_FIELD
from core.forms.cut_form import COUNT_FIELD, DECK_FIELD, HOLE_FIELD
from core.forms.entries import Entries
from core.unit_types import INCH, Millimetre, Radian
from core.units import Bare, Dimension, Field

Placed = TypeVar("Placed", Bore, Hole)
TURN = 6.283185307179586
HOURS = 12
COUNT = replace(COUNT_FIELD, whole=True)
BANKS_FIELD = replace(COUNT, high=2.0)
COORDINATE_FIELD = Field(
    name="", dimension=Dimension.LENGTH, low=-100.0 * INCH, high=100.0 * INCH, bare=Bare.INCH
)
FIELDS: dict[str, Field] = {
    "cylinders": COUNT,
    "banks": BANKS_FIELD,
    "bore": DECK_FIELD,
    "spacing": DECK_FIELD,
    "flange": DECK_FIELD,
    "bolt-offset": DECK_FIELD,
    "bolt-hole": HOLE_FIELD,
    "water-offset": DECK_FIELD,
    "water-hole": HOLE_FIELD,
    "oil-offset": DECK_FIELD,
    "oil-hole": HOLE_FIELD,
}
"""Numbers a deck is built from."""
NEEDED = ("cylinders", "bore", "spacing")
ROWS = (
    (HoleKind.BOLT, Along.BETWEEN),
    (HoleKind.WATER, Along.BESIDE),
    (HoleKind.OIL, Along.BETWEEN),
)
BANK_NAMES = ("left", "right")
TURN_ABOUT = "turn-about"


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """A bore or hole whose centre was typed.

    Parameters
    ----------
    x, y
        As typed.
    """

    bank: str
    name: str
    x: str
    y: str


def read_deck(
    texts: Mapping[str, str],
    numbering: str,
    moves: Sequence[Moved],
    name: Callable[[str], str],
) -> tuple[DeckLayout, ...]:
    """Every bank of an engine.

    Parameters
    ----------
    texts
        What was typed, by field of `FIELDS`.
    numbering
        `TURN_ABOUT` for cylinder numbers that change from bank to bank, else bank after bank.
    moves
        What stands elsewhere than the numbers put it.
    name
        How a sentence names a field.

    Raises
    ------
    InputError
        With every fault of the form, each naming its field.
    """
    entries = Entries({field: [each] for field, each in texts.items()}, name)
    sizes = {field: entries.value(field, kind) for field, kind in FIELDS.items()}
    for field in NEEDED:
        if not entries.typed(field):
            entries.add_fault(field, "deck.missing")
    banks = int(sizes["banks"] or 1)
    cylinders = int(sizes["cylinders"] or banks)
    if cylinders % banks:
        entries.add_fault("cylinders", "deck.odd_banks")
    rows = _rows(entries, sizes)
    entries.finish()
    built = tuple(
        build(_numbers(sizes, rows, bank, numbers))
        for bank, numbers in zip(BANK_NAMES, _split(cylinders, banks, numbering), strict=False)
    )
    return tuple(_moved(bank, [each for each in moves if each.bank == bank.bank]) for bank in built)


def _rows(entries: Entries, sizes: Mapping[str, float | None]) -> tuple[HoleRow, ...]:
    rows = []
    for kind, along in ROWS:
        offset, hole = sizes[f"{kind}-offset"], sizes[f"{kind}-hole"]
        for field, other in (("offset", "hole"), ("hole", "offset")):
            if entries.typed(f"{kind}-{field}") and not entries.typed(f"{kind}-{other}"):
                wanted = entries.name_of(f"{kind}-{other}")
                entries.add_fault(f"{kind}-{field}", "cut.needs", other=wanted)
        if offset and hole:
            rows.append(HoleRow(kind=kind, along=along, offset=offset, diameter=hole))
    return tuple(rows)


def _split(cylinders: int, banks: int, numbering: str) -> list[tuple[str, ...]]:
    """Cylinder numbers of each bank, from the front."""
    numbers = [str(number) for number in range(1, cylinders + 1)]
    if numbering == TURN_ABOUT:
        return [tuple(numbers[bank::banks]) for bank in range(banks)]
    size = cylinders // banks
    return [tuple(numbers[bank * size : (bank + 1) * size]) for bank in range(banks)]


def _numbers(
    sizes: Mapping[str, float | None],
    rows: tuple[HoleRow, ...],
    bank: str,
    cylinders: tuple[str, ...],
) -> BankNumbers:
    return BankNumbers(
        bank=bank,
        cylinders=cylinders,
        bore=sizes["bore"] or 0.0,
        spacing=sizes["spacing"] or 0.0,
        rows=rows,
        flange=sizes["flange"],
    )


def _moved(bank: DeckLayout, moves: Sequence[Moved]) -> DeckLayout:
    """All moves at once: on the way from one to the next things may overlap."""
    places = {each.name: _centre(each) for each in moves}
    return replace(
        bank,
        bores=tuple(_at(bore, places) for bore in bank.bores),
        holes=tuple(_at(hole, places) for hole in bank.holes),
    )


def _at(thing: Placed, places: Mapping[str, Point]) -> Placed:
    x, y = places.get(thing.name, (thing.x, thing.y))
    return replace(thing, x=x, y=y)


def _centre(moved: Moved) -> Point:
    entries = Entries({"x": [moved.x], "y": [moved.y]}, lambda field: f"{moved.name} {field}")
    x, y = (entries.value(field, COORDINATE_FIELD) for field in ("x", "y"))
    entries.finish()
    return x or 0.0, y or 0.0


def angle_of_hour(hour: int) -> Radian:
    """Angle of a clock place from the datum at twelve [rad].

    Parameters
    ----------
    hour
        1 to 12.

    Source
    ------
    *derived*: twelve hours to a turn.

    Examples
    --------
    >>> f"{angle_of_hour(3):.6f} {angle_of_hour(12):.1f}"
    '1.570796 0.0'
    """
    return hour % HOURS * TURN / HOURS


def read_places(
    texts: Mapping[str, str], name: Callable[[str], str]
) -> tuple[PlaceReading, ...]:
    """Readings round the rings.

    Parameters
    ----------
    texts
        What was typed, by `CYLINDER/HOUR`.
    name
        How a sentence names a place.

    Raises
    ------
    InputError
        With every fault, each naming its place.
    """
    entries = Entries({place: [each] for place, each in texts.items()}, name)
    values = {place: entries.value(place, HEIGHT_FIELD) for place in texts}
    entries.finish()
    return tuple(
        _reading(place, value) for place, value in values.items() if value is not None
    )


def _reading(place: str, value: Millimetre) -> PlaceReading:
    cylinder, _, hour = place.rpartition("/")
    return PlaceReading(cylinder=cylinder, angle=angle_of_hour(int(hour)), value=value)


def of_bank(
    readings: Sequence[PlaceReading], layout: DeckLayout
) -> tuple[PlaceReading, ...]:
    """Readings on the rings of one bank."""
    names = {bore.name for bore in layout.bores}
    return tuple(each for each in readings if each.cylinder in names)
