"""A wire in copper carries what the geometry says."""

import pytest

from core.published.bedding import CASES
from core.published.case import Case


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_value_agrees_with_the_source(case: Case) -> None:
    assert case.met(), f"{case.compute()} against {case.printed}"
