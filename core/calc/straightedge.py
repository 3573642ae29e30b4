"""A straightedge across wires: what a leaf under it reads, what it rests on, if it rocks."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from core.errors import refuse
from core.source import Source, derived
from core.unit_types import Millimetre, Number

LINE: Source = derived("rigid straightedge touching two wires only, deck flat under the leaf")
FINEST_PART = 10**6
"""A place along a span is never known closer than this part of the span."""


def part_of_span(first: Millimetre, second: Millimetre, at: Millimetre) -> Fraction:
    """Where along a span a leaf was, from 0 at the first wire to 1 at the second.

    Beyond either wire the part is below 0 or above 1. Rounding of the last digits of a float is
    taken away, so that midspan is one half exactly.

    Parameters
    ----------
    first, second, at
        Places of both wires and of the leaf along the straightedge [mm].

    Raises
    ------
    InputError
        If both wires are at the same place.

    Examples
    --------
    >>> part_of_span(0.0, 111.76, 55.88), part_of_span(0.0, 4.4, 5.5)
    (Fraction(1, 2), Fraction(5, 4))
    """
    if first == second:
        raise refuse("across", "heights.same_place")
    return Fraction((at - first) / (second - first)).limit_denominator(FINEST_PART)


def gap(first: Millimetre, second: Millimetre, part: Number) -> Millimetre:
    """Gap from deck to straightedge [mm].

    Parameters
    ----------
    first, second
        Heights of both wires [mm].
    part
        Place along the span, 0 at the first wire and 1 at the second [1].

    Source
    ------
    *derived*: line through two points.

    Examples
    --------
    >>> f"{gap(0.010, 0.012, 1.25):.4f}"
    '0.0125'
    """
    return (1.0 - part) * first + part * second


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """A place where a straightedge can touch a wire.

    Parameters
    ----------
    name
        Ring or place on a ring.
    at
        Along the straightedge [mm].
    height
        Height of the wire [mm].
    """

    name: str
    at: Millimetre
    height: Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class Rest:
    """What a straightedge rests on.

    Parameters
    ----------
    on
        The two contacts under the middle of the straightedge.
    rocks_over
        Contacts that it can tip over: it rests on either side of each, never on both.
    """

    on: tuple[Contact, Contact]
    rocks_over: tuple[Contact, ...]

    @property
    def rocks(self) -> bool:
        return bool(self.rocks_over)


def rest(contacts: Sequence[Contact]) -> Rest:
    """What a straightedge over all these contacts rests on.

    A ring is crossed twice, so it gives two contacts. The straightedge can rest on any edge of
    the upper hull of the contacts; a corner of the hull between its ends is a high place that it
    rocks over.

    Raises
    ------
    InputError
        If there are fewer than two contacts at different places.

    Source
    ------
    *derived*: a line that no contact rises above touches the upper convex hull.
    """
    hull = _upper_hull(sorted(contacts, key=lambda each: (each.at, each.height)))
    if len(hull) == 1:
        raise refuse("across", "heights.same_place")
    middle = 0.5 * (hull[0].at + hull[-1].at)
    on = next((a, b) for a, b in pairwise(hull) if b.at >= middle)
    return Rest(on=on, rocks_over=tuple(hull[1:-1]))


def _upper_hull(contacts: Sequence[Contact]) -> list[Contact]:
    hull: list[Contact] = []
    for each in contacts:
        if hull and hull[-1].at == each.at:
            hull.pop()
        while len(hull) > 1 and not _above_line(hull[-1], hull[-2], each):
            hull.pop()
        hull.append(each)
    return hull


def _above_line(middle: Contact, first: Contact, last: Contact) -> bool:
    """Whether `middle` stands above the line, by more than floats can tell from touching it."""
    part = (middle.at - first.at) / (last.at - first.at)
    line = gap(first.height, last.height, part)
    scale = max(abs(first.height), abs(middle.height), abs(last.height))
    return middle.height - line > 1e-12 * scale and not math.isclose(middle.at, first.at)
