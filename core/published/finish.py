"""Roughness in both units, by the exact inch."""

from functools import partial

from core.calc.finish import Roughness, RoughnessParameter
from core.published.case import Case
from core.source import published
from core.units import from_unit

INCH = published("international inch of 1959, NIST SP 811 (2008), appendix B: 1 in = 25.4 mm")

TO_MICROMETRES = {16: "0.4064", 32: "0.8128", 63: "1.6002", 125: "3.1750", 20: "0.5080",
                  60: "1.5240", 100: "2.5400"}
TO_MICROINCHES = {0.4: "15.7480", 0.8: "31.4961", 1.6: "62.9921", 3.2: "125.9843"}


def _ra(value: float, unit: str) -> Roughness:
    return Roughness(parameter=RoughnessParameter.RA, value=from_unit(value, unit))


def _micrometres(microinches: float) -> float:
    return _ra(microinches, "µin").micrometres


def _microinches(micrometres: float) -> float:
    return _ra(micrometres, "µm").microinches


CASES: tuple[Case, ...] = (
    *(Case(topic="finish", name=f"{value} µin in µm", source=INCH, printed=printed, unit="µm",
           compute=partial(_micrometres, value)) for value, printed in TO_MICROMETRES.items()),
    *(Case(topic="finish", name=f"{value} µm in µin", source=INCH, printed=printed, unit="µin",
           compute=partial(_microinches, value)) for value, printed in TO_MICROINCHES.items()),
)
