"""Every case of core.published.valve_gear."""

import pytest

from core.published.case import Case
from core.published.valve_gear import CASES


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_the_printed_value_is_met(case: Case) -> None:
    assert case.met(), f"{case.compute()} for {case.printed} {case.unit}"
