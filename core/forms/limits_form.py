"""The numbers that limit a sheet besides the wire: what each field takes, and to and from records.

A field has the name of its attribute in the records, with dashes. Every one may be missing.
"""

from collections.abc import Mapping
from dataclasses import fields, replace
from typing import Any

from core.forms.check_form import SHEET_FIELD
from core.forms.kept_engine import OVERHEAD_CAM, PUSHRODS
from core.records.model import Amount, Cylinder, Length, Limits
from core.tables.clearance_practice import BlockMaterial, RodMaterial
from core.unit_types import CC, DEGREE, INCH
from core.units import Bare, Dimension, Field, Typed, read_quantity

Texts = Mapping[str, str]


def _small(low: float, high: float) -> Field:
    return Field(
        name="",
        dimension=Dimension.LENGTH,
        low=low * INCH,
        high=high * INCH,
        bare=Bare.THOU_OR_INCH,
    )


def _large(low: float, high: float) -> Field:
    return Field(name="", dimension=Dimension.LENGTH, low=low, high=high, bare=Bare.INCH)


def _angle(low: float, high: float) -> Field:
    return Field(
        name="",
        dimension=Dimension.ANGLE,
        low=low * DEGREE,
        high=high * DEGREE,
        bare=Bare.DEGREE,
    )


def _number(low: float, high: float, *, whole: bool = False) -> Field:
    return Field(
        name="", dimension=Dimension.RATIO, low=low, high=high, bare=Bare.NUMBER, whole=whole
    )


_VOLUME = Field(
    name="", dimension=Dimension.VOLUME, low=0.0, high=20_000 * CC, bare=Bare.CUBIC_CENTIMETRE
)
LENGTHS: Mapping[str, Field] = {
    "sheet-on": SHEET_FIELD,
    "piston-least": _small(0.0, 0.25),
    "intake-least": _small(0.0, 0.5),
    "exhaust-least": _small(0.0, 0.5),
    "stroke": _large(10.0, 1000.0),
    "gasket-bore": _large(10.0, 1000.0),
    "pushrod-length": _large(20.0, 1000.0),
    "preload": _small(-0.5, 0.5),
    "preload-least": _small(-0.5, 0.5),
    "preload-most": _small(-0.5, 0.5),
    "chain-pitch": _large(2.0, 50.0),
    "cam-centres": _large(20.0, 2000.0),
    "largest-offset": _small(0.0, 0.5),
    "thickest-spacer": _small(0.0, 1.0),
    "dowel-proud": _small(0.0, 2.0),
    "dowel-least": _small(0.0, 2.0),
    "thread-engaged": _large(1.0, 200.0),
    "thread-diameter": _large(3.0, 50.0),
    "thread-least": _large(1.0, 200.0),
    "thread-room": _small(0.0, 2.0),
}
AMOUNTS: Mapping[str, Field] = {
    "valve-tilt": _angle(0.0, 60.0),
    "chamber": _VOLUME,
    "dish": _VOLUME,
    "dome": _VOLUME,
    "lowest-ratio": _number(1.5, 100.0),
    "highest-ratio": _number(1.5, 100.0),
    "pushrod-tilt": _angle(-90.0, 90.0),
    "lift-angle": _angle(-90.0, 90.0),
    "most-retard": _angle(0.0, 90.0),
    "most-advance": _angle(0.0, 90.0),
    "bank-angle": _angle(0.0, 360.0),
    "face-angle": _angle(0.0, 360.0),
}
COUNTS: Mapping[str, Field] = {
    "crank-teeth": _number(1.0, 200.0, whole=True),
    "cam-teeth": _number(1.0, 400.0, whole=True),
    "banks-on-chain": _number(1.0, 4.0, whole=True),
}
WORDS: Mapping[str, tuple[str, ...]] = {
    "rod": tuple(map(str, RodMaterial)),
    "valve-gear": (PUSHRODS, OVERHEAD_CAM),
    "block-material": tuple(map(str, BlockMaterial)),
}
CYLINDER: Mapping[str, Field] = {
    "bore": _large(10.0, 1000.0),
    "piston-deck": _small(-1.0, 1.0),
    "intake-valve": _small(0.0, 1.0),
    "exhaust-valve": _small(0.0, 1.0),
}
TWO_AS_ONE = "two-as-one"
YES = "yes"
KINDS: Mapping[str, Field] = {**LENGTHS, **AMOUNTS, **COUNTS, **CYLINDER}
"""What each field that a number goes into takes."""


def limits_of(texts: Texts) -> Limits:
    """What was typed as the records keep it.

    Raises
    ------
    InputError
        If a text cannot be read.
    """
    names = [name for name in texts if _is_field(name) and name not in CYLINDER]
    values = {_attribute(name): _value(name, texts[name]) for name in names}
    return Limits(id="", **values)


def cylinder_of(number: str, texts: Texts) -> Cylinder:
    """One cylinder as the records keep it.

    Raises
    ------
    InputError
        If a text cannot be read.
    """
    values = {_attribute(name): _value(name, texts[name]) for name in texts if name in CYLINDER}
    return Cylinder(id=number, number=number, **values)


def value_of(name: str, typed: str) -> Any:
    """What the records keep for a field; what they keep for nothing where nothing was typed.

    Raises
    ------
    InputError
        If the text cannot be read.
    """
    if typed:
        return _value(name, typed)
    return {TWO_AS_ONE: False}.get(name, "" if name in WORDS else None)


def texts_of(entry: Limits | Cylinder) -> dict[str, str]:
    """The form's texts of what the records keep."""
    names = {each.name.replace("_", "-"): getattr(entry, each.name) for each in fields(entry)}
    return {name: _text(value) for name, value in names.items() if _is_field(name) and _text(value)}


def _is_field(name: str) -> bool:
    return name in KINDS or name in WORDS or name == TWO_AS_ONE


def _attribute(name: str) -> str:
    return name.replace("-", "_")


def _value(name: str, typed: str) -> Any:
    if name in AMOUNTS:
        read = _read(name, typed)
        return Amount(typed=read.echo, value=read.value)
    if name in COUNTS:
        return round(_read(name, typed).value)
    if name in KINDS:
        read = _read(name, typed)
        return Length(typed=read.echo, mm=read.value)
    return typed == YES if name == TWO_AS_ONE else typed


def _read(name: str, typed: str) -> Typed:
    return read_quantity(typed, replace(KINDS[name], name=name))


def _text(value: object) -> str:
    if isinstance(value, Length | Amount):
        return value.typed
    if isinstance(value, bool):
        return YES if value else ""
    return "" if value is None else str(value)
