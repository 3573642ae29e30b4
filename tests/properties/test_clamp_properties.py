"""More torque never clamps less, more height never loads the body more, and the like."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from core.calc.bedding import ANNEALED, Copper, contact_half_width, depth_at
from core.calc.clamp import Cylinder, CylinderLoads, Joint
from core.calc.engine_clamp import EngineClamp, engine_clamp
from core.calc.fastener_layout import counted
from core.calc.fasteners import Grip, read_thread, standard_fastener
from core.calc.gasket import HeadFace
from core.calc.load_curve import load_curve
from core.calc.preload import TYPED, ByAngle, ByStretch, ByTorque, Friction
from core.calc.separation import entered_pressure

M12 = standard_fastener(read_thread("M12x1.75", "t"), "10.9", "g")
GRIP = Grip(length=100.0, shank=60.0)
torques = st.floats(20e3, 160e3)
frictions = st.floats(0.08, 0.35)
heights = st.floats(0.02, 0.6)
pressures = st.floats(2.0, 40.0)
sides = st.booleans()


def by_torque(torque: float, friction: float = 0.18) -> ByTorque:
    return ByTorque(torque=torque, friction=Friction(value=friction, half_width=None, source=TYPED))


def answer(
    tightening: object, height: float = 0.25, pressure: float = 10.0, copper: Copper = ANNEALED
) -> EngineClamp:
    joint = Joint(fastener=M12, tightening=tightening, copper=copper, face=HeadFace(answered=True))
    cylinder = Cylinder(
        name="1",
        ring_diameter=100.0,
        wire_diameter=1.04,
        height=height,
        height_u=0.007,
        fasteners=counted(4.5),
        pressure=entered_pressure(pressure),
    )
    return engine_clamp(joint, [cylinder])


def loads(*given: object, **named: object) -> CylinderLoads:
    return answer(*given, **named).weakest.loads


@settings(deadline=None)
@given(torques, torques, frictions)
def test_more_torque_never_clamps_less(one: float, other: float, friction: float) -> None:
    less, more = sorted((one, other))
    low, high = (loads(by_torque(each, friction)) for each in (less, more))
    assert high.clamp.value >= low.clamp.value
    assert high.separation >= low.separation
    assert high.body.low >= low.body.low - 1e-6


@settings(deadline=None)
@given(torques, frictions, frictions)
def test_more_friction_never_clamps_more(torque: float, one: float, other: float) -> None:
    less, more = sorted((one, other))
    slippery, rough = (loads(by_torque(torque, each)) for each in (less, more))
    assert rough.clamp.value <= slippery.clamp.value


@settings(deadline=None)
@given(torques, heights, heights)
def test_a_higher_wire_never_loads_the_body_more(torque: float, one: float, other: float) -> None:
    low, high = (loads(by_torque(torque), height) for height in sorted((one, other)))
    for lower, higher in zip(low.bedding, high.bedding, strict=True):
        assert higher.body <= lower.body + 1e-6
        assert higher.carried >= lower.carried - 1e-6
        assert higher.stands_off >= lower.stands_off - 1e-12


@settings(deadline=None)
@given(torques, pressures, pressures)
def test_more_gas_never_leaves_more(torque: float, one: float, other: float) -> None:
    low, high = (loads(by_torque(torque), 0.25, each) for each in sorted((one, other)))
    assert high.left.value <= low.left.value
    assert high.at_peak.value >= low.at_peak.value


@settings(deadline=None)
@given(st.floats(0.02, 0.5), st.floats(0.02, 0.5))
def test_more_stretch_never_clamps_less(one: float, other: float) -> None:
    low, high = (
        loads(ByStretch(stretch=each, grip=GRIP)).clamp.value for each in sorted((one, other))
    )
    assert high >= low


@settings(deadline=None)
@given(st.floats(0.1, 3.0), st.floats(0.1, 3.0))
def test_more_angle_never_clamps_less(one: float, other: float) -> None:
    friction = Friction(value=0.15, half_width=0.03, source=TYPED)
    low, high = (
        loads(
            ByAngle(snug_torque=30e3, friction=friction, angle=each, grip=GRIP, load_share=0.2)
        ).clamp.value
        for each in sorted((one, other))
    )
    assert high >= low


@settings(deadline=None)
@given(torques, heights)
def test_every_answer_lies_in_the_range_and_balances(torque: float, height: float) -> None:
    found = loads(by_torque(torque), height)
    for case in found.bedding:
        assert found.wire.low <= case.carried <= found.wire.high
        assert found.body.low <= case.body <= found.body.high
        assert abs(case.carried + case.body - found.clamp.value) < 1e-6


@settings(deadline=None)
@given(st.floats(0.3, 2.5), st.floats(0.0, 1.0))
def test_depth_and_strip_are_inverse(wire: float, part: float) -> None:
    depth = part * 0.5 * wire
    again = depth_at(wire, contact_half_width(wire, depth))
    assert abs(again - depth) < 1e-6 * wire


@settings(deadline=None)
@given(torques, st.floats(35.0, 110.0))
def test_a_measured_hardness_narrows_the_range(torque: float, hardness: float) -> None:
    measured = loads(by_torque(torque), copper=Copper(hardness=hardness)).bedding
    open_range = loads(by_torque(torque)).bedding
    assert measured[-1].needed / measured[0].needed < open_range[-1].needed / open_range[0].needed


@settings(deadline=None)
@given(torques, heights, st.floats(0.5, 2.0))
def test_the_curve_falls_and_passes_through_today(
    torque: float, height: float, sheet: float
) -> None:
    engine = answer(by_torque(torque), height)
    curve = load_curve(engine.joint, engine.weakest.loads, sheet)
    bodies = [(point.body.low, point.body.high) for point in curve.points]
    assert bodies == sorted(bodies, reverse=True)
    assert curve.points[0].body.low == curve.clamp
    assert curve.points[-1].height >= min(curve.today, curve.quarter or 0.0)
    hardest = curve.slack_height[0]
    if hardest is not None:
        there = replace(engine.weakest.loads.cylinder, height=min(hardest, 1.03))
        at = engine_clamp(engine.joint, [there]).weakest.loads
        assert at.body.low <= 1e-3 * at.clamp.value
