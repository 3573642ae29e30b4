"""Flatness: scipy's linear program agrees; lines are never taken for the face."""

import math
import random
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog

from core.calc.finish import Roughness, RoughnessParameter, as_parameter, finish_check
from core.calc.flatness import (
    FacePoint,
    Line,
    LineReading,
    flatness_check,
    least_squares,
    line_flatness,
    minimum_zone,
    straightness,
    worst_stretch,
)
from core.calc.minimum_zone import narrowest_zone
from core.errors import InputError
from core.verdict import Verdict

READINGS = st.floats(-0.1, 0.1).map(lambda z: round(z, 4))


@st.composite
def faces(draw: st.DrawFn) -> list[FacePoint]:
    across, along = draw(st.integers(2, 4)), draw(st.integers(2, 5))
    return [
        FacePoint(x=60.0 * i, y=45.0 * j, z=draw(READINGS))
        for i in range(along)
        for j in range(across)
    ]


def by_scipy(points: list[FacePoint]) -> float:
    rows = np.array([[p.x, p.y, 1.0] for p in points])
    z = np.array([p.z for p in points])
    half = np.full((len(points), 1), -0.5)
    found = linprog(
        [0.0, 0.0, 0.0, 1.0],
        A_ub=np.block([[rows, half], [-rows, half]]),
        b_ub=np.concatenate([z, -z]),
        bounds=[(None, None)] * 4,
        method="highs",
        options={"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10},
    )
    return float(found.fun)


@given(faces())
@settings(max_examples=150, deadline=None)
def test_minimum_zone_is_that_of_a_linear_program(points: list[FacePoint]) -> None:
    assert math.isclose(minimum_zone(points).value, by_scipy(points), rel_tol=1e-6, abs_tol=1e-8)


@given(faces())
@settings(max_examples=100, deadline=None)
def test_minimum_zone_holds_every_point_and_is_never_wider_than_least_squares(
    points: list[FacePoint],
) -> None:
    zone = minimum_zone(points)
    assert max(map(abs, zone.deviations)) <= 0.5 * zone.value + 1e-9
    assert zone.value <= least_squares(points).value + 1e-9
    assert zone.value <= max(p.z for p in points) - min(p.z for p in points) + 1e-9


@given(faces())
@settings(max_examples=100, deadline=None)
def test_least_squares_plane_is_that_of_numpy(points: list[FacePoint]) -> None:
    rows = np.array([[p.x, p.y, 1.0] for p in points])
    (a, b, c), *_ = np.linalg.lstsq(rows, np.array([p.z for p in points]), rcond=None)
    plane = least_squares(points).plane
    assert np.allclose((plane.slope_x, plane.slope_y, plane.level), (a, b, c), atol=1e-9)


@given(faces(), st.floats(-1e-3, 1e-3), st.floats(-1e-3, 1e-3), st.floats(-1.0, 1.0))
@settings(max_examples=60, deadline=None)
def test_tilting_the_block_changes_no_flatness(
    points: list[FacePoint], a: float, b: float, c: float
) -> None:
    tilted = [FacePoint(x=p.x, y=p.y, z=p.z + a * p.x + b * p.y + c) for p in points]
    for method in (minimum_zone, least_squares):
        assert math.isclose(method(points).value, method(tilted).value, abs_tol=1e-8)


@given(faces(), st.integers(0, 3))
@settings(max_examples=60, deadline=None)
def test_no_line_on_a_face_is_less_straight_than_the_face_is_flat(
    points: list[FacePoint], row: int
) -> None:
    line = [p for p in points if p.y == 45.0 * (row % 2)]
    along = [p.x for p in line]
    assert straightness(along, [p.z for p in line]) <= minimum_zone(points).value + 1e-8


@given(faces())
@settings(max_examples=60, deadline=None)
def test_spread_follows_the_points_that_hold_the_zone(points: list[FacePoint]) -> None:
    known = minimum_zone(points)
    uncertain = minimum_zone([FacePoint(x=p.x, y=p.y, z=p.z, u=0.003) for p in points])
    weights = narrowest_zone([(p.x, p.y, 1.0) for p in points], [p.z for p in points]).weights
    assert uncertain.value == known.value
    assert known.u == 0.0
    assert math.isclose(uncertain.u, 0.003 * math.hypot(*weights))
    assert math.isclose(sum(map(abs, weights)), 2.0 if known.value else 0.0)


def test_large_grid_with_many_ties_comes_to_an_end() -> None:
    rng = random.Random(7)
    points = [
        FacePoint(x=10.0 * i, y=10.0 * j, z=rng.choice((0.0, 0.01)))
        for i in range(12)
        for j in range(8)
    ]
    assert math.isclose(minimum_zone(points).value, by_scipy(points), abs_tol=1e-9)


def test_worst_stretch_finds_the_step_that_the_whole_face_hides() -> None:
    points = [
        FacePoint(x=50.0 * i, y=50.0 * j, z=0.03 if (i, j) == (7, 1) else 0.0)
        for i in range(9)
        for j in range(3)
    ]
    local = worst_stretch(points, 152.4)
    assert local is not None
    assert math.isclose(local.value, 0.03)
    assert worst_stretch(points, 40.0) is None


def test_flat_face_passes_and_a_step_of_3_thou_fails() -> None:
    corners = ((0.0, 0.0), (400.0, 0.0), (0.0, 150.0), (400.0, 150.0), (200.0, 75.0))
    for middle, verdict in ((0.0508, Verdict.PASS), (0.0762, Verdict.FAIL)):
        heights = (0.0, 0.0, 0.0, 0.0, middle)
        face = [FacePoint(x=x, y=y, z=z) for (x, y), z in zip(corners, heights, strict=True)]
        assert flatness_check(minimum_zone(face)).verdict is verdict


def test_good_lines_never_pass_a_face() -> None:
    found = line_flatness([LineReading(line=line, stops=0.0381) for line in Line])
    assert found.check.verdict is Verdict.UNDECIDED
    assert found.at_least == 0.0
    assert found.under == 0.0381
    assert found.not_tried == ()


def test_one_bad_line_fails_a_face_and_is_named() -> None:
    lines = [
        LineReading(line=Line.CENTRE, goes=0.0635, stops=0.0762),
        LineReading(line=Line.FRONT_END, goes=0.0254),
    ]
    found = line_flatness(lines)
    assert found.check.verdict is Verdict.FAIL
    assert found.worst is Line.CENTRE
    assert found.under is None
    assert Line.DIAGONAL in found.not_tried


def test_rocking_straightedge_counts_only_its_share_of_the_gap() -> None:
    rocks = LineReading(line=Line.DIAGONAL, goes=0.08, crest=Fraction(1, 2))
    assert math.isclose(line_flatness([rocks]).at_least, 0.04)
    along, profile = [0.0, 100.0, 200.0], [0.0, 0.0, -0.08]
    assert math.isclose(line_flatness([rocks]).at_least, straightness(along, profile))


def test_faults_of_lines_are_all_named() -> None:
    bad = [
        LineReading(line=Line.CENTRE),
        LineReading(line=Line.DIAGONAL, goes=0.1, stops=0.05),
        LineReading(line=Line.REAR_END, goes=0.1, crest=Fraction(2)),
    ]
    with pytest.raises(InputError, match=r"centre: .*diagonal: .*rear-end: "):
        line_flatness(bad)


@pytest.mark.parametrize("method", [minimum_zone, least_squares])
def test_too_few_places_or_places_on_a_line_are_refused(method: object) -> None:
    with pytest.raises(InputError, match="at least 4"):
        method([FacePoint(x=0, y=0, z=0)] * 3)
    with pytest.raises(InputError, match="one line"):
        method([FacePoint(x=10.0 * k, y=20.0 * k, z=0) for k in range(6)])
    with pytest.raises(InputError, match="one place"):
        straightness([1.0, 1.0], [0.0, 0.1])


def test_ra_is_judged_and_never_made_from_rz() -> None:
    ra = Roughness(parameter=RoughnessParameter.RA, value=60e-6 * 25.4)
    rz = Roughness(parameter=RoughnessParameter.RZ, value=6.3e-3)
    assert finish_check(ra).verdict is Verdict.PASS
    rough = Roughness(parameter=RoughnessParameter.RA, value=63e-6 * 25.4)
    assert finish_check(rough).verdict is Verdict.FAIL
    with pytest.raises(InputError, match="Rz cannot be turned into Ra"):
        finish_check(rz)
    with pytest.raises(InputError, match="Ra cannot be turned into Rz"):
        as_parameter(ra, RoughnessParameter.RZ)
