"""What each field of the deck screens takes, and in which unit a bare number is typed."""

from dataclasses import dataclass

from core.forms import deck_form
from core.forms.check_form import HEIGHT_FIELD, SHARE_FIELD, SHEET_FIELD, WIRE_FIELD
from core.forms.cut_form import (
    DECK_CUT_FIELD,
    DECK_FIELD,
    HOLE_FIELD,
    SMALL_FIELD,
    TARGET_FIELD,
    TRIMMING_FIELD,
    WIRE_LENGTH_FIELD,
)
from core.forms.face_form import COORDINATE_FIELD, FINISH_FIELD, GAP_FIELD, READING_FIELD
from core.texts import text
from core.units import Bare, Field

AREA = "deck-"


@dataclass(frozen=True, slots=True, kw_only=True)
class Pad:
    """How a field is typed on the number pad.

    Parameters
    ----------
    kind
        What it takes.
    inch, metric
        Unit of a bare number by the unit in force; empty where the field reads a bare number.
    """

    kind: Field
    inch: str = ""
    metric: str = ""


def _inches(kind: Field) -> Pad:
    return Pad(kind=kind, inch="in", metric="mm")


def _small(kind: Field) -> Pad:
    """Below one it is inch, from one on thou."""
    return Pad(kind=kind, metric="mm")


PADS: dict[str, Pad] = {
    "cylinders": Pad(kind=deck_form.COUNT),
    "banks": Pad(kind=deck_form.BANKS_FIELD),
    **{
        name: _inches(kind)
        for name, kind in deck_form.FIELDS.items()
        if kind in (DECK_FIELD, HOLE_FIELD)
    },
    "x": _inches(deck_form.COORDINATE_FIELD),
    "y": _inches(deck_form.COORDINATE_FIELD),
    "height": _small(HEIGHT_FIELD),
    "print": _small(HEIGHT_FIELD),
    "pair-go": _small(HEIGHT_FIELD),
    "pair-no-go": _small(HEIGHT_FIELD),
    "pair-height": _small(HEIGHT_FIELD),
    "goes": _small(GAP_FIELD),
    "stops": _small(GAP_FIELD),
    "grid-x": _inches(COORDINATE_FIELD),
    "grid-y": _inches(COORDINATE_FIELD),
    "grid-z": _small(READING_FIELD),
    "finish": Pad(kind=FINISH_FIELD, inch="µin", metric="µm"),
    "wire": _small(WIRE_FIELD),
    "wire-tol": _small(SMALL_FIELD),
    "gasket": _small(SHEET_FIELD),
    "gasket-tol": _small(SMALL_FIELD),
    "face-depth": _small(HEIGHT_FIELD),
    "target-share": Pad(kind=TARGET_FIELD, inch="%", metric="%"),
    "share": Pad(kind=SHARE_FIELD, inch="%", metric="%"),
    "interference": _small(SMALL_FIELD),
    "depth-tol": _small(SMALL_FIELD),
    "width-tol": _small(SMALL_FIELD),
    "ring": _inches(DECK_FIELD),
    "gasket-bore": _inches(DECK_FIELD),
    "deck-cut": _small(DECK_CUT_FIELD),
    "trimming": _inches(TRIMMING_FIELD),
    "spool": Pad(kind=WIRE_LENGTH_FIELD, inch="ft", metric="m"),
    "piece": _inches(WIRE_LENGTH_FIELD),
}
"""By the part of a field's name before its colon."""
SIGNED = ("x", "y", "grid-z")
"""Fields that can be below zero."""


def base_of(name: str) -> str:
    """What kind of field this is; the rest of the name says of what."""
    return name.partition(":")[0]


def label(name: str) -> str:
    """What a field is called, and of what it is."""
    base, _, of = name.partition(":")
    if base in ("height", "print"):
        cylinder, _, hour = of.rpartition("/")
        return text(f"field.{AREA}{base}", cylinder=cylinder, hour=hour)
    if base in ("goes", "stops"):
        return text(f"field.{AREA}{base}", line=text(f"flatness.line.{of}"))
    if base in ("x", "y"):
        return text(f"field.{AREA}{base}", name=of.partition("/")[2])
    return text(f"field.{AREA}{base}")


def unit_of(name: str, metric: bool) -> str:
    """Unit of a bare number in a field; empty where it has none."""
    pad = PADS[base_of(name)]
    if pad.kind.bare is Bare.THOU_OR_INCH and not metric:
        return text("deck.pad.thou")
    return pad.metric if metric else pad.inch
