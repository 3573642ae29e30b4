"""One ring seen from above: where it was read, where it is proud, where the hand goes next."""

import math
from dataclasses import dataclass

from mobile.app.drawing.shapes import Disc, Label, Polygon, Shape

HOURS = 12.0
RING = 0.335
"""Radius of the ring, as a part of the picture's lesser side."""
WIDTH = 0.04
"""Half width of the ring's line, as a part of the same."""
DOT, SMALL_DOT = 0.082, 0.06
BEYOND = 1.36
"""How far out words stand, against the radius."""
INNER = 0.58
"""How far out places beside the joint stand, against the radius."""
GAP_WIDTH = 0.012
"""Half width of the mark at the joint, as a part of the lesser side."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RingPlace:
    """One place on the picture.

    Parameters
    ----------
    hour
        Where it is on the clock [h].
    role
        ``line`` for a place not read, ``passed``, ``failed``, ``undecided``.
    inside, outside
        What stands in its dot, and beyond the ring.
    here
        Whether this is the place to read now.
    inner
        Whether it stands inside the ring, as those beside the joint do.
    """

    hour: float
    role: str
    inside: str
    outside: str = ""
    here: bool = False
    inner: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class RingPicture:
    """What is drawn.

    Parameters
    ----------
    joint
        Where the joint is [h].
    middle
        Two lines inside the ring, the second smaller.
    """

    places: tuple[RingPlace, ...]
    joint: float
    middle: tuple[str, str]


def draw_ring(picture: RingPicture, width: float, height: float, size: float) -> tuple[Shape, ...]:
    """The picture.

    Parameters
    ----------
    width, height, size
        Of the picture, and of its words [px].
    """
    side = min(width, height)
    x, y, radius = 0.5 * width, 0.5 * height, RING * side
    return (
        Disc(role="wire", x=x, y=y, radius=radius + WIDTH * side),
        Disc(role="ground", x=x, y=y, radius=radius - WIDTH * side),
        _joint(picture.joint, x, y, radius, side),
        _label("ink", x, y - 1.3 * size, picture.middle[0], 1.3 * size),
        _label("quiet", x, y + 0.1 * size, picture.middle[1], size),
        *(shape for each in picture.places for shape in _place(each, x, y, radius, side, size)),
    )


def _at(hour: float, x: float, y: float, radius: float) -> tuple[float, float]:
    angle = math.tau * hour / HOURS
    return x + radius * math.sin(angle), y - radius * math.cos(angle)


def _joint(hour: float, x: float, y: float, radius: float, side: float) -> Polygon:
    """Where the ends of the wire meet: a line across the ring."""
    angle = math.tau * hour / HOURS
    aside = GAP_WIDTH * side * math.cos(angle), GAP_WIDTH * side * math.sin(angle)
    reach = WIDTH * side * 1.5
    near, far = (_at(hour, x, y, radius + each) for each in (-reach, reach))
    return Polygon(
        role="ink",
        points=(
            (near[0] - aside[0], near[1] - aside[1]),
            (far[0] - aside[0], far[1] - aside[1]),
            (far[0] + aside[0], far[1] + aside[1]),
            (near[0] + aside[0], near[1] + aside[1]),
        ),
    )


def _place(
    place: RingPlace, x: float, y: float, radius: float, side: float, size: float
) -> tuple[Shape, ...]:
    at = _at(place.hour, x, y, radius * (INNER if place.inner else 1.0))
    dot = (SMALL_DOT if place.inner else DOT) * side * (1.2 if place.here else 1.0)
    out = _at(place.hour, x, y, BEYOND * radius)
    across = math.sin(math.tau * place.hour / HOURS)
    return (
        Disc(role="copper" if place.here else place.role, x=at[0], y=at[1], radius=dot),
        _label("on_copper" if place.here else "ground", *at, place.inside, size),
        _label("ink", *out, place.outside, size, 0.5 - 0.5 * across),
    )


def _label(role: str, x: float, y: float, line: str, size: float, anchor: float = 0.5) -> Label:
    """Words whose middle is at a height."""
    return Label(role=role, x=x, y=y - 0.6 * size, text=line, size=size, anchor=anchor)
