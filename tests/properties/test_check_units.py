"""One check typed in inch, in thou and in mm gives one answer."""

from dataclasses import replace
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

from core.calc.quick_check import Answer, answer
from core.forms.check_form import read_check

LEAVES = (1.5, 2, 2.5, *range(3, 26))
UNITS = {"in": Decimal("0.001"), "thou": Decimal(1), "mm": Decimal("0.0254"), "µm": Decimal("25.4")}


def tenths(low: int, high: int):
    return st.integers(low * 10, high * 10).map(lambda each: Decimal(each) / 10)


sizes = st.fixed_dictionaries(
    {"go": tenths(3, 15)},
    optional={
        "gasket": tenths(20, 95),
        "wire": tenths(38, 44),
        "groove-width": tenths(38, 42),
        "groove-depth": tenths(25, 33),
        "straightedge": tenths(0, 1),
        "gasket-tol": tenths(0, 2),
    },
)


def typed(sizes, more, shelf, unit) -> dict[str, list[str]]:
    def each(thou) -> str:
        return f"{thou * UNITS[unit]:f} {unit}"

    texts = {field: [each(thou)] for field, thou in sizes.items()}
    texts["no-go"] = [each(sizes["go"] + more)]
    texts["leaves"] = ["; ".join(each(Decimal(str(leaf))) for leaf in LEAVES)]
    if shelf:
        texts["shelf"] = ["; ".join(map(each, shelf))]
    return texts


def told(texts) -> Answer:
    """The answer, less whether the leaves are said in mm."""
    asked = read_check(texts, str, closer=True).asked
    return answer(replace(asked, leaf_set=replace(asked.leaf_set, metric=False)))


@settings(max_examples=60, deadline=None)
@given(sizes, tenths(1, 3), st.lists(tenths(20, 95), max_size=5))
def test_a_whole_check_is_the_same_in_every_unit(sizes, more, shelf):
    in_inch = told(typed(sizes, more, shelf, "in"))
    for unit in ("thou", "mm", "µm"):
        assert told(typed(sizes, more, shelf, unit)) == in_inch
