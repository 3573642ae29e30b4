"""Choosing the sheet: every window, where they overlap, and a row for every sheet."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations_with_replacement

from core.calc.engine import Engine
from core.calc.gasket import SURE, Sheet
from core.calc.overlap import Conflict, Overlap, conflict, overlap
from core.calc.swap import Fit, SwapCard, card_between, worst_fit
from core.calc.windows import (
    End,
    LeftOut,
    Window,
    sheet_probability,
    windows,
)
from core.texts.length import Length
from core.texts.sentence import Sentence
from core.unit_types import Millimetre, Number
from core.verdict import TIE, Verdict, judge

HEIGHT_PARTS = frozenset({"height-to-gasket", "bite"})
SEVERITY = (Verdict.PASS, Verdict.UNDECIDED, Verdict.FAIL)
CLEARANCE_PARTS = frozenset({"piston-to-head", "intake-valve", "exhaust-valve"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """A sheet of the shelf, or two of them taken as one.

    Parameters
    ----------
    sheet
        What the engine sees.
    parts
        The sheets that make it.
    """

    sheet: Sheet
    parts: tuple[Sheet, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PartVerdict:
    """What one part of the engine says to one sheet.

    Parameters
    ----------
    margin
        Sheet inside its window by so much; negative, outside [mm].
    probability
        Probability that the sheet is on the good side of the end that decides [1].
    """

    part: str
    verdict: Verdict
    margin: Millimetre
    probability: Number
    decided_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetRow:
    """One sheet against every window.

    Parameters
    ----------
    verdict
        The worst of its parts; a part that is left out does not count, but without a wire height
        nothing is decided.
    fit
        Ring that it suits least; None without wire heights.
    parts
        Verdict of each part that could be calculated.
    card
        What changes from the sheet on now; None while that is not known.
    """

    candidate: Candidate
    verdict: Verdict
    fit: Fit | None
    parts: tuple[PartVerdict, ...]
    card: SwapCard | None

    @property
    def excluded_by(self) -> tuple[str, ...]:
        """Parts that do not allow the sheet."""
        return tuple(each.part for each in self.parts if each.verdict is not Verdict.PASS)

    @property
    def is_sure(self) -> bool:
        """Whether every part is at least 95 % sure."""
        return all(each.probability >= SURE for each in self.parts)


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """Everything that the choice of a sheet rests on; a chart is drawn from it as it is.

    Parameters
    ----------
    windows
        Window of each part, in a fixed order.
    left_out
        Parts that lack a number or cannot be solved.
    overlap
        Where all windows overlap; None when two exclude each other.
    conflict
        The two, and what would open a window; None while there is an overlap.
    rows
        Every sheet, thinnest first.
    run
        Thinnest sheet that every window allows; none that brings the head down while a clearance
        is not known.
    sure
        Thinnest of these of which every part is 95 % sure.
    unchecked
        A thinner sheet that would do once clearances are checked, where nothing else fits.
    span
        Thicknesses that a chart shows [mm].
    """

    windows: tuple[Window, ...]
    left_out: tuple[LeftOut, ...]
    overlap: Overlap | None
    conflict: Conflict | None
    rows: tuple[SheetRow, ...]
    run: SheetRow | None
    sure: SheetRow | None
    unchecked: SheetRow | None
    span: tuple[Millimetre, Millimetre]


def candidates(shelf: Sequence[Sheet], *, pairs: bool) -> tuple[Candidate, ...]:
    """Sheets of the shelf, and pairs of them where the user runs two as one; thinnest first.

    A pair as thick as a single sheet is not offered.

    Source
    ------
    Errors of two sheets are independent (JCGM 100:2008, 5.1.2). That two sheets bed like one is
    the user's word, *common practice, no source*.
    """
    single = [Candidate(sheet=sheet, parts=(sheet,)) for sheet in shelf]
    taken = [sheet.thickness for sheet in shelf]
    double = []
    for two in combinations_with_replacement(shelf, 2) if pairs else ():
        both = _as_one(two)
        if all(abs(both.thickness - each) > TIE for each in taken):
            taken.append(both.thickness)
            double.append(Candidate(sheet=both, parts=two))
    return tuple(sorted((*single, *double), key=lambda each: each.sheet.thickness))


def _as_one(two: tuple[Sheet, Sheet]) -> Sheet:
    return Sheet(
        thickness=sum(each.thickness for each in two),
        half_width=math.hypot(*(each.half_width for each in two)),
    )


def choose(engine: Engine, shelf: Sequence[Sheet], *, pairs: bool = False) -> Choice:
    """Judge every sheet against every window.

    Parameters
    ----------
    shelf
        Sheets to choose from.
    pairs
        Whether two sheets may be run as one.

    Source
    ------
    As each window says; verdicts after JCGM 106:2012, clauses 7 and 8.
    """
    found, left_out = windows(engine)
    fit_now = None if engine.sheet_on is None else worst_fit(engine, engine.sheet_on)
    rows = tuple(_row(engine, found, each, fit_now) for each in candidates(shelf, pairs=pairs))
    fitting = [row for row in rows if row.verdict is Verdict.PASS]
    first = [row for row in fitting if _may_come_first(engine, row, left_out)]
    run = _simplest(first)
    return Choice(
        windows=found,
        left_out=left_out,
        overlap=overlap(found),
        conflict=conflict(engine, found),
        rows=rows,
        run=run,
        sure=_simplest(row for row in first if row.is_sure),
        unchecked=fitting[-1] if fitting and run is None else None,
        span=_span(found, shelf),
    )


def _row(
    engine: Engine, found: Sequence[Window], candidate: Candidate, fit_now: Fit | None
) -> SheetRow:
    sheet = candidate.sheet
    fit = worst_fit(engine, sheet)
    parts = tuple(_part(window, sheet) for window in found)
    verdicts = [each.verdict for each in parts if each.part not in HEIGHT_PARTS]
    verdicts.append(Verdict.UNDECIDED if fit is None else fit.verdict)
    now = engine.sheet_on
    return SheetRow(
        candidate=candidate,
        verdict=_worst(verdicts),
        fit=fit,
        parts=parts,
        card=None if now is None else card_between(engine, now, sheet, (fit_now, fit)),
    )


def _worst(verdicts: Sequence[Verdict]) -> Verdict:
    return max(verdicts, key=SEVERITY.index)


def _part(window: Window, sheet: Sheet) -> PartVerdict:
    return min((_against(window, end, sheet) for end in window.ends), key=_room)


def _room(each: PartVerdict) -> tuple[int, float]:
    return -SEVERITY.index(each.verdict), each.margin


def _against(window: Window, end: End, sheet: Sheet) -> PartVerdict:
    margin = end.side.value * (sheet.thickness - end.at)
    p = sheet_probability(end, sheet)
    return PartVerdict(
        part=window.part,
        verdict=judge(margin, p, window.acceptance),
        margin=margin,
        probability=p,
        decided_by=end.decided_by,
    )


def _may_come_first(engine: Engine, row: SheetRow, left_out: Sequence[LeftOut]) -> bool:
    """A sheet that brings the head down waits until piston and valve clearance are known."""
    now = engine.sheet_on
    is_thinner = now is not None and row.candidate.sheet.thickness < now.thickness - TIE
    return not (is_thinner and any(each.part in CLEARANCE_PARTS for each in left_out))


def _simplest(rows: Iterable[SheetRow]) -> SheetRow | None:
    """Thinnest single sheet, or else the thinnest pair."""
    return min(
        rows,
        key=lambda row: (len(row.candidate.parts), row.candidate.sheet.thickness),
        default=None,
    )


def _span(found: Sequence[Window], shelf: Sequence[Sheet]) -> tuple[Millimetre, Millimetre]:
    """From the thinnest to the thickest mark of the chart, with room beside them."""
    marks = [*_ends(found), *(sheet.thickness for sheet in shelf)]
    if not marks:
        return 0.0, 0.0
    low, high = max(0.0, min(marks)), max(marks)
    room = 0.1 * (high - low)
    return max(0.0, low - room), high + room


def _ends(found: Sequence[Window]) -> Iterator[Millimetre]:
    for window in found:
        for end in window.ends:
            yield from (end.sure, end.out)


def reasons(choice: Choice) -> tuple[Sentence, ...]:
    """What to do, in sentences: the sheet to run, or what excludes it and what would open it."""
    return tuple(_reasons(choice))


def _reasons(choice: Choice) -> Iterator[Sentence]:
    if choice.run is not None:
        yield Sentence("windows.run", {"sheet": Length(choice.run.candidate.sheet.thickness)})
        if choice.run.card is not None:
            yield choice.run.card.head
    elif choice.unchecked is not None:
        thickness = Length(choice.unchecked.candidate.sheet.thickness)
        yield Sentence("windows.unchecked", {"sheet": thickness})
    elif choice.conflict is not None:
        yield choice.conflict.sentence
        yield from (change.sentence for change in choice.conflict.changes)
    elif choice.overlap is not None:
        yield _no_sheet(choice.overlap)


def _no_sheet(found: Overlap) -> Sentence:
    values: dict[str, object] = {
        name: Length(bound.end.allowed)
        for name, bound in (("low", found.low), ("high", found.high))
        if bound is not None
    }
    kinds = {("low", "high"): "between", ("low",): "from", ("high",): "up_to", (): "nothing"}
    return Sentence(f"windows.none_on_shelf.{kinds[tuple(values)]}", values)
