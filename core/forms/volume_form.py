"""The form of the compression ratio: from texts to a cylinder and what is asked of it."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from core.calc.compression import CylinderVolumes, ratio, sheet_for_ratio
from core.forms.entries import Entries
from core.texts import text
from core.unit_types import CC, INCH, Millimetre, Number
from core.units import Bare, Dimension, Field

LARGE_FIELD = Field(name="", dimension=Dimension.LENGTH, low=10.0, high=1000.0)
DECK_FIELD = Field(
    name="", dimension=Dimension.LENGTH, low=-INCH, high=INCH, bare=Bare.THOU_OR_INCH
)
SHEET_FIELD = Field(
    name="",
    dimension=Dimension.LENGTH,
    low=0.005 * INCH,
    high=0.25 * INCH,
    bare=Bare.THOU_OR_INCH,
)
VOLUME_FIELD = Field(name="", dimension=Dimension.VOLUME, low=0.0, high=20_000.0 * CC)
RATIO_FIELD = Field(name="", dimension=Dimension.RATIO, low=1.0, high=100.0, bare=Bare.NUMBER)

NEEDED = {
    "bore": LARGE_FIELD,
    "stroke": LARGE_FIELD,
    "chamber": VOLUME_FIELD,
    "deck": DECK_FIELD,
    "gasket-bore": LARGE_FIELD,
}
CROWN = ("dish", "dome")
FIELDS = (*NEEDED, *CROWN, "gasket", "for-ratio")


@dataclass(frozen=True, slots=True, kw_only=True)
class VolumeForm:
    """A cylinder, and what is asked of it.

    Parameters
    ----------
    sheet
        Thickness the ratio is asked for [mm].
    wanted
        Ratio a sheet is asked for [1].
    wanted_sheet
        Thickness that gives it [mm].
    """

    cylinder: CylinderVolumes
    sheet: Millimetre | None
    wanted: Number | None
    wanted_sheet: Millimetre | None
    echoes: dict[str, str]


def read_volumes(
    texts: Mapping[str, Sequence[str]], name: Callable[[str], str]
) -> VolumeForm:
    """Read the whole form.

    Parameters
    ----------
    texts
        What was typed, by field of `FIELDS`.
    name
        How a sentence names a field.

    Raises
    ------
    InputError
        With every fault of the form, each naming its field.
    """
    entries = Entries(texts, name)
    values = {field: _needed(entries, field, kind) for field, kind in NEEDED.items()}
    values |= {field: entries.value(field, VOLUME_FIELD) or 0.0 for field in CROWN}
    sheet = entries.value("gasket", SHEET_FIELD)
    wanted = entries.value("for-ratio", RATIO_FIELD)
    if not (entries.typed("gasket") or entries.typed("for-ratio")):
        entries.add_fault("gasket", "ratio.needs_sheet")
    cylinder = _cylinder(values)
    wanted_sheet = _solved(entries, cylinder, sheet, wanted)
    entries.finish()
    assert cylinder is not None
    return VolumeForm(
        cylinder=cylinder,
        sheet=sheet,
        wanted=wanted,
        wanted_sheet=wanted_sheet,
        echoes=entries.echoes,
    )


def _needed(entries: Entries, field: str, kind: Field) -> float | None:
    if not entries.typed(field):
        wanted = "small_length" if kind is DECK_FIELD else str(kind.dimension)
        entries.add_fault(field, "number.empty", wanted=text(f"number.wanted_{wanted}"))
    return entries.value(field, kind)


def _cylinder(values: Mapping[str, float | None]) -> CylinderVolumes | None:
    sizes = {field.replace("-", "_"): value for field, value in values.items() if value is not None}
    return CylinderVolumes(**sizes) if len(sizes) == len(values) else None


def _solved(
    entries: Entries,
    cylinder: CylinderVolumes | None,
    sheet: Millimetre | None,
    wanted: Number | None,
) -> Millimetre | None:
    """Sheet for the wanted ratio; the refusals of both questions are faults of the form."""
    if cylinder is None:
        return None
    if sheet is not None and entries.attempt(lambda: ratio(cylinder, sheet)) is None:
        return None
    if wanted is None:
        return None
    thickness = entries.attempt(lambda: sheet_for_ratio(cylinder, wanted))
    if thickness is not None and thickness <= 0.0:
        highest = entries.attempt(lambda: ratio(cylinder, 0.0))
        if highest is not None:
            entries.add_fault("for-ratio", "ratio.not_reachable", highest=highest)
    return thickness
