"""Which sheet to run, what goes with it, and what to do when none fits."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from core.calc.gasket import Face, HeightRule, Sheet, Standing
from core.calc.height import Bound
from core.calc.shelf import ShelfRow, is_thinner
from core.texts.length import Length
from core.texts.sentence import Sentence
from core.texts.share import Share
from core.uncertain import coverage_factor, rectangular
from core.unit_types import Millimetre
from core.verdict import TIE, Rule, Verdict


@dataclass(frozen=True, slots=True, kw_only=True)
class Suggestion:
    """The sheet to run.

    Parameters
    ----------
    run
        Thinnest sheet whose verdict is pass and whose bite does not fail; never thinner than the
        sheet on now, whose clearances are not known to allow it.
    sure
        Thinnest of these at the confidence asked for, 95 % unless the user says otherwise.
    thinner
        A thinner sheet that would do once piston and valve clearance are checked, where nothing
        else fits.
    because
        The reasons and what the change brings with it.
    """

    run: Sheet | None
    sure: Sheet | None
    thinner: Sheet | None
    because: tuple[Sentence, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """What a choice depends on besides the judged shelf.

    Parameters
    ----------
    wire
        How far the wire stands into a sheet.
    on_now
        Sheet on the engine now.
    may_be_up
        Whether the wire may stand off the floor of its groove; None where wire or groove is not
        known.
    """

    wire: Standing
    face: Face
    rule: HeightRule
    on_now: Sheet | None
    may_be_up: bool | None


def suggest(rows: Sequence[ShelfRow], situation: Situation) -> Suggestion:
    """Choose from the judged shelf, thinnest sheet first.

    Source
    ------
    *common practice, no source*: the thinnest sheet that takes the height, and no thinner sheet
    than the one on now before piston and valve clearance are checked.
    """
    fitting = [row for row in rows if fits(row)]
    first = [row for row in fitting if not is_thinner(row.sheet, situation.on_now)]
    if not first:
        thinner = fitting[-1] if fitting else None
        return Suggestion(
            run=None,
            sure=None,
            thinner=thinner.sheet if thinner else None,
            because=tuple(_nothing(rows, situation, thinner)),
        )
    sure = next((row for row in first if row.word == "run"), None)
    return Suggestion(
        run=first[0].sheet,
        sure=sure.sheet if sure else None,
        thinner=None,
        because=tuple(_chosen(first[0], sure, situation)),
    )


def fits(row: ShelfRow) -> bool:
    """Whether a sheet may be run."""
    return row.verdict is Verdict.PASS and row.bite_check.verdict is not Verdict.FAIL


def _chosen(row: ShelfRow, sure: ShelfRow | None, situation: Situation) -> Iterator[Sentence]:
    if situation.may_be_up:
        yield Sentence("suggest.tap")
    yield row.because
    if row.bite_check.verdict is Verdict.UNDECIDED:
        yield Sentence("suggest.bite_open", {"least": Length(row.least)})
    if row.head:
        yield row.head
        yield Sentence("suggest.rises")
    confidence = Share(situation.rule.acceptance.confidence)
    if sure is None:
        yield Sentence("suggest.none_sure", {"confidence": confidence})
    elif sure.sheet != row.sheet:
        saved = Length(sure.sheet.thickness - row.sheet.thickness)
        yield Sentence(
            "suggest.sure",
            {"sheet": Length(sure.sheet.thickness), "saved": saved, "confidence": confidence},
        )


def _nothing(
    rows: Sequence[ShelfRow], situation: Situation, thinner: ShelfRow | None
) -> Iterator[Sentence]:
    """Why no sheet is suggested, and what would help."""
    open_rows = [row for row in rows if row.verdict is Verdict.UNDECIDED]
    too_high = bool(rows) and all(row.share > row.height_check.limit for row in rows)
    if situation.face is Face.RECEIVER:
        yield Sentence("suggest.receiver")
    elif thinner is not None:
        yield Sentence("suggest.only_thinner", {"sheet": Length(thinner.sheet.thickness)})
        yield from filter(None, (thinner.head,))
    elif situation.wire.bound is not Bound.BOTH:
        yield Sentence("suggest.one_side" if open_rows or not rows else "suggest.none_takes")
    elif too_high and situation.may_be_up:
        yield Sentence("suggest.tap")
    elif open_rows:
        yield Sentence("suggest.open", {"sheet": Length(open_rows[-1].sheet.thickness)})
        yield from _thickness_that_would("suggest.fits", rows, situation)
    else:
        key = "suggest.would" if rows else "suggest.fits"
        yield from _thickness_that_would(key, rows, situation)
        if too_high and situation.may_be_up is None:
            yield Sentence("suggest.if_up")
        yield from _change(rows, situation)


def _thickness_that_would(
    key: str, rows: Sequence[ShelfRow], situation: Situation
) -> Iterator[Sentence]:
    wire, practice, on_now = situation.wire, situation.rule.practice, situation.on_now
    if wire.value < practice.bite_height - TIE:
        yield Sentence("suggest.too_low_for_any", {"least": Length(practice.bite_height)})
        return
    guard = _guard(rows, situation)
    thinnest = (wire.value + guard) / practice.largest_share
    thickest = (wire.value - guard) / practice.bite_share
    if thinnest > thickest:
        yield Sentence("suggest.too_vague")
        return
    yield Sentence(key, {"low": Length(thinnest), "high": Length(thickest)})
    if on_now is not None and thickest < on_now.thickness - TIE:
        yield Sentence("suggest.down_at_least", {"move": Length(on_now.thickness - thickest)})


def _guard(rows: Sequence[ShelfRow], situation: Situation) -> Millimetre:
    """How far a height must stay off a limit; nothing under the plain rule."""
    wire, acceptance = situation.wire, situation.rule.acceptance
    if acceptance.rule is Rule.PLAIN:
        return 0.0
    sheet_error = max((row.sheet.half_width for row in rows), default=0.0)
    parts = (wire.u, situation.rule.practice.largest_share * rectangular(sheet_error))
    factor = coverage_factor(2.0 * acceptance.confidence - 1.0, wire.dof)
    return factor * math.hypot(*parts)


def _change(rows: Sequence[ShelfRow], situation: Situation) -> Iterator[Sentence]:
    """By how much the groove or the wire would have to change for the shelf as it is."""
    able = [row for row in rows if row.takes_any]
    if rows and not able:
        yield Sentence("suggest.too_thin", {"least": Length(rows[-1].least)})
    if not able:
        return
    height, guard = situation.wire.value, _guard(rows, situation)
    too_high = min(height + guard - row.largest for row in able)
    too_low = min(row.least + guard - height for row in able)
    if too_high > TIE:
        yield Sentence("suggest.deeper", _by(too_high))
    elif too_low > TIE:
        yield Sentence("suggest.shallower", _by(too_low))


def _by(much: Millimetre) -> dict[str, object]:
    return {"much": Length(much)}
