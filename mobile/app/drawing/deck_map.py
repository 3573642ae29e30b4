"""The deck from above: bores, holes, rings by verdict, heights, joints, tight lands.

On a narrow picture the front of the engine is at the top, else at the left; the whole deck is
turned, never mirrored, so that clockwise stays clockwise.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from core.calc.deck_layout import DeckLayout, HoleKind, Point
from core.calc.joints import Joint
from core.calc.lands import Land
from core.calc.ring_map import MappedPlace, RingSummary
from core.unit_types import Millimetre
from core.verdict import Verdict
from mobile.app.drawing.shapes import Label, Polygon

EDGE: Millimetre = 8.0
"""Deck drawn beyond the outermost hole."""
BETWEEN: Millimetre = 16.0
"""Between two banks."""
PAD = 6.0
"""From the picture's edge to a deck [px]."""
ROOM_FOR_PLACES = 4.6
"""Radius of a ring, in sizes of its words, from which every place has its height beside it."""
ROOM_FOR_WORDS = 3.0
TOUCH = 24.0
"""How far beside a ring a finger still finds it [px]."""
THOU: Millimetre = 0.0254


@dataclass(frozen=True, slots=True, kw_only=True)
class Circles:
    """Like circles (x, y, radius) [px]: filled where `width` is zero, else outlined."""

    role: str
    circles: tuple[tuple[float, float, float], ...]
    width: float = 0.0
    dashed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Strokes:
    """Like straight lines (x1, y1, x2, y2) [px]."""

    role: str
    lines: tuple[tuple[float, float, float, float], ...]
    width: float


@dataclass(frozen=True, slots=True, kw_only=True)
class RingSign:
    """How one ring is marked.

    Parameters
    ----------
    verdict
        None where nothing was read.
    words
        Under the cylinder number: the word, the median, the spread.
    summary
        Its places; none where nothing was read.
    """

    verdict: Verdict | None
    words: tuple[str, ...] = ()
    summary: RingSummary | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BankPicture:
    """One bank to draw.

    Parameters
    ----------
    centre_diameter
        Of the grooves [mm].
    title
        What the bank is called.
    signs
        By cylinder.
    """

    layout: DeckLayout
    centre_diameter: Millimetre
    title: str
    signs: dict[str, RingSign]
    joints: tuple[Joint, ...] = ()
    tight: tuple[Land, ...] = ()
    picked: str | None = None


Drawn = Circles | Strokes | Polygon | Label


@dataclass(frozen=True, slots=True, kw_only=True)
class DeckPicture:
    """Shapes in drawing order, and where each ring is.

    Parameters
    ----------
    width, height
        Of the whole picture [px].
    scale
        Pixels for a millimetre.
    rings
        Centre and radius of each ring, by cylinder [px].
    """

    width: float
    height: float
    scale: float
    rings: dict[str, tuple[float, float, float]]
    shapes: tuple[Drawn, ...]

    def ring_at(self, x: float, y: float) -> str | None:
        """The ring under a finger; none where it is beside all of them.

        Parameters
        ----------
        x, y
            Place of the finger [px].
        """
        beside = {
            name: math.hypot(x - cx, y - cy) - radius
            for name, (cx, cy, radius) in self.rings.items()
        }
        nearest = min(beside, key=lambda name: beside[name], default=None)
        return nearest if nearest is not None and beside[nearest] <= TOUCH else None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Pen:
    """From millimetres on one bank to pixels; upright has the front at the top."""

    scale: float
    left: float
    top: float
    origin: Point
    upright: bool
    size: float

    def at(self, point: Point) -> tuple[float, float]:
        across, up = point[0] - self.origin[0], point[1] - self.origin[1]
        if self.upright:
            return self.left + up * self.scale, self.top + across * self.scale
        return self.left + across * self.scale, self.top - up * self.scale

    def circle(self, centre: Point, diameter: Millimetre) -> tuple[float, float, float]:
        return (*self.at(centre), 0.5 * diameter * self.scale)


