"""The leaf to try next: the one that separates what is still possible in the fewest tries."""

import math
from bisect import bisect_left, bisect_right
from dataclasses import dataclass
from itertools import pairwise

from core.calc.gasket import HeightRule, Sheet, largest_height, least_height
from core.calc.leaves import Stack, stacks
from core.calc.shelf import is_thinner
from core.tables.leaf_sets import LeafSet
from core.unit_types import Millimetre
from core.verdict import TIE

Outcome = Sheet | str | None
"""The sheet to run, or none of the shelf, or the word for the sheet on now."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NextLeaf:
    """What to try.

    Parameters
    ----------
    stack
        Leaf, or leaves laid on each other.
    goes, not_goes
        What is still possible in each case.
    """

    stack: Stack
    goes: frozenset[Outcome]
    not_goes: frozenset[Outcome]

    @property
    def if_goes(self) -> Sheet | None:
        """The sheet to run if it goes, where that is settled by this leaf alone."""
        return _only_sheet(self.goes)

    @property
    def if_not(self) -> Sheet | None:
        """The same if it does not go."""
        return _only_sheet(self.not_goes)

    @property
    def settles(self) -> bool:
        """Whether one outcome is left in either case, and not the same one."""
        return len(self.goes) == len(self.not_goes) == 1 and self.goes != self.not_goes


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """What the leaf is to decide.

    Parameters
    ----------
    low, high
        Leaves between which the height is known to lie, as marked [mm].
    shelf
        Sheets to choose from; with none, the verdicts of the sheet on now are separated.
    on_now
        Sheet on the engine now; no thinner one is chosen.
    print_depth
        What the head's print takes off the height [mm].
    """

    low: Millimetre
    high: Millimetre
    shelf: tuple[Sheet, ...]
    on_now: Sheet | None
    rule: HeightRule
    print_depth: Millimetre = 0.0


def deciding_leaf(question: Question, leaf_set: LeafSet) -> NextLeaf | None:
    """Leaf or stack that separates the sheets or verdicts still possible; none when one is left.

    The leaves that can separate anything are searched by halves, so that the worst case takes
    ⌈log2(leaves in the bracket + 1)⌉ tries; among the leaves that keep this promise the one
    nearest the middle of the bracket is tried, so that the average is smaller.

    Source
    ------
    *derived*: a binary search, the height taken as equally likely anywhere in the bracket.
    """
    leaves = separating(question, leaf_set)
    if not leaves:
        return None
    spare = 2 ** (math.ceil(math.log2(len(leaves) + 1)) - 1) - 1
    admissible = leaves[max(0, len(leaves) - 1 - spare) : spare + 1]
    return _next(question, _nearest_middle(question, admissible))


def halving_leaf(question: Question, leaf_set: LeafSet) -> NextLeaf | None:
    """Leaf nearest the middle of the bracket, to narrow a height that is settled already.

    Source
    ------
    *derived*: a binary search.
    """
    inside = _inside(question, leaf_set)
    return _next(question, _nearest_middle(question, inside)) if inside else None


def neighbouring_leaf(question: Question, leaf_set: LeafSet, *, thicker: bool) -> NextLeaf | None:
    """The next single leaf, where one side of the height is open and there is nothing to halve.

    Source
    ------
    *common practice, no source*: leaf by leaf until one goes and the next does not.
    """
    single = [each for each in _inside(question, leaf_set) if len(each.leaves) == 1]
    return _next(question, single[0 if thicker else -1]) if single else None


def _nearest_middle(question: Question, leaves: tuple[Stack, ...]) -> Stack:
    middle = 0.5 * (question.low + question.high)
    return min(leaves, key=lambda each: abs(each.marked - middle))


def _next(question: Question, stack: Stack) -> NextLeaf:
    possible = _possible(question)
    return NextLeaf(
        stack=stack,
        goes=possible.between(stack.marked, question.high),
        not_goes=possible.between(question.low, stack.marked),
    )


def separating(question: Question, leaf_set: LeafSet) -> tuple[Stack, ...]:
    """Leaves of the bracket that have different outcomes on their two sides, thinnest first.

    Source
    ------
    *derived* from the limits of practice.
    """
    possible, inside = _possible(question), _inside(question, leaf_set)
    edges = [question.low, *(stack.marked for stack in inside), question.high]
    gaps = [possible.between(low, high) for low, high in pairwise(edges)]
    return tuple(
        stack
        for stack, below, above in zip(inside, gaps, gaps[1:], strict=False)
        if below != above or len(below) > 1
    )


def _inside(question: Question, leaf_set: LeafSet) -> tuple[Stack, ...]:
    low, high = question.low + TIE, question.high - TIE
    return tuple(each for each in stacks(leaf_set) if low < each.marked < high)


def outcomes(question: Question, low: Millimetre, high: Millimetre) -> frozenset[Outcome]:
    """What a height between `low` and `high` can give.

    Parameters
    ----------
    low, high
        Ends of the range [mm].

    Source
    ------
    *derived* from the limits of practice.
    """
    return _possible(question).between(low, high)


@dataclass(frozen=True, slots=True)
class _Possible:
    """Heights at which the outcome may change, and the outcome before, between and after them."""

    limits: tuple[Millimetre, ...]
    outcomes: tuple[Outcome, ...]

    def between(self, low: Millimetre, high: Millimetre) -> frozenset[Outcome]:
        first = bisect_right(self.limits, low + TIE)
        last = max(first, bisect_left(self.limits, high - TIE))
        return frozenset(self.outcomes[first : last + 1])


def _possible(question: Question) -> _Possible:
    limits = _limits(question)
    edges = (limits[0] - 1.0, *limits, limits[-1] + 1.0) if limits else (0.0, 1.0)
    found = tuple(outcome(question, 0.5 * (a + b)) for a, b in pairwise(edges))
    return _Possible(limits, found)


def _limits(question: Question) -> tuple[Millimetre, ...]:
    practice = question.rule.practice
    sheets = question.shelf or ((question.on_now,) if question.on_now else ())
    limits = {largest_height(sheet, practice) for sheet in sheets}
    limits |= {least_height(sheet, practice) for sheet in sheets}
    if not question.shelf:
        limits |= {practice.borderline_share * sheet.thickness for sheet in sheets}
    return tuple(sorted(limit + question.print_depth for limit in limits))


def outcome(question: Question, height: Millimetre) -> Outcome:
    """What a height known exactly would give.

    Parameters
    ----------
    height
        Height [mm].

    Source
    ------
    *common practice, no source*: the limits; *derived*: what follows from them.
    """
    wire = height - question.print_depth
    if question.shelf:
        return _first_fitting(question, wire)
    return _word(question, wire) if question.on_now else None


def _first_fitting(question: Question, wire: Millimetre) -> Sheet | None:
    practice = question.rule.practice
    ordered = sorted(
        (sheet for sheet in question.shelf if not is_thinner(sheet, question.on_now)),
        key=lambda sheet: sheet.thickness,
    )
    return next(
        (
            sheet
            for sheet in ordered
            if least_height(sheet, practice) - TIE <= wire <= largest_height(sheet, practice) + TIE
        ),
        None,
    )


def _word(question: Question, wire: Millimetre) -> str:
    sheet, practice = question.on_now, question.rule.practice
    assert sheet is not None
    if wire < least_height(sheet, practice) - TIE:
        return "too-low"
    if wire <= largest_height(sheet, practice) + TIE:
        return "run"
    over = wire > practice.borderline_share * sheet.thickness + TIE
    return "too-high" if over else "borderline"


def _only_sheet(left: frozenset[Outcome]) -> Sheet | None:
    only = next(iter(left)) if len(left) == 1 else None
    return only if isinstance(only, Sheet) else None
