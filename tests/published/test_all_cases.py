"""Every value of `core.published`, whatever its source, is met to half a unit of its last digit."""

from dataclasses import replace

import pytest

from core.published.all_cases import all_cases
from core.published.case import Case
from core.source import Trust

CASES = all_cases()


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.topic}: {case.name}")
def test_the_printed_value_is_met(case: Case) -> None:
    assert case.met(), f"{case.compute()} for {case.printed} {case.unit}, {case.source}"


def test_a_case_misses_a_value_that_is_off_by_one_in_its_last_digit():
    case = next(each for each in CASES if each.name == "end gauge, combined")
    assert not replace(case, printed="33").met()
    assert not replace(case, printed="31").met()


def test_a_case_misses_another_word():
    case = next(each for each in CASES if each.printed == "RUN, CLOSE")
    assert not replace(case, printed="RUN").met()


def test_every_case_names_a_source_and_its_own_check():
    assert len({(case.topic, case.name, case.unit, case.printed) for case in CASES}) == len(CASES)
    for case in CASES:
        assert case.source.where or case.source.trust in (Trust.PRACTICE, Trust.MEMORY)