def draw_deck(
    banks: Sequence[BankPicture], width: float, height: float, words: float, zoom: float = 1.0
) -> DeckPicture:
    """Draw every bank at one scale.

    Parameters
    ----------
    width, height
        What is seen of the picture [px].
    words
        Size of the words [px].
    zoom
        How much larger than what fits.
    """
    upright = height > width
    sizes = [_size(bank.layout, upright) for bank in banks]
    side = 0 if upright else 1
    across = sum(size[side] for size in sizes) + BETWEEN * (len(banks) - 1)
    along = max(size[1 - side] for size in sizes)
    wide, high = (across, along) if upright else (along, across)
    title = 1.6 * words
    scale = zoom * min((width - 2 * PAD) / wide, (height - 2 * PAD - title) / high)
    full = (max(width, wide * scale + 2 * PAD), max(height, high * scale + 2 * PAD + title))
    pens = list(_pens(banks, sizes, upright, scale, full, title, words))
    shapes = [shape for bank, pen in zip(banks, pens, strict=True) for shape in _bank(bank, pen)]
    rings = {
        bore.name: pen.circle((bore.x, bore.y), bank.centre_diameter)
        for bank, pen in zip(banks, pens, strict=True)
        for bore in bank.layout.bores
    }
    return DeckPicture(
        width=full[0], height=full[1], scale=scale, rings=rings, shapes=tuple(shapes)
    )


def _size(layout: DeckLayout, upright: bool) -> tuple[Millimetre, Millimetre]:
    """Width and height of a bank as it is turned."""
    (left, low), (right, high) = layout.extent
    along, across = right - left + 2 * EDGE, high - low + 2 * EDGE
    return (across, along) if upright else (along, across)


def _pens(
    banks: Sequence[BankPicture],
    sizes: Sequence[tuple[Millimetre, Millimetre]],
    upright: bool,
    scale: float,
    full: tuple[float, float],
    title: float,
    words: float,
) -> Iterator[_Pen]:
    """Side by side, the left bank at the left; or one over the other, the right bank above."""
    side = 0 if upright else 1
    total = sum(size[side] for size in sizes) + BETWEEN * (len(banks) - 1)
    start = 0.5 * (full[side] - total * scale + (0.0 if upright else title))
    offsets = [
        start + scale * (sum(size[side] for size in sizes[:place]) + BETWEEN * place)
        for place in range(len(banks))
    ]
    for place, bank in enumerate(banks):
        (left, low), (_, high) = bank.layout.extent
        if upright:
            yield _Pen(scale=scale, left=offsets[place], top=PAD + title,
                       origin=(left - EDGE, low - EDGE), upright=True, size=words)
        else:
            yield _Pen(scale=scale, left=0.5 * (full[0] - sizes[place][0] * scale),
                       top=offsets[len(banks) - 1 - place],
                       origin=(left - EDGE, high + EDGE), upright=False, size=words)


# ---- one bank ----


def _bank(bank: BankPicture, pen: _Pen) -> Iterator[Drawn]:
    yield from _metal(bank, pen)
    for verdict in (None, *Verdict):
        yield from _rings(bank, pen, verdict)
    yield from _picked(bank, pen)
    yield from _joints(bank, pen)
    yield from _places(bank, pen)
    yield from _tight(bank, pen)
    yield from _words(bank, pen)


