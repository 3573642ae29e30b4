"""What is typed on the number pad: whether it reads, and as what it goes into its field."""

from dataclasses import dataclass, replace

from core.calc.leaves import MOST_LEAVES
from core.errors import InputError
from core.forms.check_form import HEIGHT_FIELD, SHEET_FIELD, WIRE_FIELD
from core.forms.entries import read_sum
from core.texts import text
from core.units import Bare, Field
from mobile.app.state.entry import READINGS, Entry

KINDS = {
    "go": HEIGHT_FIELD,
    "no-go": HEIGHT_FIELD,
    "face-depth": HEIGHT_FIELD,
    "new-leaf": HEIGHT_FIELD,
    "gasket": SHEET_FIELD,
    "new-sheet": SHEET_FIELD,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Typed:
    """What the keys pressed so far mean.

    Parameters
    ----------
    text
        What goes into the field; none while it does not read.
    told
        How it was understood, or what to type.
    """

    text: str | None
    told: str


def read_typing(entry: Entry) -> Typed:
    """Read what stands on the number pad."""
    field = entry.open_field or ""
    if not entry.typing:
        return Typed(text="", told=text(f"pad.hint.{'mm' if entry.metric else 'in'}"))
    try:
        sizes = read_sum(entry.typing, _kind(entry, field), _most(field))
    except InputError as error:
        return Typed(text=None, told=str(error))
    understood = " + ".join(size.echo for size in sizes)
    return Typed(text=understood, told=text("pad.read", read=understood))


def _kind(entry: Entry, field: str) -> Field:
    bare = Bare.MILLIMETRE if entry.metric else Bare.THOU_OR_INCH
    return replace(KINDS.get(field, WIRE_FIELD), name=text(f"field.{field}"), bare=bare)


def _most(field: str) -> int:
    return MOST_LEAVES if field in READINGS else 1
