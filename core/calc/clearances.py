"""Piston to head, valves to pistons, dowels and threads with a sheet of this thickness."""

import math
from dataclasses import dataclass

from core.source import Source, derived
from core.tables.clearance_practice import (
    PISTON_TO_HEAD,
    THREAD_DIAMETERS,
    BlockMaterial,
    RodMaterial,
)
from core.unit_types import Millimetre, Radian

SOURCE: Source = derived("the sheet keeps its thickness under clamp, so the head moves with it")


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredValve:
    """Clearance of a valve to its piston, measured at the sheet on now.

    Parameters
    ----------
    clearance
        Least gap through the stroke, square to the valve pocket [mm].
    tilt
        Valve to the cylinder axis [rad].
    """

    clearance: Millimetre
    tilt: Radian = 0.0


def piston_to_head(deck: Millimetre, sheet: Millimetre) -> Millimetre:
    """Flat of the piston to the head face, cold [mm].

    Parameters
    ----------
    deck
        Piston below the deck at top dead centre; negative if it stands proud [mm].
    sheet
        Compressed thickness [mm].

    Source
    ------
    *derived*.

    Examples
    --------
    >>> round(piston_to_head(0.005 * 25.4, 0.043 * 25.4) / 25.4, 6)
    0.048
    """
    return deck + sheet


def valve_to_piston(valve: MeasuredValve, rise: Millimetre) -> Millimetre:
    """Gap between valve and pocket once the head has moved [mm].

    The gap is measured square to the pocket, along the valve, so only that part of the rise counts.

    Parameters
    ----------
    rise
        How far the head goes up; negative is down [mm].

    Source
    ------
    *derived*; cam timing as it was.
    """
    return valve.clearance + rise * math.cos(valve.tilt)


def least_piston_to_head(rod: RodMaterial) -> Millimetre:
    """Least gap that is heard in the trade, upper end of its range [mm].

    Source
    ------
    *common practice, no source*; more for a long stroke or high speed.
    """
    return PISTON_TO_HEAD[rod].high


def least_engagement(block: BlockMaterial, thread: Millimetre) -> Millimetre:
    """Least length of engaged thread that is heard in the trade, upper end of its range [mm].

    Parameters
    ----------
    thread
        Diameter of the thread [mm].

    Source
    ------
    *common practice, no source*.
    """
    return THREAD_DIAMETERS[block].high * thread
