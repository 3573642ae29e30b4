"""The main job: from a reading to every verdict, the sheet to run and the leaf to try."""

from dataclasses import dataclass, replace

from core.calc.deciding_leaf import (
    NextLeaf,
    Question,
    deciding_leaf,
    halving_leaf,
    neighbouring_leaf,
)
from core.calc.fit import Measured, Seat, held_check, interference_check, seat
from core.calc.gasket import Face, HeadFace, HeightRule, Sheet, standing
from core.calc.height import Bound, Height
from core.calc.leaves import Stack
from core.calc.shelf import ShelfRow, shelf_row, shelf_rows
from core.calc.suggestion import Situation, Suggestion, suggest
from core.tables.half_widths import ASSUMED_HALF_WIDTHS, HalfWidths
from core.tables.leaf_sets import LeafSet
from core.unit_types import Millimetre
from core.verdict import Acceptance, Check, Verdict

FLAT_UNTIL_ASKED = HeadFace()
PRACTICE_RULE = HeightRule()
MAY_BE_UP = ("not-down", "tap-and-measure")


@dataclass(frozen=True, slots=True, kw_only=True)
class QuickCheck:
    """What was read and what is known; everything but the height may be missing.

    Parameters
    ----------
    height
        Height with its spread.
    go, no_go
        Leaves the height was read with, where it was.
    gasket
        Sheet on the engine now, or the one asked about.
    wire, groove_width, groove_depth
        Sizes with their limits of error.
    shelf
        Sheets to choose from.
    closer
        Whether a leaf is wanted although nothing hangs on it, to narrow the height.
    """

    height: Height
    leaf_set: LeafSet
    go: Stack | None = None
    no_go: Stack | None = None
    gasket: Sheet | None = None
    wire: Measured | None = None
    groove_width: Measured | None = None
    groove_depth: Measured | None = None
    shelf: tuple[Sheet, ...] = ()
    face: HeadFace = FLAT_UNTIL_ASKED
    rule: HeightRule = PRACTICE_RULE
    half_widths: HalfWidths = ASSUMED_HALF_WIDTHS
    closer: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """Everything a quick check tells.

    Parameters
    ----------
    gasket
        The sheet on now under this height.
    seat
        What a wire on the floor would read; none while wire or groove is not known.
    next_leaf
        None when one outcome is left, or with a receiver in the head.
    """

    asked: QuickCheck
    checks: tuple[Check, ...]
    gasket: ShelfRow | None
    seat: Seat | None
    shelf: tuple[ShelfRow, ...]
    suggestion: Suggestion
    next_leaf: NextLeaf | None


def answer(asked: QuickCheck) -> Answer:
    """Judge a quick check; what cannot be checked with what is known is left out.

    Source
    ------
    As each check says.
    """
    seated, on_now = _seat(asked), _on_now(asked)
    rows = shelf_rows(
        asked.height, asked.shelf, asked.face, asked.rule, asked.half_widths, asked.gasket
    )
    return Answer(
        asked=asked,
        checks=(
            *_sheet_checks(asked, on_now),
            *_fit_checks(asked),
            *((seated.check,) if seated else ()),
        ),
        gasket=on_now,
        seat=seated,
        shelf=rows,
        suggestion=suggest(rows, _situation(asked, seated)),
        next_leaf=_next_leaf(asked),
    )


def _on_now(asked: QuickCheck) -> ShelfRow | None:
    if asked.gasket is None:
        return None
    return shelf_row(asked.height, asked.gasket, asked.face, asked.rule, asked.half_widths)


def _sheet_checks(asked: QuickCheck, on_now: ShelfRow | None) -> tuple[Check, ...]:
    if on_now is None:
        return ()
    checks = on_now.height_check, on_now.bite_check
    if asked.face.face is Face.RECEIVER:
        return tuple(_undecided(check) for check in checks)
    return checks


def _undecided(check: Check) -> Check:
    """With a receiver the trade does not agree on which height counts."""
    return replace(check, verdict=Verdict.UNDECIDED, word="undecided", probability=None)


def _fit_checks(asked: QuickCheck) -> tuple[Check, ...]:
    wire, width, depth = asked.wire, asked.groove_width, asked.groove_depth
    acceptance: Acceptance = asked.rule.acceptance
    checks = []
    if wire and width:
        checks.append(interference_check(wire, width, acceptance=acceptance))
    if wire and depth:
        checks.append(held_check(wire, depth, acceptance))
    return tuple(checks)


def _seat(asked: QuickCheck) -> Seat | None:
    wire, width, depth = asked.wire, asked.groove_width, asked.groove_depth
    return seat(asked.height, wire, width, depth) if wire and width and depth else None


def _situation(asked: QuickCheck, seated: Seat | None) -> Situation:
    return Situation(
        wire=standing(asked.height, asked.face, asked.half_widths.print_depth),
        face=asked.face.face,
        rule=asked.rule,
        on_now=asked.gasket,
        may_be_up=seated.check.word in MAY_BE_UP if seated else None,
    )


def _next_leaf(asked: QuickCheck) -> NextLeaf | None:
    question = _question(asked)
    if asked.face.face is not Face.RECEIVER:
        deciding = deciding_leaf(question, asked.leaf_set)
        if deciding or not asked.closer:
            return deciding
    return _closer_leaf(asked, question) if asked.closer else None


def _closer_leaf(asked: QuickCheck, question: Question) -> NextLeaf | None:
    bound = asked.height.bound
    if bound is Bound.BOTH:
        return halving_leaf(question, asked.leaf_set)
    return neighbouring_leaf(question, asked.leaf_set, thicker=bound is Bound.LOWER)


def _question(asked: QuickCheck) -> Question:
    """The bracket is the leaves' own marks, or the range of a closer reading inside them."""
    low, high = asked.height.low or 0.0, asked.height.high or _beyond(asked)
    return Question(
        low=max(low, asked.go.marked) if asked.go else low,
        high=min(high, asked.no_go.marked) if asked.no_go else high,
        shelf=asked.shelf,
        on_now=asked.gasket,
        rule=asked.rule,
        print_depth=asked.face.depth if asked.face.face is Face.PRINTED else 0.0,
    )


def _beyond(asked: QuickCheck) -> Millimetre:
    """Where a height that is known from below only is taken to end: past every limit."""
    sheets = (*asked.shelf, *((asked.gasket,) if asked.gasket else ()))
    thickest = max((sheet.thickness for sheet in sheets), default=0.0)
    past = asked.rule.practice.borderline_share * thickest + asked.face.depth
    return max(past, asked.height.value) + max(asked.leaf_set.leaves)
