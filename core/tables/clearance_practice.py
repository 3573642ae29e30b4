"""Clearances and engagements of the trade, and errors of volumes: no published source.

Nothing here acts until its material is chosen; then the careful end of the range does, and the
user may change it. The engine maker's own figure wins.
"""

from dataclasses import dataclass
from enum import StrEnum

from core.source import ASSUMED, PRACTICE, Source
from core.unit_types import INCH, CubicMillimetre, Millimetre


class RodMaterial(StrEnum):
    STEEL = "steel"
    ALUMINIUM = "aluminium"


class BlockMaterial(StrEnum):
    IRON = "iron"
    ALUMINIUM = "aluminium"


@dataclass(frozen=True, slots=True)
class Heard:
    """Range of figures heard in the trade, lower and upper end."""

    low: float
    high: float


PISTON_TO_HEAD: dict[RodMaterial, Heard] = {
    RodMaterial.STEEL: Heard(0.035 * INCH, 0.040 * INCH),
    RodMaterial.ALUMINIUM: Heard(0.055 * INCH, 0.065 * INCH),
}
"""Least piston to head, cold [mm]; more for a long stroke or high speed."""

THREAD_DIAMETERS: dict[BlockMaterial, Heard] = {
    BlockMaterial.IRON: Heard(1.0, 1.5),
    BlockMaterial.ALUMINIUM: Heard(1.5, 2.0),
}
"""Least thread engagement, in diameters of the thread [1]."""

CLEARANCE_SOURCE: Source = PRACTICE


@dataclass(frozen=True, slots=True, kw_only=True)
class VolumeHalfWidths:
    """Half widths of rectangular distributions, assumed.

    Parameters
    ----------
    chamber, crown
        Poured volumes of chamber, and of dish or dome [mm³].
    deck
        Piston to deck at top dead centre [mm].
    sheet
        Sheet thickness [mm].
    diameter
        Bore, stroke and gasket bore [mm].
    """

    chamber: CubicMillimetre = 500.0
    crown: CubicMillimetre = 500.0
    deck: Millimetre = 0.0005 * INCH
    sheet: Millimetre = 0.0005 * INCH
    diameter: Millimetre = 0.0005 * INCH


VOLUME_HALF_WIDTHS = VolumeHalfWidths()
VOLUME_SOURCE: Source = ASSUMED

HEAT_MATTERS_FROM: Millimetre = 0.0001 * INCH
"""Below this a change with heat is not worth a thought: half of what a feeler leaf may be out."""
