"""How much wire a ring, an engine and a spool make, and what a piece left over is good for."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from core.errors import InputError, fault
from core.source import Source, derived
from core.tables.cut_practice import WIRE
from core.tables.lockwire import DENSITIES, WireMaterial
from core.unit_types import Gram, GramPerCubicMillimetre, Millimetre, SquareMillimetre

LENGTH_OF_RING: Source = derived("circumference of the groove's centre line, ends butted")
DENSITY_304: GramPerCubicMillimetre = DENSITIES[WireMaterial.STAINLESS_304].value
EXACT_FIT = 1e-9
"""Relative slack, so that a piece cut for three rings makes three."""


def ring_length(centre_diameter: Millimetre) -> Millimetre:
    """Wire in one ring, ends butted and nothing to trim [mm].

    Parameters
    ----------
    centre_diameter
        Diameter of the groove's centre line [mm].

    Source
    ------
    *derived*: circumference.

    Examples
    --------
    >>> f"{ring_length(4.250):.6f}"
    '13.351769'
    """
    return math.pi * centre_diameter


def section(wire: Millimetre) -> SquareMillimetre:
    """Cross-section of a round wire [mm²].

    Parameters
    ----------
    wire
        Wire diameter [mm].

    Source
    ------
    *derived*: area of a circle.
    """
    return 0.25 * math.pi * wire * wire


def mass(
    wire: Millimetre, length: Millimetre, density: GramPerCubicMillimetre = DENSITY_304
) -> Gram:
    """Mass of a length of wire [g].

    Parameters
    ----------
    wire
        Wire diameter [mm].
    length
        Length [mm].
    density
        Density of the wire [g/mm³].

    Source
    ------
    *derived*: section times length times density.
    """
    return section(wire) * length * density


def length_of_mass(
    wire: Millimetre, spool: Gram, density: GramPerCubicMillimetre = DENSITY_304
) -> Millimetre:
    """Length of wire on a spool, from its mass without the reel [mm].

    Parameters
    ----------
    wire
        Wire diameter [mm].
    spool
        Mass of the wire [g].
    density
        Density of the wire [g/mm³].

    Source
    ------
    *derived*: mass over density and cross-section.
    """
    return spool / (section(wire) * density)


@dataclass(frozen=True, slots=True, kw_only=True)
class Engine:
    """Rings that one engine takes.

    Parameters
    ----------
    wire
        Wire diameter [mm].
    rings
        Centre-line diameter of each ring, shape (n,) [mm].
    trimming
        Allowance on each ring, filed off the ends [mm].
    density
        Density of the wire [g/mm³].

    Raises
    ------
    InputError
        If there is no ring, or a size is not above zero.
    """

    wire: Millimetre
    rings: tuple[Millimetre, ...]
    trimming: Millimetre = WIRE.trimming
    density: GramPerCubicMillimetre = DENSITY_304

    def __post_init__(self) -> None:
        faults = []
        if not self.wire > 0.0:
            faults.append(fault("wire", "wire.no_size"))
        if not self.rings or not all(each > 0.0 for each in self.rings):
            faults.append(fault("ring", "wire.no_ring"))
        if self.trimming < 0.0:
            faults.append(fault("trimming", "wire.trimming"))
        if faults:
            raise InputError(faults)

    @property
    def cut_lengths(self) -> tuple[Millimetre, ...]:
        """What is cut off the spool for each ring."""
        return tuple(ring_length(each) + self.trimming for each in self.rings)


@dataclass(frozen=True, slots=True, kw_only=True)
class WireNeeded:
    """Wire that an engine takes.

    Parameters
    ----------
    net, cut
        Of all rings as fitted, and as cut off the spool [mm].
    mass
        Of the rings as fitted [g].
    """

    net: Millimetre
    cut: Millimetre
    mass: Gram


def wire_needed(engine: Engine) -> WireNeeded:
    """Wire that an engine takes, as fitted and as cut.

    Source
    ------
    *derived*: circumference and section.
    """
    net = math.fsum(ring_length(each) for each in engine.rings)
    return WireNeeded(
        net=net,
        cut=math.fsum(engine.cut_lengths),
        mass=mass(engine.wire, net, engine.density),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Spool:
    """What a spool or a piece of wire makes.

    Parameters
    ----------
    rings
        Rings of the largest size of the engine.
    engines
        Whole engines.
    left
        Left over after the whole engines [mm].
    """

    rings: int
    engines: int
    left: Millimetre


def from_spool(engine: Engine, length: Millimetre) -> Spool:
    """Rings and engines from a length of wire, cut ring by ring.

    Parameters
    ----------
    length
        Wire on the spool [mm].

    Source
    ------
    *derived*: whole cuts only.
    """
    per_engine = math.fsum(engine.cut_lengths)
    engines = _whole(length, per_engine)
    return Spool(
        rings=_whole(length, max(engine.cut_lengths)),
        engines=engines,
        left=max(0.0, length - engines * per_engine),
    )


def _whole(length: Millimetre, each: Millimetre) -> int:
    return math.floor(length / each * (1.0 + EXACT_FIT))


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """What a piece left over makes.

    Parameters
    ----------
    rings
        Ring by ring, largest first, that the piece makes: their places in the engine.
    left
        Left over after them [mm].
    largest
        Largest centre-line diameter that one ring of it could have; zero if none [mm].
    """

    rings: tuple[int, ...]
    left: Millimetre
    largest: Millimetre


def from_piece(engine: Engine, length: Millimetre) -> Piece:
    """Rings of one engine that a piece makes, each from one length without a join.

    Parameters
    ----------
    length
        Length of the piece [mm].

    Source
    ------
    *derived*: largest rings first, as they are the hardest to find wire for.
    """
    cuts: Sequence[Millimetre] = engine.cut_lengths
    made, left = [], length
    for ring in sorted(range(len(cuts)), key=lambda each: -cuts[each]):
        if _whole(left, cuts[ring]):
            made.append(ring)
            left = max(0.0, left - cuts[ring])
    return Piece(
        rings=tuple(made),
        left=left,
        largest=max(0.0, (length - engine.trimming) / math.pi),
    )
