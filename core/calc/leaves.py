"""Feeler leaves, and stacks of them."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from itertools import combinations

from core.source import ASSUMED
from core.tables.half_widths import HalfWidths
from core.tables.leaf_sets import LeafSet
from core.uncertain import Term, rectangular
from core.unit_types import Millimetre

MOST_LEAVES = 3
NANOMETRE = 1e6


@dataclass(frozen=True, slots=True)
class Stack:
    """One leaf, or up to three laid on each other.

    Parameters
    ----------
    leaves
        What is marked on each, thickest first [mm].
    """

    leaves: tuple[Millimetre, ...]

    @property
    def marked(self) -> Millimetre:
        """Sum of what is marked on the leaves [mm]."""
        return round(sum(self.leaves) * NANOMETRE) / NANOMETRE


def thickness(stack: Stack, half_widths: HalfWidths, name: str) -> Term:
    """Real thickness of a stack: the film between leaves makes it thicker than its marks.

    The error of the leaves themselves is common to a set and is left to the reading.

    Source
    ------
    *assumed*: between 0 and `film_per_interface` at each interface, rectangular (JCGM 100:2008
    4.3.7); interfaces independent.
    """
    interfaces = len(stack.leaves) - 1
    half_film = 0.5 * half_widths.film_per_interface
    return Term(
        name=name,
        value=stack.marked + interfaces * half_film,
        u=rectangular(half_film) * interfaces**0.5,
        unit="mm",
        source=ASSUMED,
    )


@cache
def stacks(leaf_set: LeafSet) -> tuple[Stack, ...]:
    """Every thickness the set can make, thinnest first.

    Each is made of the fewest leaves, and of these the stack whose thinnest leaf is the stiffest.

    Source
    ------
    *common practice, no source*: few leaves, and none that bends.
    """
    best: dict[int, Stack] = {}
    for stack in _every_stack(leaf_set):
        key = round(stack.marked * NANOMETRE)
        if key not in best or _handier(stack, best[key]):
            best[key] = stack
    return tuple(best[key] for key in sorted(best))


def _every_stack(leaf_set: LeafSet) -> Iterator[Stack]:
    for count in range(1, MOST_LEAVES + 1):
        for leaves in combinations(sorted(leaf_set.leaves, reverse=True), count):
            yield Stack(leaves)


def _handier(one: Stack, other: Stack) -> bool:
    return (-len(one.leaves), min(one.leaves)) > (-len(other.leaves), min(other.leaves))


def largest_not_above(leaf_set: LeafSet, limit: Millimetre) -> Stack | None:
    """Thickest stack that is not thicker than a limit; a tie counts as not thicker.

    Parameters
    ----------
    limit
        Limit, against what is marked [mm].

    Source
    ------
    *derived*.
    """
    fitting = [stack for stack in stacks(leaf_set) if stack.marked <= limit + 1e-6]
    return fitting[-1] if fitting else None


def smallest_not_below(leaf_set: LeafSet, limit: Millimetre) -> Stack | None:
    """Thinnest stack that is not thinner than a limit; a tie counts as not thinner.

    Parameters
    ----------
    limit
        Limit, against what is marked [mm].

    Source
    ------
    *derived*.
    """
    return next((stack for stack in stacks(leaf_set) if stack.marked >= limit - 1e-6), None)
