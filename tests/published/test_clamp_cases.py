"""Preload, torque, scatter and joints agree with the books."""

import pytest

from core.published.case import Case
from core.published.clamp import CASES


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_value_agrees_with_the_source(case: Case) -> None:
    assert case.met(), f"{case.compute()} against {case.printed}"
