"""Gauging for a sheet, and the leaf that narrows a settled height."""

import pytest

from core.calc.gasket import Sheet
from core.calc.gauge_card import gauge_card
from core.calc.quick_check import answer
from core.calc.say import decides, sentence
from core.forms.check_form import read_check
from core.tables.leaf_sets import INCH_SET
from core.tables.practice import HEIGHT

THOU = 0.0254


def card(*thous: float):
    sheets = [Sheet(thickness=each * THOU, half_width=0.0) for each in thous]
    return gauge_card(sheets, INCH_SET, HEIGHT)


def marks(stack) -> float:
    return round(stack.marked / THOU, 3)


def leaf(**texts: str):
    asked = read_check({k.replace("_", "-"): [v] for k, v in texts.items()}, str, closer=True).asked
    return answer(asked)


@pytest.mark.parametrize("thickness", [24.0, 32.3, 40.0, 43.1, 50.0, 64.6, 80.0, 93.0])
def test_must_go_proves_the_bite_and_must_not_go_the_limit(thickness):
    (gauge,) = card(thickness)
    assert max(6.0, 0.15 * thickness) <= marks(gauge.must_go) + 1e-6
    assert marks(gauge.must_not_go) <= 0.25 * thickness + 1e-6
    assert marks(gauge.must_go) <= marks(gauge.must_not_go) + 0.5


def test_cards_are_in_the_order_of_the_sheets():
    assert [round(each.sheet.thickness / THOU) for each in card(80, 40, 50)] == [40, 50, 80]


def test_a_sheet_that_takes_no_height_has_no_gauges():
    (gauge,) = card(20.0)
    assert (gauge.must_go, gauge.must_not_go, gauge.takes_any) == (None, None, False)


def test_a_settled_bracket_is_halved_only_on_request():
    texts = {"go": ["11 thou"], "no-go": ["13 thou"]}
    assert answer(read_check(texts, str).asked).next_leaf is None
    told = leaf(go="11 thou", no_go="13 thou")
    assert told.next_leaf.stack.leaves == (12 * THOU,)
    assert decides(told.next_leaf, False) == (
        "0.0120 in. Nothing hangs on it; it narrows the height."
    )
    assert "Try the 12 next." in sentence(told, False)


def test_with_one_side_open_the_neighbouring_leaf_is_next():
    assert leaf(go="11 thou").next_leaf.stack.leaves == (12 * THOU,)
    assert leaf(no_go="11 thou").next_leaf.stack.leaves == (10 * THOU,)


def test_a_deciding_leaf_comes_before_a_closer_one():
    told = leaf(go="9 thou", no_go="13 thou", gasket="0.040in")
    assert told.next_leaf.stack.leaves == (10 * THOU,)
    assert "Goes: BORDERLINE" not in decides(told.next_leaf, False)
    assert "Does not go: RUN." in decides(told.next_leaf, False)


def test_a_depth_reading_has_a_deciding_leaf_inside_its_range():
    told = leaf(height="0.0124in", u="0.0003in", shelf="0.050in")
    mark = told.next_leaf.stack.marked
    assert told.asked.height.low < mark < told.asked.height.high
    assert mark == pytest.approx(12.5 * THOU)


def test_a_closer_reading_inside_a_bracket_narrows_what_is_searched():
    told = leaf(go="9 thou", no_go="16 thou", height="0.012in", u="0.0002in")
    mark = told.next_leaf.stack.marked
    assert told.asked.height.low < mark < told.asked.height.high
