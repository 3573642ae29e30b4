"""`explain` against a reference library over random formulas, and readings against drawn ones."""

import math
import random

import GTC
import numpy as np
import pytest
from scipy import stats

from core.calc.gasket import HeadFace, HeightRule, Sheet, height_to_gasket, standing
from core.calc.height import DepthInstrument, combine, from_depth, from_leaves, from_snug_leaf
from core.calc.leaves import Stack
from core.source import ASSUMED
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.uncertain import NORMAL_FROM, Term, coverage_factor, explain, student_cdf

FORMULAS = 150
DRAWS = 400_000
THOU = 0.0254


def formula(rng: random.Random, inputs: int, depth: int):
    """A random smooth expression as a function of a library of functions and its inputs."""
    if depth == 0:
        index = rng.randrange(inputs)
        return lambda lib, x: x[index]
    left, right = formula(rng, inputs, depth - 1), formula(rng, inputs, depth - 1)
    return rng.choice(
        (
            lambda lib, x: left(lib, x) + right(lib, x),
            lambda lib, x: left(lib, x) - 0.5 * right(lib, x),
            lambda lib, x: left(lib, x) * right(lib, x),
            lambda lib, x: left(lib, x) / (2.0 + right(lib, x) * right(lib, x)),
            lambda lib, x: lib.sin(left(lib, x)) + right(lib, x),
            lambda lib, x: lib.sqrt(1.0 + left(lib, x) * left(lib, x)),
            lambda lib, x: lib.exp(-0.1 * left(lib, x) * left(lib, x)) * right(lib, x),
        )
    )


@pytest.mark.parametrize("seed", range(FORMULAS))
def test_value_spread_and_degrees_of_freedom_of_a_random_formula(seed):
    rng = random.Random(seed)
    count = rng.randint(1, 4)
    f = formula(rng, count, rng.randint(1, 3))
    terms = [
        Term(
            name=str(i),
            value=rng.uniform(0.5, 3.0),
            u=rng.uniform(0.001, 0.2),
            unit="mm",
            source=ASSUMED,
            dof=rng.choice((1, 3, 8, 20, math.inf)),
        )
        for i in range(count)
    ]
    ours = explain(lambda *x: f(math, x), terms, unit="mm", formula="f", source=ASSUMED)
    theirs = f(GTC, [GTC.ureal(term.value, term.u, df=term.dof) for term in terms])
    assert ours.value == pytest.approx(GTC.value(theirs), rel=1e-12)
    assert ours.u == pytest.approx(GTC.uncertainty(theirs), rel=1e-5)
    assert ours.dof == pytest.approx(GTC.dof(theirs), rel=1e-4)
    assert math.fsum(ours.shares) == pytest.approx(1.0)


@pytest.mark.parametrize("dof", [1, 2, 3, 4, 7, 20, 101, 999, 5000, math.inf])
def test_students_distribution_against_scipy(dof):
    ours = [student_cdf(t, dof) for t in np.linspace(-8, 8, 161)]
    theirs = stats.t.cdf(np.linspace(-8, 8, 161), dof)
    taken_as_normal = NORMAL_FROM <= dof < math.inf
    assert np.allclose(ours, theirs, rtol=0.0, atol=4e-5 if taken_as_normal else 1e-12)
    for level in (0.5, 0.8, 0.95, 0.9545, 0.99, 0.9998):
        expected = stats.t.ppf(0.5 + 0.5 * level, dof)
        assert coverage_factor(level, dof) == pytest.approx(expected, rel=1e-3)


def drawn(rng, half_width):
    return rng.uniform(-half_width, half_width, DRAWS)


def agrees(height, draws):
    assert height.value == pytest.approx(draws.mean(), abs=5 * draws.std() / math.sqrt(DRAWS))
    assert height.u == pytest.approx(draws.std(), rel=0.01)


def test_a_bracket_of_a_leaf_and_a_stack_against_drawn_ones():
    rng, widths = np.random.default_rng(1), ASSUMED_HALF_WIDTHS
    height = from_leaves(Stack((11 * THOU,)), Stack((10 * THOU, 3 * THOU)), widths, 0.3 * THOU)
    film = rng.uniform(0.0, widths.film_per_interface, DRAWS)
    low, high = 11 * THOU, 13 * THOU + 0.5 * widths.film_per_interface
    between = rng.uniform(low, high, DRAWS)
    error = drawn(rng, widths.leaf) + drawn(rng, 0.3 * THOU)
    film_error = 0.5 * (film - 0.5 * widths.film_per_interface)
    agrees(height, between + film_error + error)


def test_a_snug_leaf_against_drawn_ones():
    rng, widths = np.random.default_rng(2), ASSUMED_HALF_WIDTHS
    height = from_snug_leaf(Stack((12 * THOU,)), widths)
    agrees(height, 12 * THOU + drawn(rng, widths.snug) + drawn(rng, widths.leaf))


def test_two_readings_of_one_caliper_against_drawn_ones():
    """The caliper's own error is in both, so that their mean carries it whole."""
    rng = np.random.default_rng(3)
    caliper = DepthInstrument(name="caliper", limit=0.02, step=0.01)
    height = combine((from_depth((0.30,), caliper), from_depth((0.31,), caliper, ("pair",))))
    shared = drawn(rng, 0.02)
    one, two = 0.30 + shared + drawn(rng, 0.005), 0.31 + shared + drawn(rng, 0.005)
    agrees(height, 0.5 * (one + two))


def test_the_probability_of_a_bracket_under_a_sheet_against_drawn_ones():
    """A rectangle is not a normal distribution: off by 0.05 in the middle, 0.025 at the ends."""
    rng, widths = np.random.default_rng(4), ASSUMED_HALF_WIDTHS
    height = from_leaves(Stack((11 * THOU,)), Stack((13 * THOU,)), widths)
    wire = standing(height, HeadFace(), widths.print_depth)
    draws = rng.uniform(11 * THOU, 13 * THOU, DRAWS) + drawn(rng, widths.leaf)
    for thickness in range(42, 58):
        sheet = Sheet(thickness=thickness * THOU, half_width=0.5 * THOU)
        sheets = sheet.thickness + drawn(rng, sheet.half_width)
        share = float(np.mean(draws <= 0.25 * sheets))
        told = height_to_gasket(wire, sheet, HeightRule()).probability
        assert told == pytest.approx(share, abs=0.025 if told > 0.9 or told < 0.05 else 0.055)