def _metal(bank: BankPicture, pen: _Pen) -> Iterator[Drawn]:
    layout = bank.layout
    (left, low), (right, high) = layout.extent
    corners = [
        pen.at((x, y))
        for x, y in (
            (left - EDGE, low - EDGE),
            (right + EDGE, low - EDGE),
            (right + EDGE, high + EDGE),
            (left - EDGE, high + EDGE),
        )
    ]
    yield Polygon(role="panel", points=tuple(corners))
    closed = zip(corners, (*corners[1:], corners[0]), strict=True)
    yield Strokes(role="line", lines=tuple((*a, *b) for a, b in closed), width=1.0)
    bores = [pen.circle((bore.x, bore.y), bore.diameter) for bore in layout.bores]
    yield Circles(role="ground", circles=tuple(bores))
    yield Circles(role="quiet", circles=tuple(bores), width=1.0)
    flanges = tuple(pen.circle((b.x, b.y), b.flange) for b in layout.bores if b.flange)
    if flanges:
        yield Circles(role="line", circles=flanges, width=1.0)
    yield from _holes(layout, pen)


def _holes(layout: DeckLayout, pen: _Pen) -> Iterator[Drawn]:
    """Bolts filled, water outlined, oil dashed, dowels small and filled in copper."""
    for kind, role, width, dashed in (
        (HoleKind.BOLT, "block", 0.0, False),
        (HoleKind.WATER, "quiet", 2.0, False),
        (HoleKind.OIL, "quiet", 2.0, True),
        (HoleKind.DOWEL, "copper", 0.0, False),
    ):
        holes = tuple(
            pen.circle((each.x, each.y), each.diameter)
            for each in layout.holes
            if each.kind is kind
        )
        if holes:
            yield Circles(role=role, circles=holes, width=width, dashed=dashed)


RING_ROLES = {
    None: "quiet",
    Verdict.PASS: "passed",
    Verdict.FAIL: "failed",
    Verdict.UNDECIDED: "undecided",
}
DOUBLE = 3.5
"""From the middle to either line of a failed ring [px]."""


def _rings(bank: BankPicture, pen: _Pen, verdict: Verdict | None) -> Iterator[Drawn]:
    """One solid line passes, two lines fail, a dashed one is open, a thin one was not read."""
    found = [
        pen.circle((bore.x, bore.y), bank.centre_diameter)
        for bore in bank.layout.bores
        if bank.signs[bore.name].verdict is verdict
    ]
    if not found:
        return
    role = RING_ROLES[verdict]
    if verdict is Verdict.FAIL:
        double = tuple((x, y, r + off) for x, y, r in found for off in (-DOUBLE, DOUBLE))
        yield Circles(role=role, circles=double, width=3.0)
    else:
        width = 1.5 if verdict is None else 4.0
        dashed = verdict is Verdict.UNDECIDED
        yield Circles(role=role, circles=tuple(found), width=width, dashed=dashed)


def _picked(bank: BankPicture, pen: _Pen) -> Iterator[Drawn]:
    picked = [bore for bore in bank.layout.bores if bore.name == bank.picked]
    if picked:
        x, y, radius = pen.circle((picked[0].x, picked[0].y), bank.centre_diameter)
        yield Circles(role="copper", circles=((x, y, radius + 9.0),), width=3.0)


def _joints(bank: BankPicture, pen: _Pen) -> Iterator[Drawn]:
    """Two short strokes across the ring, as the butted ends are."""
    if bank.joints:
        strokes = [line for joint in bank.joints for line in _ends(bank, pen, joint)]
        yield Strokes(role="copper", lines=tuple(strokes), width=3.0)


def _ends(
    bank: BankPicture, pen: _Pen, joint: Joint
) -> Iterator[tuple[float, float, float, float]]:
    bore = bank.layout.bore(joint.cylinder)
    (cx, cy), (x, y) = pen.at((bore.x, bore.y)), pen.at(joint.at)
    radius = math.hypot(x - cx, y - cy)
    for turn in (-3.0 / radius, 3.0 / radius):
        bearing = math.atan2(y - cy, x - cx) + turn
        inner, outer = radius - 9.0, radius + 9.0
        yield (
            cx + inner * math.cos(bearing), cy + inner * math.sin(bearing),
            cx + outer * math.cos(bearing), cy + outer * math.sin(bearing),
        )


# ---- heights round a ring ----


