"""What holds for every wire in every groove."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import integrate

from core.calc.groove import PressedWire, expected_height, room, segment_area, squeezed_segment
from core.errors import InputError

WIRES = st.floats(0.3, 3.0)
TIGHTNESS = st.floats(1e-5, 0.3)
DEPTHS = st.floats(0.2, 0.95)


def _pressed(wire: float, tightness: float, depth: float) -> PressedWire:
    return PressedWire(wire=wire, width=wire * (1.0 - tightness), depth=wire * depth)


@given(WIRES, TIGHTNESS, DEPTHS)
def test_best_lies_between_floor_and_ceiling(wire: float, tightness: float, depth: float) -> None:
    height = expected_height(_pressed(wire, tightness, depth))
    assert height.floor < height.best < height.ceiling


@given(WIRES, TIGHTNESS, DEPTHS, st.floats(0.01, 0.5))
def test_tighter_groove_raises_the_wire(
    wire: float, tightness: float, depth: float, more: float
) -> None:
    loose, tight = tightness * (1.0 - more), tightness
    assume(tight - loose > 1e-9)
    lower, higher = (expected_height(_pressed(wire, each, depth)) for each in (loose, tight))
    assert lower.best < higher.best
    assert lower.ceiling < higher.ceiling
    assert math.isclose(lower.floor, higher.floor)


@given(WIRES, st.floats(0.0, 0.2), DEPTHS)
def test_loose_wire_stands_at_its_diameter_less_the_depth(
    wire: float, slack: float, depth: float
) -> None:
    pressed = PressedWire(wire=wire, width=wire + slack, depth=depth * wire)
    height = expected_height(pressed)
    assert height.floor == height.best == height.ceiling == wire - depth * wire
    assert pressed.loose == (pressed.interference < 0.0)


@given(WIRES, TIGHTNESS, DEPTHS, st.floats(0.1, 40.0))
def test_scale_does_not_matter(wire: float, tightness: float, depth: float, scale: float) -> None:
    pressed = _pressed(wire, tightness, depth)
    scaled = PressedWire(
        wire=scale * pressed.wire, width=scale * pressed.width, depth=scale * pressed.depth
    )
    small, large = expected_height(pressed), expected_height(scaled)
    assert math.isclose(scale * small.best, large.best, rel_tol=1e-9, abs_tol=1e-12)
    assert math.isclose(scale**2 * squeezed_segment(pressed), squeezed_segment(scaled),
                        rel_tol=1e-6)


@given(st.floats(0.1, 2.0), st.floats(0.001, 1.0))
def test_segment_is_the_area_under_its_arc(radius: float, part: float) -> None:
    height = part * 2.0 * radius
    edge = math.acos(1.0 - height / radius)
    area, _ = integrate.quad(lambda t: 2.0 * (radius * math.sin(t)) ** 2, 0.0, edge, epsabs=0.0)
    assert math.isclose(segment_area(radius, height), area, rel_tol=1e-7)


@given(WIRES, st.floats(1e-5, 1e-3))
def test_small_interference_follows_its_series(wire: float, tightness: float) -> None:
    pressed = _pressed(wire, tightness, 0.7)
    i = pressed.interference
    series = 4.0 / 3.0 * i * math.sqrt(0.5 * wire * i)
    assert math.isclose(2.0 * squeezed_segment(pressed), series, rel_tol=2e-3)


def test_rectangle_of_the_same_area_is_no_upper_bound() -> None:
    pressed = PressedWire(wire=0.041, width=0.040, depth=0.030)
    rectangle = math.pi * pressed.wire**2 / (4.0 * pressed.width) - pressed.depth
    assert rectangle < expected_height(pressed).floor


def test_wire_wider_than_its_groove_has_room_only_if_deep_enough() -> None:
    assert room(PressedWire(wire=1.0, width=0.97, depth=0.75)).enough
    assert not room(PressedWire(wire=1.0, width=0.7, depth=0.75)).enough


def test_sunk_wire_lies_wholly_below_the_deck() -> None:
    sunk = room(PressedWire(wire=1.0, width=1.0, depth=1.5))
    assert math.isclose(sunk.wire_below_deck, math.pi / 4.0)


def test_every_size_that_is_missing_is_named() -> None:
    with pytest.raises(InputError, match=r"wire: .*groove-depth: "):
        PressedWire(wire=0.0, width=1.0, depth=-1.0)
