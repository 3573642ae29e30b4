"""What a raised head does to pushrods, lifters and chain-driven overhead cams."""

import math
from dataclasses import dataclass

from core.errors import Fault, InputError, fault
from core.source import Source, derived
from core.unit_types import Millimetre, Number, Radian

PUSHROD_SOURCE: Source = derived("lifter to rocker, the head moved along the deck normal")
CHAIN_SOURCE: Source = derived(
    "straight tight span on both sprockets, its chain kept at one length; first order "
    "lift·cos(angle to the tight span) / pitch radius"
)
CRANK_PER_CAM = 2.0
STEEPEST = math.radians(60.0)
FEWEST_TEETH = 9
FARTHEST_GROWTH = 0.25
FARTHEST_TURN = math.radians(30.0)
SETTLED = 1e-12


@dataclass(frozen=True, slots=True, kw_only=True)
class Pushrod:
    """A pushrod as it stands in the engine.

    Parameters
    ----------
    length
        Length between its seats [mm].
    tilt
        Angle to the deck normal [rad].
    """

    length: Millimetre
    tilt: Radian = 0.0


def pushrod_growth(pushrod: Pushrod, rise: Millimetre) -> Millimetre:
    """How much longer the pushrod must be; a hydraulic lifter loses this much preload [mm].

    Parameters
    ----------
    rise
        How far the head goes up; negative is down [mm].

    Raises
    ------
    InputError
        If the pushrod is none.

    Source
    ------
    *derived*: law of cosines.
    """
    if faults := pushrod_faults(pushrod):
        raise InputError(faults)
    length = pushrod.length
    return math.sqrt(length**2 + 2.0 * length * rise * math.cos(pushrod.tilt) + rise**2) - length


def rise_for_growth(pushrod: Pushrod, growth: Millimetre) -> Millimetre:
    """How far the head goes up for the distance lifter to rocker to grow so much [mm].

    Parameters
    ----------
    growth
        Growth of the distance; negative if it shrinks [mm].

    Raises
    ------
    InputError
        If the pushrod is none, or shorter than what it should grow by.

    Source
    ------
    *derived*: law of cosines, solved.
    """
    faults = [*pushrod_faults(pushrod)]
    if not abs(growth) <= FARTHEST_GROWTH * pushrod.length:
        faults.append(fault("preload", "valve_gear.preload"))
    if faults:
        raise InputError(faults)
    along = pushrod.length * math.cos(pushrod.tilt)
    across = pushrod.length * math.sin(pushrod.tilt)
    return math.sqrt((pushrod.length + growth) ** 2 - across**2) - along


def pushrod_faults(pushrod: Pushrod) -> tuple[Fault, ...]:
    """What no pushrod is, each by its field."""
    faults = []
    if not pushrod.length > 0.0:
        faults.append(fault("pushrod-length", "valve_gear.length"))
    if not abs(pushrod.tilt) <= STEEPEST:
        faults.append(fault("pushrod-tilt", "valve_gear.tilt", most=math.degrees(STEEPEST)))
    return tuple(faults)


@dataclass(frozen=True, slots=True, kw_only=True)
class CamDrive:
    """Chain or toothed belt from the crank straight to one overhead cam.

    Parameters
    ----------
    crank_teeth, cam_teeth
        Teeth of the sprockets.
    pitch
        Pitch of chain or belt [mm].
    centres
        Distance crank to cam, with the sheet on now [mm].
    lift_angle
        Angle of the lift to the line of centres, positive towards the tight span [rad].
    banks
        Banks that this one chain drives.
    """

    crank_teeth: int
    cam_teeth: int
    pitch: Millimetre
    centres: Millimetre
    lift_angle: Radian = 0.0
    banks: int = 1

    @property
    def crank_radius(self) -> Millimetre:
        return self.crank_teeth * self.pitch / (2.0 * math.pi)

    @property
    def cam_radius(self) -> Millimetre:
        return self.cam_teeth * self.pitch / (2.0 * math.pi)


