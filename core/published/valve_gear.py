"""Pushrods and cam drives: derived cases, worked apart from this program."""

import math

from core.calc.valve_gear import CamDrive, Pushrod, cam_shift, pushrod_growth
from core.published.case import Case
from core.source import derived
from core.unit_types import INCH

WORKED = derived("plane geometry, worked apart from this program")


def _growth(tilt: float, printed: str) -> Case:
    pushrod = Pushrod(length=7.8 * INCH, tilt=math.radians(tilt))
    return Case(
        topic="valve_gear",
        name=f"7.8 in pushrod at {tilt:g}°, head up 0.022 in",
        source=WORKED,
        compute=lambda: pushrod_growth(pushrod, 0.022 * INCH) / INCH,
        printed=printed,
        unit="in",
    )


def _drive(cam: int, pitch: float, centres: float) -> CamDrive:
    return CamDrive(crank_teeth=cam // 2, cam_teeth=cam, pitch=pitch, centres=centres)


def _cam(drive: CamDrive, rise: float, part: str, printed: str) -> Case:
    return Case(
        topic="valve_gear",
        name=f"{drive.cam_teeth} teeth, {drive.centres:g} mm, head up {rise:g} mm: {part} [°]",
        source=WORKED,
        compute=lambda: math.degrees(getattr(cam_shift(drive, rise), part)),
        printed=printed,
        unit="°",
    )


CHAINS: tuple[tuple[CamDrive, float, tuple[str, str, str]], ...] = (
    (_drive(36, 9.525, 220.0), 0.50, ("7.1249", "0.520890", "1.041780")),
    (_drive(42, 9.525, 300.0), 0.50, ("6.0915", "0.447407", "0.894815")),
    (_drive(38, 8.000, 250.0), 0.25, ("5.5530", "0.294665", "0.589329")),
    (_drive(48, 9.525, 400.0), 1.00, ("5.2187", "0.784146", "1.568292")),
)

CASES: tuple[Case, ...] = (
    _growth(0.0, "0.022000"),
    _growth(5.0, "0.02191652"),
    *(
        _cam(drive, rise, part, printed)
        for drive, rise, row in CHAINS
        for part, printed in zip(("span_angle", "cam", "crank"), row, strict=True)
    ),
)
