"""What a spool and a piece left over make."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calc.wire import Engine, from_piece, from_spool, length_of_mass, mass, wire_needed
from core.errors import InputError
from core.tables.lockwire import LOCKWIRE, label_half_width, nearest_size

EIGHT = Engine(wire=1.0414, rings=(107.95,) * 8, trimming=12.7)


def test_eight_rings_take_eight_circumferences_and_eight_allowances() -> None:
    needed = wire_needed(EIGHT)
    assert math.isclose(needed.net, 8 * math.pi * 107.95)
    assert math.isclose(needed.cut, needed.net + 8 * 12.7)
    assert math.isclose(needed.mass, mass(1.0414, needed.net))


def test_a_piece_cut_for_three_rings_makes_three() -> None:
    each = EIGHT.cut_lengths[0]
    assert len(from_piece(EIGHT, 3 * each).rings) == 3
    assert math.isclose(from_piece(EIGHT, 3 * each).left, 0.0, abs_tol=1e-9)
    assert len(from_piece(EIGHT, 3 * each - 0.1).rings) == 2


def test_a_short_piece_says_the_largest_ring_it_could_make() -> None:
    piece = from_piece(EIGHT, 300.0)
    assert piece.rings == ()
    assert math.isclose(piece.largest, (300.0 - 12.7) / math.pi)
    assert from_piece(EIGHT, 5.0).largest == 0.0


def test_a_piece_makes_large_rings_before_small_ones() -> None:
    engine = Engine(wire=1.0, rings=(80.0, 100.0, 90.0), trimming=0.0)
    assert from_piece(engine, math.pi * 185.0).rings == (1, 0)


@given(st.floats(100.0, 1e6))
def test_what_is_cut_and_what_is_left_make_the_spool(length: float) -> None:
    made = from_spool(EIGHT, length)
    assert math.isclose(made.engines * wire_needed(EIGHT).cut + made.left, length, rel_tol=1e-8)
    assert made.left <= wire_needed(EIGHT).cut * (1.0 + 1e-8)
    assert made.rings >= 8 * made.engines


@given(st.floats(0.3, 3.0), st.floats(1.0, 2000.0))
def test_spool_weighed_or_measured_is_one_length(wire: float, grams: float) -> None:
    assert math.isclose(mass(wire, length_of_mass(wire, grams)), grams)


def test_standard_sizes_are_their_dash_numbers() -> None:
    assert [size.dash for size in LOCKWIRE] == [15, 20, 25, 32, 40, 41, 47, 51, 60, 91]
    for size in LOCKWIRE:
        assert math.isclose(size.diameter, size.dash * 0.0254)
        assert nearest_size(size.diameter) is size


@pytest.mark.parametrize(
    ("thou", "half"), [(15, 0.4), (25, 0.5), (32, 0.5), (41, 0.8), (47, 1.0), (10, 0.4)]
)
def test_limit_of_a_wire_that_was_not_measured(thou: float, half: float) -> None:
    assert math.isclose(label_half_width(thou * 0.0254), half * 0.0254)


def test_sizes_that_are_missing_are_all_named() -> None:
    with pytest.raises(InputError, match=r"wire: .*ring: .*trimming: "):
        Engine(wire=0.0, rings=(), trimming=-1.0)
