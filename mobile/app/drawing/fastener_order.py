"""The fasteners of one head in the order they are tightened, over the bores."""

from collections.abc import Sequence
from dataclasses import dataclass

from core.calc.fastener_layout import HeadPattern, Place
from core.unit_types import Millimetre
from mobile.app.drawing.shapes import Disc, Label, Shape

LARGEST = 17.0
BORE_SHARE = 0.45
"""Radius that a bore is drawn with, against the spacing."""
TALLEST = 0.8
"""Most height against width."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderPicture:
    """Shapes in drawing order.

    Parameters
    ----------
    height
        Height that the picture takes [px].
    scale
        Pixels for a millimetre.
    radius
        Radius of a fastener [px].
    """

    height: float
    scale: float
    radius: float
    shapes: tuple[Shape, ...]


def draw_order(
    pattern: HeadPattern, order: Sequence[int], done: int, width: float, size: float
) -> OrderPicture:
    """Draw the head across `width` [px].

    Parameters
    ----------
    order
        Fasteners as indices, first to last.
    done
        How many of them are tightened in this step; the next one is marked.
    size
        Text size [px].
    """
    frame = _frame(pattern, width)
    spacing = _closest(pattern.fasteners)
    radius = min(LARGEST, 0.45 * spacing * frame.scale)
    bores = [
        Disc(role="line", x=frame.x(b), y=frame.y(b), radius=frame.bore * frame.scale, open=True)
        for b in pattern.bores
    ]
    marks = [
        shape
        for turn, index in enumerate(order)
        for shape in _fastener(frame, pattern.fasteners[index], turn, done, radius, size)
    ]
    return OrderPicture(
        height=frame.height, scale=frame.scale, radius=radius, shapes=(*bores, *marks)
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    """From places on the deck to pixels; up on the deck is up on the picture."""

    scale: float
    left: Millimetre
    top: Millimetre
    margin: float
    height: float
    bore: Millimetre

    def x(self, place: Place) -> float:
        return self.margin + (place.x - self.left) * self.scale

    def y(self, place: Place) -> float:
        return self.margin + (self.top - place.y) * self.scale


def _frame(pattern: HeadPattern, width: float) -> _Frame:
    bore = BORE_SHARE * _closest(pattern.bores)
    xs = [each.x for each in pattern.fasteners]
    xs += [each.x + side * bore for each in pattern.bores for side in (-1, 1)]
    ys = [each.y for each in pattern.fasteners] + [-bore, bore]
    margin = LARGEST + 3.0
    across, up = max(xs) - min(xs), max(ys) - min(ys)
    scale = min((width - 2 * margin) / across, (TALLEST * width - 2 * margin) / up)
    margin_x = 0.5 * (width - across * scale)
    return _Frame(
        scale=scale,
        left=min(xs) - (margin_x - margin) / scale,
        top=max(ys),
        margin=margin,
        height=up * scale + 2 * margin,
        bore=bore,
    )


def _closest(places: Sequence[Place]) -> Millimetre:
    """Least distance between two places; a usual bore spacing where there is only one."""
    gaps = [
        ((a.x - b.x) ** 2 + (a.y - b.y) ** 2) ** 0.5
        for i, a in enumerate(places)
        for b in places[i + 1 :]
    ]
    return min(gaps, default=ALONE)


ALONE: Millimetre = 110.0


def _fastener(
    frame: _Frame, place: Place, turn: int, done: int, radius: float, size: float
) -> tuple[Shape, Shape]:
    """One fastener with its number: done, the next one, or still to come."""
    state = "passed" if turn < done else "copper" if turn == done else "key"
    ink = "ink" if state == "key" else "ground" if state == "passed" else "on_copper"
    x, y = frame.x(place), frame.y(place)
    shown = min(size, 1.1 * radius)
    return (
        Disc(role=state, x=x, y=y, radius=radius),
        Label(role=ink, x=x, y=y - 0.6 * shown, text=str(turn + 1), size=shown, anchor=0.5),
    )
