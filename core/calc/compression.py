"""Compression ratio of one cylinder, and the sheet that a ratio asks for."""

import math
from dataclasses import dataclass

from core.errors import Fault, InputError, fault, refuse
from core.source import Source, derived
from core.tables.clearance_practice import (
    VOLUME_HALF_WIDTHS,
    VOLUME_SOURCE,
    VolumeHalfWidths,
)
from core.texts import text
from core.uncertain import Explained, Term, explain, rectangular
from core.unit_types import CubicMillimetre, Millimetre, Number, PerMillimetre, SquareMillimetre

SOURCE: Source = derived("volumes of cylinders; ratio = (swept + clearance) / clearance")
FORMULA = "(Vs + Vc) / Vc, Vs = π/4·B²·S, Vc = Vchamber + Vdish − Vdome + π/4·B²·deck + π/4·Dg²·t"
LEFT_OUT = ("crevice", "valve_reliefs", "gasket_land", "plug")


@dataclass(frozen=True, slots=True, kw_only=True)
class CylinderVolumes:
    """What encloses the charge, but for the sheet.

    Parameters
    ----------
    bore, stroke
        Bore and stroke [mm].
    chamber
        Volume of the chamber in the head, to the head face [mm³].
    deck
        Piston below the deck at top dead centre; negative if it stands proud [mm].
    gasket_bore
        Hole in the sheet [mm].
    dish, dome
        Volume below and above the flat of the crown [mm³].
    """

    bore: Millimetre
    stroke: Millimetre
    chamber: CubicMillimetre
    deck: Millimetre
    gasket_bore: Millimetre
    dish: CubicMillimetre = 0.0
    dome: CubicMillimetre = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Compression:
    """Ratio of one cylinder with one sheet, and what makes it up.

    Parameters
    ----------
    ratio
        Compression ratio with its terms and their shares.
    swept, clearance
        Swept volume; all that is left at top dead centre [mm³].
    gasket, deck
        Parts of the clearance: hole of the sheet; piston below deck [mm³].
    slope
        Change of the ratio for a thicker sheet [1/mm].
    left_out
        What is not in the figure, in words.
    """

    ratio: Explained
    swept: CubicMillimetre
    clearance: CubicMillimetre
    gasket: CubicMillimetre
    deck: CubicMillimetre
    slope: PerMillimetre
    left_out: tuple[str, ...]


def circle_area(diameter: Millimetre) -> SquareMillimetre:
    """Area of a circle [mm²].

    Parameters
    ----------
    diameter
        Its diameter [mm].

    Source
    ------
    *derived*.
    """
    return 0.25 * math.pi * diameter * diameter


def swept_volume(cylinder: CylinderVolumes) -> CubicMillimetre:
    """Volume the piston sweeps [mm³].

    Source
    ------
    *derived*.
    """
    return circle_area(cylinder.bore) * cylinder.stroke


def clearance_volume(cylinder: CylinderVolumes, sheet: Millimetre) -> CubicMillimetre:
    """Volume left at top dead centre with a sheet of this compressed thickness [mm³].

    Parameters
    ----------
    sheet
        Compressed thickness [mm].

    Source
    ------
    *derived*; a copper sheet is clamped with almost no loss of thickness away from the wire
    (*common practice, no source*).
    """
    return (
        cylinder.chamber
        + cylinder.dish
        - cylinder.dome
        + circle_area(cylinder.bore) * cylinder.deck
        + circle_area(cylinder.gasket_bore) * sheet
    )


def ratio(cylinder: CylinderVolumes, sheet: Millimetre) -> Number:
    """Compression ratio with a sheet of this compressed thickness [1].

    Parameters
    ----------
    sheet
        Compressed thickness [mm].

    Raises
    ------
    InputError
        If the volumes cannot be those of a cylinder.

    Source
    ------
    *derived*.
    """
    _refuse_impossible(cylinder, sheet)
    return 1.0 + swept_volume(cylinder) / clearance_volume(cylinder, sheet)


def ratio_slope(cylinder: CylinderVolumes, sheet: Millimetre) -> PerMillimetre:
    """Change of the ratio for a thicker sheet, at this thickness [1/mm].

    Parameters
    ----------
    sheet
        Compressed thickness [mm].

    Source
    ------
    *derived*: -Vs/Vc²·π/4·Dg².
    """
    clearance = clearance_volume(cylinder, sheet)
    return -swept_volume(cylinder) * circle_area(cylinder.gasket_bore) / clearance**2


