"""Cross-section through wire, groove, deck and sheet, to scale."""

from collections.abc import Iterator
from dataclasses import dataclass

from core.unit_types import Millimetre
from mobile.app.drawing.shapes import Disc, Label, Line, Polygon, Shape

USUAL_WIRE = 1.0414
"""Diameter that an unknown wire is drawn with, dashed [mm]."""
BELOW = 1.12
"""How far the block is drawn, against the depth of the groove."""
MARGIN = 0.04
"""Part of the height left free above and below."""
PAD = 6.0
"""From the picture's edge to words [px]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """What is cut through.

    Parameters
    ----------
    height
        Wire over the deck [mm].
    low, high
        Range of the height [mm].
    wire, groove_width, groove_depth
        None where not entered [mm].
    sheet
        Thickness of the sheet shown; None without one [mm].
    limit, bite
        Largest height this sheet takes, and the least that bites [mm].
    """

    height: Millimetre
    low: Millimetre
    high: Millimetre
    wire: Millimetre | None = None
    groove_width: Millimetre | None = None
    groove_depth: Millimetre | None = None
    sheet: Millimetre | None = None
    limit: Millimetre | None = None
    bite: Millimetre | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Labels:
    """Words in the picture, and their size [px]."""

    limit: str
    bite: str
    sheet: str
    wire: str
    deck: str
    size: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """Shapes in drawing order, and the scale they were drawn to.

    Parameters
    ----------
    scale
        Pixels for a millimetre, the same across and up.
    deck_y
        Where the deck lies [px].
    wire_top_y
        Where the top of the wire lies [px].
    """

    scale: float
    deck_y: float
    wire_top_y: float
    shapes: tuple[Shape, ...]


def draw_section(section: Section, labels: Labels, width: float, height: float) -> Picture:
    """Draw to one scale that fills `width` × `height` [px]."""
    below = _below_deck(section)
    above = max(section.sheet or 0.0, section.high) * 1.05
    scale = min(height * (1 - 2 * MARGIN) / (above + below), width * 0.45 / _wire(section))
    deck_y = 0.5 * (height + (above - below) * scale)
    pen = _Pen(scale=scale, deck_y=deck_y, middle=0.5 * width, width=width)
    return Picture(
        scale=scale,
        deck_y=deck_y,
        wire_top_y=pen.y(section.height),
        shapes=(
            *_block(pen, section, height),
            *_sheet(pen, section),
            _wire_shape(pen, section),
            *_spread(pen, section),
            *_limits(pen, section),
            *_labels(pen, section, labels),
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Pen:
    """From millimetres over the deck, off the middle of the groove, to pixels."""

    scale: float
    deck_y: float
    middle: float
    width: float

    def x(self, off_middle: Millimetre) -> float:
        return self.middle + off_middle * self.scale

    def y(self, over_deck: Millimetre) -> float:
        return self.deck_y - over_deck * self.scale

    def band(self, role: str, low: Millimetre, high: Millimetre) -> Polygon:
        """Full width, between two heights over the deck."""
        return _box(role, 0.0, self.y(high), self.width, self.y(low))

    def level(self, role: str, over_deck: Millimetre, width: float, dashed: bool) -> Line:
        y = self.y(over_deck)
        return Line(role=role, x1=0.0, y1=y, x2=self.width, y2=y, width=width, dashed=dashed)


def _box(role: str, left: float, top: float, right: float, bottom: float) -> Polygon:
    return Polygon(role=role, points=((left, top), (right, top), (right, bottom), (left, bottom)))


def _wire(section: Section) -> Millimetre:
    return section.wire or USUAL_WIRE


def _groove(section: Section) -> tuple[Millimetre, Millimetre]:
    """Width and depth as drawn: a groove that is not known is drawn around the wire."""
    wire = _wire(section)
    depth = section.groove_depth or max(wire - section.height, 0.1 * wire)
    return section.groove_width or wire, depth


def _below_deck(section: Section) -> Millimetre:
    return max(_groove(section)[1], _wire(section) - section.height) * BELOW


def _block(pen: _Pen, section: Section, height: float) -> tuple[Shape, ...]:
    width, depth = _groove(section)
    left, right, floor = pen.x(-0.5 * width), pen.x(0.5 * width), pen.y(-depth)
    outline = (
        (0.0, pen.deck_y),
        (left, pen.deck_y),
        (left, floor),
        (right, floor),
        (right, pen.deck_y),
        (pen.width, pen.deck_y),
        (pen.width, height),
        (0.0, height),
    )
    return (Polygon(role="block", points=outline),)


def _sheet(pen: _Pen, section: Section) -> tuple[Shape, ...]:
    if section.sheet is None:
        return ()
    return (pen.band("sheet", 0.0, section.sheet),)


def _spread(pen: _Pen, section: Section) -> tuple[Shape, ...]:
    """Across the wire and a little beyond, with a line at both ends."""
    low, high, beyond = pen.y(section.low), pen.y(section.high), 0.75 * _wire(section)
    left, right = pen.x(-beyond), pen.x(beyond)
    ends = (Line(role="edge", x1=left, y1=y, x2=right, y2=y, width=1.5) for y in (low, high))
    return (_box("spread", left, high, right, low), *ends)


def _wire_shape(pen: _Pen, section: Section) -> Disc:
    radius = 0.5 * _wire(section)
    return Disc(
        role="wire",
        x=pen.middle,
        y=pen.y(section.height - radius),
        radius=radius * pen.scale,
        open=section.wire is None,
    )


def _limits(pen: _Pen, section: Section) -> tuple[Shape, ...]:
    lines = [pen.level("deck", 0.0, 2.0, False)]
    if section.limit is not None:
        lines.append(pen.level("limit", section.limit, 2.5, True))
    if section.bite is not None:
        lines.append(pen.level("bite", section.bite, 1.5, True))
    return tuple(lines)


def _labels(pen: _Pen, section: Section, labels: Labels) -> tuple[Shape, ...]:
    return (
        Label(role="on-block", x=PAD, y=pen.deck_y + 3.0, text=labels.deck, size=labels.size),
        _wire_label(pen, section, labels),
        *_sheet_labels(pen, section, labels),
    )


def _wire_label(pen: _Pen, section: Section, labels: Labels) -> Label:
    return Label(
        role="on-wire" if section.wire else "on-groove",
        x=pen.middle,
        y=pen.y(section.height - 0.5 * _wire(section)) - 0.5 * labels.size,
        text=labels.wire,
        size=labels.size,
        anchor=0.5,
    )


def _sheet_labels(pen: _Pen, section: Section, labels: Labels) -> Iterator[Label]:
    """The sheet at its top, the limit over its line, the bite in the block: no room elsewhere."""
    if section.sheet is None or section.limit is None or section.bite is None:
        return
    right, size = pen.width - PAD, labels.size
    top, limit = pen.y(section.sheet) + 2.0, pen.y(section.limit) - size - 5.0
    yield Label(role="on-sheet", x=PAD, y=top, text=labels.sheet, size=size)
    yield Label(role="on-sheet", x=right, y=limit, text=labels.limit, size=size, anchor=1.0)
    below = pen.deck_y + 3.0
    yield Label(role="on-block", x=right, y=below, text=labels.bite, size=size, anchor=1.0)