def _places(bank: BankPicture, pen: _Pen) -> Iterator[Drawn]:
    found = [
        (place, bank.layout.bore(sign.summary.cylinder))
        for sign in bank.signs.values()
        if sign.summary
        for place in sign.summary.places
    ]
    usual = tuple((*pen.at(place.at), 4.0) for place, _ in found if not place.proud)
    if usual:
        yield Circles(role="ink", circles=usual)
    roomy = 0.5 * bank.centre_diameter * pen.scale >= ROOM_FOR_PLACES * pen.size
    for place, bore in found:
        centre = pen.at((bore.x, bore.y))
        if place.proud:
            yield _proud(pen.at(place.at), centre)
        if roomy or place.proud:
            yield _height(place, pen, centre)


def _proud(at: tuple[float, float], centre: tuple[float, float]) -> Polygon:
    """A point that sticks out of the ring."""
    out = math.atan2(at[1] - centre[1], at[0] - centre[0])
    corners = ((16.0, out), (10.0, out + 2.2), (10.0, out - 2.2))
    return Polygon(
        role="failed",
        points=tuple((at[0] + r * math.cos(a), at[1] + r * math.sin(a)) for r, a in corners),
    )


def _height(place: MappedPlace, pen: _Pen, centre: tuple[float, float]) -> Label:
    """The height in thou, inside the ring beside its place."""
    x, y = pen.at(place.at)
    distance = math.hypot(x - centre[0], y - centre[1])
    inward = 1.0 - 1.5 * pen.size / distance
    return Label(
        role="failed" if place.proud else "ink",
        x=centre[0] + (x - centre[0]) * inward,
        y=centre[1] + (y - centre[1]) * inward - 0.6 * pen.size,
        text=f"{place.reading.value / THOU:.1f}",
        size=pen.size,
        anchor=0.5,
    )


def _tight(bank: BankPicture, pen: _Pen) -> Iterator[Drawn]:
    """The narrow land as a bar, its width in thou beside it."""
    if not bank.tight:
        return
    ends = [(*pen.at(land.start), *pen.at(land.end)) for land in bank.tight]
    yield Strokes(role="failed", lines=tuple(ends), width=6.0)
    for land, (x1, y1, x2, y2) in zip(bank.tight, ends, strict=True):
        yield Label(
            role="failed", x=0.5 * (x1 + x2) + 5.0, y=0.5 * (y1 + y2) - 0.6 * pen.size,
            text=f"{land.width / THOU:.0f}", size=pen.size,
        )


# ---- words ----


def _words(bank: BankPicture, pen: _Pen) -> Iterator[Drawn]:
    (left, low), (_, high) = bank.layout.extent
    x, y = pen.at((left - EDGE, low - EDGE if pen.upright else high + EDGE))
    yield Label(role="quiet", x=x, y=y - 1.5 * pen.size, text=bank.title, size=pen.size)
    for bore in bank.layout.bores:
        yield from _in_bore(bank.signs[bore.name], bore.name, pen.at((bore.x, bore.y)), bank, pen)


def _in_bore(
    sign: RingSign, name: str, centre: tuple[float, float], bank: BankPicture, pen: _Pen
) -> Iterator[Label]:
    """Cylinder number, and under it what there is room for."""
    radius = 0.5 * bank.centre_diameter * pen.scale
    lines = sign.words if radius >= ROOM_FOR_WORDS * pen.size else sign.words[:1]
    large = 1.5 * pen.size
    top = centre[1] - 0.6 * (large + len(lines) * 1.2 * pen.size)
    yield Label(role="ink", x=centre[0], y=top, text=name, size=large, anchor=0.5)
    for row, line in enumerate(lines):
        yield Label(
            role=RING_ROLES[sign.verdict], x=centre[0],
            y=top + 1.2 * large + row * 1.2 * pen.size, text=line, size=pen.size, anchor=0.5,
        )
