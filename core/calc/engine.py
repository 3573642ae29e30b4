"""What is known of an engine, as far as the thickness of its sheet goes.

Every number may be missing; a group that is None does not exist on this engine.
"""

from dataclasses import dataclass
from enum import StrEnum

from core.calc.clearances import MeasuredValve
from core.calc.compression import CylinderVolumes
from core.calc.fit import Measured
from core.calc.gasket import HeightRule, Sheet, Standing
from core.calc.valve_gear import CamDrive, Pushrod
from core.calc.vee import VeeGeometry
from core.tables.clearance_practice import (
    VOLUME_HALF_WIDTHS,
    BlockMaterial,
    RodMaterial,
    VolumeHalfWidths,
)
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.unit_types import Millimetre, Number, Radian
from core.verdict import GUARDED, Acceptance

PLAIN_HEIGHT_RULE = HeightRule()


class Valve(StrEnum):
    INTAKE = "intake"
    EXHAUST = "exhaust"


@dataclass(frozen=True, slots=True, kw_only=True)
class Ring:
    """One wire ring as it stands.

    Parameters
    ----------
    standing
        How far it stands into the sheet.
    down
        False where the wire may not be on the floor of its groove.
    interference
        Wire over groove width, where both are known [mm].
    """

    name: str
    standing: Standing
    down: bool = True
    interference: Millimetre | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PistonDeck:
    """Piston below the deck at top dead centre; negative if it stands proud."""

    name: str
    deck: Measured


@dataclass(frozen=True, slots=True, kw_only=True)
class Pistons:
    """Pistons, and the least gap to the head.

    Parameters
    ----------
    rod
        Material of the rods; chooses the figure of the trade where `least` is not given.
    least
        Least piston to head, cold [mm].
    """

    decks: tuple[PistonDeck, ...] = ()
    rod: RodMaterial | None = None
    least: Millimetre | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ValveReading:
    """One valve of one cylinder, measured at the sheet on now.

    Parameters
    ----------
    half_width
        Limit of error of the clearance [mm].
    """

    name: str
    valve: Valve
    measured: MeasuredValve
    half_width: Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class Valves:
    """Valve clearances, and the least that the user allows.

    Parameters
    ----------
    intake_least, exhaust_least
        Least clearance to the piston [mm].
    """

    readings: tuple[ValveReading, ...] = ()
    intake_least: Millimetre | None = None
    exhaust_least: Millimetre | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RatioLimits:
    """Compression ratio that is wanted, or the highest that the fuel stands.

    Parameters
    ----------
    lowest, highest
        Least and greatest ratio [1].
    """

    cylinder: CylinderVolumes | None = None
    lowest: Number | None = None
    highest: Number | None = None
    half_widths: VolumeHalfWidths = VOLUME_HALF_WIDTHS


@dataclass(frozen=True, slots=True, kw_only=True)
class Lifters:
    """Pushrods, and lifter preload or travel of the adjuster.

    Parameters
    ----------
    preload
        With the sheet on now [mm].
    least, most
        Range that is allowed [mm].
    """

    pushrod: Pushrod | None = None
    preload: Millimetre | None = None
    least: Millimetre | None = None
    most: Millimetre | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class IntakeFaces:
    """Intake side of a V engine whose manifold fits with the sheet on now.

    Parameters
    ----------
    largest_offset
        Ports out of line, either way, that is still good enough [mm].
    thickest_spacer
        Thickness that can be added at each intake face [mm].
    """

    vee: VeeGeometry | None = None
    largest_offset: Millimetre | None = None
    thickest_spacer: Millimetre | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CamTiming:
    """An overhead cam, in time with the sheet on now.

    Parameters
    ----------
    most_retard, most_advance
        In turns of the crank [rad].
    """

    drive: CamDrive | None = None
    most_retard: Radian | None = None
    most_advance: Radian | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Dowels:
    """Dowels between block and head.

    Parameters
    ----------
    proud
        How far they stand over the deck [mm].
    least
        Least depth in the head [mm].
    """

    proud: Millimetre | None = None
    least: Millimetre | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Threads:
    """Head bolts in the block.

    Parameters
    ----------
    engaged
        Length of thread with the sheet on now [mm].
    diameter
        Diameter of the thread [mm].
    block
        Material of the block; chooses the figure of the trade where `least` is not given.
    least
        Least length of thread [mm].
    room
        From the tip of the bolt to the bottom of its hole, with the sheet on now [mm].
    """

    engaged: Millimetre | None = None
    diameter: Millimetre | None = None
    block: BlockMaterial | None = None
    least: Millimetre | None = None
    room: Millimetre | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Engine:
    """Everything that a sheet thickness meets.

    Parameters
    ----------
    sheet_on
        Sheet that was on when clearances were measured.
    rings
        Wire heights.
    rule
        Limits and rule for the height.
    receiver
        Depth of a receiver groove in the head; 0 without one [mm].
    safety
        Rule for clearances that can break something.
    sheet_half_width
        Limit of error of a sheet that is not on the shelf, for the ends of the windows [mm].
    """

    sheet_on: Sheet | None = None
    rings: tuple[Ring, ...] = ()
    rule: HeightRule = PLAIN_HEIGHT_RULE
    receiver: Millimetre = 0.0
    pistons: Pistons = Pistons()
    valves: Valves = Valves()
    ratio: RatioLimits = RatioLimits()
    lifters: Lifters | None = None
    intake: IntakeFaces | None = None
    cam: CamTiming | None = None
    dowels: Dowels = Dowels()
    threads: Threads = Threads()
    safety: Acceptance = GUARDED
    sheet_half_width: Millimetre = ASSUMED_HALF_WIDTHS.sheet_measured
