"""Heights from pair readings: numpy and scipy agree, and nothing is filled in."""

import math
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import linalg, stats

from core.calc.chi_square import Agreement, agreement, survival
from core.calc.least_squares import solve
from core.calc.pair_heights import Heights, Reading, between, heights, predicted_gap
from core.errors import InputError

HALF = Fraction(1, 2)
PARTS = st.sampled_from([HALF, HALF, HALF, Fraction(1, 4), Fraction(3, 4), Fraction(5, 4)])


def midspan(pairs: list[str], values: list[float] | None = None, u: float = 0.3) -> list[Reading]:
    return [
        Reading(name=pair, first=pair[0], second=pair[1], part=HALF, value=value, u=u)
        for pair, value in zip(pairs, values or [10.0] * len(pairs), strict=True)
    ]


@st.composite
def reading_sets(draw: st.DrawFn) -> tuple[list[str], list[Reading]]:
    wires = [str(k) for k in range(draw(st.integers(1, 7)))]
    readings = []
    for k in range(draw(st.integers(1, 12))):
        first = draw(st.sampled_from(wires))
        others = [each for each in wires if each != first]
        second = draw(st.sampled_from([None, *others, *others, *others]))
        readings.append(
            Reading(
                name=str(k),
                first=first,
                second=second,
                part=draw(PARTS) if second else Fraction(0),
                value=draw(st.floats(0.1, 0.4)),
                u=draw(st.floats(0.003, 0.02)),
            )
        )
    return wires, readings


def matrix(wires: list[str], readings: list[Reading]) -> np.ndarray:
    rows = np.zeros((len(readings), len(wires)))
    for row, each in zip(rows, readings, strict=True):
        for wire, part in each.tie:
            row[wires.index(wire)] += float(part)
    return rows


@given(reading_sets())
@settings(max_examples=300, deadline=None)
def test_determined_is_what_numpy_finds_in_the_row_space(
    case: tuple[list[str], list[Reading]],
) -> None:
    wires, readings = case
    rows = matrix(wires, readings)
    free = linalg.null_space(rows, rcond=1e-9)
    found = heights(wires, readings)
    for k, wire in enumerate(wires):
        assert found.height(wire).determined == bool(np.all(np.abs(free[k]) < 1e-6)), wire
    assert found.dof == len(readings) - np.linalg.matrix_rank(rows, tol=1e-9)
    assert len(found.undetermined) == free.shape[1]


@given(reading_sets())
@settings(max_examples=200, deadline=None)
def test_heights_spreads_and_scatter_are_those_of_numpy(
    case: tuple[list[str], list[Reading]],
) -> None:
    wires, readings = case
    found = heights(wires, readings)
    us = np.array([each.u for each in readings])
    weighted = matrix(wires, readings) / us[:, None]
    right = np.array([each.value for each in readings]) / us
    least, *_ = np.linalg.lstsq(weighted, right, rcond=1e-10)
    covariance = np.linalg.pinv(weighted.T @ weighted, rcond=1e-10, hermitian=True)
    for k, wire in enumerate(wires):
        told = found.height(wire)
        if told.determined:
            assert math.isclose(told.height, least[k], rel_tol=1e-6, abs_tol=1e-9)
            assert math.isclose(told.u, math.sqrt(covariance[k, k]), rel_tol=1e-5)
    residual = right - weighted @ least
    assert math.isclose(found.chi2, residual @ residual, rel_tol=1e-6, abs_tol=1e-9)


@given(reading_sets())
@settings(max_examples=100, deadline=None)
def test_moving_a_free_group_changes_no_reading(case: tuple[list[str], list[Reading]]) -> None:
    wires, readings = case
    for group in heights(wires, readings).undetermined:
        move = dict(group.free)
        for each in readings:
            assert sum(part * move.get(wire, 0) for wire, part in each.tie) == 0


def test_square_of_four_at_midspan_determines_no_height_and_shows_the_zigzag() -> None:
    found = heights("1234", midspan(["12", "23", "34", "41"]))
    assert found.determined == ()
    assert dict(found.undetermined[0].free) == {"1": 1, "2": -1, "3": 1, "4": -1}
    assert found.dof == 1


def test_square_still_shows_that_its_own_readings_contradict_each_other() -> None:
    found = heights("1234", midspan(["12", "23", "34", "41"], [10.0, 10.0, 10.0, 14.0]))
    assert found.determined == ()
    assert found.agreement is Agreement.DISAGREE


def test_one_direct_reading_determines_the_square() -> None:
    single = Reading(name="1", first="1", value=10.0, u=0.3)
    found = heights("1234", [*midspan(["12", "23", "34", "41"]), single])
    assert found.determined == ("1", "2", "3", "4")


@pytest.mark.parametrize("wires", [3, 5, 7])
def test_odd_loop_at_midspan_determines_every_height(wires: int) -> None:
    names = "1234567"[:wires]
    pairs = [names[k] + names[(k + 1) % wires] for k in range(wires)]
    assert heights(names, midspan(pairs)).determined == tuple(names)


