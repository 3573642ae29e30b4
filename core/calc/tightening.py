"""In which order and in which steps the fasteners are tightened, and tightened again."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from core.calc.fastener_layout import Place
from core.source import PRACTICE, Source
from core.texts.sentence import Sentence
from core.texts.share import Share
from core.unit_types import Number

SEQUENCE_SOURCE: Source = PRACTICE
STEPS = 3
SAME_RING = 0.05
"""Fasteners whose distances from the middle differ by less than this share of the pattern's reach
are in one round."""


def sequence(fasteners: Sequence[Place]) -> tuple[int, ...]:
    """Order of tightening as indices: from the middle outwards, each round crosswise.

    Parameters
    ----------
    fasteners
        Every fastener of one head, shape (n,).

    Source
    ------
    *common practice, no source*; the engine maker's sequence wins.

    Examples
    --------
    >>> square = [Place(x=x, y=y) for x, y in ((0, 0), (100, 0), (100, 100), (0, 100))]
    >>> sequence(square)
    (0, 2, 1, 3)
    """
    if not fasteners:
        return ()
    middle = _middle(fasteners)
    reach = max(_distance(each, middle) for each in fasteners) or 1.0
    left = sorted(range(len(fasteners)), key=lambda i: _distance(fasteners[i], middle))
    order: list[int] = []
    while left:
        nearest = _distance(fasteners[left[0]], middle)
        ring = [i for i in left if _distance(fasteners[i], middle) <= nearest + SAME_RING * reach]
        order.append(_across(ring, order, fasteners))
        left.remove(order[-1])
    return tuple(order)


def _middle(places: Sequence[Place]) -> Place:
    """Centre of the box around all fasteners."""
    xs, ys = [p.x for p in places], [p.y for p in places]
    return Place(x=0.5 * (min(xs) + max(xs)), y=0.5 * (min(ys) + max(ys)))


def _distance(a: Place, b: Place) -> float:
    return math.hypot(a.x - b.x, a.y - b.y)


def _across(ring: Sequence[int], order: Sequence[int], fasteners: Sequence[Place]) -> int:
    """The fastener of this round that lies farthest from the one before."""
    if not order:
        return min(ring)
    before = fasteners[order[-1]]
    return max(ring, key=lambda i: (round(_distance(fasteners[i], before), 6), -i))


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One pass over all fasteners in their order.

    Parameters
    ----------
    share
        Share of the final torque or load [1].
    """

    share: Number
    say: Sentence


def steps(count: int = STEPS) -> tuple[Step, ...]:
    """Equal steps up to the final torque or load.

    Source
    ------
    *common practice, no source*: three steps or more, the lubricant the one whose friction was
    chosen.
    """
    return tuple(
        Step(share=i / count, say=Sentence("clamp.step", {"number": i, "share": Share(i / count)}))
        for i in range(1, count + 1)
    )


def reminders() -> tuple[Sentence, ...]:
    """What is still to do after the last step: retorque cold, one fastener at a time.

    Source
    ------
    *common practice, no source*.
    """
    keys = ("clamp.retorque.first", "clamp.retorque.how", "clamp.retorque.again")
    return tuple(Sentence(key) for key in keys)
