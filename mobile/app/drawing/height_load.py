"""Height of the wire against load: what a higher wire takes from the rest of the sheet."""

from dataclasses import dataclass
from itertools import pairwise

from core.calc.load_curve import LoadCurve
from core.unit_types import Millimetre, Newton
from mobile.app.drawing.load_bar import box, with_halo
from mobile.app.drawing.shapes import Disc, Label, Line, Polygon, Shape

ABOVE = 1.12
"""Load at the top, against the clamp."""
POINT = 6.0
SLACK_ROLES = ("failed", "failed", "undecided")


@dataclass(frozen=True, slots=True, kw_only=True)
class CurveLabels:
    """Words in the picture, and their size [px]."""

    today: str
    quarter: str
    slack: str
    wire: str
    body: str
    clamp: str
    low: str
    slack_low: str
    size: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CurvePicture:
    """Shapes in drawing order, and where the marks lie.

    Parameters
    ----------
    today_x, quarter_x
        Today's height and the quarter of the sheet; none without a sheet [px].
    slack_x
        Where the body goes slack by the hardest and by the softest answer, and at the low end of
        the clamp by the hardest; none where no height on the picture does it [px].
    shapes
        In drawing order.
    """

    today_x: float
    quarter_x: float | None
    slack_x: tuple[float | None, ...]
    shapes: tuple[Shape, ...]


def draw_height_load(
    curve: LoadCurve, labels: CurveLabels, width: float, height: float
) -> CurvePicture:
    """Draw into `width` × `height` [px]: sheet below, wire above, stripes between."""
    foot = 1.5 * labels.size
    pen = _Pen(
        across=width / curve.points[-1].height,
        up=(height - foot) / (ABOVE * curve.clamp),
        floor=height - foot,
    )
    slack = tuple(
        _on_picture(each, curve) for each in (*curve.slack_height, curve.slack_at_low_clamp)
    )
    return CurvePicture(
        today_x=pen.x(curve.today),
        quarter_x=None if curve.quarter is None else pen.x(curve.quarter),
        slack_x=tuple(None if each is None else pen.x(each) for each in slack),
        shapes=(
            box("wire", 0.0, pen.y(curve.clamp), width, pen.floor),
            *_body(pen, curve),
            *_clamp(pen, curve, width),
            *_marks(pen, curve, slack),
            *_words(pen, curve, labels, width, slack),
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Pen:
    """From millimetres and newtons to pixels."""

    across: float
    up: float
    floor: float

    def x(self, height: Millimetre) -> float:
        return height * self.across

    def y(self, load: Newton) -> float:
        return self.floor - load * self.up


def _on_picture(height: Millimetre | None, curve: LoadCurve) -> Millimetre | None:
    return None if height is None or height > curve.points[-1].height else height


def _body(pen: _Pen, curve: LoadCurve) -> list[Polygon]:
    """What the sheet keeps by every answer, and striped what it keeps by the softest alone."""
    sure = [(pen.x(each.height), pen.y(each.body.low)) for each in curve.points]
    floor = [(pen.x(each.height), pen.floor) for each in (curve.points[-1], curve.points[0])]
    strips = [
        Polygon(
            role="sheet",
            points=(
                (pen.x(a.height), pen.y(a.body.high)),
                (pen.x(b.height), pen.y(b.body.high)),
                (pen.x(b.height), pen.y(b.body.low)),
                (pen.x(a.height), pen.y(a.body.low)),
            ),
        )
        for a, b in list(pairwise(curve.points))[::2]
    ]
    return [*strips, Polygon(role="sheet", points=(*sure, *floor))]


def _clamp(pen: _Pen, curve: LoadCurve, width: float) -> tuple[Line, ...]:
    best, low = pen.y(curve.clamp), pen.y(curve.clamp_range.low)
    return (
        Line(role="ink", x1=0.0, y1=best, x2=width, y2=best, width=2.0),
        Line(role="on_wire", x1=0.0, y1=low, x2=width, y2=low, width=1.5, dashed=True),
        Line(role="ink", x1=0.0, y1=pen.floor, x2=width, y2=pen.floor, width=2.0),
    )


def _marks(pen: _Pen, curve: LoadCurve, slack: tuple[Millimetre | None, ...]) -> tuple[Shape, ...]:
    found: list[Shape] = [*with_halo(_upright(pen, "ink", curve.today, dashed=False))]
    if curve.quarter is not None:
        found += with_halo(_upright(pen, "failed", curve.quarter, dashed=True))
    points = [
        Disc(role=role, x=pen.x(each), y=pen.floor, radius=POINT)
        for role, each in zip(SLACK_ROLES, slack, strict=True)
        if each is not None
    ]
    return (*found, *points)


def _upright(pen: _Pen, role: str, height: Millimetre, *, dashed: bool) -> Line:
    x = pen.x(height)
    return Line(role=role, x1=x, y1=0.0, x2=x, y2=pen.floor, width=3.0, dashed=dashed)


def _words(
    pen: _Pen,
    curve: LoadCurve,
    labels: CurveLabels,
    width: float,
    slack: tuple[Millimetre | None, ...],
) -> list[Label]:
    size, line = labels.size, 1.25 * labels.size
    marks = [("on_wire", curve.today, labels.today, pen.y(curve.clamp) + 0.2 * line)]
    if curve.quarter is not None:
        marks.append(("on_wire", curve.quarter, labels.quarter, pen.y(curve.clamp) + 1.3 * line))
    below = ((slack[0], "failed", labels.slack), (slack[2], "undecided", labels.slack_low))
    told = next(((at, role, said) for at, role, said in below if at is not None), None)
    if told is not None:
        marks.append((told[1], told[0], told[2], pen.floor + 0.3 * size))
    today = pen.x(curve.today)
    found = [
        beside(role, pen.x(at), y, said, size, width, off=today if said == labels.quarter else 0.0)
        for role, at, said, y in marks
    ]
    found.append(Label(role="ink", x=2.0, y=0.0, text=labels.clamp, size=size))
    found += _areas(pen, curve, labels, width)
    return found


def _areas(pen: _Pen, curve: LoadCurve, labels: CurveLabels, width: float) -> list[Label]:
    """What each area is, where its name fits; the low end's name keeps clear of today's height."""
    size, line = labels.size, 1.25 * labels.size
    left = pen.x(curve.today) > 0.5 * width
    below_low = pen.y(curve.clamp_range.low) + 2.0
    found = [
        Label(
            role="on_wire",
            x=width - 4.0,
            y=pen.y(curve.clamp) + 2.4 * line,
            text=labels.wire,
            size=size,
            anchor=1.0,
        ),
        Label(
            role="on_sheet",
            x=4.0 if left else width - 4.0,
            y=below_low,
            text=labels.low,
            size=size,
            anchor=0.0 if left else 1.0,
        ),
    ]
    end = 4.0 + 0.65 * size * len(labels.body)
    kept = min(point.body.low for point in curve.points if pen.x(point.height) <= end)
    if kept * pen.up > 1.2 * line:
        found.append(Label(role="on_sheet", x=4.0, y=pen.floor - line, text=labels.body, size=size))
    return found


def beside(
    role: str, x: float, y: float, words: str, size: float, width: float, *, off: float
) -> Label:
    """Words beside a mark at `x`, away from the mark at `off` as far as there is room [px]."""
    long = 6.0 + 0.5 * size * len(words)
    right = x + long < width and (x >= off or x < long)
    return Label(
        role=role,
        x=x + 6.0 if right else x - 6.0,
        y=y,
        text=words,
        size=size,
        anchor=0.0 if right else 1.0,
    )
