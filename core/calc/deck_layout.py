"""Where everything on a deck is: bores, bolts and holes, from a few numbers, then as coordinates.

Seen by someone who looks down on the deck with the front of the engine at the left, x runs to the
right from the first bore and y runs up. Every coordinate can be replaced afterwards: a layout is
plain data.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from core.errors import Fault, InputError, fault, refuse
from core.unit_types import Millimetre

Point = tuple[Millimetre, Millimetre]


class HoleKind(StrEnum):
    """What a hole in the deck is for."""

    BOLT = "bolt"
    WATER = "water"
    OIL = "oil"
    DOWEL = "dowel"


@dataclass(frozen=True, slots=True, kw_only=True)
class Bore:
    """One cylinder.

    Parameters
    ----------
    name
        Cylinder number.
    x, y
        Centre [mm].
    diameter
        Bore, or inside of its sleeve [mm].
    flange
        Outside diameter of a sleeve's flange at the deck; none without a sleeve [mm].
    """

    name: str
    x: Millimetre
    y: Millimetre
    diameter: Millimetre
    flange: Millimetre | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Hole:
    """One hole in the deck.

    Parameters
    ----------
    x, y
        Centre [mm].
    diameter
        Diameter at the deck, chamfer included [mm].
    """

    name: str
    kind: HoleKind
    x: Millimetre
    y: Millimetre
    diameter: Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class DeckLayout:
    """One bank.

    Parameters
    ----------
    bank
        What the shop calls it.
    bores
        One or more, along the bank.
    holes
        Bolts and passages, as far as known.

    Raises
    ------
    InputError
        If a name is used twice, a size is not above zero, or things overlap; each is named.
    """

    bank: str
    bores: tuple[Bore, ...]
    holes: tuple[Hole, ...] = ()

    def __post_init__(self) -> None:
        faults = [*_name_faults(self), *_size_faults(self), *_overlap_faults(self)]
        if faults:
            raise InputError(faults)

    @property
    def everything(self) -> tuple[Bore | Hole, ...]:
        return (*self.bores, *self.holes)

    @property
    def bolts(self) -> tuple[Hole, ...]:
        return tuple(hole for hole in self.holes if hole.kind is HoleKind.BOLT)

    @property
    def in_order(self) -> tuple[Bore, ...]:
        """Bores along the bank, from the front."""
        return tuple(sorted(self.bores, key=lambda bore: (bore.x, bore.y)))

    @property
    def extent(self) -> tuple[Point, Point]:
        """Lower left and upper right corner of all there is, to draw it."""
        circles = [(b.x, b.y, 0.5 * (b.flange or b.diameter)) for b in self.bores]
        circles += [(h.x, h.y, 0.5 * h.diameter) for h in self.holes]
        return (
            (min(x - r for x, _, r in circles), min(y - r for _, y, r in circles)),
            (max(x + r for x, _, r in circles), max(y + r for _, y, r in circles)),
        )

    def bore(self, name: str) -> Bore:
        """Bore of that cylinder."""
        return next(bore for bore in self.bores if bore.name == name)

    def neighbours(self, bore: Bore) -> tuple[Bore, ...]:
        """Bores next to one along the bank."""
        order = self.in_order
        place = order.index(bore)
        return (*order[max(0, place - 1) : place], *order[place + 1 : place + 2])

    def moved(self, name: str, x: Millimetre, y: Millimetre) -> "DeckLayout":
        """The layout with one bore or hole moved.

        Parameters
        ----------
        x, y
            Its new centre [mm].

        Raises
        ------
        InputError
            If nothing has that name, or it would overlap something there.
        """
        if name not in {each.name for each in self.everything}:
            raise refuse(name, "deck.unknown")
        return replace(
            self,
            bores=tuple(replace(b, x=x, y=y) if b.name == name else b for b in self.bores),
            holes=tuple(replace(h, x=x, y=y) if h.name == name else h for h in self.holes),
        )


class Along(StrEnum):
    """Where the holes of a row are, along the bank."""

    BETWEEN = "between"
    BESIDE = "beside"


@dataclass(frozen=True, slots=True, kw_only=True)
class HoleRow:
    """A row of like holes.

    Parameters
    ----------
    along
        Between the bores and at both ends of the bank, or beside each bore.
    offset
        Distance from the line of bores; the row stands on both sides [mm].
    diameter
        Diameter of each hole [mm].
    """

    kind: HoleKind
    along: Along
    offset: Millimetre
    diameter: Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class BankNumbers:
    """The few numbers a layout is built from.

    Parameters
    ----------
    cylinders
        Cylinder numbers from the front.
    bore
        Bore diameter [mm].
    spacing
        From bore centre to bore centre [mm].
    rows
        Rows of holes.
    flange
        Outside diameter of the sleeves' flanges; none without sleeves [mm].
    """

    bank: str
    cylinders: tuple[str, ...]
    bore: Millimetre
    spacing: Millimetre
    rows: tuple[HoleRow, ...] = ()
    flange: Millimetre | None = None


def build(numbers: BankNumbers) -> DeckLayout:
    """Coordinates of a whole bank.

    Raises
    ------
    InputError
        If there is no cylinder, or things would overlap.

    Source
    ------
    *common practice, no source*: bores in one line at one spacing, holes in rows beside it.

    Examples
    --------
    >>> bolts = HoleRow(kind=HoleKind.BOLT, along=Along.BETWEEN, offset=50.0, diameter=12.0)
    >>> bank = build(BankNumbers(bank="left", cylinders=("1", "3"), bore=100.0, spacing=112.0,
    ...                          rows=(bolts,)))
    >>> [(hole.name, hole.x, hole.y) for hole in bank.holes[:2]]
    [('bolt 1', -56.0, -50.0), ('bolt 2', -56.0, 50.0)]
    """
    if not numbers.cylinders:
        raise refuse("cylinders", "deck.no_bore")
    bores = tuple(
        Bore(name=name, x=place * numbers.spacing, y=0.0, diameter=numbers.bore,
             flange=numbers.flange)
        for place, name in enumerate(numbers.cylinders)
    )
    return DeckLayout(bank=numbers.bank, bores=bores, holes=_holes(numbers))


def _holes(numbers: BankNumbers) -> tuple[Hole, ...]:
    counts: dict[HoleKind, int] = dict.fromkeys(HoleKind, 0)
    holes = []
    for row in numbers.rows:
        for x in _along(row.along, len(numbers.cylinders), numbers.spacing):
            for y in (-row.offset, row.offset) if row.offset else (0.0,):
                counts[row.kind] += 1
                name = f"{row.kind} {counts[row.kind]}"
                holes.append(Hole(name=name, kind=row.kind, x=x, y=y, diameter=row.diameter))
    return tuple(holes)


def _along(along: Along, bores: int, spacing: Millimetre) -> Sequence[Millimetre]:
    if along is Along.BESIDE:
        return [place * spacing for place in range(bores)]
    return [(place - 0.5) * spacing for place in range(bores + 1)]


def distance(a: Bore | Hole, b: Bore | Hole) -> Millimetre:
    """Distance of two centres [mm].

    Source
    ------
    *derived*: Pythagoras.
    """
    return math.hypot(a.x - b.x, a.y - b.y)


def _name_faults(layout: DeckLayout) -> list[Fault]:
    names = [each.name for each in layout.everything]
    twice = dict.fromkeys(name for name in names if names.count(name) > 1)
    faults = [fault(name, "deck.name_twice") for name in twice]
    return faults if layout.bores else [fault("bores", "deck.no_bore"), *faults]


def _size_faults(layout: DeckLayout) -> list[Fault]:
    faults = [
        fault(each.name, "deck.no_size")
        for each in layout.everything
        if not each.diameter > 0.0
    ]
    return faults + [
        fault(bore.name, "deck.flange")
        for bore in layout.bores
        if bore.flange is not None and bore.flange <= bore.diameter
    ]


def _overlap_faults(layout: DeckLayout) -> list[Fault]:
    circles = layout.everything
    return [
        fault(a.name, "deck.overlap", other=b.name)
        for place, a in enumerate(circles)
        for b in circles[place + 1 :]
        if distance(a, b) < 0.5 * (a.diameter + b.diameter)
    ]
