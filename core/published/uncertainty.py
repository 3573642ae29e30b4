"""Spread of a result: the worked examples and tables of the GUM."""

import math
from collections.abc import Callable

from core.calc.height import mean_of
from core.published.case import Case
from core.source import Source, derived, published
from core.uncertain import (
    Explained,
    Term,
    coverage_factor,
    effective_dof,
    explain,
    rectangular,
)

GUM = "JCGM 100:2008 (GUM)"
TEMPERATURES = (
    *(96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07),
    *(100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72),
)
T_FACTORS = {
    1: ("12.71", "13.97", "63.66"),
    2: ("4.30", "4.53", "9.92"),
    3: ("3.18", "3.31", "5.84"),
    4: ("2.78", "2.87", "4.60"),
    5: ("2.57", "2.65", "4.03"),
    9: ("2.26", "2.32", "3.25"),
    16: ("2.12", "2.17", "2.92"),
    18: ("2.10", "2.15", "2.88"),
    19: ("2.09", "2.14", "2.86"),
    50: ("2.01", "2.05", "2.68"),
}
LEVELS = (0.95, 0.9545, 0.99)
INFINITE = {0.95: "1.960", 0.99: "2.576"}
RELATIVE = ((0.25, 0.57, 0.82), (9, 4, 14))
NM = 1e-6
"""One nanometre in mm."""


def _case(
    name: str, printed: str, unit: str, where: str, compute: Callable[[], float]
) -> Case:
    return Case(
        topic="uncertain",
        name=name,
        source=published(f"{GUM}, {where}"),
        compute=compute,
        printed=printed,
        unit=unit,
    )


def _t_factor(dof: float, level: float, printed: str) -> Case:
    return _case(
        f"t for {dof:g} degrees of freedom, {100 * level:g} %",
        printed,
        "1",
        "Table G.2",
        lambda: coverage_factor(level, dof),
    )


def _nm(name: str, value: float, u: float, dof: float = math.inf) -> Term:
    return Term(
        name=name, value=value * NM, u=u * NM, unit="mm", source=END_GAUGE_SOURCE, dof=dof
    )


END_GAUGE_SOURCE: Source = published(f"{GUM}, H.1")


def comparator() -> Explained:
    """Difference of the two gauges: its scatter, and random and systematic error."""
    return explain(
        lambda mean, chance, system: mean + chance + system,
        (
            _nm("mean of the differences", 215.0, 5.8, 24),
            _nm("random, comparator", 0.0, 3.9, 5),
            _nm("systematic, comparator", 0.0, 6.7, 8),
        ),
        unit="mm",
        formula="d",
        source=END_GAUGE_SOURCE,
    )


def end_gauge() -> Explained:
    """Length of the end gauge, first order."""
    difference = comparator()
    terms = (
        Term(name="standard", value=50.000623, u=25.0 * NM, unit="mm", source=END_GAUGE_SOURCE,
             dof=18),
        Term(name="difference", value=difference.value, u=difference.u, unit="mm",
             source=END_GAUGE_SOURCE, dof=difference.dof),
        Term(name="difference of expansion", value=0.0, u=rectangular(1e-6), unit="1/K",
             source=END_GAUGE_SOURCE, dof=50),
        Term(name="bed's deviation", value=-0.1, u=0.41, unit="K", source=END_GAUGE_SOURCE),
        Term(name="expansion of the standard", value=11.5e-6, u=1.2e-6, unit="1/K",
             source=END_GAUGE_SOURCE),
        Term(name="difference of temperature", value=0.0, u=rectangular(0.05), unit="K",
             source=END_GAUGE_SOURCE, dof=2),
    )
    return explain(
        lambda standard, d, da, bed, a, dt: standard + d - standard * (da * bed + a * dt),
        terms,
        unit="mm",
        formula="l_s + d − l_s·(δα·θ + α_s·δθ)",
        source=END_GAUGE_SOURCE,
    )


def part(result: Explained, index: int) -> float:
    """What one term brings to the spread of a result."""
    return result.u * math.sqrt(result.shares[index])


CASES: tuple[Case, ...] = (
    _case("twenty temperatures, mean", "100.145", "°C", "4.4.3",
          lambda: mean_of(TEMPERATURES).value),
    _case("twenty temperatures, scatter", "1.489", "°C", "4.4.3",
          lambda: mean_of(TEMPERATURES).u * math.sqrt(len(TEMPERATURES))),
    _case("twenty temperatures, of the mean", "0.333", "°C", "4.4.3",
          lambda: mean_of(TEMPERATURES).u),
    _case("step of a display", "0.29", "step", "F.2.2.1", lambda: rectangular(0.5)),
    _case("limits of ± 2·10⁻⁶ /K", "1.2e-06", "1/K", "H.1.3.3", lambda: rectangular(2e-6)),
    *(
        _t_factor(dof, level, printed)
        for dof, row in T_FACTORS.items()
        for level, printed in zip(LEVELS, row, strict=True)
    ),
    *(_t_factor(math.inf, level, printed) for level, printed in INFINITE.items()),
    _case("three parts, together", "1.03", "%", "G.4.1", lambda: math.hypot(*RELATIVE[0])),
    _case("three parts, degrees of freedom", "19.0", "1", "G.4.1",
          lambda: effective_dof(*RELATIVE)),
    _case("three parts, 95 %", "2.2", "%", "G.4.1",
          lambda: coverage_factor(0.95, effective_dof(*RELATIVE)) * math.hypot(*RELATIVE[0])),
    Case(
        topic="uncertain",
        name="three parts, degrees of freedom truncated without rounding in between",
        source=derived(f"{GUM}, G.4.1, from unrounded parts"),
        compute=lambda: math.floor(effective_dof(*RELATIVE)),
        printed="18",
        unit="1",
    ),
    _case("end gauge, length", "50.000838", "mm", "H.1", lambda: end_gauge().value),
    _case("end gauge, of the difference", "9.7", "nm", "H.1.3.2", lambda: comparator().u / NM),
    _case("end gauge, part of the difference of expansion", "2.9", "nm", "H.1.4",
          lambda: part(end_gauge(), 2) / NM),
    _case("end gauge, part of the difference of temperature", "16.6", "nm", "H.1.4",
          lambda: part(end_gauge(), 5) / NM),
    _case("end gauge, combined", "32", "nm", "H.1.4", lambda: end_gauge().u / NM),
    _case("end gauge, degrees of freedom, truncated", "16", "1", "H.1.6",
          lambda: math.floor(end_gauge().dof)),
    _case("end gauge, 99 %, from the 32 nm the source rounds to", "93", "nm", "H.1.6",
          lambda: coverage_factor(0.99, end_gauge().dof) * 32.0),
)  # fmt: skip
