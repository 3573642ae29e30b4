"""The draws against first order: where near linear within 2 %, and where not they say so."""

from collections.abc import Sequence
from dataclasses import replace
from random import Random

import pytest

from core.calc.bedding import ANNEALED
from core.calc.clamp import Cylinder, Joint
from core.calc.clamp_draws import Compared, Progress, cross_check
from core.calc.engine_clamp import EngineClamp, engine_clamp
from core.calc.fastener_layout import Place, share_fasteners
from core.calc.fasteners import Grip, read_thread, standard_fastener
from core.calc.gasket import HeadFace
from core.calc.preload import ByStretch, ByTorque, PercentOfProof, Tightening, friction_of
from core.calc.separation import entered_pressure
from core.tables.friction import find_lubricant

INCH = 25.4
BORES = [Place(x=111.8 * i, y=0.0) for i in range(4)]
STUDS = [Place(x=111.8 * (i - 0.5), y=y) for i in range(5) for y in (-60.0, 60.0)]


def engine(tightening: Tightening, height: float = 0.0105 * INCH) -> EngineClamp:
    joint = Joint(
        fastener=standard_fastener(read_thread("7/16-14", "t"), "8", "g"),
        tightening=tightening,
        copper=ANNEALED,
        face=HeadFace(answered=True),
    )
    cylinders = [
        Cylinder(
            name=str(number + 1),
            ring_diameter=4.300 * INCH,
            wire_diameter=0.041 * INCH,
            height=height,
            height_u=0.0003 * INCH,
            fasteners=share,
            pressure=entered_pressure(6.9),
        )
        for number, share in enumerate(share_fasteners(BORES, STUDS))
    ]
    return engine_clamp(joint, cylinders)


def compared(found: EngineClamp, seed: int = 20) -> Sequence[Compared]:
    *_, last = cross_check(found, Random(seed))
    assert last.compared is not None
    return last.compared


def test_near_linear_spreads_agree_within_two_per_cent() -> None:
    for row in compared(engine(PercentOfProof(share=0.75))):
        assert row.u == pytest.approx(row.first_order_u, rel=0.02), row.quantity
        assert row.near_linear


def test_means_of_the_draws_are_the_best_values_where_near_linear() -> None:
    found = engine(PercentOfProof(share=0.75))
    clamps = [row for row in compared(found) if row.quantity == "clamp"]
    for each, row in zip(found.cylinders, clamps, strict=True):
        assert row.mean == pytest.approx(each.loads.clamp.value, rel=0.005)


def test_a_wide_friction_is_not_near_linear_and_says_so() -> None:
    """Clamp goes with 1/K: K from 0.10 to 0.26 spreads it by far more than first order says."""
    oil = find_lubricant("oil")
    assert oil is not None
    rows = compared(engine(ByTorque(torque=80e3, friction=friction_of(oil))))
    clamp = next(row for row in rows if row.quantity == "clamp")
    assert clamp.u > 1.05 * clamp.first_order_u
    assert not clamp.near_linear


def test_a_wire_near_the_deck_is_not_near_linear_and_says_so() -> None:
    """Wire load goes with the root of the height; near zero no straight line follows it."""
    by_stretch = ByStretch(stretch=0.012 * INCH, grip=Grip(length=4.0 * INCH))
    rows = compared(engine(by_stretch, height=0.0003 * INCH))
    hardest = next(row for row in rows if row.quantity == "body-at-least")
    assert not hardest.near_linear


def test_probabilities_of_both_ways_agree_where_near_linear() -> None:
    for row in compared(engine(PercentOfProof(share=0.75))):
        assert row.above_zero == pytest.approx(row.first_order_above_zero, abs=0.03)


def test_progress_comes_in_slices_and_one_seed_gives_one_answer() -> None:
    found = engine(PercentOfProof(share=0.75))
    steps = list(cross_check(found, Random(3), draws=1000, slice_size=250))
    assert [each.done for each in steps] == [250, 500, 750, 1000]
    assert [each.compared is None for each in steps] == [True, True, True, False]
    again = list(cross_check(found, Random(3), draws=1000, slice_size=100))[-1]
    assert again == Progress(done=1000, draws=1000, compared=steps[-1].compared)
    other = list(cross_check(found, Random(4), draws=1000))[-1]
    assert other.compared != again.compared


def test_nothing_uncertain_draws_one_value() -> None:
    found = engine(PercentOfProof(share=0.75))
    certain = replace(
        found.preload,
        terms=tuple(replace(term, u=0.0) for term in found.preload.terms),
        random=0.0,
    )
    *_, last = cross_check(replace(found, preload=certain), Random(1), draws=10)
    assert last.compared is not None
    clamp = last.compared[0]
    assert clamp.u == pytest.approx(0.0, abs=1e-6)
    assert clamp.mean == pytest.approx(found.cylinders[0].loads.clamp.value)
