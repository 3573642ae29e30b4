"""Which heights a set of readings determines, decided in exact fractions, never by rounding.

A reading ties one or two heights. Heights tied together form a group; within a group, moving one
height by some amount moves every other by a fixed multiple of it, if the readings are to stay as
they are. Either some reading forbids that move, and every height of the group is determined, or
none does, and not one of them is.
"""

from collections import deque
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

Tie = tuple[tuple[str, Fraction], ...]
"""Places a reading ties, each with its part in the reading."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Places that readings tie together.

    Parameters
    ----------
    free
        How far each place may move, against the first, without any reading noticing; the places
        in the order they were tied.
    determined
        Whether some reading does notice.
    """

    free: Mapping[str, Fraction]
    determined: bool


def groups(places: Sequence[str], ties: Iterable[Tie]) -> tuple[Group, ...]:
    """Groups of places, each determined as a whole or not at all.

    Parameters
    ----------
    places
        Every place, read or not.
    ties
        Places that each reading ties; parts of zero are left out.

    Source
    ------
    *derived*: rank of a matrix with two entries a row is that of a frame matroid: a connected part
    lacks one rank unless it holds a loop that does not close. For readings at midspan that is the
    rank of the unsigned incidence matrix of a graph: an odd loop determines, an even one does not.

    Examples
    --------
    >>> half = Fraction(1, 2)
    >>> ring = [(("1", half), ("2", half)), (("2", half), ("3", half)),
    ...         (("3", half), ("4", half)), (("4", half), ("1", half))]
    >>> square = groups("1234", ring)[0]
    >>> square.determined, [int(square.free[each]) for each in "1234"]
    (False, [1, -1, 1, -1])
    """
    by_place: dict[str, list[Tie]] = {place: [] for place in places}
    for tie in ties:
        for place, _ in tie:
            by_place[place].append(tie)
    found: list[Group] = []
    seen: set[str] = set()
    for place in places:
        if place not in seen:
            found.append(_group_of(place, by_place))
            seen.update(found[-1].free)
    return tuple(found)


def _group_of(start: str, by_place: Mapping[str, Sequence[Tie]]) -> Group:
    free = {start: Fraction(1)}
    waiting = deque([start])
    determined = False
    while waiting:
        place = waiting.popleft()
        for tie in by_place[place]:
            unknown = [each for each, _ in tie if each not in free]
            if unknown:
                free[unknown[0]] = _follows(tie, unknown[0], free)
                waiting.append(unknown[0])
            else:
                determined = determined or sum(part * free[each] for each, part in tie) != 0
    return Group(free=free, determined=determined)


def _follows(tie: Tie, place: str, free: Mapping[str, Fraction]) -> Fraction:
    """Move of `place` that undoes the move of the other place of a reading."""
    parts = dict(tie)
    (other,) = (each for each in parts if each != place)
    return -parts[other] * free[other] / parts[place]