def sheet_for_ratio(cylinder: CylinderVolumes, wanted: Number) -> Millimetre:
    """Compressed thickness that gives a ratio; zero or less if no sheet does [mm].

    Parameters
    ----------
    wanted
        Compression ratio [1].

    Raises
    ------
    InputError
        If the ratio is not above 1 or the volumes cannot be those of a cylinder.

    Source
    ------
    *derived*: the ratio solved for the thickness.
    """
    faults = [*dimension_faults(cylinder)]
    if not wanted > 1.0:
        faults.append(fault("for-ratio", "ratio.not_above_one"))
    if faults:
        raise InputError(faults)
    without = clearance_volume(cylinder, 0.0)
    return (swept_volume(cylinder) / (wanted - 1.0) - without) / circle_area(cylinder.gasket_bore)


def compression(
    cylinder: CylinderVolumes,
    sheet: Millimetre,
    half_widths: VolumeHalfWidths = VOLUME_HALF_WIDTHS,
) -> Compression:
    """Ratio with its parts, its spread and what is not in it.

    Parameters
    ----------
    sheet
        Compressed thickness [mm].

    Raises
    ------
    InputError
        If the volumes cannot be those of a cylinder.

    Source
    ------
    *derived*; half widths *assumed*.
    """
    _refuse_impossible(cylinder, sheet)
    return Compression(
        ratio=_explained(cylinder, sheet, half_widths),
        swept=swept_volume(cylinder),
        clearance=clearance_volume(cylinder, sheet),
        gasket=circle_area(cylinder.gasket_bore) * sheet,
        deck=circle_area(cylinder.bore) * cylinder.deck,
        slope=ratio_slope(cylinder, sheet),
        left_out=tuple(text(f"ratio.left_out.{each}") for each in LEFT_OUT),
    )


def _explained(
    cylinder: CylinderVolumes, sheet: Millimetre, half_widths: VolumeHalfWidths
) -> Explained:
    def from_terms(
        bore: float, stroke: float, hole: float, chamber: float, crown: float, deck: float, t: float
    ) -> float:
        area = circle_area(bore)
        return 1.0 + area * stroke / (chamber + crown + area * deck + circle_area(hole) * t)

    return explain(
        from_terms,
        _terms(cylinder, sheet, half_widths),
        unit="1",
        formula=FORMULA,
        source=SOURCE,
        assumptions=(text("ratio.assumed.thickness"),),
    )


def _terms(
    cylinder: CylinderVolumes, sheet: Millimetre, half_widths: VolumeHalfWidths
) -> tuple[Term, ...]:
    has_crown = cylinder.dish or cylinder.dome
    rows = (
        ("bore", cylinder.bore, half_widths.diameter, "mm"),
        ("stroke", cylinder.stroke, half_widths.diameter, "mm"),
        ("gasket_bore", cylinder.gasket_bore, half_widths.diameter, "mm"),
        ("chamber", cylinder.chamber, half_widths.chamber, "mm³"),
        ("crown", cylinder.dish - cylinder.dome, half_widths.crown if has_crown else 0.0, "mm³"),
        ("deck", cylinder.deck, half_widths.deck, "mm"),
        ("sheet", sheet, half_widths.sheet, "mm"),
    )
    return tuple(
        Term(name=name, value=value, u=rectangular(half), unit=unit, source=VOLUME_SOURCE)
        for name, value, half, unit in rows
    )


def sheet_spread(cylinder: CylinderVolumes, half_widths: VolumeHalfWidths) -> Millimetre:
    """Standard uncertainty of the thickness that a ratio asks for, the sheet's own left out [mm].

    Source
    ------
    *derived*: errors of the volumes over the area of the gasket bore; JCGM 100:2008 5.1.2. Bore
    and stroke are taken as known.
    """
    crown = half_widths.crown if cylinder.dish or cylinder.dome else 0.0
    volume = math.hypot(half_widths.chamber, crown, circle_area(cylinder.bore) * half_widths.deck)
    return rectangular(volume) / circle_area(cylinder.gasket_bore)


def dimension_faults(cylinder: CylinderVolumes) -> tuple[Fault, ...]:
    """Dimensions that no cylinder has, each by its field."""
    faults = [
        fault(field, "ratio.not_positive")
        for field, value in (
            ("bore", cylinder.bore),
            ("stroke", cylinder.stroke),
            ("gasket-bore", cylinder.gasket_bore),
        )
        if not value > 0.0
    ]
    faults += [
        fault(field, "ratio.negative")
        for field, value in (
            ("chamber", cylinder.chamber),
            ("dish", cylinder.dish),
            ("dome", cylinder.dome),
        )
        if not value >= 0.0
    ]
    if 0.0 < cylinder.gasket_bore < cylinder.bore:
        faults.append(fault("gasket-bore", "ratio.gasket_bore_inside"))
    return tuple(faults)


def _refuse_impossible(cylinder: CylinderVolumes, sheet: Millimetre) -> None:
    if faults := dimension_faults(cylinder):
        raise InputError(faults)
    if not clearance_volume(cylinder, sheet) > 0.0:
        field = "dome" if cylinder.dome > 0.0 else "deck"
        raise refuse(field, "ratio.no_clearance")
