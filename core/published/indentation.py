"""Pressure under a wire: the classical slip-line factor, and derived figures beside it."""

from collections.abc import Callable

from core.calc.bedding import (
    flow_stress,
    hardness_pressure,
    slip_line_pressure_mises,
    slip_line_pressure_tresca,
)
from core.published.case import Case
from core.source import Source, derived, published
from core.unit_types import KSI

FACTOR = published(
    "slip-line factor of plane indentation, Trans. ASME, J. Eng. Ind. 92 (1970) 469; Hill 1950"
)
WORKED = derived("slip line and hardness as pressures, worked apart from this program")


def _case(name: str, source: Source, printed: str, unit: str, compute: Callable[[], float]) -> Case:
    return Case(
        topic="bedding", name=name, source=source, compute=compute, printed=printed, unit=unit
    )


CASES: tuple[Case, ...] = (
    _case(
        "pressure over yield, Tresca", FACTOR, "2.57", "1", lambda: slip_line_pressure_tresca(1.0)
    ),
    _case(
        "pressure over yield, Tresca, in full",
        WORKED,
        "2.570796",
        "1",
        lambda: slip_line_pressure_tresca(1.0),
    ),
    _case(
        "pressure over yield, von Mises",
        WORKED,
        "2.968500",
        "1",
        lambda: slip_line_pressure_mises(1.0),
    ),
    _case("Tresca, 54 MPa", WORKED, "138.823", "MPa", lambda: slip_line_pressure_tresca(54.0)),
    _case("von Mises, 54 MPa", WORKED, "160.299", "MPa", lambda: slip_line_pressure_mises(54.0)),
    _case("Tresca, 69 MPa", WORKED, "177.385", "MPa", lambda: slip_line_pressure_tresca(69.0)),
    _case("von Mises, 69 MPa", WORKED, "204.826", "MPa", lambda: slip_line_pressure_mises(69.0)),
    _case("hardness, 51 HV", WORKED, "500.14", "MPa", lambda: hardness_pressure(51.0)),
    _case(
        "hardness, 51 HV, in ksi", WORKED, "72.539", "ksi", lambda: hardness_pressure(51.0) / KSI
    ),
    _case("flow stress, 51 HV", WORKED, "185.2", "MPa", lambda: flow_stress(51.0)),
)
