"""Wire: lengths, weights and yields worked out apart from this program."""

from functools import partial

from core.calc.wire import Engine, from_spool, mass, ring_length
from core.published.case import Case
from core.source import Source, derived
from core.tables.lockwire import POUND_PER_CUBIC_INCH
from core.unit_types import INCH
from core.units import from_unit

GEOMETRY = derived("circle and section, exact inch and pound")
POUND = 453.59237
FOOT = 12 * INCH

FEET_PER_POUND: dict[float, tuple[str, str]] = {
    0.015: ("1648.8", "1631.7"),
    0.020: ("927.5", "917.8"),
    0.025: ("593.6", "587.4"),
    0.032: ("362.3", "358.5"),
    0.040: ("231.9", "229.5"),
    0.041: ("220.7", "218.4"),
    0.047: ("167.9", "166.2"),
    0.051: ("142.6", "141.2"),
    0.060: ("103.1", "102.0"),
    0.091: ("44.8", "44.3"),
}
"""Diameter in inch: feet a pound at 0.286 and at 0.289 lb/in³."""
DENSITIES = (0.286, 0.289)


def _feet_per_pound(inches: float, density: float) -> float:
    gram_per_foot = mass(from_unit(inches, "in"), FOOT, density * POUND_PER_CUBIC_INCH)
    return POUND / gram_per_foot


def _rings_per_pound(inches: float, ring: float, density: float) -> float:
    grams = mass(from_unit(inches, "in"), ring_length(from_unit(ring, "in")),
                 density * POUND_PER_CUBIC_INCH)
    return POUND / grams


def _case(
    name: str, printed: str, unit: str, compute: partial[float], source: Source = GEOMETRY
) -> Case:
    return Case(topic="wire", name=name, source=source, compute=compute, printed=printed,
                unit=unit)


def _whole_rings_per_pound() -> float:
    length = POUND / mass(from_unit(0.041, "in"), 1.0, 0.286 * POUND_PER_CUBIC_INCH)
    engine = Engine(wire=from_unit(0.041, "in"), rings=(from_unit(4.25, "in"),), trimming=0.0)
    return float(from_spool(engine, length).rings)


def _pounds_per_ring() -> float:
    return 1.0 / _rings_per_pound(0.041, 4.25, 0.289)


CASES: tuple[Case, ...] = (
    *(_case(f"feet per pound of {inches} in at {density} lb/in³", value, "ft/lb",
            partial(_feet_per_pound, inches, density))
      for inches, printed in FEET_PER_POUND.items()
      for density, value in zip(DENSITIES, printed, strict=True)),
    *(_case(f"length of a ring of {diameter}", printed, unit, partial(ring_length, diameter))
      for diameter, printed, unit in (
          (4.250, "13.351769", "in"), (4.300, "13.508848", "in"), (3.500, "10.995574", "in"),
          (100.0, "314.159265", "mm"))),
    _case("weight of a 0.041 ring of 4.250 in", "0.00509441", "lb", partial(_pounds_per_ring)),
    _case("0.041 rings of 4.250 in a pound at 0.289", "196.3", "1",
          partial(_rings_per_pound, 0.041, 4.25, 0.289)),
    _case("0.041 rings of 4.250 in a pound at 0.286", "198.4", "1",
          partial(_rings_per_pound, 0.041, 4.25, 0.286)),
    _case("0.032 rings of 3.500 in a pound at 0.286", "395.4", "1",
          partial(_rings_per_pound, 0.032, 3.5, 0.286)),
    _case("whole 0.041 rings of 4.250 in a pound at 0.286", "198", "1",
          partial(_whole_rings_per_pound)),
)
