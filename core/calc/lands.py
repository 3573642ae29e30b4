"""Metal left beside each groove, where it is tight, and which centre diameters leave enough."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from core.calc.deck_layout import Bore, DeckLayout, Hole, Point, distance
from core.source import Source, derived
from core.tables.cut_practice import (
    COVER_SOURCE,
    LAND,
    LAND_SOURCE,
    SEAM_SOURCE,
    LandPractice,
)
from core.unit_types import Millimetre
from core.verdict import TIE, Check, Rule, Verdict

GEOMETRY: Source = derived("distances of circles on the deck")


class LandKind(StrEnum):
    """What a land lies between."""

    BORE = "bore"
    SEAM = "seam"
    GROOVE = "groove"
    HOLE = "hole"
    COVER = "cover"
    BACK = "back"


SOURCES: dict[LandKind, Source] = {
    **dict.fromkeys((LandKind.BORE, LandKind.GROOVE, LandKind.HOLE), LAND_SOURCE),
    **dict.fromkeys((LandKind.COVER, LandKind.BACK), COVER_SOURCE),
    LandKind.SEAM: SEAM_SOURCE,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Rings:
    """The grooves of one bank.

    Parameters
    ----------
    centre_diameter
        Diameter of each groove's centre line [mm].
    width
        Groove width [mm].
    gasket_bore
        Hole of the copper sheet round each bore; none while not chosen [mm].
    """

    layout: DeckLayout
    centre_diameter: Millimetre
    width: Millimetre
    gasket_bore: Millimetre | None = None

    @property
    def inside(self) -> Millimetre:
        """Radius of the groove's inner edge."""
        return 0.5 * (self.centre_diameter - self.width)

    @property
    def outside(self) -> Millimetre:
        """Radius of the groove's outer edge."""
        return 0.5 * (self.centre_diameter + self.width)


@dataclass(frozen=True, slots=True, kw_only=True)
class Land:
    """Metal, or copper, between a groove and something else.

    Parameters
    ----------
    cylinder, other
        Whose groove, and what it is next to.
    width
        Below zero where they overlap [mm].
    least
        Least that is left by practice [mm].
    start, end
        The two edges at the narrowest place [mm].
    """

    kind: LandKind
    cylinder: str
    other: str
    width: Millimetre
    least: Millimetre
    start: Point
    end: Point

    @property
    def tight(self) -> bool:
        return self.width < self.least - TIE

    @property
    def check(self) -> Check:
        """The land against the least, by the plain rule."""
        return Check(
            id="land",
            verdict=Verdict.FAIL if self.tight else Verdict.PASS,
            word="tight" if self.tight else "room",
            value=self.width,
            limit=self.least,
            unit="mm",
            probability=None,
            rule=Rule.PLAIN,
            source=SOURCES[self.kind],
        )


def lands(rings: Rings, practice: LandPractice = LAND) -> tuple[Land, ...]:
    """Every land of a bank, the narrowest against its least first.

    Of the holes round a ring those are told that are tight, and the nearest of each kind.

    Source
    ------
    Least widths: *common practice, no source*. Distances: *derived*.
    """
    found = [land for bore in rings.layout.in_order for land in _round(bore, rings, practice)]
    return tuple(sorted(found, key=lambda land: land.width - land.least))


def tight_spots(rings: Rings, practice: LandPractice = LAND) -> tuple[Land, ...]:
    """Lands that are narrower than practice leaves, the worst first.

    Source
    ------
    *common practice, no source*.
    """
    return tuple(land for land in lands(rings, practice) if land.tight)


def _round(bore: Bore, rings: Rings, practice: LandPractice) -> Iterator[Land]:
    yield _radial(LandKind.BORE, bore, 0.5 * bore.diameter, rings.inside, practice.bore)
    if bore.flange is not None:
        yield _radial(LandKind.SEAM, bore, rings.outside, 0.5 * bore.flange, practice.seam)
    if rings.gasket_bore is not None:
        hole = 0.5 * rings.gasket_bore
        yield _radial(LandKind.COVER, bore, hole, rings.inside, practice.cover)
        yield _radial(LandKind.BACK, bore, 0.5 * bore.diameter, hole, practice.back)
    order = rings.layout.in_order
    for other in rings.layout.neighbours(bore):
        if order.index(other) > order.index(bore):
            yield _to_groove(bore, other, rings, practice)
    yield from _to_holes(bore, rings, practice)


def _radial(
    kind: LandKind, bore: Bore, inner: Millimetre, outer: Millimetre, least: Millimetre
) -> Land:
    """Land between two circles round one bore, drawn across the bank."""
    return Land(
        kind=kind, cylinder=bore.name, other=bore.name, width=outer - inner, least=least,
        start=(bore.x, bore.y + inner), end=(bore.x, bore.y + outer),
    )


