"""Flatness of a deck or a head face, from readings on a grid or from a straightedge and leaves."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from core.calc.least_squares import solve
from core.calc.minimum_zone import Collinear, narrowest_zone
from core.errors import InputError, fault, refuse
from core.source import Source, derived, published
from core.tables.cut_practice import DECK, DECK_SOURCE
from core.unit_types import Millimetre, Number
from core.verdict import PLAIN, TIE, Acceptance, Check, Rule, Verdict, judge, probability

MINIMUM_ZONE: Source = published("ISO 12781-1:2011, minimum zone reference plane")
LEAST_SQUARES: Source = published("ISO 12781-1:2011, least squares reference plane")
LOWER_BOUND: Source = derived("no surface is flatter than any line on it is straight")
FEWEST_POINTS = 4
"""Three points always lie on a plane: they say nothing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FacePoint:
    """One reading on a face.

    Parameters
    ----------
    x, y
        Place on the face [mm].
    z
        Reading; its zero does not matter [mm].
    u
        Standard uncertainty of the reading [mm].
    """

    x: Millimetre
    y: Millimetre
    z: Millimetre
    u: Millimetre = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Plane:
    """Reference plane z = slope_x · x + slope_y · y + level.

    Parameters
    ----------
    slope_x, slope_y
        Rise over run [1].
    level
        At the origin [mm].
    """

    slope_x: Number
    slope_y: Number
    level: Millimetre

    def at(self, x: Millimetre, y: Millimetre) -> Millimetre:
        """Height of the plane at a place [mm]."""
        return self.slope_x * x + self.slope_y * y + self.level


@dataclass(frozen=True, slots=True, kw_only=True)
class Flatness:
    """How far a face is from flat.

    Parameters
    ----------
    value, u
        Peak to valley from the plane, and its standard uncertainty [mm].
    plane
        Reference plane.
    deviations
        Each point above the plane, in the order given, shape (n,) [mm].
    touching
        Points that the value hangs on, by their place in the order given.
    """

    value: Millimetre
    u: Millimetre
    plane: Plane
    deviations: tuple[Millimetre, ...]
    touching: tuple[int, ...]
    source: Source


def minimum_zone(points: Sequence[FacePoint]) -> Flatness:
    """Flatness between the two closest planes that hold every point.

    Distances are taken along z; on a deck set up within 1 mm in 1 m they are those along the
    normal to 1 part in a million.

    Parameters
    ----------
    points
        Four or more, not on one line.

    Raises
    ------
    InputError
        If the points cannot define a flatness.

    Source
    ------
    ISO 12781-1:2011 and ISO 1101, flatness; JCGM 100:2008 (GUM), 5.1.2, for the spread.
    """
    _refuse_few(points)
    try:
        zone = narrowest_zone([(p.x, p.y, 1.0) for p in points], [p.z for p in points])
    except Collinear:
        raise refuse("points", "flatness.on_a_line") from None
    plane = Plane(
        slope_x=zone.coefficients[0], slope_y=zone.coefficients[1], level=zone.coefficients[2]
    )
    return Flatness(
        value=zone.width,
        u=math.hypot(*(weight * p.u for weight, p in zip(zone.weights, points, strict=True))),
        plane=plane,
        deviations=_deviations(points, plane),
        touching=zone.touching,
        source=MINIMUM_ZONE,
    )


def least_squares(points: Sequence[FacePoint]) -> Flatness:
    """Flatness from the plane of least squares; never less than that of the minimum zone.

    Parameters
    ----------
    points
        Four or more, not on one line.

    Raises
    ------
    InputError
        If the points cannot define a flatness.

    Source
    ------
    ISO 12781-1:2011, least squares reference plane, peak-to-valley deviation.
    """
    _refuse_few(points)
    x = math.fsum(p.x for p in points) / len(points)
    y = math.fsum(p.y for p in points) / len(points)
    try:
        fit = solve(
            [(p.x - x, p.y - y, 1.0) for p in points], [p.z for p in points], [1.0] * len(points)
        )
    except ArithmeticError:
        raise refuse("points", "flatness.on_a_line") from None
    slope_x, slope_y, level = fit.values
    plane = Plane(slope_x=slope_x, slope_y=slope_y, level=level - slope_x * x - slope_y * y)
    above = _deviations(points, plane)
    high, low = above.index(max(above)), above.index(min(above))
    return Flatness(
        value=above[high] - above[low],
        u=math.hypot(points[high].u, points[low].u),
        plane=plane,
        deviations=above,
        touching=(high, low),
        source=LEAST_SQUARES,
    )


def _refuse_few(points: Sequence[FacePoint]) -> None:
    if len(points) < FEWEST_POINTS:
        raise refuse("points", "flatness.few_points", fewest=FEWEST_POINTS)


def _deviations(points: Sequence[FacePoint], plane: Plane) -> tuple[Millimetre, ...]:
    return tuple(p.z - plane.at(p.x, p.y) for p in points)


def worst_stretch(points: Sequence[FacePoint], span: Millimetre) -> Flatness | None:
    """Flatness of the worst part of a face no wider than `span`; none where the grid is too wide.

    Parameters
    ----------
    span
        Diameter of the part; each is centred on a reading [mm].

    Source
    ------
    ISO 12781-1:2011, minimum zone, on a part of the face.
    """
    found = []
    for centre in points:
        near = [p for p in points if math.hypot(p.x - centre.x, p.y - centre.y) <= 0.5 * span + TIE]
        try:
            found.append(minimum_zone(near))
        except InputError:
            continue
    return max(found, key=lambda each: each.value, default=None)


