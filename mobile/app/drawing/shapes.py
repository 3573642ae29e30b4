"""What a picture is made of."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Polygon:
    """Closed outline of points (x, y) [px], filled in the colour that `role` has.

    Parameters
    ----------
    strength
        1 covers what lies under it, less lets it shine through.
    """

    role: str
    points: tuple[tuple[float, float], ...]
    strength: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Disc:
    """Circle [px]; an open one is drawn as a dashed outline."""

    role: str
    x: float
    y: float
    radius: float
    open: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """Straight line [px]."""

    role: str
    x1: float
    y1: float
    x2: float
    y2: float
    width: float
    dashed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """Words beside something; `anchor` is where the point lies in them, 0 left to 1 right."""

    role: str
    x: float
    y: float
    text: str
    size: float
    anchor: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Bars:
    """Level bars of one width [px], each from x to x at its y: many in one shape."""

    role: str
    width: float
    bars: tuple[tuple[float, float, float], ...]


Shape = Bars | Polygon | Disc | Line | Label
