"""Flatness: public points, and derived values worked with a linear program elsewhere."""

from collections.abc import Callable
from fractions import Fraction
from functools import partial

from core.calc.flatness import (
    FacePoint,
    Flatness,
    Line,
    LineReading,
    least_squares,
    line_flatness,
    minimum_zone,
    straightness,
)
from core.published.case import Case
from core.source import Source, derived

PROGRAM = derived("linear program and normal equations of the printed points, another library")
GEOMETRY = derived("plane geometry")

GRIDS: dict[str, tuple[float, ...]] = {
    "1": (0, 12, 4, 10, 30, 8, 6, 14, 2),
    "2": (0, 8, 22, -6, 4, 12, -10, -4, 6),
    "3, one high spot": (0, 0, 0, 0, 40, 0, 0, 0, 0),
    "4, two corners up": (20, 0, 0, 0, 0, 0, 0, 0, 20),
}
PUBLIC_POINTS = (
    (11.5, 7.0, 1.1), (18.5, 6.9, 1.03), (4.5, 13.0, 1.02), (25.5, 30.0, 1.03), (11.5, 37.5, 1.02),
)
TWISTED = ((0.0, 0.0, 0.0), (200.0, 0.0, 20.0), (200.0, 150.0, 0.0), (0.0, 150.0, 20.0))


def _grid(name: str) -> list[FacePoint]:
    """Grid of 3 × 3 with x = 0, 100, 200 and y = 0, 75, 150; its z are printed in µm."""
    return [
        FacePoint(x=100.0 * (k % 3), y=75.0 * (k // 3), z=z) for k, z in enumerate(GRIDS[name])
    ]


def _points(points: tuple[tuple[float, float, float], ...]) -> list[FacePoint]:
    return [FacePoint(x=x, y=y, z=z) for x, y, z in points]


def _case(
    name: str, printed: str, unit: str, compute: Callable[[], float], source: Source = PROGRAM
) -> Case:
    return Case(topic="flatness", name=name, source=source, compute=compute, printed=printed,
                unit=unit)


def _value(method: Callable[[list[FacePoint]], Flatness], points: list[FacePoint]) -> float:
    return method(points).value


def _flatness_cases(
    name: str, points: list[FacePoint], squares: str, zone: str, unit: str = "µm"
) -> tuple[Case, Case]:
    return (
        _case(f"{name}, least squares", squares, unit, partial(_value, least_squares, points)),
        _case(f"{name}, minimum zone", zone, unit, partial(_value, minimum_zone, points)),
    )


def _plane_cases(name: str, printed: tuple[str, str, str]) -> tuple[Case, ...]:
    parts = ("slope_x", "slope_y", "level")
    return tuple(
        _case(f"grid {name}, least-squares {part}", value, "µm, µm/mm",
              partial(_plane_part, name, part))
        for part, value in zip(parts, printed, strict=True)
    )


def _plane_part(name: str, part: str) -> float:
    return float(getattr(least_squares(_grid(name)).plane, part))


def _deviation(name: str, place: int) -> float:
    return least_squares(_grid(name)).deviations[place]


DEVIATIONS_OF_2 = (
    "-0.5556", "-1.8889", "2.7778", "-0.2222", "0.4444", "-0.8889", "2.1111", "-1.2222", "-0.5556",
)

CASES: tuple[Case, ...] = (
    *_flatness_cases("grid 1", _grid("1"), "29.333333", "29.000000"),
    *_flatness_cases("grid 2", _grid("2"), "4.666667", "4.000000"),
    *_flatness_cases("grid 3, one high spot", _grid("3, one high spot"), "40.000000", "40.000000"),
    *_flatness_cases("grid 4, two corners up", _grid("4, two corners up"),
                     "20.000000", "20.000000"),
    *_flatness_cases("five public points", _points(PUBLIC_POINTS), "0.07209731", "0.06726230",
                     "1"),
    *_flatness_cases("four corners twisted", _points(TWISTED), "20.0", "20.0"),
    *_plane_cases("1", ("-0.003333", "0.013333", "8.888889")),
    *_plane_cases("2", ("0.093333", "-0.084444", "0.555556")),
    *(_case(f"grid 2, deviation of point {k + 1}", printed, "µm", partial(_deviation, "2", k))
      for k, printed in enumerate(DEVIATIONS_OF_2)),
    _case("straightness of a hollow of 0.04 mm", "0.0400", "mm",
          lambda: straightness([0.0, 75.0, 150.0], [0.0, -0.04, 0.0]), GEOMETRY),
    _case("gap of 0.06 mm past a crest at one third, departure from straight", "0.0200", "mm",
          lambda: line_flatness(
              [LineReading(line=Line.CENTRE, goes=0.06, crest=Fraction(1, 3))]).at_least, GEOMETRY),
)
