"""Every case of core.published.vee."""

import pytest

from core.published.case import Case
from core.published.vee import CASES


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_the_printed_value_is_met(case: Case) -> None:
    assert case.met(), f"{case.compute()} for {case.printed} {case.unit}"
