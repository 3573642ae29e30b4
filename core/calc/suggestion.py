"""Which sheet to run, what goes with it, and what to do when none fits."""

from collections.abc import Sequence
from dataclasses import dataclass

from core.calc.gasket import HeightRule, Sheet, Standing
from core.calc.height import Bound
from core.calc.shelf import ShelfRow
from core.texts.length import Length
from core.texts.sentence import Sentence
from core.unit_types import Millimetre
from core.verdict import TIE, Verdict


@dataclass(frozen=True, slots=True, kw_only=True)
class Suggestion:
    """The sheet to run.

    Parameters
    ----------
    run
        Thinnest sheet whose verdict is pass and whose bite does not fail; never thinner than the
        sheet on now, whose clearances are not known to allow it.
    sure
        Thinnest of these at 95 %.
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


def suggest(
    rows: Sequence[ShelfRow],
    wire: Standing,
    rule: HeightRule,
    *,
    on_now: Sheet | None,
    down: bool,
) -> Suggestion:
    """Choose from the judged shelf.

    Parameters
    ----------
    rows
        The shelf, thinnest sheet first.
    on_now
        Sheet on the engine now.
    down
        Whether the wire is known to be on the floor of its groove, as far as was measured.
    """
    fitting = [row for row in rows if fits(row)]
    first = [row for row in fitting if not is_thinner(row.sheet, on_now)]
    run = first[0] if first else None
    sure = next((row.sheet for row in first if row.word == "run"), None)
    thinner = fitting[-1].sheet if fitting and not first else None
    if run is None:
        because = _nothing(rows, wire, rule, on_now, thinner, down)
    else:
        because = _chosen(run, sure, on_now)
    return Suggestion(run=run.sheet if run else None, sure=sure, thinner=thinner, because=because)


def fits(row: ShelfRow) -> bool:
    """Whether a sheet may be run."""
    return row.verdict is Verdict.PASS and row.bite_check.verdict is not Verdict.FAIL


def is_thinner(sheet: Sheet, on_now: Sheet | None) -> bool:
    """Whether a sheet brings the head down."""
    return on_now is not None and sheet.thickness < on_now.thickness - TIE


def _chosen(row: ShelfRow, sure: Sheet | None, on_now: Sheet | None) -> tuple[Sentence, ...]:
    sentences = [row.because, *_head_moves(row.sheet, on_now)]
    if sure is not None and sure != row.sheet:
        saved = Length(sure.thickness - row.sheet.thickness)
        sentences.append(
            Sentence("suggest.sure", {"sheet": Length(sure.thickness), "saved": saved})
        )
    return tuple(sentences)


def _head_moves(sheet: Sheet, on_now: Sheet | None) -> tuple[Sentence, ...]:
    if on_now is None or abs(sheet.thickness - on_now.thickness) <= TIE:
        return ()
    moved = sheet.thickness - on_now.thickness
    return (Sentence("suggest.up" if moved > 0 else "suggest.down", {"move": Length(abs(moved))}),)


def _nothing(
    rows: Sequence[ShelfRow],
    wire: Standing,
    rule: HeightRule,
    on_now: Sheet | None,
    thinner: Sheet | None,
    down: bool,
) -> tuple[Sentence, ...]:
    if any(row.verdict is Verdict.UNDECIDED for row in rows) and wire.bound is not Bound.BOTH:
        return (Sentence("suggest.one_side"),)
    if thinner is not None:
        return (
            Sentence("suggest.only_thinner", {"sheet": Length(thinner.thickness)}),
            *_head_moves(thinner, on_now),
        )
    if not down:
        return (Sentence("suggest.tap"),)
    if not rows:
        return (_thickness_that_would(wire, rule),)
    return (_thickness_that_would(wire, rule), *_change(rows, wire, rule))


def _thickness_that_would(wire: Standing, rule: HeightRule) -> Sentence:
    practice = rule.practice
    if wire.value < practice.bite_height - TIE:
        return Sentence("suggest.too_low_for_any", {"least": Length(practice.bite_height)})
    thinnest = wire.value / practice.largest_share
    thickest = wire.value / practice.bite_share
    return Sentence("suggest.would", {"low": Length(thinnest), "high": Length(thickest)})


def _change(rows: Sequence[ShelfRow], wire: Standing, rule: HeightRule) -> tuple[Sentence, ...]:
    """By how much the groove or the wire would have to change for the shelf as it is."""
    too_high = min(_over(row, wire, rule) for row in rows)
    if too_high > 0.0:
        return (Sentence("suggest.deeper", {"much": Length(too_high)}),)
    too_low = min(row.bite_check.limit - wire.value for row in rows)
    return (Sentence("suggest.shallower", {"much": Length(too_low)}),) if too_low > 0.0 else ()


def _over(row: ShelfRow, wire: Standing, rule: HeightRule) -> Millimetre:
    return wire.value - rule.practice.largest_share * row.sheet.thickness