@dataclass(frozen=True, slots=True, kw_only=True)
class CamShift:
    """How far a raised head turns the cam back; negative is an advance.

    Parameters
    ----------
    cam, crank
        Retard at the cam, and the same in turns of the crank [rad].
    span_angle
        Angle of the tight span to the line of centres [rad].
    """

    cam: Radian
    crank: Radian
    span_angle: Radian


def cam_shift(drive: CamDrive, rise: Millimetre) -> CamShift:
    """How far a raised head turns the cam back.

    The crank stands still; slack is taken up on the other side, so a longer tight span pulls the
    cam back.

    Parameters
    ----------
    rise
        How far the head goes up; negative is down [mm].

    Raises
    ------
    InputError
        If the drive cannot be solved: two banks on one chain, sprockets that touch, or a ratio
        other than two to one.

    Source
    ------
    *derived*.
    """
    if faults := drive_faults(drive):
        raise InputError(faults)
    cam = _retard(drive, rise)
    span_angle = _span_angle(drive, drive.centres)
    return CamShift(cam=cam, crank=CRANK_PER_CAM * cam, span_angle=span_angle)


def rise_for_retard(drive: CamDrive, crank: Radian) -> Millimetre:
    """How far the head goes up for the cam to come so late [mm].

    Parameters
    ----------
    crank
        Retard in turns of the crank; negative is an advance [rad].

    Raises
    ------
    InputError
        As `cam_shift`, or if the turn is past any timing.

    Source
    ------
    *derived*: Newton steps on the exact retard with its slope at no rise.
    """
    faults = [*drive_faults(drive)]
    if not abs(crank) <= FARTHEST_TURN:
        faults.append(fault("retard", "valve_gear.turn", most=math.degrees(FARTHEST_TURN)))
    if faults:
        raise InputError(faults)
    wanted = crank / CRANK_PER_CAM
    slope = along_tight_span(drive) / drive.cam_radius
    rise = wanted / slope
    for _ in range(20):
        short = wanted - _retard(drive, rise)
        rise += short / slope
        if abs(short) < SETTLED:
            break
    return rise


def _span_angle(drive: CamDrive, centres: Millimetre) -> Radian:
    return math.asin((drive.cam_radius - drive.crank_radius) / centres)


def _retard(drive: CamDrive, rise: Millimetre) -> Radian:
    """Chain of the tight side keeps its length: span, and what each sprocket takes up."""
    wider = drive.cam_radius - drive.crank_radius
    along = drive.centres + rise * math.cos(drive.lift_angle)
    across = rise * math.sin(drive.lift_angle)
    centres = math.hypot(along, across)
    longer = math.sqrt(centres**2 - wider**2) - math.sqrt(drive.centres**2 - wider**2)
    leans = _span_angle(drive, centres) - _span_angle(drive, drive.centres)
    turned = math.atan2(across, along) + leans
    return (longer + wider * turned) / drive.cam_radius


def along_tight_span(drive: CamDrive) -> Number:
    """Part of a small rise that lies along the tight span [1].

    Source
    ------
    *derived*: cos(lift angle − span angle); with the lift along the line of centres, cos of the
    span angle.
    """
    return math.cos(drive.lift_angle - _span_angle(drive, drive.centres))


def drive_faults(drive: CamDrive) -> tuple[Fault, ...]:
    """What cannot be solved, each by its field."""
    if drive.banks != 1:
        return (fault("cam-banks", "valve_gear.banks"),)
    faults = []
    if drive.crank_teeth < FEWEST_TEETH:
        faults.append(fault("crank-teeth", "valve_gear.teeth", fewest=FEWEST_TEETH))
    if drive.cam_teeth != CRANK_PER_CAM * drive.crank_teeth:
        faults.append(fault("cam-teeth", "valve_gear.two_to_one", teeth=2 * drive.crank_teeth))
    if not drive.pitch > 0.0:
        faults.append(fault("chain-pitch", "valve_gear.length"))
    elif not drive.centres > drive.crank_radius + drive.cam_radius:
        least = drive.crank_radius + drive.cam_radius
        faults.append(fault("cam-centres", "valve_gear.touching", least=least))
    if not abs(drive.lift_angle) <= STEEPEST:
        faults.append(fault("lift-angle", "valve_gear.tilt", most=math.degrees(STEEPEST)))
    return tuple(faults)
