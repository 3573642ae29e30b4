"""What a straightedge rests on, and when it rocks."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calc.straightedge import Contact, gap, part_of_span, rest
from core.errors import InputError


def contacts(*heights: float) -> list[Contact]:
    return [Contact(name=str(k), at=100.0 * k, height=h) for k, h in enumerate(heights)]


def test_straightedge_rests_on_the_two_ends_of_a_hollow() -> None:
    found = rest(contacts(0.25, 0.20, 0.22, 0.26))
    assert [each.name for each in found.on] == ["0", "3"]
    assert not found.rocks


def test_straightedge_rocks_over_the_high_ring() -> None:
    found = rest(contacts(0.25, 0.32, 0.25))
    assert found.rocks
    assert [each.name for each in found.rocks_over] == ["1"]


def test_three_wires_on_one_line_do_not_rock() -> None:
    assert not rest(contacts(0.1, 0.2, 0.3)).rocks


def test_contacts_at_one_place_are_no_rest() -> None:
    one = Contact(name="1", at=0.0, height=0.2)
    with pytest.raises(InputError, match="one place"):
        rest([one, one])
    with pytest.raises(InputError, match="one place"):
        part_of_span(3.0, 3.0, 1.0)


@given(st.lists(st.floats(0.0, 1.0), min_size=2, max_size=10))
def test_no_contact_stands_above_the_straightedge(heights: list[float]) -> None:
    given_contacts = contacts(*heights)
    first, second = rest(given_contacts).on
    for each in given_contacts:
        part = (each.at - first.at) / (second.at - first.at)
        assert each.height <= gap(first.height, second.height, part) + 1e-9


@given(st.integers(-20, 40), st.floats(1.0, 500.0), st.floats(-200.0, 200.0))
def test_tenths_of_a_span_are_found_exactly(tenths: int, span: float, start: float) -> None:
    at = start + tenths / 10 * span
    assert part_of_span(start, start + span, at) * 10 == tenths


@given(st.floats(0.1, 0.5), st.floats(0.1, 0.5), st.floats(0.0, 1.0))
def test_gap_between_lies_between_the_heights(first: float, second: float, part: float) -> None:
    low, high = sorted((first, second))
    found = gap(first, second, part)
    assert low <= found or math.isclose(low, found)
    assert found <= high or math.isclose(high, found)
