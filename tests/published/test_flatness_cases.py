"""Values of flatness agree with those from elsewhere."""

import pytest

from core.published.case import Case
from core.published.flatness import CASES


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_value_agrees_with_the_source(case: Case) -> None:
    assert case.met(), f"{case.compute()} against {case.printed}"
