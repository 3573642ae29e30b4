"""What each field of the clamp screen takes, and in which unit a bare number is typed."""

from dataclasses import dataclass

from core.forms.check_form import HEIGHT_FIELD, SHEET_FIELD, SPREAD_FIELD, WIRE_FIELD
from core.forms.clamp_engine_form import (
    BANKS_FIELD,
    CYLINDERS_FIELD,
    ROW_FIELD,
    ROW_FIELDS,
    SPACING_FIELD,
)
from core.forms.clamp_form import (
    ANGLE_FIELD,
    BOOST_FIELD,
    COUNT_FIELD,
    FRICTION_FIELD,
    FRICTION_TOL_FIELD,
    GRIP_FIELD,
    HARDNESS_FIELD,
    LOAD_SHARE_FIELD,
    PRELOAD_FIELD,
    PRESSURE_FIELD,
    PRESSURE_TOL_FIELD,
    RATIO_FIELD,
    RING_FIELD,
    SHANK_FIELD,
    STRENGTH_FIELD,
    STRETCH_FIELD,
    TORQUE_FIELD,
)
from core.units import Field

AREA = "clamp-"
OWN_HEIGHT = "own-height"


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


def _length(kind: Field) -> Pad:
    return Pad(kind=kind, inch="in", metric="mm")


def _strength(kind: Field) -> Pad:
    return Pad(kind=kind, inch="ksi", metric="MPa")


def _pressure(kind: Field) -> Pad:
    return Pad(kind=kind, inch="psi", metric="bar")


def _percent(kind: Field) -> Pad:
    return Pad(kind=kind, inch="%", metric="%")


PADS: dict[str, Pad] = {
    "proof-strength": _strength(STRENGTH_FIELD),
    "yield-strength": _strength(STRENGTH_FIELD),
    "preload": _percent(PRELOAD_FIELD),
    "torque": Pad(kind=TORQUE_FIELD, inch="lbf·ft", metric="N·m"),
    "friction": Pad(kind=FRICTION_FIELD),
    "friction-tol": Pad(kind=FRICTION_TOL_FIELD),
    "angle": Pad(kind=ANGLE_FIELD),
    "stretch": Pad(kind=STRETCH_FIELD, metric="mm"),
    "grip": _length(GRIP_FIELD),
    "shank": _length(SHANK_FIELD),
    "load-share": Pad(kind=LOAD_SHARE_FIELD),
    "banks": Pad(kind=BANKS_FIELD),
    "cylinders": Pad(kind=CYLINDERS_FIELD),
    "fasteners": Pad(kind=COUNT_FIELD),
    "spacing": _length(SPACING_FIELD),
    **{row: _length(ROW_FIELD) for row in ROW_FIELDS},
    "ring": _length(RING_FIELD),
    "wire": Pad(kind=WIRE_FIELD, metric="mm"),
    "height": Pad(kind=HEIGHT_FIELD, metric="mm"),
    OWN_HEIGHT: Pad(kind=HEIGHT_FIELD, metric="mm"),
    "u": Pad(kind=SPREAD_FIELD, metric="mm"),
    "gasket": Pad(kind=SHEET_FIELD, metric="mm"),
    "hardness": Pad(kind=HARDNESS_FIELD),
    "face-depth": Pad(kind=HEIGHT_FIELD, metric="mm"),
    "pressure": _pressure(PRESSURE_FIELD),
    "pressure-tol": _pressure(PRESSURE_TOL_FIELD),
    "compression": Pad(kind=RATIO_FIELD),
    "boost": _pressure(BOOST_FIELD),
}