@pytest.mark.parametrize("wires", [2, 4, 6])
def test_even_loop_and_open_chain_determine_none(wires: int) -> None:
    names = "123456"[:wires]
    chain = [names[k : k + 2] for k in range(wires - 1)]
    for pairs in (chain, [*chain, names[-1] + names[0]]):
        assert heights(names, midspan(pairs)).determined == ()


def test_part_a_hair_from_midspan_is_not_midspan_by_rounding() -> None:
    almost = Fraction(1, 2) + Fraction(1, 1000)
    odd = Reading(name="41", first="4", second="1", part=almost, value=10.0, u=0.3)
    found = heights("1234", [*midspan(["12", "23", "34"]), odd])
    assert found.determined == ("1", "2", "3", "4")
    assert found.height("1").u > 100.0


def test_wire_that_nothing_read_is_said_to_be_undetermined() -> None:
    found = heights("12", [Reading(name="1", first="1", value=10.0, u=0.3)])
    assert found.height("1").determined
    assert found.height("2").height is None


def test_leaf_error_is_shared_by_every_height_read_with_leaves() -> None:
    readings = [
        Reading(name=each.name, first=each.first, second=each.second, part=each.part,
                value=each.value, u=each.u, by_leaves=True)
        for each in midspan(["12", "23", "13"], [9.5, 10.5, 11.0])
    ]
    alone, shared = heights("123", readings), heights("123", readings, leaf_u=0.2)
    assert math.isclose(shared.height("1").height, 10.0)
    for wire in "123":
        both = math.hypot(alone.height(wire).u, 0.2)
        assert math.isclose(shared.height(wire).u, both, rel_tol=1e-9)
    assert math.isclose(shared.covariance_of("1", "2"), alone.covariance_of("1", "2") + 0.04)


def test_another_instrument_shows_the_error_of_the_leaf_set() -> None:
    leaf = Reading(name="leaf", first="1", value=10.5, u=0.01, by_leaves=True)
    rod = Reading(name="rod", first="1", value=10.0, u=0.01)
    found = heights("1", [leaf, rod], leaf_u=1.0)
    assert math.isclose(found.leaf_error[0], 0.5, abs_tol=1e-3)
    assert math.isclose(found.height("1").height, 10.0, abs_tol=1e-3)


def test_reading_beyond_both_wires_is_marked_and_is_worse() -> None:
    found = heights("12", [Reading(name=w, first=w, value=10.0, u=0.3) for w in "12"])
    inside, outside = (predicted_gap(found, "1", "2", part) for part in (0.5, 1.25))
    assert outside.u > inside.u
    assert Reading(name="x", first="1", second="2", part=Fraction(5, 4), value=1, u=1).outside


def test_the_misread_leaf_is_the_suspect() -> None:
    singles = [Reading(name=w, first=w, value=10.0, u=0.3) for w in "123"]
    wrong = midspan(["12", "23", "13"], [10.0, 10.0, 12.5])
    found = heights("123", [*singles, *wrong])
    assert found.agreement is Agreement.DISAGREE
    assert max(found.residuals, key=lambda each: abs(each.normalised)).reading.name == "13"
    assert next(each for each in found.residuals if each.reading.name == "13").suspect


def test_reading_that_nothing_checks_has_no_normalised_residual() -> None:
    found = heights("1", [Reading(name="1", first="1", value=10.0, u=0.3)])
    assert found.residuals[0].normalised is None
    assert found.agreement is Agreement.NOTHING_TO_COMPARE


def test_higher_wire_between_two_is_found_to_lift_the_straightedge() -> None:
    singles = [
        Reading(name=w, first=w, value=v, u=0.1) for w, v in (("1", 10.0), ("2", 12.0), ("3", 10.0))
    ]
    found: Heights = heights("1234", singles)
    high = between(found, "1", "3", "2", 0.5)
    assert math.isclose(high.margin, 2.0)
    assert math.isclose(high.u, 0.1 * math.sqrt(1.5))
    assert high.p_above > 0.99
    assert between(found, "1", "4", "2", 0.5) is None


def test_unknown_wire_and_missing_spread_are_both_named() -> None:
    bad = [
        Reading(name="readings[1]", first="9", value=1.0, u=0.1),
        Reading(name="readings[2]", first="1", value=1.0, u=0.0),
    ]
    with pytest.raises(InputError, match=r"readings\[1\]: wire 9 .*readings\[2\]: this spread"):
        heights("1", bad)


@given(st.floats(0.0, 60.0), st.integers(1, 40))
def test_chi_square_is_that_of_scipy(chi2: float, dof: int) -> None:
    assert math.isclose(survival(chi2, dof), stats.chi2.sf(chi2, dof), rel_tol=1e-9, abs_tol=1e-15)


def test_agreement_too_close_to_be_true_is_told() -> None:
    assert agreement(0.01, 12) is Agreement.CLOSER_THAN_STATED
    assert agreement(11.0, 12) is Agreement.AGREE


def test_columns_that_depend_on_each_other_are_refused() -> None:
    with pytest.raises(ArithmeticError, match="column 1"):
        solve([[1.0, 1.0], [2.0, 2.0], [3.0, 3.0]], [1.0, 2.0, 3.0], [1.0, 1.0, 1.0])
