"""On the floor, not down, or not to be told: the comparison of a reading with wire and groove."""

import pytest

from core.calc.fit import Measured, held_check, interference_check, seat, tapped
from core.calc.groove import PressedWire, expected_height
from core.calc.height import as_given, from_leaves
from core.calc.leaves import Stack
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.verdict import GUARDED, Verdict

THOU = 0.0254
WIRE = Measured(value=41 * THOU, half_width=0.2 * THOU)
WIDTH = Measured(value=40 * THOU, half_width=0.3 * THOU)
DEPTH = Measured(value=30 * THOU, half_width=0.5 * THOU)
EXPECTED = expected_height(PressedWire(wire=WIRE.value, width=WIDTH.value, depth=DEPTH.value))


def seated(height: float, u: float = 0.1):
    """A reading in thou."""
    return seat(as_given(height * THOU, u * THOU), WIRE, WIDTH, DEPTH)


def leaves(go: float | None, no_go: float | None):
    stacks = (Stack((each * THOU,)) if each else None for each in (go, no_go))
    return from_leaves(*stacks, ASSUMED_HALF_WIDTHS)


@pytest.mark.parametrize(
    ("height", "verdict", "word"),
    [
        (9.0, "undecided", "lower-than-entered"),
        (11.0, "pass", "on-the-floor"),
        (11.15, "pass", "on-the-floor"),
        (11.7, "pass", "on-the-floor"),
        (12.0, "undecided", "tap-and-measure"),
        (12.6, "undecided", "tap-and-measure"),
        (13.0, "fail", "not-down"),
        (20.0, "fail", "not-down"),
    ],
)
def test_three_ways_and_lower_than_entered(height, verdict, word):
    check = seated(height).check
    assert (check.verdict, check.word) == (verdict, word)


def test_the_limit_told_is_the_one_that_decided():
    found = seated(11.5)
    assert found.check.limit == pytest.approx(EXPECTED.best + found.allowed)
    assert seated(13.0).check.limit == pytest.approx(EXPECTED.ceiling + found.allowed)
    assert seated(9.0).check.limit == pytest.approx(EXPECTED.floor - found.allowed)


def test_agreement_has_no_probability_of_conformity():
    assert seated(11.0).check.probability is None


def test_a_ring_lifted_by_a_thou_and_a_half_does_not_pass():
    lifted = EXPECTED.best / THOU + 1.5
    assert seated(lifted, u=0.3).check.verdict is not Verdict.PASS


def test_a_vaguer_reading_never_turns_pass_into_fail():
    for height in (9.0, 11.0, 12.0, 12.6, 13.0, 14.0):
        sure, vague = (seated(height, u).check.verdict for u in (0.05, 1.0))
        assert (sure, vague) != (Verdict.PASS, Verdict.FAIL)


@pytest.mark.parametrize(
    ("go", "no_go", "word"),
    [
        (15, None, "not-down"),
        (11, None, "undecided"),
        (None, 11, "on-the-floor"),
        (None, 8, "lower-than-entered"),
        (None, 14, "undecided"),
    ],
)
def test_one_side_of_a_reading_decides_only_what_it_can(go, no_go, word):
    assert seat(leaves(go, no_go), WIRE, WIDTH, DEPTH).check.word == word


def test_two_readings_few_in_number_allow_more():
    few = seat(as_given(11 * THOU, 0.5 * THOU), WIRE, WIDTH, DEPTH).allowed
    assert few == pytest.approx(1.96 * (0.5**2 + (0.2**2 + 0.5**2) / 3) ** 0.5 * THOU, rel=1e-3)


@pytest.mark.parametrize(
    ("wire", "word"),
    [(40.0, "loose"), (40.4, "loose"), (40.5, "holds"), (41.0, "holds"), (43.0, "holds"),
     (43.1, "hard-to-press"), (39.0, "loose")],
)  # fmt: skip
def test_interference_under_the_plain_rule_with_ties_passing(wire, word):
    assert interference_check(Measured(value=wire * THOU, half_width=0.0), WIDTH).word == word


def test_sizes_too_vague_for_any_wire_are_told_under_the_guarded_rule():
    vague = Measured(value=41.2 * THOU, half_width=3.0 * THOU)
    assert interference_check(vague, WIDTH, acceptance=GUARDED).word == "too-uncertain"
    fair = Measured(value=40.6 * THOU, half_width=0.2 * THOU)
    assert interference_check(fair, WIDTH, acceptance=GUARDED).word == "undecided"


def test_the_wire_is_held_while_its_widest_point_is_below_the_deck():
    wire = Measured(value=41 * THOU, half_width=0.0)
    words = [
        held_check(wire, Measured(value=depth * THOU, half_width=0.0)).word
        for depth in (20.0, 20.5, 21.0)
    ]
    assert words == ["above-deck", "below-deck", "below-deck"]


def test_a_drop_of_more_than_the_spread_says_it_was_not_down():
    before, after = as_given(14 * THOU, 0.2 * THOU), as_given(12 * THOU, 0.2 * THOU)
    assert tapped(before, after).word == "was-not-down"
    assert tapped(after, after).word == "was-down"
    assert tapped(as_given(12.3 * THOU, 0.2 * THOU), after).word == "was-down"
