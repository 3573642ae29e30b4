"""Which thicknesses each part of an engine allows: bars over one axis, sheets as marks."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from core.calc.windows import End
from core.unit_types import Millimetre
from mobile.app.drawing.shapes import Disc, Label, Line, Polygon, Shape

SIDES = 10.0
BAR = 15.0
GAP = 7.0
NOTCH = 3.0
SIGN = 5.0
LINE = 1.35
"""Height of a line of words, against their size."""
LETTER = 0.58
"""Width of a letter, against its size: a figure's."""
FADES = (0.75, 0.5, 0.3, 0.15)
"""How strong each strip of an uncertain end is, from its sure side outwards."""
LABEL_ROWS = 3
FIRST = ("run", "fits", "open", "out")
"""Whose label is placed first where there is no room for all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """What one part allows; an end that is None is open."""

    name: str
    low: End | None
    high: End | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """One sheet.

    Parameters
    ----------
    at
        Its thickness [mm].
    standing
        ``run``, ``fits``, ``open`` or ``out``.
    on_now
        Whether it is the sheet on now.
    tried
        Whether it is the one looked at.
    """

    at: Millimetre
    label: str
    standing: str
    on_now: bool = False
    tried: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class WindowChart:
    """What the chart shows.

    Parameters
    ----------
    low, high
        Ends of the overlap, or of the gap between the two that exclude each other [mm].
    clash
        Whether it is a gap.
    told
        The overlap or the gap in words.
    span
        Thicknesses from edge to edge [mm].
    """

    bars: tuple[Bar, ...]
    marks: tuple[Mark, ...]
    low: Millimetre | None
    high: Millimetre | None
    clash: bool
    told: str
    span: tuple[Millimetre, Millimetre]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartPicture:
    """Shapes in drawing order, the words over them, and the height they need [px].

    Parameters
    ----------
    told
        The overlap or the gap in words; None where nothing limits the sheet.
    labels
        Names of the bars and thicknesses of the sheets.
    """

    height: float
    shapes: tuple[Shape, ...]
    told: Label | None
    labels: tuple[Label, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Pen:
    """From thickness and row to pixels."""

    span: tuple[Millimetre, Millimetre]
    width: float
    size: float
    rows: int

    def x(self, thickness: Millimetre | None, otherwise: float) -> float:
        """Where a thickness lies, kept inside the picture."""
        if thickness is None:
            return otherwise
        low, high = self.span
        part = (thickness - low) / max(high - low, 1e-9)
        return min(max(SIDES + part * (self.width - 2 * SIDES), 0.0), self.width)

    @property
    def line(self) -> float:
        return LINE * self.size

    def top(self, row: int) -> float:
        """Top of a row's bar."""
        return self.line + 4.0 + row * (self.line + BAR + GAP) + self.line

    @property
    def axis(self) -> float:
        return self.line + 4.0 + self.rows * (self.line + BAR + GAP)


def draw_windows(chart: WindowChart, width: float, size: float) -> ChartPicture:
    """Draw in `width` with words of `size` [px]; as high as the bars need."""
    pen = _Pen(span=chart.span, width=width, size=size, rows=len(chart.bars))
    return ChartPicture(
        height=pen.axis + 3 * SIGN + LABEL_ROWS * pen.line + 4.0,
        shapes=(
            *_overlap(pen, chart),
            *_bars(pen, chart.bars),
            Line(role="ink", x1=0.0, y1=pen.axis, x2=width, y2=pen.axis, width=1.5),
            *_marks(pen, chart.marks),
        ),
        told=_told(pen, chart),
        labels=(
            *(_name(pen, row, bar) for row, bar in enumerate(chart.bars)),
            *_labels(pen, chart.marks),
        ),
    )


def _box(
    role: str, left: float, top: float, right: float, bottom: float, strength: float = 1.0
) -> Polygon:
    points = ((left, top), (right, top), (right, bottom), (left, bottom))
    return Polygon(role=role, points=points, strength=strength)


def _overlap(pen: _Pen, chart: WindowChart) -> Iterator[Shape]:
    """What all allow, shaded from top to axis; or the gap between the two."""
    left, right = pen.x(chart.low, 0.0), pen.x(chart.high, pen.width)
    role = "failed" if chart.clash else "passed"
    if chart.told:
        yield _box(role, left, pen.line + 2.0, max(right, left + 2.0), pen.axis, 0.2)
        for x, end in ((left, chart.low), (right, chart.high)):
            if end is not None:
                yield Line(
                    role=role, x1=x, y1=pen.line + 2.0, x2=x, y2=pen.axis, width=2.0
                )


def _told(pen: _Pen, chart: WindowChart) -> Label | None:
    if not chart.told:
        return None
    middle = 0.5 * (pen.x(chart.low, 0.0) + pen.x(chart.high, pen.width))
    return _inside(pen, "failed" if chart.clash else "passed", middle, 0.0, chart.told)


