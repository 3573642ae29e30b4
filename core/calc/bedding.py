"""A round wire pressed into soft copper sheet: how much of the clamp it takes to bed it."""

import math
from dataclasses import dataclass

from core.calc.gasket import Face, HeadFace
from core.source import Source, derived, published
from core.tables.copper_strength import COPPER, Temper
from core.unit_types import (
    Megapascal,
    Millimetre,
    NewtonPerMillimetre,
    Number,
)

STANDARD_GRAVITY = 9.80665
SLIP_LINE: Number = 2.0 + math.pi
"""Mean pressure over shear yield stress under a flat punch in plane strain."""
TABOR: Number = 2.7
"""Hardness over flow stress."""
HILL = published(
    "Hill, The Mathematical Theory of Plasticity, 1950, slip-line field of a flat punch"
)
TABOR_SOURCE = published("Tabor, The Hardness of Metals, 1951: hardness is 2.7 times flow stress")
VICKERS = published("Vickers hardness as a pressure, Smithells Metals Reference Book, 8th ed.")
SINKING = derived("segment of a round wire below a flat surface, no pile-up")


def contact_half_width(wire_diameter: Millimetre, depth: Millimetre) -> Millimetre:
    """Half the width of the strip in which a wire touches the copper [mm].

    Parameters
    ----------
    wire_diameter
        Wire diameter [mm].
    depth
        How deep the wire is in the copper; below zero it does not touch [mm].

    Source
    ------
    *derived*: chord of a circle, no pile-up; the radius once half the wire is in.
    """
    radius = 0.5 * wire_diameter
    sunk = min(max(depth, 0.0), radius)
    return math.sqrt(2.0 * radius * sunk - sunk**2)


def depth_at(wire_diameter: Millimetre, half_width: Millimetre) -> Millimetre:
    """Depth of a wire whose contact strip has this half width [mm].

    Parameters
    ----------
    wire_diameter
        Wire diameter [mm].
    half_width
        Half the width of the strip, at most the radius [mm].

    Source
    ------
    *derived*: chord of a circle, no pile-up.
    """
    radius = 0.5 * wire_diameter
    return radius - math.sqrt(max(radius**2 - half_width**2, 0.0))


def line_load(pressure: Megapascal, half_width: Millimetre) -> NewtonPerMillimetre:
    """Load on each length of wire [N/mm], of mean pressure [MPa] over a strip [mm].

    Source
    ------
    *derived*: q = p·2a.
    """
    return 2.0 * pressure * half_width


def ring_length(ring_diameter: Millimetre) -> Millimetre:
    """Length of the ring [mm], of its centre diameter [mm].

    Source
    ------
    *derived*: circumference.
    """
    return math.pi * ring_diameter


def slip_line_pressure_tresca(yield_strength: Megapascal) -> Megapascal:
    """Mean pressure under a wire, from tensile yield strength [MPa].

    Source
    ------
    Hill, The Mathematical Theory of Plasticity, 1950: (2 + π)·k; Tresca, k = Y/2.
    """
    return SLIP_LINE * yield_strength / 2.0


def slip_line_pressure_mises(yield_strength: Megapascal) -> Megapascal:
    """Mean pressure under a wire, from tensile yield strength [MPa].

    Source
    ------
    Hill, The Mathematical Theory of Plasticity, 1950: (2 + π)·k; von Mises, k = Y/√3.
    """
    return SLIP_LINE * yield_strength / math.sqrt(3.0)


def hardness_pressure(vickers: Number) -> Megapascal:
    """Mean pressure under a Vickers diamond [MPa], from its hardness number [1].

    Source
    ------
    ISO 6507-1: the number is kgf/mm² on the faces of the print.
    """
    return vickers * STANDARD_GRAVITY


def flow_stress(vickers: Number) -> Megapascal:
    """Flow stress of worked metal [MPa], from its hardness number [1].

    Source
    ------
    Tabor, The Hardness of Metals, 1951: hardness over 2.7.
    """
    return hardness_pressure(vickers) / TABOR


@dataclass(frozen=True, slots=True, kw_only=True)
class Copper:
    """The sheet when the head is pulled down.

    Parameters
    ----------
    temper
        Its condition.
    hardness
        Vickers hardness, where it was measured on this sheet [1].
    """

    temper: Temper = Temper.ANNEALED
    hardness: Number | None = None


ANNEALED = Copper()


@dataclass(frozen=True, slots=True, kw_only=True)
class Resistance:
    """One answer to how hard the copper presses back.

    Parameters
    ----------
    model
        Which theory says so.
    pressure
        Mean pressure over the contact strip [MPa].
    """

    model: str
    pressure: Megapascal
    source: Source


def resistances(copper: Copper) -> tuple[Resistance, ...]:
    """Every answer, softest first: the truth lies between the ends.

    Yield strength of soft copper knows nothing of the hardening under the wire, so the slip-line
    answers are low; hardness holds that hardening and is high. A measured hardness gives the flow
    stress of this sheet as well and brings the two together.

    Source
    ------
    Hill 1950 and Tabor 1951, as above; Smithells Metals Reference Book, 8th ed., Table 22.7.
    """
    row = COPPER[copper.temper]
    measured = copper.hardness is not None
    hardness = row.hardness if copper.hardness is None else copper.hardness
    stress = flow_stress(hardness) if measured else row.yield_strength
    found = (
        Resistance(
            model="slip-line-tresca",
            pressure=slip_line_pressure_tresca(stress),
            source=TABOR_SOURCE if measured else HILL,
        ),
        Resistance(
            model="slip-line-mises",
            pressure=slip_line_pressure_mises(stress),
            source=TABOR_SOURCE if measured else HILL,
        ),
        Resistance(model="hardness", pressure=hardness_pressure(hardness), source=VICKERS),
    )
    return tuple(sorted(found, key=lambda each: each.pressure))


def depths(height: Millimetre, face: HeadFace) -> tuple[Millimetre, ...]:
    """How deep the wire must go for the sheet to lie on the deck [mm], from its height [mm].

    One depth for a flat or printed face. Over a receiver groove the trade does not agree whether
    the full height or the height past the receiver counts: both, shallow first.

    Source
    ------
    *common practice, no source*.
    """
    if face.face is Face.FLAT:
        return (height,)
    less = height - face.depth
    return (less,) if face.face is Face.PRINTED else (less, height)
