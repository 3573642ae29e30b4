"""Straightedge across wires: derived values, worked out with another library; chi-square tables."""

import math
from collections.abc import Callable
from fractions import Fraction
from functools import partial

from core.calc.chi_square import survival
from core.calc.pair_heights import Heights, Reading, heights, predicted_gap
from core.calc.straightedge import gap, part_of_span
from core.published.case import Case
from core.source import Source, derived, published

LINE = derived("straight line through two points")
SOLVED = derived("weighted least squares, (AᵀWA)⁻¹AᵀWG, worked with a linear algebra library")
CHI_SQUARE = published("Abramowitz & Stegun, Handbook of Mathematical Functions, table 26.8")

HALF = Fraction(1, 2)


def _read(wires: str, part: Fraction, value: float, u: float) -> Reading:
    return Reading(name=wires, first=wires[0], second=wires[1], part=part, value=value, u=u)


def _triangle() -> Heights:
    pairs = (("12", 9.5), ("23", 10.5), ("13", 11.0))
    return heights("123", [_read(pair, HALF, value, 0.3) for pair, value in pairs])


def _span(low: Fraction) -> Heights:
    return heights("12", [_read("12", low, 10.0, 0.3), _read("12", 1 - low, 10.0, 0.3)])


def _bank() -> Heights:
    return heights(
        "1234",
        [
            _read("12", HALF, 10.4, 0.3),
            _read("23", HALF, 11.0, 0.3),
            _read("34", HALF, 10.3, 0.3),
            _read("12", Fraction(1, 4), 10.1, 0.5),
            _read("34", Fraction(3, 4), 9.9, 0.5),
            _read("23", Fraction(1, 4), 11.3, 0.4),
        ],
    )


def _direct(u: float = 0.3) -> Heights:
    singles = (("1", 10.0), ("2", 12.0))
    return heights("12", [Reading(name=k, first=k, value=value, u=u) for k, value in singles])


def _height_of(found: Callable[[], Heights], wire: str) -> float:
    return found().height(wire).height or math.nan


def _u_of(found: Callable[[], Heights], wire: str) -> float:
    return found().height(wire).u or math.nan


def _predicted_u(part: float) -> float:
    predicted = predicted_gap(_direct(), "1", "2", part)
    return predicted.u if predicted else math.nan


def _case(
    name: str, printed: str, unit: str, compute: Callable[[], float], source: Source = SOLVED
) -> Case:
    return Case(topic="straightedge", name=name, source=source, compute=compute, printed=printed,
                unit=unit)


def _gap_case(at: float, printed: str) -> Case:
    return _case(
        f"gap at {at} in, wires of 0.010 and 0.012 in at 0 and 4.4 in", printed, "in",
        lambda: gap(0.010, 0.012, float(part_of_span(0.0, 4.4, at))), LINE,
    )


def _wire_cases(
    name: str, found: Callable[[], Heights], printed: tuple[tuple[str, str, str], ...]
) -> tuple[Case, ...]:
    cases = []
    for wire, height, u in printed:
        cases.append(_case(f"{name}, wire {wire}", height, "thou",
                           partial(_height_of, found, wire)))
        cases.append(_case(f"{name}, u of wire {wire}", u, "thou",
                           partial(_u_of, found, wire)))
    return tuple(cases)


def _correlation_case(name: str, found: Callable[[], Heights], wires: str, printed: str) -> Case:
    return _case(f"{name}, correlation of {wires[0]} and {wires[1]}", printed, "1",
                 lambda: found().correlation(*wires))


def _chi_square_case(chi2: float, dof: int, printed: str) -> Case:
    return _case(f"chance of chi-square {chi2} with {dof}", printed, "1",
                 lambda: survival(chi2, dof), CHI_SQUARE)


CASES: tuple[Case, ...] = (
    _gap_case(1.1, "0.0105"),
    _gap_case(2.2, "0.0110"),
    _gap_case(3.3, "0.0115"),
    _gap_case(5.5, "0.0125"),
    _gap_case(-1.1, "0.0095"),
    _case("u of a gap at midspan, heights of u 0.3", "0.212132", "thou", lambda: _predicted_u(0.5)),
    _case("u of a gap at 5.5 in of 4.4, heights of u 0.3", "0.382426", "thou",
          lambda: _predicted_u(1.25)),
    *_wire_cases("three wires, each pair at midspan", _triangle,
                 (("1", "10.0", "0.519615"), ("2", "9.0", "0.519615"), ("3", "12.0", "0.519615"))),
    *(_correlation_case("three wires, each pair at midspan", _triangle, pair, "-0.333333")
      for pair in ("12", "23", "13")),
    _case("one pair at 1/4 and 3/4, growth of u", "1.581139", "1",
          lambda: _u_of(lambda: _span(Fraction(1, 4)), "1") / 0.3),
    _correlation_case("one pair at 1/4 and 3/4", lambda: _span(Fraction(1, 4)), "12", "-0.60"),
    _case("one pair at 0.4 and 0.6, growth of u", "3.605551", "1",
          lambda: _u_of(lambda: _span(Fraction(2, 5)), "1") / 0.3),
    *_wire_cases("four wires, six readings", _bank,
                 (("1", "9.575220", "0.620031"), ("2", "11.320356", "0.613901"),
                  ("3", "10.800774", "0.832702"), ("4", "9.709954", "0.735029"))),
    _case("four wires, six readings, chi-square", "0.221918", "1", lambda: _bank().chi2),
    _case("four wires, six readings, degrees of freedom", "2", "1", lambda: float(_bank().dof)),
    _case("four wires, six readings, chance", "0.8950", "1", lambda: _bank().p or math.nan),
    *(_correlation_case("four wires, six readings", _bank, pair, printed)
      for pair, printed in (("12", "-0.694720"), ("23", "-0.782565"), ("34", "-0.794895"))),
    _chi_square_case(3.84146, 1, "0.05000"),
    _chi_square_case(5.99147, 2, "0.05000"),
    _chi_square_case(11.0705, 5, "0.05000"),
    _chi_square_case(18.3070, 10, "0.05000"),
    _chi_square_case(30.5779, 15, "0.01000"),
)
