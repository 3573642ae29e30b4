"""Clamp against gas: what the peak pressure lifts, what is left, and what the stud then carries."""

import math
from dataclasses import dataclass

from core.source import Source
from core.tables.peak_pressure import (
    ATMOSPHERE,
    COMPRESSION_INDEX,
    COMPRESSION_SOURCE,
    ENTERED_HALF_WIDTH,
    ENTERED_SOURCE,
)
from core.unit_types import (
    Megapascal,
    Millimetre,
    Newton,
    NewtonPerMillimetre,
    Number,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PeakPressure:
    """Peak cylinder pressure, above atmosphere.

    Parameters
    ----------
    value
        Best value, or the least it can be [MPa].
    half_width
        Limit of error [MPa].
    is_floor
        Whether it is only the least it can be: no combustion in it.
    """

    value: Megapascal
    half_width: Megapascal
    is_floor: bool
    source: Source


def entered_pressure(value: Megapascal, half_width: Megapascal | None = None) -> PeakPressure:
    """Peak pressure as typed [MPa]; 10 % is assumed where no limit of error is known [MPa].

    Source
    ------
    As typed; the 10 % *assumed*.
    """
    assumed = half_width is None
    return PeakPressure(
        value=value,
        half_width=ENTERED_HALF_WIDTH * value if half_width is None else half_width,
        is_floor=False,
        source=ENTERED_SOURCE if assumed else Source(ENTERED_SOURCE.trust, "as typed"),
    )


def compression_pressure(
    start: Megapascal, ratio: Number, index: Number = COMPRESSION_INDEX
) -> Megapascal:
    """Absolute pressure after compression, without combustion [MPa].

    Parameters
    ----------
    start
        Absolute pressure before compression [MPa].
    ratio
        Compression ratio [1].
    index
        Polytropic index [1].

    Source
    ------
    Heywood, Internal Combustion Engine Fundamentals, *from memory*: p·Vⁿ constant.
    """
    return float(start * ratio**index)


def pressure_floor(ratio: Number, boost: Megapascal = 0.0) -> PeakPressure:
    """The least the peak pressure can be, from compression ratio [1] and boost [MPa].

    Combustion is not in it, so the real peak is higher, often by several times.

    Source
    ------
    Heywood, Internal Combustion Engine Fundamentals, *from memory*.
    """
    absolute = compression_pressure(ATMOSPHERE + boost, ratio)
    return PeakPressure(
        value=absolute - ATMOSPHERE, half_width=0.0, is_floor=True, source=COMPRESSION_SOURCE
    )


def gas_force(ring_diameter: Millimetre, pressure: Megapascal) -> Newton:
    """Force of the gas inside the seal line [N].

    Parameters
    ----------
    ring_diameter
        Centre diameter of the wire ring, which is the seal line [mm].
    pressure
        Peak pressure above atmosphere [MPa].

    Source
    ------
    *derived*: pressure over the circle of the seal line.
    """
    return 0.25 * math.pi * ring_diameter**2 * pressure


def load_share(stud_stiffness: NewtonPerMillimetre, joint_stiffness: NewtonPerMillimetre) -> Number:
    """Part C of an outside load that the stud takes [1].

    Parameters
    ----------
    stud_stiffness, joint_stiffness
        Stiffness of stud and of clamped parts [N/mm].

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., p. 436, eq. f: C = kb/(kb + km).
    """
    return stud_stiffness / (stud_stiffness + joint_stiffness)


def left_at_peak(clamp: Newton, load: Newton, share: Number) -> Newton:
    """Clamp left between head and block under load, of clamp [N], load [N] and stud's share C [1].

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., p. 436, eq. 8-25 with its sign
    turned: Fi − (1 − C)·P.
    """
    return clamp - (1.0 - share) * load


def stud_at_peak(preload: Newton, load: Newton, share: Number) -> Newton:
    """Load of one stud, of its preload [N], its part of the load [N] and its share C [1].

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., p. 436, eq. 8-24: Fi + C·P.
    """
    return preload + share * load


def separation_factor(clamp: Newton, load: Newton, share: Number) -> Number:
    """Clamp over what would part the joint [1], of clamp [N], load [N] and stud's share C [1].

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., eq. 8-30: Fi/((1 − C)·P).
    """
    return clamp / ((1.0 - share) * load)


def proof_factor(proof: Newton, preload: Newton, load: Newton, share: Number) -> Number:
    """Proof load [N] over load of the stud at peak [1].

    Parameters
    ----------
    proof
        Load at proof strength [N].
    preload
        Load of the tightened stud [N].
    load
        Its part of the load of the gas [N].
    share
        Part C of that load that the stud takes [1].

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., eq. 8-28: Sp·At/(C·P + Fi).
    """
    return proof / stud_at_peak(preload, load, share)
