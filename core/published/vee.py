"""Intake side of a V engine: derived cases, worked apart from this program."""

import math

from core.calc.vee import VeeGeometry, vee_factors, vee_shift
from core.published.case import Case
from core.source import MEMORY, derived
from core.unit_types import INCH

WORKED = derived("plane geometry of both banks, worked apart from this program")
PARTS = (
    "face_gap", "port_offset", "manifold_lift", "riding_offset", "side_spacer", "rail_gap",
)
ROWS: tuple[tuple[float, float, tuple[str, ...]], ...] = (
    (90, 90, ("0.000000", "1.000000", "0.000000", "1.000000", "1.000000", "1.414214")),
    (90, 85, ("-0.087156", "0.996195", "0.113774", "0.923062", "1.100063", "1.549804")),
    (90, 80, ("-0.173648", "0.984808", "0.211985", "0.863218", "1.232803", "1.716960")),
    (90, 75, ("-0.258819", "0.965926", "0.298858", "0.816497", "1.414214", "1.931852")),
    (90, 70, ("-0.342020", "0.939693", "0.377377", "0.780206", "1.673157", "2.223502")),
    (90, 100, ("0.173648", "0.984808", "-0.302746", "1.232803", "0.863218", "1.202228")),
    (60, 90, ("0.000000", "1.000000", "0.000000", "1.000000", "0.577350", "1.154701")),
    (60, 80, ("-0.173648", "0.984808", "0.270149", "0.777862", "0.652704", "1.285575")),
)


def geometry(bank: float, face: float) -> VeeGeometry:
    """Geometry from degrees."""
    return VeeGeometry(bank_angle=math.radians(bank), face_angle=math.radians(face))


def _factor(bank: float, face: float, part: str, printed: str) -> Case:
    return Case(
        topic="vee",
        name=f"{part.replace('_', ' ')} of a unit rise, banks {bank}°, face {face}°",
        source=WORKED,
        compute=lambda: getattr(vee_factors(geometry(bank, face)), part),
        printed=printed,
        unit="1",
    )


def _shift(bank: float, face: float, rise: float, part: str, printed: str, unit: float) -> Case:
    return Case(
        topic="vee",
        name=f"{part.replace('_', ' ')}, banks {bank}°, face {face}°, rise {rise:g} mm",
        source=WORKED,
        compute=lambda: getattr(vee_shift(geometry(bank, face), rise), part) / unit,
        printed=printed,
        unit="in" if unit == INCH else "mm",
    )


CASES: tuple[Case, ...] = (
    *(
        _factor(bank, face, part, printed)
        for bank, face, row in ROWS
        for part, printed in zip(PARTS, row, strict=True)
    ),
    _shift(90, 80, 0.0315 * INCH, "face_gap", "-0.005470", INCH),
    _shift(90, 80, 0.0315 * INCH, "port_offset", "0.031021", INCH),
    _shift(90, 80, 0.0315 * INCH, "manifold_lift", "0.006678", INCH),
    _shift(90, 80, 0.0315 * INCH, "riding_offset", "0.027191", INCH),
    _shift(90, 80, 0.0315 * INCH, "side_spacer", "0.038833", INCH),
    _shift(90, 80, 0.0315 * INCH, "rail_gap", "0.054084", INCH),
    _shift(60, 80, 0.5, "side_spacer", "0.326352", 1.0),
    _shift(60, 80, 0.5, "rail_gap", "0.642788", 1.0),
    Case(
        topic="vee",
        name="side factor long quoted for milled heads of 90° engines with 10° intake faces",
        source=MEMORY,
        compute=lambda: vee_factors(geometry(90, 80)).side_spacer,
        printed="1.23",
        unit="1",
    ),
    Case(
        topic="vee",
        name="rail factor long quoted for milled heads of 90° engines with 10° intake faces",
        source=MEMORY,
        compute=lambda: vee_factors(geometry(90, 80)).rail_gap,
        printed="1.7",
        unit="1",
    ),
)
