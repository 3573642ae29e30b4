"""Which fasteners clamp which cylinder, from their places on the deck."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from core.errors import refuse
from core.unit_types import Millimetre, Number

SAME_PLACE: Millimetre = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A place on the deck.

    Parameters
    ----------
    x, y
        Coordinates in any frame of the deck [mm].
    """

    x: Millimetre
    y: Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class FastenerShare:
    """Fasteners that clamp one cylinder.

    Parameters
    ----------
    count
        How many, a shared one counted by its part [1].
    independent
        How many equal whole fasteners would scatter as little: (Σw)²/Σw² [1].
    """

    count: Number
    independent: Number


@dataclass(frozen=True, slots=True, kw_only=True)
class FastenerRow:
    """A row of fasteners along a bank.

    Parameters
    ----------
    between
        Between the bores and at both ends of the bank; else one beside each bore.
    offset
        Distance from the line of bores, above it positive [mm].
    """

    between: bool
    offset: Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadPattern:
    """Where the fasteners of one head are.

    Parameters
    ----------
    bores, fasteners
        Centres, shape (n,) and (m,).
    """

    bores: tuple[Place, ...]
    fasteners: tuple[Place, ...]


def head_pattern(bores: int, spacing: Millimetre, rows: Sequence[FastenerRow]) -> HeadPattern:
    """Bores in one line at one spacing, with rows of fasteners along them.

    Parameters
    ----------
    bores
        How many on this bank.
    spacing
        From bore centre to bore centre [mm].
    rows
        At least one.

    Source
    ------
    *derived*: plane geometry.

    Examples
    --------
    >>> head = head_pattern(2, 100.0, [FastenerRow(between=True, offset=60.0)])
    >>> [(place.x, place.y) for place in head.fasteners]
    [(-50.0, 60.0), (50.0, 60.0), (150.0, 60.0)]
    """
    return HeadPattern(
        bores=tuple(Place(x=spacing * i, y=0.0) for i in range(bores)),
        fasteners=tuple(
            Place(x=spacing * (i - 0.5 * row.between), y=row.offset)
            for row in rows
            for i in range(bores + row.between)
        ),
    )


def counted(count: Number) -> FastenerShare:
    """Share known only as a number a cylinder [1], as if all were whole.

    Source
    ------
    *assumed*.
    """
    return FastenerShare(count=count, independent=count)


def part_of_each(
    bores: Sequence[Place], fasteners: Sequence[Place]
) -> tuple[tuple[float, ...], ...]:
    """Part of every fastener that goes to every bore, one row a fastener; a row sums to 1.

    The line runs through the first and the last bore centre. A fastener between two bore centres
    is shared by the lever rule, half to each in the middle; beside a bore centre it is all its
    own; beyond the last bore it is all the last one's.

    Parameters
    ----------
    bores
        Bore centres of one bank, along the bank, shape (n,).
    fasteners
        Fasteners of that bank, shape (m,).

    Raises
    ------
    InputError
        If two neighbouring bores stand at one place along the line.

    Source
    ------
    *derived*: balance of moments about the neighbouring bore centres, the head not tilting
    across the bank; other patterns of the head's stiffness would share otherwise.
    """
    stations = _along(bores, bores)
    if any(b - a < SAME_PLACE for a, b in pairwise(stations)):
        raise refuse("bores", "clamp.layout.bores")
    return tuple(_lever(x, stations) for x in _along(fasteners, bores))


def _along(places: Sequence[Place], bores: Sequence[Place]) -> tuple[float, ...]:
    """Position of each place along the line of the bores."""
    start, end = bores[0], bores[-1]
    dx, dy = end.x - start.x, end.y - start.y
    length = math.hypot(dx, dy) or 1.0
    return tuple(((p.x - start.x) * dx + (p.y - start.y) * dy) / length for p in places)


def _lever(x: float, stations: Sequence[float]) -> tuple[float, ...]:
    parts = [0.0] * len(stations)
    right = next((i for i, station in enumerate(stations) if station >= x), len(stations) - 1)
    left = max(right - 1, 0)
    span = stations[right] - stations[left]
    part = min(max((x - stations[left]) / span, 0.0), 1.0) if span else 1.0
    parts[left] += 1.0 - part
    parts[right] += part
    return tuple(parts)


def share_fasteners(
    bores: Sequence[Place], fasteners: Sequence[Place]
) -> tuple[FastenerShare, ...]:
    """Fasteners of each bore of one bank, in the order of the bores.

    Source
    ------
    *derived*: lever rule of `part_of_each`; independent number from the sum of squares.

    Examples
    --------
    >>> bores = [Place(x=100.0 * i, y=0.0) for i in range(4)]
    >>> studs = [Place(x=100.0 * i - 50.0, y=y) for i in range(5) for y in (-60.0, 60.0)]
    >>> [share.count for share in share_fasteners(bores, studs)]
    [3.0, 2.0, 2.0, 3.0]
    """
    if not bores or not fasteners:
        raise refuse("fasteners", "clamp.layout.empty")
    columns = zip(*part_of_each(bores, fasteners), strict=True)
    return tuple(_share(column) for column in columns)


def _share(parts: Sequence[float]) -> FastenerShare:
    total = math.fsum(parts)
    squares = math.fsum(part * part for part in parts)
    if not squares:
        raise refuse("fasteners", "clamp.layout.bare")
    return FastenerShare(count=total, independent=total**2 / squares)