def _inside(pen: _Pen, role: str, x: float, y: float, told: str) -> Label:
    """Words centred at `x`, moved so that they stay in the picture."""
    half = 0.5 * _words(pen, told)
    middle = min(max(x, half), max(pen.width - half, half))
    return Label(role=role, x=middle, y=y, text=told, size=pen.size, anchor=0.5)


def _words(pen: _Pen, told: str) -> float:
    return LETTER * pen.size * len(told)


def _bars(pen: _Pen, bars: Sequence[Bar]) -> Iterator[Polygon]:
    """What is alike comes together, so that it can be painted in one go."""
    rows = [(pen.top(row), bar) for row, bar in enumerate(bars)]
    ends = [(top, end) for top, bar in rows for end in (bar.low, bar.high) if end is not None]
    for top, bar in rows:
        yield from _sure(pen, top, bar)
    for strip in range(len(FADES)):
        for top, end in ends:
            yield from _fade(pen, top, end, strip)
    for top, end in ends:
        if pen.span[0] <= end.allowed <= pen.span[1]:
            at = pen.x(end.allowed, 0.0)
            yield _box("ink", at - 0.5 * NOTCH, top - 2.0, at + 0.5 * NOTCH, top + BAR + 2.0)


def _sure(pen: _Pen, top: float, bar: Bar) -> Iterator[Polygon]:
    """Where a sheet is sure to fit."""
    left = pen.x(None if bar.low is None else bar.low.sure, 0.0)
    right = pen.x(None if bar.high is None else bar.high.sure, pen.width)
    if right > left:
        yield _box("copper", left, top, right, top + BAR)


def _fade(pen: _Pen, top: float, end: End, strip: int) -> Iterator[Polygon]:
    """One strip of the way from where a sheet is sure to fit to where it is sure not to."""
    inner, outer = (
        pen.x(end.sure + part / len(FADES) * (end.out - end.sure), 0.0)
        for part in (strip, strip + 1)
    )
    if inner != outer:
        left, right = min(inner, outer), max(inner, outer)
        yield _box("copper", left, top, right, top + BAR, FADES[strip])


def _name(pen: _Pen, row: int, bar: Bar) -> Label:
    return Label(role="ink", x=2.0, y=pen.top(row) - pen.line, text=bar.name, size=pen.size)


ROLES = {"run": "passed", "fits": "passed", "open": "undecided", "out": "failed"}


def _marks(pen: _Pen, marks: Sequence[Mark]) -> Iterator[Shape]:
    """A line through all bars a sheet, what is alike together; its sign under the axis."""
    lines = [_line(pen, mark) for mark in marks]
    yield from sorted(lines, key=lambda line: (line.width, line.role))
    signs = [sign for mark in marks for sign in _sign(pen, mark)]
    yield from sorted(signs, key=lambda sign: (type(sign).__name__, sign.role))


def _line(pen: _Pen, mark: Mark) -> Line:
    x = pen.x(mark.at, 0.0)
    strong = mark.on_now or mark.tried or mark.standing == "run"
    return Line(
        role="ink" if mark.on_now or mark.tried else ROLES[mark.standing],
        x1=x,
        y1=pen.line + 2.0,
        x2=x,
        y2=pen.axis,
        width=3.0 if strong else 1.0,
    )


def _sign(pen: _Pen, mark: Mark) -> Iterator[Disc | Line]:
    """Full where it fits, a ring where it is open, a cross where it does not."""
    role, x, y = ROLES[mark.standing], pen.x(mark.at, 0.0), pen.axis + SIGN + 2.0
    if mark.standing != "out":
        yield Disc(role=role, x=x, y=y, radius=SIGN, open=mark.standing == "open")
        return
    for way in (-1.0, 1.0):
        yield Line(
            role=role, x1=x - SIGN, y1=y - way * SIGN, x2=x + SIGN, y2=y + way * SIGN, width=2.5
        )


def _labels(pen: _Pen, marks: Sequence[Mark]) -> Iterator[Label]:
    """Thicknesses under their marks in rows, those that matter first, none over another."""
    taken: list[list[tuple[float, float]]] = [[] for _ in range(LABEL_ROWS)]
    for mark in sorted(marks, key=_first):
        role = "ink" if mark.on_now or mark.tried else ROLES[mark.standing]
        label = _inside(pen, role, pen.x(mark.at, 0.0), 0.0, mark.label)
        half = 0.5 * _words(pen, mark.label) + 2.0
        for row, places in enumerate(taken):
            if all(label.x + half <= left or label.x - half >= right for left, right in places):
                places.append((label.x - half, label.x + half))
                y = pen.axis + 2 * SIGN + 4.0 + row * pen.line
                yield Label(
                    role=role, x=label.x, y=y, text=mark.label, size=pen.size, anchor=0.5
                )
                break


def _first(mark: Mark) -> tuple[bool, bool, int]:
    return not mark.on_now, not mark.tried, FIRST.index(mark.standing)
