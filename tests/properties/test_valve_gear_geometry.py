"""Pushrods and cam drives against drawn geometry: a taut chain round two circles of points."""

import math
import random

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import brentq
from scipy.spatial import ConvexHull

from core.calc.clearances import MeasuredValve, valve_to_piston
from core.calc.valve_gear import (
    CamDrive,
    Pushrod,
    cam_shift,
    pushrod_growth,
    rise_for_growth,
    rise_for_retard,
)
from core.errors import InputError

CASES = 1000
DRAWN = 30
POINTS = 40_000
Points = NDArray[np.float64]


def random_pushrod(rng: random.Random) -> Pushrod:
    return Pushrod(length=rng.uniform(120.0, 320.0), tilt=math.radians(rng.uniform(-20.0, 20.0)))


def test_pushrod_grows_by_the_distance_of_its_seats() -> None:
    rng = random.Random(71)
    for _ in range(CASES):
        pushrod, rise = random_pushrod(rng), rng.uniform(-2.0, 2.0)
        rocker = pushrod.length * np.array([math.sin(pushrod.tilt), math.cos(pushrod.tilt)])
        distance = float(np.linalg.norm(rocker + np.array([0.0, rise])))
        assert pushrod_growth(pushrod, rise) == pytest.approx(distance - pushrod.length, abs=1e-10)


def test_rise_for_a_growth_is_the_root_that_a_solver_finds() -> None:
    rng = random.Random(72)
    for _ in range(CASES):
        pushrod, growth = random_pushrod(rng), rng.uniform(-2.0, 2.0)
        root = brentq(lambda t, p=pushrod, g=growth: pushrod_growth(p, t) - g, -5, 5, xtol=1e-13)
        assert rise_for_growth(pushrod, growth) == pytest.approx(root, abs=1e-9)


def random_drive(rng: random.Random, lift_angle: float) -> CamDrive:
    teeth = rng.randint(16, 26)
    return CamDrive(
        crank_teeth=teeth,
        cam_teeth=2 * teeth,
        pitch=rng.choice((8.0, 9.525)),
        centres=rng.uniform(180.0, 450.0),
        lift_angle=math.radians(lift_angle),
    )


def circle(centre: Points, radius: float) -> Points:
    angle = np.arange(POINTS) * (2.0 * math.pi / POINTS)
    return centre + radius * np.column_stack([np.cos(angle), np.sin(angle)])


def taut_length(drive: CamDrive, cam: Points) -> float:
    """Taut chain on the left, from the lowest point of the crank to the highest of the cam."""
    points = np.vstack([circle(np.zeros(2), drive.crank_radius), circle(cam, drive.cam_radius)])
    order = ConvexHull(points).vertices  # anticlockwise
    ring = points[order]
    lowest, highest = np.argmin(ring[:, 1]), np.argmax(ring[:, 1])
    left = np.roll(ring, -highest, axis=0)[: (lowest - highest) % len(ring) + 1]
    return float(np.linalg.norm(np.diff(left, axis=0), axis=1).sum())


@pytest.mark.parametrize("lift_angle", [0.0, -15.0, -5.0, 5.0, 15.0])
def test_cam_lags_by_what_a_drawn_taut_chain_lacks(lift_angle: float) -> None:
    """Tight span on the left; a positive lift angle leans to it."""
    rng = random.Random(int(lift_angle) + 100)
    for _ in range(DRAWN // 5):
        drive, rise = random_drive(rng, lift_angle), rng.uniform(0.5, 2.0)
        start = np.array([0.0, drive.centres])
        lift = rise * np.array([-math.sin(drive.lift_angle), math.cos(drive.lift_angle)])
        lacks = taut_length(drive, start + lift) - taut_length(drive, start)
        expected = lacks / drive.cam_radius
        assert cam_shift(drive, rise).cam == pytest.approx(expected, rel=2e-4)


def test_rise_for_a_retard_is_undone_by_the_shift() -> None:
    rng = random.Random(73)
    for _ in range(CASES):
        drive, rise = random_drive(rng, rng.uniform(-20.0, 20.0)), rng.uniform(-2.0, 2.0)
        assert rise_for_retard(drive, cam_shift(drive, rise).crank) == pytest.approx(rise, abs=1e-9)


def test_a_higher_head_always_retards_more() -> None:
    rng = random.Random(74)
    for _ in range(CASES):
        drive, rise = random_drive(rng, rng.uniform(-30.0, 30.0)), rng.uniform(-2.0, 2.0)
        higher = rise + rng.uniform(0.001, 1.0)
        assert cam_shift(drive, higher).crank > cam_shift(drive, rise).crank


def test_valve_gap_is_that_of_two_planes_moved_apart() -> None:
    rng = random.Random(75)
    for _ in range(CASES):
        valve = MeasuredValve(
            clearance=rng.uniform(1.0, 4.0), tilt=math.radians(rng.uniform(0.0, 25.0))
        )
        rise = rng.uniform(-1.0, 1.0)
        square = np.array([math.sin(valve.tilt), math.cos(valve.tilt)])
        on_pocket = np.zeros(2)
        on_valve = on_pocket + valve.clearance * square + np.array([0.0, rise])
        gap = float((on_valve - on_pocket) @ square)
        assert valve_to_piston(valve, rise) == pytest.approx(gap, abs=1e-12)


GOOD = {"crank_teeth": 18, "cam_teeth": 36, "pitch": 9.525, "centres": 220.0}


@pytest.mark.parametrize(
    ("changed", "named"),
    [
        ({"banks": 2}, "cam-banks.*two banks"),
        ({"cam_teeth": 30}, "cam-teeth.*36"),
        ({"crank_teeth": 4, "cam_teeth": 8}, "crank-teeth"),
        ({"centres": 60.0}, "cam-centres"),
        ({"pitch": 0.0}, "chain-pitch"),
        ({"lift_angle": 1.5}, "lift-angle"),
    ],
)
def test_a_drive_that_cannot_be_solved_is_refused_by_field(
    changed: dict[str, float], named: str
) -> None:
    drive = CamDrive(**{**GOOD, **changed})
    with pytest.raises(InputError, match=named):
        cam_shift(drive, 0.5)
    with pytest.raises(InputError, match=named):
        rise_for_retard(drive, 0.01)


@pytest.mark.parametrize(
    ("pushrod", "named"),
    [
        (Pushrod(length=0.0), "pushrod-length"),
        (Pushrod(length=math.nan), "pushrod-length"),
        (Pushrod(length=200.0, tilt=1.4), "pushrod-tilt"),
    ],
)
def test_a_pushrod_that_is_none_is_refused_by_field(pushrod: Pushrod, named: str) -> None:
    with pytest.raises(InputError, match=named):
        pushrod_growth(pushrod, 0.5)


def test_a_preload_past_the_pushrod_is_refused() -> None:
    with pytest.raises(InputError, match="preload"):
        rise_for_growth(Pushrod(length=200.0), 120.0)


def test_a_retard_past_any_timing_is_refused() -> None:
    with pytest.raises(InputError, match="retard"):
        rise_for_retard(CamDrive(**GOOD), 2.0)
