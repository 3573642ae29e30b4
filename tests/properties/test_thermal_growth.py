"""Heat against dimensions grown one by one."""

import math
import random

import pytest

from core.calc.thermal import HeatedRing, growth, heated, slides
from core.errors import InputError
from core.tables.clearance_practice import HEAT_MATTERS_FROM
from core.tables.expansion import EXPANSION, Metal

CASES = 1000
INCH = 25.4


def grown(length: float, metal: Metal, warmer: float) -> float:
    return length * (1.0 + EXPANSION[metal].coefficient * warmer)


def random_ring(rng: random.Random) -> HeatedRing:
    wire = rng.uniform(0.5, 1.6)
    return HeatedRing(
        wire=wire,
        groove_width=wire - rng.uniform(0.0, 0.05),
        groove_depth=rng.uniform(0.6, 0.8) * wire,
        ring=rng.uniform(50.0, 200.0),
        warmer=rng.uniform(-60.0, 200.0),
        block=rng.choice((Metal.GREY_IRON, Metal.ALUMINIUM_356)),
    )


def test_changes_are_those_of_dimensions_grown_one_by_one() -> None:
    rng = random.Random(81)
    for _ in range(CASES):
        ring = random_ring(rng)
        hot, metal = ring.warmer, ring.metal
        wire = grown(ring.wire, metal, hot)
        width, depth = (
            grown(each, ring.block, hot) for each in (ring.groove_width, ring.groove_depth)
        )
        found = heated(ring)
        tighter = (wire - width) - (ring.wire - ring.groove_width)
        higher = (wire - depth) - (ring.wire - ring.groove_depth)
        assert found.interference.change == pytest.approx(tighter, abs=1e-12)
        assert found.height.change == pytest.approx(higher, abs=1e-12)
        length = math.pi * ring.ring
        gap = grown(length, ring.block, hot) - grown(length, metal, hot)
        assert found.joint_gap.change == pytest.approx(gap, abs=1e-9)
        assert found.radius.change == pytest.approx(-gap / (2 * math.pi), abs=1e-9)
        assert (found.butted_stress > 0.0) == (gap < 0.0)


def worked_ring(block: Metal) -> HeatedRing:
    return HeatedRing(
        wire=0.041 * INCH,
        groove_width=0.040 * INCH,
        groove_depth=0.030 * INCH,
        ring=4.25 * INCH,
        warmer=80.0,
        block=block,
    )


@pytest.mark.parametrize("block", [Metal.GREY_IRON, Metal.ALUMINIUM_356])
def test_interference_and_height_do_not_matter_and_the_joint_does(block: Metal) -> None:
    found = heated(worked_ring(block))
    assert not found.interference.matters
    assert not found.height.matters
    assert found.joint_gap.matters


def test_the_joint_opens_in_aluminium_and_closes_in_iron() -> None:
    assert heated(worked_ring(Metal.ALUMINIUM_356)).joint_gap.change > HEAT_MATTERS_FROM
    assert heated(worked_ring(Metal.ALUMINIUM_356)).butted_stress == 0.0
    assert heated(worked_ring(Metal.GREY_IRON)).joint_gap.change < -HEAT_MATTERS_FROM


def test_the_sheet_grows_by_nothing_that_matters() -> None:
    assert not growth(0.043 * INCH, Metal.COPPER, 80.0).matters
    assert slides(2.125 * INCH, Metal.ALUMINIUM_356, Metal.GREY_IRON, 80.0).matters


def test_a_ring_without_size_is_refused_by_field() -> None:
    sizes = {"wire": 0.0, "groove_width": -1.0, "groove_depth": math.nan, "ring": 0.0}
    with pytest.raises(InputError, match=r"wire.*groove-width.*groove-depth.*ring"):
        heated(HeatedRing(**sizes, warmer=80.0, block=Metal.GREY_IRON))
