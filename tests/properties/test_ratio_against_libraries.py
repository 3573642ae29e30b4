"""Compression ratio against general libraries, a thousand random cylinders each."""

import math
import random
from dataclasses import fields

import numpy as np
import pytest
from GTC import ureal
from scipy.integrate import quad
from scipy.optimize import brentq

from core.calc.compression import (
    CylinderVolumes,
    clearance_volume,
    compression,
    ratio,
    ratio_slope,
    sheet_for_ratio,
    sheet_spread,
    swept_volume,
)
from core.errors import InputError
from core.tables.clearance_practice import VOLUME_HALF_WIDTHS

CASES = 1000


def random_cylinder(rng: random.Random) -> CylinderVolumes:
    bore = rng.uniform(40.0, 200.0)
    stroke = rng.uniform(0.6, 1.4) * bore
    swept = 0.25 * math.pi * bore**2 * stroke
    return CylinderVolumes(
        bore=bore,
        stroke=stroke,
        chamber=rng.uniform(0.04, 0.15) * swept,
        deck=rng.uniform(-0.3, 1.0),
        gasket_bore=bore + rng.uniform(0.0, 5.0),
        dish=rng.choice((0.0, rng.uniform(0.0, 0.04) * swept)),
        dome=rng.choice((0.0, rng.uniform(0.0, 0.02) * swept)),
    )


def by_integration(cylinder: CylinderVolumes, sheet: float) -> float:
    """Ratio from slices of the space over the piston, top and bottom of its stroke."""

    def radius(depth: float) -> float:
        return 0.5 * (cylinder.gasket_bore if depth < sheet else cylinder.bore)

    def slices(piston: float) -> float:
        in_sheet, _ = quad(lambda depth: math.pi * radius(depth) ** 2, 0.0, sheet)
        below, _ = quad(lambda depth: 0.25 * math.pi * cylinder.bore**2, sheet, sheet + piston)
        return in_sheet + below + cylinder.chamber + cylinder.dish - cylinder.dome

    return slices(cylinder.deck + cylinder.stroke) / slices(cylinder.deck)


def test_ratio_is_that_of_the_integrated_volumes() -> None:
    rng = random.Random(61)
    for _ in range(CASES):
        cylinder, sheet = random_cylinder(rng), rng.uniform(0.3, 2.5)
        assert ratio(cylinder, sheet) == pytest.approx(by_integration(cylinder, sheet), rel=1e-9)


def test_sheet_for_a_ratio_is_the_root_that_a_solver_finds() -> None:
    rng = random.Random(62)
    for _ in range(CASES):
        cylinder, sheet = random_cylinder(rng), rng.uniform(0.3, 2.5)
        wanted = ratio(cylinder, sheet)
        root = brentq(lambda t, c=cylinder, w=wanted: ratio(c, t) - w, 0.01, 5.0, xtol=1e-12)
        assert sheet_for_ratio(cylinder, wanted) == pytest.approx(root, abs=1e-8)


def test_slope_is_the_derivative() -> None:
    rng = random.Random(63)
    for _ in range(CASES):
        cylinder, sheet = random_cylinder(rng), rng.uniform(0.3, 2.5)
        step = np.array([-1e-4, 1e-4])
        low, high = (ratio(cylinder, sheet + each) for each in step)
        assert ratio_slope(cylinder, sheet) == pytest.approx((high - low) / 2e-4, rel=1e-5)


