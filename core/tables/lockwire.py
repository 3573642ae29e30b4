"""Wire to choose from: standard lockwire sizes, what limits their diameter, and densities."""

from dataclasses import dataclass
from enum import StrEnum

from core.source import MEMORY, Source, Trust, published
from core.unit_types import INCH, GramPerCubicMillimetre, Millimetre

POUND_PER_CUBIC_INCH: GramPerCubicMillimetre = 453.59237 / INCH**3


class WireMaterial(StrEnum):
    """What the wire is made of."""

    STAINLESS_304 = "stainless-304"
    STAINLESS_304_SPRING = "stainless-304-spring"
    COPPER = "copper"


@dataclass(frozen=True, slots=True, kw_only=True)
class WireSize:
    """One standard size.

    Parameters
    ----------
    dash
        Dash number: the diameter in thousandths of an inch.
    diameter
        Nominal diameter [mm].
    half_width
        Limit of error of the diameter, a general wire tolerance [mm].
    """

    dash: int
    diameter: Millimetre
    half_width: Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class Density:
    """Density of a wire material.

    Parameters
    ----------
    value
        Density [g/mm³].
    """

    value: GramPerCubicMillimetre
    source: Source


SIZES_IN_THOU = (15, 20, 25, 32, 40, 41, 47, 51, 60, 91)
LOCKWIRE_SOURCE = Source(Trust.MEMORY, "NASM20995 (formerly MS20995), list of sizes")
TOLERANCE_SOURCE = Source(Trust.MEMORY, "ASTM A555/A555M, round wire; measure the wire instead")

TOLERANCE_FROM: tuple[tuple[float, float], ...] = (
    (44.0, 1.0), (33.0, 0.8), (24.0, 0.5), (12.0, 0.4),
)
"""From this diameter on, this half width, both in thousandths of an inch."""


def label_half_width(diameter: Millimetre) -> Millimetre:
    """Limit of error of a wire that was not measured [mm].

    Parameters
    ----------
    diameter
        Nominal diameter [mm].

    Source
    ------
    ASTM A555/A555M, *from memory*; no tolerance of NASM20995 could be read.

    Examples
    --------
    >>> f"{label_half_width(0.041 * 25.4) / 25.4:.4f}"
    '0.0008'
    """
    thou = diameter / INCH * 1000.0
    for least, half_width in TOLERANCE_FROM:
        if thou >= least - 1e-6:
            return half_width * 0.001 * INCH
    return TOLERANCE_FROM[-1][1] * 0.001 * INCH


LOCKWIRE: tuple[WireSize, ...] = tuple(
    WireSize(
        dash=thou,
        diameter=thou * 0.001 * INCH,
        half_width=label_half_width(thou * 0.001 * INCH),
    )
    for thou in SIZES_IN_THOU
)

DENSITIES: dict[WireMaterial, Density] = {
    WireMaterial.STAINLESS_304: Density(
        value=8.00e-3, source=published("data sheet of AISI type 304: 8.00 g/cm³, 0.289 lb/in³")
    ),
    WireMaterial.STAINLESS_304_SPRING: Density(
        value=8.00e-3, source=published("data sheet of AISI type 304: 8.00 g/cm³, 0.289 lb/in³")
    ),
    WireMaterial.COPPER: Density(value=8.94e-3, source=MEMORY),
}


def nearest_size(diameter: Millimetre) -> WireSize:
    """Standard size closest to a measured diameter.

    Parameters
    ----------
    diameter
        Measured diameter [mm].

    Examples
    --------
    >>> nearest_size(1.0389).dash
    41
    """
    return min(LOCKWIRE, key=lambda size: abs(size.diameter - diameter))
