"""What readings of one place say together, and what a stack of leaves adds."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calc.height import (
    Bound,
    DepthInstrument,
    Height,
    as_given,
    combine,
    from_depth,
    from_leaves,
    from_snug_leaf,
)
from core.calc.leaves import MOST_LEAVES, Stack, stacks, thickness
from core.errors import InputError
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.tables.leaf_sets import INCH_SET, METRIC_SET, LeafSet
from core.uncertain import rectangular

THOU = 0.0254
NANOMETRE = 1e-6
given_heights = st.builds(
    as_given,
    st.floats(5.0, 15.0).map(lambda thou: thou * THOU),
    st.floats(0.05, 2.0).map(lambda thou: thou * THOU),
)
several = st.lists(given_heights, min_size=2, max_size=6)
CALIPER = DepthInstrument(name="caliper", limit=0.02, step=0.01)
marked = st.lists(st.integers(3, 25), min_size=1, max_size=3, unique=True)


def leaf(thou: float) -> Stack:
    return Stack((thou * THOU,))


def close(one: Height, other: Height) -> bool:
    return all(
        math.isclose(a, b, rel_tol=1e-7)
        for a, b in zip((one.value, one.u, one.low, one.high),
                        (other.value, other.u, other.low, other.high), strict=True)
    )  # fmt: skip


@given(several)
def test_the_order_of_readings_does_not_matter(heights):
    assert close(combine(heights), combine(heights[::-1]))


@given(several)
def test_a_mean_lies_between_its_readings(heights):
    values = [each.value for each in heights]
    assert min(values) - 1e-12 <= combine(heights).value <= max(values) + 1e-12


@given(several)
def test_readings_that_agree_are_surer_together_and_others_say_so(heights):
    together = combine(heights)
    assert together.u <= min(each.u for each in heights) * together.disagreement + 1e-12
    assert together.disagreement >= 1.0


@given(given_heights)
def test_one_reading_alone_stays_as_it_is(height):
    assert combine([height]) is height


@given(st.lists(st.floats(5.0, 15.0), min_size=1, max_size=8),
       st.lists(st.floats(5.0, 15.0), min_size=1, max_size=8))  # fmt: skip
def test_no_number_of_readings_averages_out_the_calipers_own_error(first, second):
    readings = [from_depth([thou * THOU for thou in each], CALIPER) for each in (first, second)]
    assert combine(readings).u >= rectangular(CALIPER.limit) - 1e-12


def test_leaves_of_one_set_err_together_in_a_bracket_and_a_snug_leaf():
    widths = ASSUMED_HALF_WIDTHS
    bracket = from_leaves(leaf(11), leaf(13), widths)
    together = combine((bracket, from_snug_leaf(leaf(12), widths)))
    assert together.u >= rectangular(widths.leaf)
    assert [term.name for term in together.explained.terms].count("error of the leaf set") == 1


def test_readings_far_apart_widen_the_spread_and_are_told():
    together = combine((as_given(10 * THOU, 0.1 * THOU), as_given(12 * THOU, 0.1 * THOU)))
    assert together.disagreement == pytest.approx(14.142, abs=1e-3)
    assert together.u == pytest.approx(1.0 * THOU)


def test_few_repeats_bring_their_degrees_of_freedom_into_the_probability():
    few = from_depth([10 * THOU, 10.4 * THOU], DepthInstrument(name="rod", limit=0.0))
    assert few.dof == pytest.approx(1)
    assert few.high - few.value == pytest.approx(12.706 * few.u, rel=1e-4)


def test_a_leaf_that_contradicts_the_indicator_is_refused_by_name():
    indicator = as_given(10 * THOU, 0.1 * THOU)
    for go, no_go, field in ((leaf(14), None, "go"), (None, leaf(6), "no-go")):
        with pytest.raises(InputError, match="contradicts") as caught:
            combine((indicator, from_leaves(go, no_go, ASSUMED_HALF_WIDTHS)))
        assert caught.value.faults[0].field == field


def test_a_leaf_that_does_not_contradict_changes_nothing():
    indicator = as_given(10 * THOU, 0.1 * THOU)
    assert combine((indicator, from_leaves(leaf(9), None, ASSUMED_HALF_WIDTHS))) is indicator


@given(st.floats(1.5, 25.0), st.floats(0.1, 5.0))
def test_the_range_of_a_bracket_is_the_bracket_widened_by_the_leaf_tolerance(go, more):
    height = from_leaves(leaf(go), leaf(go + more), ASSUMED_HALF_WIDTHS)
    tolerance = ASSUMED_HALF_WIDTHS.leaf
    assert height.low == pytest.approx(go * THOU - tolerance, abs=NANOMETRE)
    assert height.high == pytest.approx((go + more) * THOU + tolerance, abs=NANOMETRE)
    assert height.value == pytest.approx((go + 0.5 * more) * THOU, abs=NANOMETRE)


@pytest.mark.parametrize(("go", "no_go"), [(13, 11), (11, 11)])
def test_crossed_leaves_are_refused(go, no_go):
    with pytest.raises(InputError, match="no-go: this leaf must be thicker"):
        from_leaves(leaf(go), leaf(no_go), ASSUMED_HALF_WIDTHS)


def test_one_leaf_is_one_side():
    lower = from_leaves(leaf(11), None, ASSUMED_HALF_WIDTHS)
    upper = from_leaves(None, leaf(11), ASSUMED_HALF_WIDTHS)
    assert (lower.bound, lower.high, upper.bound, upper.low) == (
        Bound.LOWER, None, Bound.UPPER, None,
    )  # fmt: skip


@given(marked)
def test_a_stack_is_thicker_than_its_marks_by_its_films_and_never_thinner(leaves):
    stack = Stack(tuple(each * THOU for each in leaves))
    real, films = thickness(stack, ASSUMED_HALF_WIDTHS, ""), len(leaves) - 1
    film = ASSUMED_HALF_WIDTHS.film_per_interface
    assert real.value == pytest.approx(sum(leaves) * THOU + films * 0.5 * film, abs=1e-6)
    assert real.u == pytest.approx(math.sqrt(films) * rectangular(0.5 * film))


@given(st.lists(st.integers(2, 60), min_size=1, max_size=9, unique=True))
def test_every_stack_is_made_of_different_leaves_of_the_set_and_of_the_fewest(thous):
    leaf_set = LeafSet(leaves=tuple(sorted(each * THOU for each in thous)), metric=False)
    found = stacks(leaf_set)
    marks = [round(stack.marked * 1e6) for stack in found]
    assert marks == sorted(set(marks))
    single = {round(each * 1e6) for each in leaf_set.leaves}
    for stack, mark in zip(found, marks, strict=True):
        assert len(set(stack.leaves)) == len(stack.leaves) <= MOST_LEAVES
        assert set(stack.leaves) <= set(leaf_set.leaves)
        assert len(stack.leaves) == 1 or mark not in single


@pytest.mark.parametrize("leaf_set", [INCH_SET, METRIC_SET])
def test_the_sets_to_start_with_are_in_order_and_make_every_usual_height(leaf_set):
    assert list(leaf_set.leaves) == sorted(set(leaf_set.leaves))
    marks = [stack.marked for stack in stacks(leaf_set) if 0.15 <= stack.marked <= 0.6]
    gaps = [b - a for a, b in pairwise(marks)]
    assert max(gaps) <= 0.0127 + 1e-9
