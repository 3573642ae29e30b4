"""From the choice of a sheet to the chart of windows: what is drawn, and how it is said."""

from collections.abc import Iterator

from core.calc.choice import Choice, SheetRow
from core.calc.windows import Side
from core.texts import text
from core.verdict import Verdict
from mobile.app.drawing.window_chart import Bar, Mark, WindowChart
from mobile.app.engine.sheet.found import Found
from mobile.app.engine.sheet.shown import left_out, mark, size, small

FAR = 1.5
"""An upper end further out than this, against all else, runs out of the picture."""
ROOM = 0.12
LEAST_SPAN = 0.25


def chart_of(found: Found, choice: Choice, picked: float | None) -> WindowChart:
    """The chart of a choice, on the axis of the engine as measured."""
    low, high = _band(choice)
    return WindowChart(
        bars=tuple(
            Bar(name=text(f"windows.name.{each.part}"), low=each.low, high=each.high)
            for each in choice.windows
        ),
        marks=tuple(_marks(found, choice, picked)),
        low=low,
        high=high,
        clash=choice.conflict is not None,
        told=_told(choice, found.basis.metric),
        span=span_of(found),
    )


def _band(choice: Choice) -> tuple[float | None, float | None]:
    """The overlap, or the gap between the two that exclude each other."""
    if choice.conflict is not None:
        thicker = choice.conflict.thicker
        thinner = max(0.0, choice.conflict.thinner.end.allowed)
        return thinner, thicker.end.allowed if thicker else thinner
    assert choice.overlap is not None
    bounds = (choice.overlap.low, choice.overlap.high)
    low, high = (None if bound is None else bound.end.allowed for bound in bounds)
    return low, high


def _told(choice: Choice, metric: bool) -> str:
    if choice.conflict is not None:
        return text("sheet.chart.clash", by=small(choice.conflict.by, metric))
    low, high = _band(choice)
    ends = {name: size(end, metric) for name, end in (("low", low), ("high", high)) if end}
    kinds = {("low", "high"): "between", ("low",): "from", ("high",): "up_to"}
    kind = kinds.get(tuple(ends))
    return text(f"sheet.chart.{kind}", **ends) if kind else ""


def _marks(found: Found, choice: Choice, picked: float | None) -> Iterator[Mark]:
    metric, on = found.basis.metric, found.as_it_is.sheet_on
    for row in choice.rows:
        thickness = row.candidate.sheet.thickness
        on_now = on is not None and thickness == on.thickness
        yield Mark(
            at=thickness,
            label=_label(thickness, metric, on_now=on_now),
            standing=standing(row, choice),
            on_now=on_now,
            tried=thickness == picked,
        )
    shelf = [row.candidate.sheet.thickness for row in choice.rows]
    if on is not None and on.thickness not in shelf:
        label = _label(on.thickness, metric, on_now=True)
        yield Mark(at=on.thickness, label=label, standing="open", on_now=True)
    if picked is not None and picked not in shelf:
        yield Mark(at=picked, label=mark(picked, metric), standing="open", tried=True)


def _label(thickness: float, metric: bool, *, on_now: bool) -> str:
    label = mark(thickness, metric)
    return text("sheet.chart.on_now", size=label) if on_now else label


def standing(row: SheetRow, choice: Choice) -> str:
    """How a sheet is marked."""
    if row.verdict is Verdict.PASS:
        return "run" if row is choice.run else "fits"
    return "open" if row.verdict is Verdict.UNDECIDED else "out"


def span_of(found: Found) -> tuple[float, float]:
    """Thicknesses from edge to edge; they stay while something is moved."""
    on = found.as_it_is.sheet_on
    ends = [end for window in found.now.windows for end in window.ends if end.allowed > 0.0]
    near = [each.thickness for each in (*found.basis.shelf, *([on] if on else []))]
    near += [end.allowed for end in ends if end.side is Side.LOW]
    most = FAR * max(near, default=1.0)
    near += [end.allowed for end in ends if end.side is Side.HIGH and end.allowed <= most]
    low, high = min(near, default=0.5), max(near, default=2.0)
    room = ROOM * max(high - low, LEAST_SPAN)
    return max(0.0, low - room), high + room


def phrase(choice: Choice, metric: bool) -> str:
    """The chart in words: every window, what lacks a number, the overlap."""
    lines = [each.sentence.said(metric=metric) for each in choice.windows]
    lines += [left_out(each) for each in choice.left_out]
    said = [text("sheet.chart.title"), *lines, _told(choice, metric)]
    return " ".join(f"{line.removesuffix('.')}." for line in said if line)
