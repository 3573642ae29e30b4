"""Pressure under a wire agrees with slip-line theory and hardness."""

import pytest

from core.published.case import Case
from core.published.indentation import CASES


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_value_agrees_with_the_source(case: Case) -> None:
    assert case.met(), f"{case.compute()} against {case.printed}"
