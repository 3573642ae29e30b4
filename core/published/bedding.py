"""Derived figures of a wire in copper, and of one cylinder worked by two answers."""

from collections.abc import Callable

from core.calc.bedding import (
    contact_half_width,
    depth_at,
    hardness_pressure,
    line_load,
    ring_length,
    slip_line_pressure_mises,
    slip_line_pressure_tresca,
)
from core.calc.fasteners import read_thread, standard_fastener
from core.calc.separation import gas_force, separation_factor
from core.published.case import Case
from core.source import Source, derived
from core.unit_types import INCH, LBF

PSI = LBF / INCH**2
CHORD = derived("chord of a circle, worked apart from this program")
RING = derived("p·2a·π·Dc, worked apart from this program")
CYLINDER = derived("clamp, gas and wire of one invented cylinder, worked apart from this program")


COPPER_YIELD = 54.0
VICKERS = 51.0
ROUND_30_KSI = 30000.0 * PSI


def _case(name: str, source: Source, printed: str, unit: str, compute: Callable[[], float]) -> Case:
    return Case(
        topic="bedding", name=name, source=source, compute=compute, printed=printed, unit=unit
    )


def _strip(radius: float, depth: float, printed: str) -> Case:
    return _case(
        f"half width of the strip, radius {radius}, depth {depth}",
        CHORD,
        printed,
        "length of the radius",
        lambda: contact_half_width(2.0 * radius, depth),
    )


def _ring_load(ring: float, depth: float, pressure: float) -> float:
    """Ring load in lbf of a 0.041 in wire; ring and depth in inch, pressure in MPa."""
    half_width = contact_half_width(0.041 * INCH, depth * INCH)
    return line_load(pressure, half_width) * ring_length(ring * INCH) / LBF


def _line(depth: float, pressure: float) -> float:
    """Line load in lbf/in."""
    return line_load(pressure, contact_half_width(0.041 * INCH, depth * INCH)) / LBF * INCH


TRESCA = slip_line_pressure_tresca(COPPER_YIELD)
MISES = slip_line_pressure_mises(COPPER_YIELD)
HARDNESS = hardness_pressure(VICKERS)
GAS = 1500.0 * PSI


def _weak_depth() -> float:
    """Depth in inch under four 3/8-16 grade 5 at 75 % of proof, by hardness."""
    stud = standard_fastener(read_thread("3/8-16", "thread"), "5", "grade")
    half_width = 4.0 * 0.75 * stud.proof_load / (2.0 * HARDNESS * ring_length(4.300 * INCH))
    return depth_at(0.041 * INCH, half_width) / INCH


CASES: tuple[Case, ...] = (
    _strip(0.0205, 0.001, "0.00632456"),
    _strip(0.0205, 0.005, "0.01341641"),
    _strip(0.0205, 0.010, "0.01760682"),
    _strip(0.016, 0.008, "0.01385641"),
    _strip(0.5207, 0.254, "0.44721315"),
    _strip(0.0205, 0.0105, "0.01789553"),
    _case("line load, Tresca, depth 0.010", RING, "709.01", "lbf/in", lambda: _line(0.010, TRESCA)),
    _case(
        "line load, von Mises, depth 0.010", RING, "818.70", "lbf/in", lambda: _line(0.010, MISES)
    ),
    _case(
        "line load, 30 ksi, depth 0.010",
        RING,
        "1056.41",
        "lbf/in",
        lambda: _line(0.010, ROUND_30_KSI),
    ),
    _case(
        "line load, hardness, depth 0.010",
        RING,
        "2554.36",
        "lbf/in",
        lambda: _line(0.010, HARDNESS),
    ),
    _case("ring of 4.25, Tresca", RING, "9467", "lbf", lambda: _ring_load(4.25, 0.010, TRESCA)),
    _case("ring of 4.25, von Mises", RING, "10931", "lbf", lambda: _ring_load(4.25, 0.010, MISES)),
    _case(
        "ring of 4.25, 30 ksi", RING, "14105", "lbf", lambda: _ring_load(4.25, 0.010, ROUND_30_KSI)
    ),
    _case(
        "ring of 4.25, hardness", RING, "34105", "lbf", lambda: _ring_load(4.25, 0.010, HARDNESS)
    ),
    _case(
        "gas on a ring of 4.300, 1500 psi",
        CYLINDER,
        "21783.0",
        "lbf",
        lambda: gas_force(4.300 * INCH, GAS) / LBF,
    ),
    _case(
        "separation factor, C 0.2",
        CYLINDER,
        "2.3334",
        "1",
        lambda: separation_factor(40662.8, 21783.0, 0.2),
    ),
    _case(
        "separation factor, C 0",
        CYLINDER,
        "1.8667",
        "1",
        lambda: separation_factor(40662.8, 21783.0, 0.0),
    ),
    _case(
        "separation factor, C 0.2, clamp less a quarter",
        CYLINDER,
        "1.7501",
        "1",
        lambda: separation_factor(0.75 * 40662.8, 21783.0, 0.2),
    ),
    _case(
        "separation factor, C 0, clamp less a quarter",
        CYLINDER,
        "1.4000",
        "1",
        lambda: separation_factor(0.75 * 40662.8, 21783.0, 0.0),
    ),
    _case(
        "length of a ring of 4.300",
        CYLINDER,
        "13.508848",
        "in",
        lambda: ring_length(4.300 * INCH) / INCH,
    ),
    _case(
        "line load, von Mises, depth 0.0105",
        CYLINDER,
        "832.12",
        "lbf/in",
        lambda: _line(0.0105, MISES),
    ),
    _case(
        "line load, hardness, depth 0.0105",
        CYLINDER,
        "2596.25",
        "lbf/in",
        lambda: _line(0.0105, HARDNESS),
    ),
    _case(
        "wire load, von Mises", CYLINDER, "11241.0", "lbf", lambda: _ring_load(4.300, 0.0105, MISES)
    ),
    _case(
        "wire load, hardness",
        CYLINDER,
        "35072.3",
        "lbf",
        lambda: _ring_load(4.300, 0.0105, HARDNESS),
    ),
    _case("depth under a weak clamp, hardness", CYLINDER, "0.00265075", "in", _weak_depth),
    _case(
        "wire load at half the height over that at the whole",
        CYLINDER,
        "0.7620",
        "1",
        lambda: _ring_load(4.25, 0.005, MISES) / _ring_load(4.25, 0.010, MISES),
    ),
)
