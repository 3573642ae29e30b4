"""Decision rules: the examples of JCGM 106, and values derived from its rules."""

import math

from core.calc.fit import Measured, interference_check
from core.calc.gasket import HeightRule, Sheet, Standing, height_to_gasket
from core.calc.height import Bound
from core.published.case import Case
from core.source import Source, Trust, derived
from core.tables.practice import InterferencePractice
from core.uncertain import coverage_factor
from core.unit_types import INCH
from core.verdict import GUARDED, Acceptance, Check, Rule, judge, probability

JCGM_106 = "JCGM 106:2012"
RULES = derived(f"{JCGM_106}, clauses 7 and 8, normal distribution")
Z_FACTORS = {0.80: "0.84", 0.90: "1.28", 0.95: "1.64", 0.99: "2.33", 0.999: "3.09"}
TWO_U = Acceptance(rule=Rule.GUARDED, confidence=0.977249868)
"""Guard band of two standard uncertainties, as ISO 14253-1 had it before 2017."""
LIMIT, LIMIT_U = 0.01075, 0.0004
UPPER = (
    (0.0098, "0.991226", "pass", "pass"),
    (0.0100, "0.969604", "pass", "undecided"),
    (0.0104, "0.809213", "undecided", "undecided"),
    (0.0110, "0.265986", "undecided", "undecided"),
    (0.0112, "0.130295", "undecided", "undecided"),
    (0.0116, "0.016793", "fail", "fail"),
)
INTERFERENCE_U = 0.0003
TWO_SIDED = (
    (0.0004, "0.022750", "fail"),
    (0.0008, "0.252493", "undecided"),
    (0.0012, "0.747507", "undecided"),
    (0.0015, "0.952209", "pass"),
    (0.0020, "0.999142", "pass"),
    (0.0027, "0.841345", "undecided"),
    (0.0036, "0.022750", "fail"),
)
BAND = InterferencePractice(holds_from=0.001 * INCH, hard_above=0.003 * INCH)


def _remembered(where: str) -> Source:
    return Source(Trust.MEMORY, f"{JCGM_106}, {where}")


def _z(level: float, printed: str) -> Case:
    return Case(
        topic="verdict",
        name=f"one-sided factor for {100 * level:g} %",
        source=_remembered("7.3, Table 1"),
        compute=lambda: coverage_factor(2.0 * level - 1.0, math.inf),
        printed=printed,
        unit="1",
    )


def _margin(value: float) -> tuple[float, float]:
    margin = LIMIT - value
    return margin, probability(margin, LIMIT_U)


def _upper(value: float, printed: str, at_95: str, at_two_u: str) -> tuple[Case, ...]:
    name = f"{value:.4f} in against 25 % of 0.043 in"
    return (
        Case(
            topic="verdict",
            name=f"{name}, probability",
            source=RULES,
            compute=lambda: _margin(value)[1],
            printed=printed,
            unit="1",
        ),
        Case(
            topic="verdict",
            name=f"{name}, 95 % rule",
            source=RULES,
            compute=lambda: judge(*_margin(value), GUARDED),
            printed=at_95,
            unit="",
        ),
        Case(
            topic="verdict",
            name=f"{name}, rule of two standard uncertainties",
            source=RULES,
            compute=lambda: judge(*_margin(value), TWO_U),
            printed=at_two_u,
            unit="",
        ),
    )


def _interference(value: float) -> Check:
    wire = Measured(
        value=0.040 * INCH + value * INCH, half_width=INTERFERENCE_U * math.sqrt(3.0) * INCH
    )
    return interference_check(wire, Measured(value=0.040 * INCH, half_width=0.0), BAND, GUARDED)


def _two_sided(value: float, printed: str, verdict: str) -> tuple[Case, ...]:
    name = f"interference of {value:.4f} in between 0.001 and 0.003 in"
    return (
        Case(
            topic="fit",
            name=f"{name}, probability",
            source=RULES,
            compute=lambda: _interference(value).probability or 0.0,
            printed=printed,
            unit="1",
        ),
        Case(
            topic="fit",
            name=f"{name}, 95 % rule",
            source=RULES,
            compute=lambda: _interference(value).verdict,
            printed=verdict,
            unit="",
        ),
    )


def _uncertain_sheet() -> Check:
    wire = Standing(bound=Bound.BOTH, value=0.0100 * INCH, u=0.0004 * INCH, dof=math.inf)
    sheet = Sheet(thickness=0.0431 * INCH, half_width=0.0020 * INCH)
    return height_to_gasket(wire, sheet, HeightRule(acceptance=GUARDED))


CASES: tuple[Case, ...] = (
    Case(
        topic="verdict",
        name="−5.47 V against at most −5.40 V, u 0.05 V",
        source=_remembered("clause 7, example of a diode"),
        compute=lambda: 100.0 * probability(-5.40 - -5.47, 0.05),
        printed="92",
        unit="%",
    ),
    Case(
        topic="verdict",
        name="speed that exceeds 100 km/h at 99.9 %, relative u 2 %, rounded up",
        source=_remembered("clause 8, example of a speed limit"),
        compute=lambda: math.ceil(100.0 / (1.0 - 0.02 * coverage_factor(0.998, math.inf))),
        printed="107",
        unit="km/h",
    ),
    *(_z(level, printed) for level, printed in Z_FACTORS.items()),
    *(case for row in UPPER for case in _upper(*row)),
    Case(
        topic="verdict",
        name="largest height accepted at 95 %",
        source=RULES,
        compute=lambda: LIMIT - coverage_factor(0.90, math.inf) * LIMIT_U,
        printed="0.01009206",
        unit="in",
    ),
    Case(
        topic="verdict",
        name="0.0100 in with a spread from five readings",
        source=derived(f"{JCGM_106}, clause 7, Student's distribution, 4 degrees of freedom"),
        compute=lambda: probability(LIMIT - 0.0100, LIMIT_U, 4),
        printed="0.932973",
        unit="1",
    ),
    Case(
        topic="gasket",
        name="0.0100 in on 0.0431 ± 0.0020 in, by the margin",
        source=RULES,
        compute=lambda: _uncertain_sheet().probability or 0.0,
        printed="0.941919",
        unit="1",
    ),
    Case(
        topic="gasket",
        name="0.0100 in on 0.0431 ± 0.0020 in, 95 % rule",
        source=RULES,
        compute=lambda: _uncertain_sheet().verdict,
        printed="undecided",
        unit="",
    ),
    *(case for row in TWO_SIDED for case in _two_sided(*row)),
    Case(
        topic="verdict",
        name="spread whose one-sided guard bands fill 0.001 to 0.003 in at 95 %",
        source=RULES,
        compute=lambda: 0.001 / coverage_factor(0.90, math.inf),
        printed="0.0006080",
        unit="in",
    ),
)
