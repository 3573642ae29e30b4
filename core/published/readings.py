"""Feeler and depth readings: values derived from the GUM, worked apart from this program."""

from collections.abc import Callable
from dataclasses import replace

from core.calc.height import (
    DepthInstrument,
    Height,
    as_given,
    combine,
    from_depth,
    from_leaves,
    from_snug_leaf,
    mean_of,
)
from core.calc.leaves import Stack, thickness
from core.published.case import Case
from core.source import Source, Trust, derived
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.uncertain import coverage_factor
from core.unit_types import INCH, THOU

RECTANGLE = derived("JCGM 100:2008 (GUM), 4.3.7 and 5.2.2")
REPEATS = derived("JCGM 100:2008 (GUM), 4.2, 4.3.7, G.3 and G.4.1")
MEAN = derived("weighted mean, weights 1/u²")
FILM = Source(Trust.ASSUMED, "0 to 0.0003 in at each interface, JCGM 100:2008 (GUM), 4.3.7")
NO_LEAF_ERROR = replace(ASSUMED_HALF_WIDTHS, leaf=0.0)
COARSE_LEAF = replace(ASSUMED_HALF_WIDTHS, leaf=0.35 * THOU)
FIVE = (10.0, 10.5, 10.2, 9.9, 10.4)


def _case(
    name: str, printed: str, unit: str, source: Source, compute: Callable[[], float]
) -> Case:
    return Case(
        topic="height", name=name, source=source, compute=compute, printed=printed, unit=unit
    )


def bracket(go: float, no_go: float, unit: float) -> Height:
    """Bracket between two leaves that are exactly as marked."""
    return from_leaves(Stack((go * unit,)), Stack((no_go * unit,)), NO_LEAF_ERROR)


def _bracket(go: float, no_go: float, unit: str, value: str, u: str) -> tuple[Case, ...]:
    size = {"in": INCH, "mm": 1.0}[unit]
    name = f"{go} {unit} goes, {no_go} {unit} does not"
    return (
        _case(name, value, unit, RECTANGLE, lambda: bracket(go, no_go, size).value / size),
        _case(f"{name}, u", u, unit, RECTANGLE, lambda: bracket(go, no_go, size).u / size),
    )


def repeats(readings: tuple[float, ...], limit: float = 1.0, step: float = 0.5) -> Height:
    """Depth readings in thou by an instrument with limit of error and step in thou."""
    rod = DepthInstrument(name="rod", limit=limit * THOU, step=step * THOU)
    return from_depth([each * THOU for each in readings], rod)


def _expanded(height: Height, level: float) -> float:
    return coverage_factor(level, height.dof) * height.u / THOU


def weighted() -> Height:
    """Two readings that differ a little more than they should."""
    return combine((as_given(10.2 * THOU, 0.3 * THOU), as_given(10.6 * THOU, 0.2 * THOU)))


def _caliper() -> Height:
    assumed = ASSUMED_HALF_WIDTHS
    return from_depth(
        (0.25,), DepthInstrument(name="caliper", limit=assumed.caliper, step=assumed.caliper_step)
    )


def _stack(leaves: int) -> Stack:
    return Stack((10.0 * THOU,) * leaves)


CASES: tuple[Case, ...] = (
    *_bracket(0.0100, 0.0110, "in", "0.0105", "0.0002887"),
    *_bracket(0.0100, 0.0105, "in", "0.01025", "0.0001443"),
    *_bracket(0.25, 0.30, "mm", "0.275", "0.014434"),
    _case("10 goes, 11 does not, leaves of one set ± 0.35 thou, u", "0.00035237", "in", RECTANGLE,
          lambda: from_leaves(Stack((10 * THOU,)), Stack((11 * THOU,)), COARSE_LEAF).u / INCH),
    _case("12 thou leaf just drags, u", "0.3109", "thou", RECTANGLE,
          lambda: from_snug_leaf(Stack((12 * THOU,)), ASSUMED_HALF_WIDTHS).u / THOU),
    _case("two leaves of 10 thou laid on each other", "0.02015", "in", FILM,
          lambda: thickness(_stack(2), ASSUMED_HALF_WIDTHS, "").value / INCH),
    _case("two leaves of 10 thou laid on each other, u", "0.0000866", "in", FILM,
          lambda: thickness(_stack(2), ASSUMED_HALF_WIDTHS, "").u / INCH),
    _case("three leaves of 10 thou laid on each other", "0.0303", "in", FILM,
          lambda: thickness(_stack(3), ASSUMED_HALF_WIDTHS, "").value / INCH),
    _case("five depth readings, mean", "10.2000", "thou", REPEATS,
          lambda: repeats(FIVE).value / THOU),
    _case("five depth readings, of the mean", "0.114018", "thou", REPEATS,
          lambda: mean_of(FIVE).u),
    _case("five depth readings, limit of error ± 1 thou, step 0.5 thou, u", "0.605943", "thou",
          REPEATS, lambda: repeats(FIVE).u / THOU),
    _case("five depth readings, degrees of freedom", "3191", "1", REPEATS,
          lambda: repeats(FIVE).dof),
    _case("five depth readings, step 0.5 thou alone, u", "0.183938", "thou", REPEATS,
          lambda: repeats(FIVE, limit=0.0).u / THOU),
    _case("five depth readings, step 0.5 thou alone, degrees of freedom", "27.09", "1", REPEATS,
          lambda: repeats(FIVE, limit=0.0).dof),
    _case("five depth readings, step 0.5 thou alone, 95.45 %", "0.38571", "thou", REPEATS,
          lambda: _expanded(repeats(FIVE, limit=0.0), 0.9545)),
    _case("two depth readings, 10.0 and 10.4, 95 %", "2.5412", "thou", REPEATS,
          lambda: _expanded(repeats((10.0, 10.4), limit=0.0, step=0.0), 0.95)),
    _case("10.2 u 0.3 and 10.6 u 0.2, mean", "10.476923", "thou", MEAN,
          lambda: weighted().value / THOU),
    _case("10.2 u 0.3 and 10.6 u 0.2, u before the ratio", "0.166410", "thou", MEAN,
          lambda: weighted().u / weighted().disagreement / THOU),
    _case("10.2 u 0.3 and 10.6 u 0.2, chi-square", "1.230769", "1", MEAN,
          lambda: weighted().disagreement ** 2),
    _case("caliper rod ± 0.02 mm, step 0.01 mm, u", "0.011902", "mm", REPEATS,
          lambda: _caliper().u),
)  # fmt: skip
