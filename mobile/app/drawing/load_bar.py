"""Load bar of one cylinder: how wire and sheet share the clamp, beside gas and proof load."""

from dataclasses import dataclass, replace

from core.calc.clamp import CylinderLoads
from core.unit_types import Newton
from mobile.app.drawing.shapes import Label, Line, Polygon, Shape

STRIPE = 5.0
ABOVE = 0.34
"""Part of the height for the words above the bar."""
BELOW = 0.22
"""Part of the height for the range below the bar."""
SIDE = 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadBar:
    """The loads that a bar shows.

    Parameters
    ----------
    clamp, clamp_low, clamp_high
        Clamp of the cylinder and its range [N].
    wire_low, wire_high
        What the wire takes, by the softest and by the hardest answer [N].
    gas_low, gas_high
        Gas at peak, from its least to its most [N].
    proof
        Proof load of its fasteners together [N].
    scale
        Load at the right end [N].
    """

    clamp: Newton
    clamp_low: Newton
    clamp_high: Newton
    wire_low: Newton
    wire_high: Newton
    gas_low: Newton
    gas_high: Newton
    proof: Newton
    scale: Newton


def bar_of(loads: CylinderLoads, scale: Newton) -> LoadBar:
    """Bar of one cylinder, at the scale of its engine [N]."""
    return LoadBar(
        clamp=loads.clamp.value,
        clamp_low=loads.clamp_range.low,
        clamp_high=loads.clamp_range.high,
        wire_low=loads.wire.low,
        wire_high=loads.wire.high,
        gas_low=loads.gas_range.low,
        gas_high=loads.gas_range.high,
        proof=loads.proof,
        scale=max(scale, loads.gas_range.high),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class BarLabels:
    """Words in the picture, and their size [px]."""

    gas: str
    proof: str
    wire: str
    body: str
    size: float


def draw_load_bar(
    bar: LoadBar, labels: BarLabels, width: float, height: float
) -> tuple[Shape, ...]:
    """Draw into `width` × `height` [px]: wire, what the answers dispute, sheet, gas, proof."""
    pen = _Pen(scale=(width - 2.0 * SIDE) / bar.scale, top=ABOVE * height, low=(1 - BELOW) * height)
    return (
        pen.box("sheet", 0.0, bar.clamp),
        pen.box("wire", 0.0, bar.wire_low),
        *_disputed(pen, bar),
        *_range(pen, bar, height),
        *_gas(pen, bar),
        pen.upright("ink", bar.proof, 3.0),
        *_words(pen, bar, labels, width),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Pen:
    """From newtons to pixels."""

    scale: float
    top: float
    low: float

    def x(self, load: Newton) -> float:
        return SIDE + load * self.scale

    def box(self, role: str, start: Newton, end: Newton) -> Polygon:
        return box(role, self.x(start), self.top, self.x(end), self.low)

    def upright(self, role: str, load: Newton, width: float, dashed: bool = False) -> Line:
        x = self.x(load)
        return Line(
            role=role, x1=x, y1=self.top - 4.0, x2=x, y2=self.low + 4.0, width=width, dashed=dashed
        )


def box(role: str, left: float, top: float, right: float, bottom: float) -> Polygon:
    """Upright rectangle [px]."""
    return Polygon(role=role, points=((left, top), (right, top), (right, bottom), (left, bottom)))


def stripes(left: float, right: float) -> list[tuple[float, float]]:
    """Every other strip of a stretch [px]: what is neither one thing nor the other."""
    count = int((right - left) / STRIPE)
    starts = [left + STRIPE * i for i in range(0, count + 1, 2)]
    return [(start, min(start + STRIPE, right)) for start in starts if start < right]


def _disputed(pen: _Pen, bar: LoadBar) -> list[Polygon]:
    strips = stripes(pen.x(bar.wire_low), pen.x(bar.wire_high))
    return [box("wire", left, pen.top, right, pen.low) for left, right in strips]


def _range(pen: _Pen, bar: LoadBar, height: float) -> tuple[Line, ...]:
    """Whisker below the bar."""
    y = 0.5 * (pen.low + height)
    low, high = pen.x(bar.clamp_low), pen.x(bar.clamp_high)
    ends = (Line(role="ink", x1=x, y1=y - 4.0, x2=x, y2=y + 4.0, width=2.0) for x in (low, high))
    return (Line(role="ink", x1=low, y1=y, x2=high, y2=y, width=2.0), *ends)


def _gas(pen: _Pen, bar: LoadBar) -> tuple[Shape, ...]:
    best = 0.5 * (bar.gas_low + bar.gas_high)
    low, high = pen.x(bar.gas_low), pen.x(bar.gas_high)
    y = pen.top - 4.0
    return (
        Line(role="failed", x1=low, y1=y, x2=high, y2=y, width=4.0),
        *with_halo(pen.upright("failed", best, 3.0, dashed=True)),
    )


def with_halo(line: Line) -> tuple[Line, Line]:
    """A line that stands out from whatever it crosses, by day and by night."""
    under = replace(line, role="ground", width=line.width + 4.0, dashed=False)
    return under, line


def _words(pen: _Pen, bar: LoadBar, labels: BarLabels, width: float) -> list[Label]:
    """Words above and in the bar; those in it only where they fit."""
    gas_x = min(pen.x(0.5 * (bar.gas_low + bar.gas_high)), width - 0.25 * width)
    found = [Label(role="failed", x=gas_x, y=0.0, text=labels.gas, size=labels.size, anchor=0.5)]
    proof_x = pen.x(bar.proof)
    if proof_x - gas_x > (len(labels.gas) + len(labels.proof)) * 0.5 * labels.size:
        found.append(
            Label(role="ink", x=proof_x, y=0.0, text=labels.proof, size=labels.size, anchor=1.0)
        )
    inside = (
        ("on_wire", 0.0, bar.wire_low, labels.wire),
        ("on_sheet", *_clear_of_proof(bar), labels.body),
    )
    middle = 0.5 * (pen.top + pen.low) - 0.6 * labels.size
    for role, start, end, words in inside:
        left, right = pen.x(start), pen.x(end)
        if right - left > 0.65 * labels.size * len(words):
            x = 0.5 * (left + right)
            found.append(Label(role=role, x=x, y=middle, text=words, size=labels.size, anchor=0.5))
    return found


def _clear_of_proof(bar: LoadBar) -> tuple[Newton, Newton]:
    """The longer stretch of the sheet's part that the line of the proof load leaves whole."""
    cut = min(max(bar.proof, bar.wire_high), bar.clamp)
    stretches = ((bar.wire_high, cut), (cut, bar.clamp))
    return max(stretches, key=lambda stretch: stretch[1] - stretch[0])
