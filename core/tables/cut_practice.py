"""What the trade cuts to: tolerances, lands and deck limits; no published source, all editable."""

from dataclasses import dataclass

from core.source import ASSUMED, MEMORY, PRACTICE, Source
from core.unit_types import DEGREE, INCH, Millimetre, Number, Radian


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPractice:
    """Groove: what is aimed for, and what a machinist can hold.

    Parameters
    ----------
    target_share
        Height aimed for as a share of sheet thickness; under the limit, so that a cut at the end
        of its tolerance is not lost [1].
    depth_tolerance, width_tolerance
        Half widths [mm].
    least_depth_share, most_depth_share
        Groove depth as a share of wire diameter, as heard [1].
    """

    target_share: Number = 0.24
    depth_tolerance: Millimetre = 0.0005 * INCH
    width_tolerance: Millimetre = 0.0003 * INCH
    least_depth_share: Number = 0.70
    most_depth_share: Number = 0.75


@dataclass(frozen=True, slots=True, kw_only=True)
class LandPractice:
    """Least metal left beside a groove.

    Parameters
    ----------
    bore
        From bore edge, or sleeve inside, to groove [mm].
    bore_aim
        What is aimed for where there is room [mm].
    groove
        From groove to the groove of the neighbour [mm].
    hole
        From groove to a bolt, water or oil hole [mm].
    seam
        From groove to the outside of a sleeve's flange [mm].
    cover
        Copper inside the groove: from gasket bore to groove [mm].
    back
        From bore edge back to the gasket bore [mm].
    """

    bore: Millimetre = 0.060 * INCH
    bore_aim: Millimetre = 0.100 * INCH
    groove: Millimetre = 0.060 * INCH
    hole: Millimetre = 0.060 * INCH
    seam: Millimetre = 0.030 * INCH
    cover: Millimetre = 0.030 * INCH
    back: Millimetre = 0.030 * INCH


@dataclass(frozen=True, slots=True, kw_only=True)
class DeckPractice:
    """What a deck or a head face must be before a groove is cut.

    Parameters
    ----------
    flatness
        Over the whole face [mm].
    local_flatness, local_span
        Within any stretch of this length [mm].
    finish
        Roughest Ra under soft copper [mm].
    """

    flatness: Millimetre = 0.002 * INCH
    local_flatness: Millimetre = 0.001 * INCH
    local_span: Millimetre = 6.0 * INCH
    finish: Millimetre = 60e-6 * INCH


@dataclass(frozen=True, slots=True, kw_only=True)
class WirePractice:
    """Wire: what is cut off and what is left for filing.

    Parameters
    ----------
    trimming
        Allowance on each ring, to be filed off the ends [mm].
    """

    trimming: Millimetre = 0.5 * INCH


@dataclass(frozen=True, slots=True, kw_only=True)
class JointPractice:
    """Where the joint of a ring may be.

    Parameters
    ----------
    clear_of_bridge
        Least angle between a joint and the line to the neighbouring bore [rad].
    apart
        Least distance between the joints of neighbours, as a share of bore spacing [1].
    reach
        A bolt is beside a ring up to this many times the distance of its nearest bolt [1].
    """

    clear_of_bridge: Radian = 30.0 * DEGREE
    apart: Number = 0.5
    reach: Number = 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class EvenPractice:
    """How even the heights must be.

    Parameters
    ----------
    proud
        A place this far over the median of its ring is a proud spot [mm].
    bank
        Largest difference of the rings' medians within a bank [mm].
    """

    proud: Millimetre = 0.001 * INCH
    bank: Millimetre = 0.001 * INCH


CUT = CutPractice()
CUT_SOURCE: Source = ASSUMED
LAND = LandPractice()
LAND_SOURCE: Source = PRACTICE
COVER_SOURCE: Source = PRACTICE
SEAM_SOURCE: Source = MEMORY
DECK = DeckPractice()
DECK_SOURCE: Source = PRACTICE
WIRE = WirePractice()
WIRE_SOURCE: Source = ASSUMED
JOINT = JointPractice()
JOINT_SOURCE: Source = PRACTICE
EVEN = EvenPractice()
PROUD_SOURCE: Source = MEMORY
BANK_SOURCE: Source = PRACTICE
