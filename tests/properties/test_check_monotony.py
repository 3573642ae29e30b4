"""A higher wire never helps the limit and never harms the bite; the thickness does the reverse."""

import math

from hypothesis import given
from hypothesis import strategies as st

from core.calc.gasket import HeightRule, Sheet, Standing, bite, height_to_gasket
from core.calc.height import Bound
from core.tables.practice import HeightPractice
from core.verdict import Acceptance, Rule, Verdict

RANK = (Verdict.FAIL, Verdict.UNDECIDED, Verdict.PASS)
THOU = 0.0254

heights = st.floats(0.0, 40.0).map(lambda thou: thou * THOU)
thicknesses = st.floats(10.0, 120.0).map(lambda thou: thou * THOU)
spreads = st.floats(0.0, 2.0).map(lambda thou: thou * THOU)
degrees = st.sampled_from((1, 2, 4, 9, 50, math.inf))
rules = st.builds(
    HeightRule,
    practice=st.builds(
        HeightPractice,
        largest_share=st.floats(0.2, 0.3),
        borderline_share=st.floats(0.3, 0.4),
    ),
    acceptance=st.builds(
        Acceptance, rule=st.sampled_from(Rule), confidence=st.sampled_from((0.8, 0.95, 0.99))
    ),
)
pairs = st.tuples(heights, heights).map(sorted)
sheet_pairs = st.tuples(thicknesses, thicknesses).map(sorted)


def rank(check) -> int:
    return RANK.index(check.verdict)


def wire(height, u, dof, bound=Bound.BOTH) -> Standing:
    return Standing(bound=bound, value=height, u=u, dof=dof)


def sheet(thickness, half_width=0.0127) -> Sheet:
    return Sheet(thickness=thickness, half_width=half_width)


@given(pairs, thicknesses, spreads, degrees, st.sampled_from(Bound), rules)
def test_a_higher_wire_never_betters_the_height_and_never_worsens_the_bite(
    heights, thickness, u, dof, bound, rule
):
    low, high = (wire(height, u, dof, bound) for height in heights)
    under = sheet(thickness)
    assert rank(height_to_gasket(high, under, rule)) <= rank(height_to_gasket(low, under, rule))
    assert rank(bite(high, under, rule)) >= rank(bite(low, under, rule))


@given(heights, sheet_pairs, spreads, degrees, st.sampled_from(Bound), rules)
def test_a_thicker_sheet_never_worsens_the_height(height, sheets, u, dof, bound, rule):
    standing, (thin, thick) = wire(height, u, dof, bound), map(sheet, sheets)
    assert rank(height_to_gasket(standing, thick, rule)) >= rank(
        height_to_gasket(standing, thin, rule)
    )


@given(heights, sheet_pairs, spreads, st.sampled_from(Bound), rules)
def test_a_thicker_sheet_never_betters_the_bite(height, sheets, u, bound, rule):
    """Of two sheets that are exactly as thick as marked: the least height alone counts then."""
    standing = wire(height, u, math.inf, bound)
    thin, thick = (sheet(each, half_width=0.0) for each in sheets)
    assert rank(bite(standing, thick, rule)) <= rank(bite(standing, thin, rule))


@given(heights, thicknesses, spreads, degrees, st.sampled_from(Bound), rules)
def test_a_probability_is_one(height, thickness, u, dof, bound, rule):
    standing, under = wire(height, u, dof, bound), sheet(thickness)
    for check in (height_to_gasket(standing, under, rule), bite(standing, under, rule)):
        assert check.probability is None or 0.0 <= check.probability <= 1.0
        if check.verdict is Verdict.PASS and rule.acceptance.rule is Rule.PLAIN:
            assert check.probability is None or check.probability >= 0.49


@given(heights, thicknesses, rules)
def test_one_side_decides_only_what_the_other_side_cannot_change(height, thickness, rule):
    under, u = sheet(thickness), 0.1 * THOU
    below = height_to_gasket(wire(height, u, math.inf, Bound.UPPER), under, rule)
    above = height_to_gasket(wire(height, u, math.inf, Bound.LOWER), under, rule)
    assert below.verdict is not Verdict.FAIL
    assert above.verdict is not Verdict.PASS
    assert bite(wire(height, u, math.inf, Bound.UPPER), under, rule).verdict is not Verdict.PASS
    assert bite(wire(height, u, math.inf, Bound.LOWER), under, rule).verdict is not Verdict.FAIL
