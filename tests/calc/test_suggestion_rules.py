"""What is suggested, what is never suggested, and what is said when nothing fits."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calc.quick_check import Answer, answer
from core.calc.say import sentence
from core.calc.suggestion import fits
from core.forms.check_form import read_check
from core.texts.en import TEXTS
from core.verdict import Verdict

GROOVE = {"wire": "0.041in", "groove-width": "0.040in", "groove-depth": "0.030in"}
CHECK_FIRST = "check piston to head and valves first"


def check(go=None, no_go=None, **more: str) -> Answer:
    """Quick check of leaves in thou; fields with a dash are given with an underscore."""
    leaves = {"go": go, "no-go": no_go}
    texts = {field: [f"{each} thou"] for field, each in leaves.items() if each is not None}
    texts |= {field.replace("_", "-"): [each] for field, each in more.items()}
    return answer(read_check(texts, str).asked)


def because(told: Answer) -> str:
    return " ".join(map(str, told.suggestion.because))


def thou(sheet) -> float | None:
    return None if sheet is None else round(sheet.thickness / 0.0254, 3)


def test_the_thinnest_that_passes_is_run_and_the_sure_one_is_told_with_what_a_reading_saves():
    told = check(11, 13, shelf="0.032in,0.040in,0.050in,0.0646in", gasket="0.040in")
    assert (thou(told.suggestion.run), thou(told.suggestion.sure)) == (50.0, 64.6)
    assert "Head goes up 10 thou." in because(told)
    assert "The thinnest at 95 % is 0.0646 in; a closer reading may save 14.6 thou" in because(told)


def test_a_thinner_sheet_than_the_one_on_now_is_never_first():
    told = check(8, 9, shelf="0.040in,0.050in", gasket="0.050in")
    assert thou(told.suggestion.run) == 50.0
    thinner = next(row for row in told.shelf if thou(row.sheet) == 40.0)
    assert thinner.verdict is Verdict.PASS
    assert CHECK_FIRST in str(thinner.head)


def test_where_only_a_thinner_sheet_fits_it_is_named_with_its_caution_but_not_suggested():
    told = check(6, 6.5, shelf="0.032in,0.040in", gasket="0.062in")
    assert told.suggestion.run is None
    assert thou(told.suggestion.thinner) == 40.0
    assert "Only a thinner sheet than the one on now fits: 0.0400 in." in because(told)
    assert f"Head comes down by 22 thou: {CHECK_FIRST}." in because(told)


def test_a_thickness_that_would_fit_but_is_thinner_than_the_one_on_now_has_the_caution():
    told = check(7.5, 8.5, shelf="0.080in", gasket="0.080in")
    assert "one from 0.0320 in to 0.0533 in would" in because(told)
    assert f"Head comes down by 26.7 thou or more: {CHECK_FIRST}." in because(told)


def test_nothing_fits_and_the_seat_is_unknown():
    told = check(14, 15, shelf="0.032in,0.040in")
    assert "one from 0.0580 in to 0.0967 in would" in because(told)
    assert "If the wire may not be on the floor, tap and measure again first." in because(told)
    assert "groove deeper, or wire thinner, by 4.5 thou" in because(told)


def test_nothing_fits_and_the_wire_may_be_up():
    told = check(14, 15, shelf="0.032in,0.040in", **GROOVE)
    assert because(told) == "The wire may not be on the floor: tap and measure again."


def test_nothing_fits_and_the_wire_is_on_the_floor():
    told = check(11, 11.5, shelf="0.032in,0.040in", **GROOVE)
    assert "tap" not in because(told)
    assert "For this shelf: groove deeper, or wire thinner, by 1.2 thou." in because(told)


def test_a_wire_too_low_for_the_shelf_is_not_told_to_be_tapped():
    told = check(7, 8, shelf="0.062in,0.080in", **GROOVE)
    assert "tap" not in because(told).lower()
    assert "groove shallower, or wire thicker, by 1.8 thou" in because(told)


def test_a_wire_under_every_bite():
    told = check(4, 5, shelf="0.024in,0.040in")
    assert "Under 6 thou the wire may not bite in any sheet" in because(told)


def test_a_shelf_too_thin_for_any_wire():
    told = check(6, 7, shelf="0.0216in")
    assert "too thin" in because(told)
    assert not told.shelf[0].takes_any


def test_a_wire_that_is_not_down_is_tapped_before_a_sheet_is_chosen():
    told = check(14, 15, shelf="0.062in", **GROOVE)
    assert thou(told.suggestion.run) == 62.0
    assert because(told).startswith("The wire may not be on the floor: tap and measure again.")
    assert "The wire is not down: tap it and measure again. Run the 62." in sentence(told, False)


def test_a_receiver_leaves_the_sheet_open_and_shows_both_readings():
    told = check(11, 12, shelf="0.040in,0.050in", gasket="0.050in", head_face="receiver:0.010in")
    assert told.suggestion.run is None
    assert "no sheet is suggested" in because(told)
    assert {row.verdict for row in told.shelf} == {Verdict.UNDECIDED}
    assert "23 % of 0.0500 in (22 % to 24 %) by the full height, 3 % past" in str(
        told.shelf[1].because
    )
    assert {check.verdict for check in told.checks} == {Verdict.UNDECIDED}
    assert told.next_leaf is None


def test_a_print_in_the_head_comes_off_the_height():
    flat, printed = (check(11, 12, shelf="0.040in", head_face=face) for face in
                     ("flat", "printed:0.002in"))  # fmt: skip
    assert flat.shelf[0].word == "borderline"
    assert printed.shelf[0].word == "run-close"
    assert printed.shelf[0].share == pytest.approx(9.5 / 40)


def test_a_leaf_that_does_not_go_can_pass_alone_and_the_bite_stays_open():
    told = check(None, 10, shelf="0.050in")
    assert (told.shelf[0].verdict, told.shelf[0].word) == ("pass", "run")
    assert thou(told.suggestion.run) == 50.0
    assert "Whether it bites is not known yet: 7.5 thou must go." in because(told)
    assert "At most 20 % of 0.0500 in" in str(told.shelf[0].because)


def test_a_leaf_that_goes_can_fail_alone_and_never_passes():
    told = check(14, None, shelf="0.040in,0.080in")
    assert [row.verdict for row in told.shelf] == ["fail", "undecided"]
    assert because(told) == "One side of the height is not known: try another leaf."
    assert because(check(30, None, shelf="0.040in")) == "No sheet on the shelf takes this height."


def test_borderline_says_that_a_closer_reading_may_clear_it():
    told = check(9, 12, shelf="0.040in")
    assert told.shelf[0].verdict is Verdict.UNDECIDED
    assert because(told).startswith("Borderline on 0.0400 in: a closer reading may clear it.")


def test_under_the_guarded_rule_the_thickness_that_fits_keeps_its_guard():
    """(0.0100 + 1.6449 · 0.0004) / 0.25 in."""
    told = check(height="0.0100in", u="0.0004in", rule="guarded")
    assert because(told) == "A sheet from 0.0426 in to 0.0623 in fits this height."
    vague = check(height="0.0100in", u="0.0030in", rule="guarded")
    assert because(vague).startswith("This reading is too vague for any sheet")


def test_without_a_shelf_the_thickness_that_fits_is_told():
    assert because(check(11, 13)) == "A sheet from 0.0480 in to 0.0800 in fits this height."


def test_no_text_tells_to_lower_a_seated_wire():
    for key, sentence_ in TEXTS.items():
        if key.startswith(("suggest.", "say.", "word.", "next.")):
            assert "lower the wire" not in sentence_.lower(), key
            assert "lower it" not in sentence_.lower(), key


@given(
    st.integers(30, 200),
    st.integers(1, 30),
    st.lists(st.integers(200, 950), min_size=1, max_size=6),
    st.one_of(st.none(), st.integers(200, 950)),
    st.sampled_from(("plain", "guarded")),
)
def test_the_suggestion_is_the_thinnest_that_fits_and_is_not_thinner(go, more, shelf, on_now, rule):
    extra = {"gasket": f"{on_now / 10} thou"} if on_now else {}
    told = check(go / 10, (go + more) / 10, rule=rule,
                 shelf="; ".join(f"{each / 10} thou" for each in shelf), **extra)  # fmt: skip
    run, sure = told.suggestion.run, told.suggestion.sure
    allowed = [
        row.sheet
        for row in told.shelf
        if fits(row) and not (on_now and row.sheet.thickness < on_now * 0.00254 - 1e-6)
    ]
    assert run == (min(allowed, key=lambda sheet: sheet.thickness) if allowed else None)
    if sure is not None:
        assert sure.thickness >= run.thickness
        row = next(each for each in told.shelf if each.sheet == sure)
        assert row.probability >= 0.95
    assert told.suggestion.because
    assert all(math.isfinite(each.share) for each in told.shelf)
    for row in told.shelf:
        if on_now and row.sheet.thickness < on_now * 0.00254 - 1e-6:
            assert CHECK_FIRST in str(row.head)
