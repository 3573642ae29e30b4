"""The form of the intake side of a V engine."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from core.calc.vee import VeeGeometry, VeeShift, vee_shift
from core.forms.entries import Entries
from core.texts import text
from core.unit_types import INCH, Millimetre
from core.units import Bare, Dimension, Field

TURN = 6.3
ANGLE_FIELD = Field(name="", dimension=Dimension.ANGLE, low=0.0, high=TURN, bare=Bare.DEGREE)
RISE_FIELD = Field(
    name="", dimension=Dimension.LENGTH, low=-INCH, high=INCH, bare=Bare.THOU_OR_INCH
)
NEEDED = {"bank-angle": ANGLE_FIELD, "face-angle": ANGLE_FIELD, "raise": RISE_FIELD}
FIELDS = tuple(NEEDED)


@dataclass(frozen=True, slots=True, kw_only=True)
class VeeForm:
    """A V engine, how far its heads rise, and what that does.

    Parameters
    ----------
    rise
        How far both heads go up [mm].
    """

    vee: VeeGeometry
    rise: Millimetre
    shift: VeeShift
    echoes: dict[str, str]


def read_vee(texts: Mapping[str, Sequence[str]], name: Callable[[str], str]) -> VeeForm:
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
    bank, face, rise = (_needed(entries, field, kind) for field, kind in NEEDED.items())
    if bank is None or face is None or rise is None:
        entries.finish()
        raise AssertionError("a missing value is a fault")
    vee = VeeGeometry(bank_angle=bank, face_angle=face)
    shift = entries.attempt(lambda: vee_shift(vee, rise))
    entries.finish()
    assert shift is not None
    return VeeForm(vee=vee, rise=rise, shift=shift, echoes=entries.echoes)


def _needed(entries: Entries, field: str, kind: Field) -> float | None:
    if not entries.typed(field):
        wanted = "small_length" if kind is RISE_FIELD else str(kind.dimension)
        entries.add_fault(field, "number.empty", wanted=text(f"number.wanted_{wanted}"))
    return entries.value(field, kind)
