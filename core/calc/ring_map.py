"""Heights at clock places round every ring of a bank: even or not, and where it is proud."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from core.calc.deck_layout import DeckLayout, Point
from core.calc.joints import Datum
from core.errors import InputError, fault
from core.tables.cut_practice import BANK_SOURCE, EVEN, PROUD_SOURCE, EvenPractice
from core.unit_types import Millimetre, Radian
from core.verdict import TIE, Check, Rule, Verdict


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
    medians = [ring.median for ring in rings]
    spread = max(medians) - min(medians) if medians else 0.0
    return BankMap(
        rings=rings,
        unread=tuple(name for name in known if name not in {ring.cylinder for ring in rings}),
        spread=spread,
        check=_even_bank(spread, practice),
    )


def _ring(
    layout: DeckLayout,
    radius: Millimetre,
    readings: Sequence[PlaceReading],
    datum: Datum,
    practice: EvenPractice,
) -> RingSummary:
    bore = layout.bore(readings[0].cylinder)
    middle = median(reading.value for reading in readings)
    places = tuple(
        MappedPlace(
            reading=reading,
            at=(
                bore.x + radius * math.cos(datum.bearing(reading.angle)),
                bore.y + radius * math.sin(datum.bearing(reading.angle)),
            ),
            over_median=reading.value - middle,
            proud=reading.value - middle > practice.proud + TIE,
        )
        for reading in sorted(readings, key=lambda reading: reading.angle)
    )
    values = [reading.value for reading in readings]
    return RingSummary(
        cylinder=bore.name,
        places=places,
        median=middle,
        spread=max(values) - min(values),
        check=_even_ring(places, practice),
    )


def _even_ring(places: Sequence[MappedPlace], practice: EvenPractice) -> Check:
    """A low place counts as a proud one does: both leave the ring's median."""
    worst = max((place.over_median for place in places), key=abs)
    word = "even" if abs(worst) <= practice.proud + TIE else "proud" if worst > 0.0 else "low-place"
    return Check(
        id="even-ring",
        verdict=Verdict.PASS if word == "even" else Verdict.FAIL,
        word=word,
        value=worst,
        limit=practice.proud,
        unit="mm",
        probability=None,
        rule=Rule.PLAIN,
        source=PROUD_SOURCE,
    )


def _even_bank(spread: Millimetre, practice: EvenPractice) -> Check:
    even = spread <= practice.bank + TIE
    return Check(
        id="even-bank",
        verdict=Verdict.PASS if even else Verdict.FAIL,
        word="even" if even else "uneven",
        value=spread,
        limit=practice.bank,
        unit="mm",
        probability=None,
        rule=Rule.PLAIN,
        source=BANK_SOURCE,
    )
