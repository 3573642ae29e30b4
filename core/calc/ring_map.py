"""Heights at clock places round every ring of a bank: even or not, and where it is proud."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from core.calc.deck_layout import DeckLayout, Point
from core.calc.evenness import even_bank, even_ring, is_proud, over_median
from core.calc.joints import Datum
from core.errors import InputError, fault
from core.tables.cut_practice import EVEN, EvenPractice
from core.unit_types import Millimetre, Radian
from core.verdict import Check


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceReading:
    """Height, or depth of a print, at one place of one ring.

    Parameters
    ----------
    angle
        From the datum [rad].
    value
        Height or depth [mm].
    """

    cylinder: str
    angle: Radian
    value: Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class MappedPlace:
    """One place of a ring, ready to be drawn.

    Parameters
    ----------
    at
        On the deck [mm].
    over_median
        Above the median of its ring [mm].
    proud
        Whether that is a proud spot.
    """

    reading: PlaceReading
    at: Point
    over_median: Millimetre
    proud: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class RingSummary:
    """One ring.

    Parameters
    ----------
    places
        In the order of their angle.
    median, spread
        Of its places; spread is highest less lowest [mm].
    check
        Even round the ring, or proud somewhere.
    """

    cylinder: str
    places: tuple[MappedPlace, ...]
    median: Millimetre
    spread: Millimetre
    check: Check


@dataclass(frozen=True, slots=True, kw_only=True)
class BankMap:
    """Every ring of a bank that was read.

    Parameters
    ----------
    rings
        From the front.
    unread
        Cylinders without a reading.
    spread
        Highest less lowest median; zero with fewer than two rings [mm].
    check
        Even along the bank or not.
    """

    rings: tuple[RingSummary, ...]
    unread: tuple[str, ...]
    spread: Millimetre
    check: Check


def map_bank(
    layout: DeckLayout,
    centre_diameter: Millimetre,
    readings: Sequence[PlaceReading],
    datum: Datum,
    practice: EvenPractice = EVEN,
) -> BankMap:
    """Where each reading is on the deck, and how even the rings are.

    Parameters
    ----------
    centre_diameter
        Diameter of the grooves' centre line [mm].

    Raises
    ------
    InputError
        If a reading names a cylinder that the bank lacks.

    Source
    ------
    Proud spot: *from memory*. Evenness along the bank: *common practice, no source*.
    """
    known = [bore.name for bore in layout.in_order]
    strangers = dict.fromkeys(r.cylinder for r in readings if r.cylinder not in known)
    if strangers:
        raise InputError([fault(name, "deck.no_such_cylinder") for name in strangers])
    radius = 0.5 * centre_diameter
    rings = tuple(
        _ring(layout, radius, [r for r in readings if r.cylinder == name], datum, practice)
        for name in known
        if any(r.cylinder == name for r in readings)
    )
    check = even_bank([ring.median for ring in rings], practice)
    return BankMap(
        rings=rings,
        unread=tuple(name for name in known if name not in {ring.cylinder for ring in rings}),
        spread=check.value,
        check=check,
    )


def _ring(
    layout: DeckLayout,
    radius: Millimetre,
    readings: Sequence[PlaceReading],
    datum: Datum,
    practice: EvenPractice,
) -> RingSummary:
    bore = layout.bore(readings[0].cylinder)
    ordered = sorted(readings, key=lambda reading: reading.angle)
    values = [reading.value for reading in ordered]
    over = over_median(values)
    places = tuple(
        MappedPlace(
            reading=reading,
            at=(
                bore.x + radius * math.cos(datum.bearing(reading.angle)),
                bore.y + radius * math.sin(datum.bearing(reading.angle)),
            ),
            over_median=above,
            proud=is_proud(above, practice),
        )
        for reading, above in zip(ordered, over, strict=True)
    )
    return RingSummary(
        cylinder=bore.name,
        places=places,
        median=median(values),
        spread=max(values) - min(values),
        check=even_ring(over, practice),
    )