def flatness_check(
    found: Flatness, limit: Millimetre = DECK.flatness, acceptance: Acceptance = PLAIN
) -> Check:
    """Whether a face is flat enough for a solid copper sheet.

    Parameters
    ----------
    limit
        Largest flatness deviation [mm].

    Source
    ------
    Limit: *common practice, no source*. Rule: JCGM 106:2012, clauses 7 and 8.
    """
    p = probability(limit - found.value, found.u)
    verdict = judge(limit - found.value, p, acceptance)
    words = {Verdict.PASS: "flat", Verdict.FAIL: "not-flat"}
    return Check(id="flatness", verdict=verdict, word=words.get(verdict, "undecided"),
                 value=found.value, limit=limit, unit="mm", probability=p, rule=acceptance.rule,
                 source=DECK_SOURCE)


class Line(StrEnum):
    """Lines of the usual pattern of a straightedge on a face."""

    FRONT_END = "front-end"
    REAR_END = "rear-end"
    INNER_EDGE = "inner-edge"
    OUTER_EDGE = "outer-edge"
    DIAGONAL = "diagonal"
    OTHER_DIAGONAL = "other-diagonal"
    CENTRE = "centre"


@dataclass(frozen=True, slots=True, kw_only=True)
class LineReading:
    """Leaves tried under a straightedge along one line.

    Parameters
    ----------
    line
        Which line.
    goes
        Thickest leaf that goes; none where no leaf goes [mm].
    stops
        Thinnest leaf that does not go; none where none was tried [mm].
    crest
        Where the straightedge rocks: place of the crest it rocks over, from 0 at the end held
        down to 1 where the leaf was tried; none where it rests at both ends [1].
    """

    line: Line
    goes: Millimetre | None = None
    stops: Millimetre | None = None
    crest: Fraction | None = None

    @property
    def share(self) -> Number:
        """Part of the gap that is departure from straight: over a crest, the rest is tipping."""
        return 1.0 if self.crest is None else float(self.crest)


@dataclass(frozen=True, slots=True, kw_only=True)
class LineFlatness:
    """What a straightedge says about a face.

    Parameters
    ----------
    at_least
        The face is no flatter than this [mm].
    worst
        Line that says so; none where no leaf went.
    under
        On the lines tried, departure from straight is less than this; none where a line had no
        leaf that stops [mm].
    not_tried
        Lines of the usual pattern without a reading.
    check
        Fails on one bad line; never passes, as lines are not the face.
    """

    at_least: Millimetre
    worst: Line | None
    under: Millimetre | None
    not_tried: tuple[Line, ...]
    check: Check


def line_flatness(
    readings: Sequence[LineReading], limit: Millimetre = DECK.flatness
) -> LineFlatness:
    """Lower bound of flatness from a straightedge and leaves.

    A leaf that goes shows a gap of at least its thickness between the two supports, and no zone
    narrower than that holds both supports and the bottom of the gap. A leaf that does not go says
    something about that line only.

    Parameters
    ----------
    limit
        Largest flatness deviation [mm].

    Raises
    ------
    InputError
        If nothing was tried on a line, the leaf that stops is not the thicker one, or a crest is
        not between the ends.

    Source
    ------
    *derived*: flatness ≥ straightness of any line; three points of a line, two of them on the
    straightedge. Limit: *common practice, no source*.
    """
    _refuse_lines(readings)
    bounds = [(each.share * each.goes, each.line) for each in readings if each.goes]
    at_least, worst = max(bounds, default=(0.0, None))
    stops = [each.share * each.stops for each in readings if each.stops is not None]
    tried = {each.line for each in readings}
    return LineFlatness(
        at_least=at_least,
        worst=worst,
        under=max(stops) if stops and len(stops) == len(readings) else None,
        not_tried=tuple(line for line in Line if line not in tried),
        check=_line_check(at_least, limit),
    )


def _line_check(at_least: Millimetre, limit: Millimetre) -> Check:
    over = at_least > limit + TIE
    return Check(
        id="flatness",
        verdict=Verdict.FAIL if over else Verdict.UNDECIDED,
        word="not-flat" if over else "at-least",
        value=at_least,
        limit=limit,
        unit="mm",
        probability=None,
        rule=Rule.PLAIN,
        source=LOWER_BOUND,
    )


def _refuse_lines(readings: Sequence[LineReading]) -> None:
    faults = []
    for each in readings:
        if each.goes is None and each.stops is None:
            faults.append(fault(each.line, "flatness.no_leaf"))
        elif each.goes is not None and each.stops is not None and each.goes >= each.stops:
            faults.append(fault(each.line, "flatness.crossed"))
        if each.crest is not None and not 0 < each.crest < 1:
            faults.append(fault(each.line, "flatness.crest"))
    if faults:
        raise InputError(faults)


def straightness(along: Sequence[Millimetre], readings: Sequence[Millimetre]) -> Millimetre:
    """Straightness of one line, a lower bound of the flatness of its face [mm].

    Parameters
    ----------
    along
        Places along the line, shape (n,) [mm].
    readings
        Shape (n,) [mm].

    Raises
    ------
    InputError
        If all readings are at one place.

    Source
    ------
    ISO 12780-1:2011, minimum zone reference line.

    Examples
    --------
    >>> straightness([0.0, 75.0, 150.0], [0.0, -0.04, 0.0])
    0.04
    """
    try:
        return narrowest_zone([(x, 1.0) for x in along], readings).width
    except Collinear:
        raise refuse("points", "flatness.one_place") from None
