"""The leaf to try next: the one that separates what is still possible in the fewest tries."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from core.calc.gasket import HeightRule, Sheet, largest_height, least_height
from core.calc.leaves import Stack, stacks
from core.calc.suggestion import is_thinner
from core.tables.leaf_sets import LeafSet
from core.unit_types import Millimetre
from core.verdict import TIE


@dataclass(frozen=True, slots=True, kw_only=True)
class NextLeaf:
    """What to try.

    Parameters
    ----------
    stack
        Leaf, or leaves laid on each other.
    if_goes, if_not
        Sheet to run in each case, where that is settled by this leaf alone.
    """

    stack: Stack
    if_goes: Sheet | None
    if_not: Sheet | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """What the leaf is to decide.

    Parameters
    ----------
    low, high
        Leaves between which the height is known to lie, as marked [mm].
    shelf
        Sheets to choose from; with none, the verdicts of the sheet on now are separated.
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
    """
    leaves = separating(question, leaf_set)
    if not leaves:
        return None
    spare = 2 ** (math.ceil(math.log2(len(leaves) + 1)) - 1) - 1
    admissible = leaves[max(0, len(leaves) - 1 - spare) : spare + 1]
    middle = 0.5 * (question.low + question.high)
    stack = min(admissible, key=lambda each: abs(each.marked - middle))
    return NextLeaf(
        stack=stack,
        if_goes=_settled(question, stack.marked, question.high),
        if_not=_settled(question, question.low, stack.marked),
    )


def halving_leaf(low: Millimetre, high: Millimetre, leaf_set: LeafSet) -> Stack | None:
    """Leaf nearest the middle of the bracket [mm], to narrow a height that is settled already."""
    inside = _inside(low, high, leaf_set)
    middle = 0.5 * (low + high)
    return min(inside, key=lambda each: abs(each.marked - middle)) if inside else None


def separating(question: Question, leaf_set: LeafSet) -> tuple[Stack, ...]:
    """Leaves of the bracket that have different outcomes on their two sides, thinnest first."""
    inside = _inside(question.low, question.high, leaf_set)
    edges = [question.low, *(stack.marked for stack in inside), question.high]
    gaps = [outcomes(question, low, high) for low, high in pairwise(edges)]
    return tuple(
        stack
        for stack, below, above in zip(inside, gaps, gaps[1:], strict=False)
        if below != above or len(below) > 1
    )


def _inside(low: Millimetre, high: Millimetre, leaf_set: LeafSet) -> list[Stack]:
    return [each for each in stacks(leaf_set) if low + TIE < each.marked < high - TIE]


def outcomes(question: Question, low: Millimetre, high: Millimetre) -> frozenset[object]:
    """Sheets, or verdicts of the sheet on now, that a height between `low` and `high` can give."""
    limits = [x for x in _limits(question) if low + TIE < x < high - TIE]
    edges = [low, *limits, high]
    return frozenset(outcome(question, 0.5 * (a + b)) for a, b in pairwise(edges))


def _limits(question: Question) -> list[Millimetre]:
    practice = question.rule.practice
    sheets: Sequence[Sheet] = question.shelf or ((question.on_now,) if question.on_now else ())
    limits = [largest_height(sheet, practice) for sheet in sheets]
    limits += [least_height(sheet, practice) for sheet in sheets]
    if not question.shelf:
        limits += [practice.borderline_share * sheet.thickness for sheet in sheets]
    return sorted(limit + question.print_depth for limit in limits)


def outcome(question: Question, height: Millimetre) -> Sheet | str | None:
    """What a height [mm] known exactly would give: the sheet to run, or the sheet on now's word."""
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


def _settled(question: Question, low: Millimetre, high: Millimetre) -> Sheet | None:
    """The one sheet left between two leaves, if it is one."""
    left = outcomes(question, low, high)
    only = next(iter(left)) if len(left) == 1 else None
    return only if isinstance(only, Sheet) else None
