"""Places within 0.001 in of their ring's median, *from memory*; rings within 0.001 in, practice."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calc.evenness import even_bank, even_ring, is_proud, over_median
from core.verdict import Verdict

INCH = 25.4
HEIGHTS = st.lists(st.floats(0.0, 1.0), min_size=1, max_size=12)


@pytest.mark.parametrize(
    ("inches", "word"),
    [
        ((0.010, 0.010, 0.010), "even"),
        ((0.010, 0.011, 0.010), "even"),
        ((0.010, 0.0112, 0.010), "proud"),
        ((0.010, 0.010, 0.0088), "low-place"),
        ((0.012,), "even"),
    ],
)
def test_a_thousandth_over_the_median_is_even_and_more_is_not(inches, word):
    check = even_ring(over_median([each * INCH for each in inches]))
    assert check.word == word
    assert (check.verdict is Verdict.PASS) == (word == "even")


@pytest.mark.parametrize(
    ("inches", "verdict"),
    [
        ((), Verdict.PASS),
        ((0.010,), Verdict.PASS),
        ((0.010, 0.011), Verdict.PASS),
        ((0.010, 0.0112), Verdict.FAIL),
    ],
)
def test_rings_a_thousandth_apart_are_even_along_the_bank(inches, verdict):
    assert even_bank([each * INCH for each in inches]).verdict is verdict


@given(HEIGHTS, st.floats(-0.5, 0.5))
def test_lifting_the_whole_ring_changes_nothing(heights, lift):
    lifted = over_median([each + lift for each in heights])
    assert lifted == pytest.approx(over_median(heights), abs=1e-9)


@given(HEIGHTS)
def test_half_of_the_places_are_not_over_the_median_so_one_proud_place_never_hides_itself(heights):
    over = over_median(heights)
    assert sum(each <= 1e-12 for each in over) * 2 >= len(over)
    assert sum(is_proud(each) for each in over) * 2 <= len(over)