def _to_groove(bore: Bore, other: Bore, rings: Rings, practice: LandPractice) -> Land:
    return Land(
        kind=LandKind.GROOVE,
        cylinder=bore.name,
        other=other.name,
        width=distance(bore, other) - 2.0 * rings.outside,
        least=practice.groove,
        start=_towards(bore, other, rings.outside),
        end=_towards(other, bore, rings.outside),
    )


def _to_holes(bore: Bore, rings: Rings, practice: LandPractice) -> Iterator[Land]:
    found = sorted(
        (_to_hole(bore, hole, rings, practice) for hole in rings.layout.holes),
        key=lambda each: each[1].width,
    )
    told = set()
    for hole, land in found:
        if land.tight or hole.kind not in told:
            told.add(hole.kind)
            yield land


def _to_hole(
    bore: Bore, hole: Hole, rings: Rings, practice: LandPractice
) -> tuple[Hole, Land]:
    apart, radius = distance(bore, hole), 0.5 * hole.diameter
    beyond = apart >= 0.5 * rings.centre_diameter
    edge = rings.outside if beyond else rings.inside
    near = apart - radius if beyond else apart + radius
    return hole, Land(
        kind=LandKind.HOLE,
        cylinder=bore.name,
        other=hole.name,
        width=near - edge if beyond else edge - near,
        least=practice.hole,
        start=_towards(bore, hole, edge),
        end=_towards(bore, hole, near),
    )


def _towards(start: Bore | Hole, end: Bore | Hole, length: Millimetre) -> Point:
    bearing = math.atan2(end.y - start.y, end.x - start.x)
    return start.x + length * math.cos(bearing), start.y + length * math.sin(bearing)


@dataclass(frozen=True, slots=True, kw_only=True)
class CentreLimit:
    """A centre diameter that one land allows, least or greatest.

    Parameters
    ----------
    diameter
        Diameter of the groove's centre line [mm].
    """

    diameter: Millimetre
    kind: LandKind
    cylinder: str
    other: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CentreWindow:
    """Centre diameters that leave enough metal everywhere.

    Parameters
    ----------
    least, greatest
        What decides on either side; `greatest` is none where nothing limits it.
    suggested
        Centre diameter with the land to the bore that is aimed for, or as near to it as there is
        room; none where there is no room at all [mm].
    """

    least: CentreLimit
    greatest: CentreLimit | None
    suggested: Millimetre | None


def centre_window(
    layout: DeckLayout, width: Millimetre, gasket_bore: Millimetre | None = None,
    practice: LandPractice = LAND,
) -> CentreWindow:
    """Centre diameters that leave enough metal, one diameter for the whole bank.

    Parameters
    ----------
    width
        Groove width [mm].
    gasket_bore
        Hole of the copper sheet; none while not chosen [mm].

    Source
    ------
    Least widths: *common practice, no source*. Distances: *derived*.
    """
    lower = [limit for bore in layout.bores for limit in _lower(bore, width, gasket_bore, practice)]
    upper = [limit for bore in layout.bores for limit in _upper(bore, layout, width, practice)]
    least = max(lower, key=lambda limit: limit.diameter)
    greatest = min(upper, key=lambda limit: limit.diameter, default=None)
    widest = max(bore.diameter for bore in layout.bores)
    aim = max(least.diameter, widest + 2.0 * practice.bore_aim + width)
    if greatest is None:
        return CentreWindow(least=least, greatest=None, suggested=aim)
    room = least.diameter <= greatest.diameter + TIE
    return CentreWindow(
        least=least, greatest=greatest, suggested=min(aim, greatest.diameter) if room else None
    )


def _lower(
    bore: Bore, width: Millimetre, gasket_bore: Millimetre | None, practice: LandPractice
) -> Iterator[CentreLimit]:
    edge = bore.diameter + 2.0 * practice.bore + width
    yield CentreLimit(diameter=edge, kind=LandKind.BORE, cylinder=bore.name, other=bore.name)
    if gasket_bore is not None:
        cover = gasket_bore + 2.0 * practice.cover + width
        yield CentreLimit(diameter=cover, kind=LandKind.COVER, cylinder=bore.name, other=bore.name)


def _upper(
    bore: Bore, layout: DeckLayout, width: Millimetre, practice: LandPractice
) -> Iterator[CentreLimit]:
    if bore.flange is not None:
        seam = bore.flange - 2.0 * practice.seam - width
        yield CentreLimit(diameter=seam, kind=LandKind.SEAM, cylinder=bore.name, other=bore.name)
    for other in layout.neighbours(bore):
        yield CentreLimit(
            diameter=distance(bore, other) - practice.groove - width,
            kind=LandKind.GROOVE, cylinder=bore.name, other=other.name,
        )
    for hole in layout.holes:
        yield CentreLimit(
            diameter=2.0 * (distance(bore, hole) - practice.hole) - hole.diameter - width,
            kind=LandKind.HOLE, cylinder=bore.name, other=hole.name,
        )
