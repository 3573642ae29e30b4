"""How an error in each input moves a result: the only module that knows `uncertainties`.

First-order propagation and effective degrees of freedom after JCGM 100:2008 (GUM), clauses 5.1.2
and G.4.1; distributions of JCGM 100:2008 4.3.7 for limits of error.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from statistics import NormalDist

from core.source import Source

SQRT3 = math.sqrt(3.0)
NORMAL_FROM = 1000.0
"""Degrees of freedom from which Student's distribution is taken as normal."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """One input of a result.

    Parameters
    ----------
    value, u
        Best value and standard uncertainty, in `unit`.
    dof
        Degrees of freedom of `u`; infinite for a limit that is known.
    common
        Whether every reading made with the same thing carries this very error, known by its name.
    """

    name: str
    value: float
    u: float
    unit: str
    source: Source
    dof: float = math.inf
    common: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Explained:
    """A result with all a person needs to trust it.

    Parameters
    ----------
    value, u
        Best value and standard uncertainty, in `unit`.
    dof
        Effective degrees of freedom, not truncated.
    shares
        Part of the variance that each term brings, in the order of `terms`; they sum to 1
        unless nothing is uncertain.
    """

    value: float
    u: float
    dof: float
    unit: str
    formula: str
    terms: tuple[Term, ...]
    shares: tuple[float, ...]
    assumptions: tuple[str, ...]
    source: Source


def rectangular(half_width: float) -> float:
    """Standard uncertainty of a value known to lie within ± `half_width`.

    Source
    ------
    JCGM 100:2008 (GUM), 4.3.7.
    """
    return half_width / SQRT3


def explain(
    function: Callable[..., float],
    terms: Sequence[Term],
    *,
    unit: str,
    formula: str,
    source: Source,
    assumptions: Sequence[str] = (),
) -> Explained:
    """Result of `function` over independent `terms`, in their order.

    Source
    ------
    JCGM 100:2008 (GUM), 5.1.2, first order.
    """
    value, parts = _value_and_parts(function, terms)
    variance = math.fsum(part * part for part in parts)
    return Explained(
        value=value,
        u=math.sqrt(variance),
        dof=effective_dof(parts, [term.dof for term in terms]),
        unit=unit,
        formula=formula,
        terms=tuple(terms),
        shares=tuple(part * part / variance if variance else 0.0 for part in parts),
        assumptions=tuple(assumptions),
        source=source,
    )


def _value_and_parts(
    function: Callable[..., float], terms: Sequence[Term]
) -> tuple[float, tuple[float, ...]]:
    import uncertainties  # brings numpy with it where that is installed, which takes its time

    value = function(*(term.value for term in terms))
    inputs = [uncertainties.ufloat(term.value, term.u) if term.u else term.value for term in terms]
    slopes = getattr(uncertainties.wrap(function)(*inputs), "derivatives", {})
    return value, tuple(
        abs(slopes.get(each, 0.0)) * term.u if term.u else 0.0
        for each, term in zip(inputs, terms, strict=True)
    )


def effective_dof(parts: Sequence[float], dofs: Sequence[float]) -> float:
    """Effective degrees of freedom of a sum of independent parts, not truncated.

    Parameters
    ----------
    parts
        Standard uncertainty each term brings to the result.
    dofs
        Degrees of freedom of each; infinite for limits that are known.

    Source
    ------
    JCGM 100:2008 (GUM), G.4.1, equation G.2b (Welch–Satterthwaite).

    Examples
    --------
    >>> round(effective_dof([0.25, 0.57, 0.82], [9, 4, 14]), 2)
    19.0
    """
    weight = math.fsum(part**4 / dof for part, dof in zip(parts, dofs, strict=True))
    return math.fsum(part * part for part in parts) ** 2 / weight if weight else math.inf


def student_cdf(t: float, dof: float) -> float:
    """Probability that Student's variable with truncated `dof` is at most `t`.

    Source
    ------
    Abramowitz & Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4; degrees of freedom
    truncated to the next lower whole number after JCGM 100:2008 (GUM), G.4.1.
    """
    if dof >= NORMAL_FROM:
        return 0.5 * math.erfc(-t / math.sqrt(2.0))
    whole = max(1, math.floor(dof + 1e-9))
    theta = math.atan2(t, math.sqrt(whole))
    return 0.5 + 0.5 * _central_area(theta, whole)


def _central_area(theta: float, dof: int) -> float:
    """Signed area between -t and t; theta = atan(t/√dof)."""
    odd = dof % 2
    square = math.cos(theta) ** 2
    term, total = (math.cos(theta), 0.0) if odd else (1.0, 0.0)
    for k in range(dof // 2):
        total += term
        term *= square * ((2 * k + 2) / (2 * k + 3) if odd else (2 * k + 1) / (2 * k + 2))
    return 2.0 / math.pi * (theta + math.sin(theta) * total) if odd else math.sin(theta) * total


def coverage_factor(level: float, dof: float) -> float:
    """Factor k such that ± k·u holds `level` of Student's distribution.

    Source
    ------
    JCGM 100:2008 (GUM), G.3.2; below 1000 degrees of freedom found by bisection on the
    distribution itself.

    Examples
    --------
    >>> round(coverage_factor(0.95, 4), 4)
    2.7764
    """
    wanted = 0.5 + 0.5 * level
    if dof >= NORMAL_FROM:
        return NormalDist().inv_cdf(wanted)
    low, high = 0.0, 1e6
    for _ in range(80):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if student_cdf(middle, dof) < wanted else (low, middle)
    return 0.5 * (low + high)
