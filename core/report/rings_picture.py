"""A ring with its readings, as shapes: a picture in the report's own units.

It is drawn as a clock, twelve up, as it is read; it is no deck to scale.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from core.calc.say import spoken
from core.forms.kept_verdicts import NOT_DOWN, JudgedRing, ReadPlace
from core.records.model import Place
from core.texts import text

SIZE = 150.0
RADIUS = 45.0
BESIDE_THE_JOINT = math.radians(15.0)
HOUR = math.radians(30.0)
BRIDGE = 10.5 * HOUR - math.pi / 2
NEAR = math.radians(14.0)
STEPS_ROUND = 24
NAME_AT = RADIUS + 18.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """One place of a ring.

    Parameters
    ----------
    x, y
        Where it is drawn.
    shape
        ``read``, ``proud``, ``up`` (may not be down), ``rocks`` or ``open``.
    words
        Height in thou or hundredths, or what stands for it.
    words_x, words_y
        Where the words stand, their middle.
    """

    x: float
    y: float
    shape: str
    words: str
    words_x: float
    words_y: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """One ring, its middle in the middle of the picture.

    Parameters
    ----------
    size
        Width and height.
    joint
        Both ends of the mark at its joint; none where nobody entered it.
    """

    size: float
    radius: float
    number: str
    joint: tuple[tuple[float, float], tuple[float, float]] | None
    marks: tuple[Mark, ...]


def draw_ring(ring: JudgedRing, *, metric: bool) -> Picture:
    """A ring as a clock."""
    middle = (SIZE / 2, SIZE / 2)
    joint = clock_angle(ring.cylinder.joint)
    up = {each.place for each in ring.findings if each.word in NOT_DOWN}
    angles = spread_out([(each, place_angle(each.place, joint)) for each in ring.places])
    return Picture(
        size=SIZE,
        radius=RADIUS,
        number=ring.cylinder.number,
        joint=None
        if joint is None
        else (_at(middle, RADIUS - 6.0, joint), _at(middle, RADIUS + 6.0, joint)),
        marks=tuple(_mark(each, angle, middle, each.place in up, metric) for each, angle in angles),
    )


def _mark(
    place: ReadPlace, angle: float, middle: tuple[float, float], up: bool, metric: bool
) -> Mark:
    (x, y), (words_x, words_y) = _at(middle, RADIUS, angle), _at(middle, NAME_AT, angle)
    return Mark(
        x=x,
        y=y,
        shape=_shape(place, up),
        words=spoken(place.height.value, metric) if place.height else _instead(place),
        words_x=words_x,
        words_y=words_y,
    )


def _shape(place: ReadPlace, up: bool) -> str:
    if place.rocks:
        return "rocks"
    if place.height is None:
        return "open"
    if place.proud:
        return "proud"
    return "up" if up else "read"


def _instead(place: ReadPlace) -> str:
    return text("report.mark.rocks" if place.rocks else "report.mark.open")


def clock_angle(place: Place) -> float | None:
    """Angle of an hour, clockwise from the right hand [rad]; none if the place is no hour."""
    return int(place) * HOUR - math.pi / 2 if place.isdecimal() else None


def place_angle(place: Place, joint: float | None) -> float:
    """Angle at which a place is drawn [rad]; a bridge has a place of its own, half past ten."""
    hour = clock_angle(place)
    if hour is not None:
        return hour
    beside = {"joint before": -BESIDE_THE_JOINT, "joint after": BESIDE_THE_JOINT}
    if place in beside and joint is not None:
        return beside[place] + joint
    return BRIDGE


def spread_out(
    places: Iterable[tuple[ReadPlace, float]],
) -> tuple[tuple[ReadPlace, float], ...]:
    """Places with those moved on that would lie on one another."""
    taken: list[float] = []
    found = []
    for place, angle in places:
        steps = (angle + step * BESIDE_THE_JOINT for step in range(STEPS_ROUND))
        free = next((each for each in steps if _is_free(each, taken)), angle)
        taken.append(free)
        found.append((place, free))
    return tuple(found)


def _is_free(angle: float, taken: Iterable[float]) -> bool:
    return all(abs(math.remainder(angle - each, math.tau)) > NEAR for each in taken)


def _at(middle: Sequence[float], radius: float, angle: float) -> tuple[float, float]:
    return (
        round(middle[0] + radius * math.cos(angle), 1),
        round(middle[1] + radius * math.sin(angle), 1),
    )