def test_spread_is_that_of_a_reference_library() -> None:
    rng = random.Random(64)
    half = VOLUME_HALF_WIDTHS
    for _ in range(CASES):
        cylinder, sheet = random_cylinder(rng), rng.uniform(0.3, 2.5)
        crown = half.crown if cylinder.dish or cylinder.dome else 0.0
        bore, stroke, hole, chamber, top, deck, thickness = (
            ureal(value, width / math.sqrt(3.0))
            for value, width in (
                (cylinder.bore, half.diameter),
                (cylinder.stroke, half.diameter),
                (cylinder.gasket_bore, half.diameter),
                (cylinder.chamber, half.chamber),
                (cylinder.dish - cylinder.dome, crown),
                (cylinder.deck, half.deck),
                (sheet, half.sheet),
            )
        )
        area = math.pi / 4 * bore**2
        clearance = chamber + top + area * deck + math.pi / 4 * hole**2 * thickness
        expected = (area * stroke + clearance) / clearance
        found = compression(cylinder, sheet).ratio
        assert found.value == pytest.approx(expected.x, rel=1e-12)
        # ours takes its slopes by small steps, and a deck near zero has a step too small for them
        assert found.u == pytest.approx(expected.u, rel=2e-4)


def test_spread_of_a_sheet_for_a_ratio_is_that_of_a_reference_library() -> None:
    rng = random.Random(65)
    half = VOLUME_HALF_WIDTHS
    for _ in range(CASES):
        cylinder = random_cylinder(rng)
        crown = half.crown if cylinder.dish or cylinder.dome else 0.0
        chamber = ureal(cylinder.chamber, half.chamber / math.sqrt(3.0))
        top = ureal(cylinder.dish - cylinder.dome, crown / math.sqrt(3.0))
        deck = ureal(cylinder.deck, half.deck / math.sqrt(3.0))
        without = chamber + top + math.pi / 4 * cylinder.bore**2 * deck
        sheet = (swept_volume(cylinder) / 9.0 - without) / (math.pi / 4 * cylinder.gasket_bore**2)
        assert sheet_for_ratio(cylinder, 10.0) == pytest.approx(sheet.x, rel=1e-9, abs=1e-9)
        assert sheet_spread(cylinder, half) == pytest.approx(sheet.u, rel=1e-9)


def test_a_thicker_sheet_never_raises_the_ratio_nor_does_a_larger_chamber() -> None:
    rng = random.Random(66)
    for _ in range(CASES):
        cylinder, sheet = random_cylinder(rng), rng.uniform(0.3, 2.5)
        more = rng.uniform(0.01, 1.0)
        assert ratio(cylinder, sheet + more) < ratio(cylinder, sheet)
        sizes = {each.name: getattr(cylinder, each.name) for each in fields(cylinder)}
        larger = CylinderVolumes(**{**sizes, "chamber": cylinder.chamber * (1.0 + more)})
        assert ratio(larger, sheet) < ratio(cylinder, sheet)


@pytest.mark.parametrize(
    ("changed", "field"),
    [
        ({"bore": 0.0}, "bore"),
        ({"stroke": -1.0}, "stroke"),
        ({"gasket_bore": 99.0}, "gasket-bore"),
        ({"chamber": -1.0}, "chamber"),
        ({"dome": 90_000.0}, "dome"),
        ({"deck": -20.0}, "deck"),
        ({"bore": math.nan}, "bore"),
    ],
)
def test_a_cylinder_that_cannot_be_is_refused_by_field(
    changed: dict[str, float], field: str
) -> None:
    sizes = {"bore": 100.0, "stroke": 90.0, "chamber": 60_000.0, "deck": 0.1, "gasket_bore": 102.0}
    with pytest.raises(InputError, match=field):
        ratio(CylinderVolumes(**{**sizes, **changed}), 1.0)


def test_a_ratio_of_one_is_refused() -> None:
    cylinder = random_cylinder(random.Random(1))
    with pytest.raises(InputError, match="for-ratio"):
        sheet_for_ratio(cylinder, 1.0)


def test_clearance_is_what_the_parts_sum_to() -> None:
    cylinder = random_cylinder(random.Random(2))
    found = compression(cylinder, 1.0)
    parts = found.gasket + found.deck + cylinder.chamber + cylinder.dish - cylinder.dome
    assert found.clearance == pytest.approx(parts)
    assert found.clearance == pytest.approx(clearance_volume(cylinder, 1.0))
