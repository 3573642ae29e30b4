"""Wire, groove and joint at running temperature, and whether that is worth a thought."""

import math
from dataclasses import dataclass

from core.errors import InputError, fault
from core.source import Source, derived
from core.tables.clearance_practice import HEAT_MATTERS_FROM
from core.tables.expansion import EXPANSION, STAINLESS_MODULUS, Metal
from core.unit_types import Kelvin, Megapascal, Millimetre, PerKelvin

SOURCE: Source = derived("free linear expansion of wire and block; both at one temperature")


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatedRing:
    """A wire in its groove, and how much warmer both get.

    Parameters
    ----------
    wire, groove_width, groove_depth, ring
        Wire and groove cold; `ring` is the diameter of the groove's centre line [mm].
    warmer
        Rise of temperature of wire and block [K].
    block
        Metal around the groove.
    metal
        Metal of the wire.
    """

    wire: Millimetre
    groove_width: Millimetre
    groove_depth: Millimetre
    ring: Millimetre
    warmer: Kelvin
    block: Metal
    metal: Metal = Metal.STAINLESS_304


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatChange:
    """One length that changes with heat.

    Parameters
    ----------
    change
        Hot less cold [mm].
    matters
        False where it is so small that it can be ignored.
    """

    change: Millimetre
    matters: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Heated:
    """What heat does to a ring.

    Parameters
    ----------
    interference, height
        Wire over groove width; height over the deck.
    radius
        Free ring against the centre line of its groove; positive, the ring outgrows it.
    joint_gap
        Gap between the ends of a ring that is free to move; positive, it opens.
    butted_stress
        Hoop stress if the ends touch cold and nothing gives: an upper bound; 0 where the joint
        opens [MPa].
    """

    interference: HeatChange
    height: HeatChange
    radius: HeatChange
    joint_gap: HeatChange
    butted_stress: Megapascal
    source: Source = SOURCE


def heated(ring: HeatedRing) -> Heated:
    """Interference, height and joint of a ring when wire and block are warmer.

    Raises
    ------
    InputError
        If wire, groove or ring has no size.

    Source
    ------
    *derived*; coefficients as in `core.tables.expansion`.
    """
    _refuse_without_size(ring)
    wire, block = (EXPANSION[metal].coefficient for metal in (ring.metal, ring.block))
    outgrows = ring.warmer * (wire - block)
    return Heated(
        interference=_change(ring.warmer * (wire * ring.wire - block * ring.groove_width)),
        height=_change(ring.warmer * (wire * ring.wire - block * ring.groove_depth)),
        radius=_change(0.5 * ring.ring * outgrows),
        joint_gap=_change(-math.pi * ring.ring * outgrows),
        butted_stress=butted_stress(wire - block, ring.warmer, STAINLESS_MODULUS),
    )


def butted_stress(excess: PerKelvin, warmer: Kelvin, modulus: Megapascal) -> Megapascal:
    """Hoop stress of a ring whose ends touch and whose groove does not give [MPa].

    Parameters
    ----------
    excess
        Coefficient of the wire less that of the block [1/K].
    warmer
        Rise of temperature [K].
    modulus
        Modulus of elasticity of the wire [MPa].

    Source
    ------
    *derived*: fully restrained expansion, an upper bound.
    """
    return max(0.0, modulus * excess * warmer)


def growth(length: Millimetre, metal: Metal, warmer: Kelvin) -> HeatChange:
    """How much a length grows, such as the thickness of a sheet.

    Parameters
    ----------
    length
        Cold [mm].
    warmer
        Rise of temperature [K].

    Source
    ------
    *derived*; coefficients as in `core.tables.expansion`.
    """
    return _change(length * EXPANSION[metal].coefficient * warmer)


def slides(radius: Millimetre, head: Metal, block: Metal, warmer: Kelvin) -> HeatChange:
    """How far the head slides outwards over the block at this distance from where it holds.

    Parameters
    ----------
    radius
        Distance from the point that stays [mm].
    warmer
        Rise of temperature of both [K].

    Source
    ------
    *derived*; coefficients as in `core.tables.expansion`.
    """
    excess = EXPANSION[head].coefficient - EXPANSION[block].coefficient
    return _change(radius * excess * warmer)


def _change(change: Millimetre) -> HeatChange:
    return HeatChange(change=change, matters=abs(change) >= HEAT_MATTERS_FROM)


def _refuse_without_size(ring: HeatedRing) -> None:
    sizes = (
        ("wire", ring.wire),
        ("groove-width", ring.groove_width),
        ("groove-depth", ring.groove_depth),
        ("ring", ring.ring),
    )
    faults = [fault(field, "thermal.not_positive") for field, value in sizes if not value > 0.0]
    if faults:
        raise InputError(faults)
