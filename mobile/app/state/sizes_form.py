"""A form of sizes typed by the number pad, whatever the screen: plain values and transitions."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from core.errors import InputError
from core.texts import text
from core.units import Bare, Field, read_quantity
from mobile.app.state.keys import SIGN, erased, pressed

IN_MM = {
    Bare.THOU_OR_INCH: Bare.MILLIMETRE,
    Bare.INCH: Bare.MILLIMETRE,
    Bare.FAHRENHEIT: Bare.CELSIUS,
}
"""How a bare number reads where lengths are in mm, if otherwise than in inch."""
HINTS = {
    Bare.THOU_OR_INCH: "in",
    Bare.INCH: "inch",
    Bare.MILLIMETRE: "mm",
    Bare.CUBIC_CENTIMETRE: "cc",
    Bare.DEGREE: "degree",
    Bare.CELSIUS: "celsius",
    Bare.FAHRENHEIT: "fahrenheit",
    Bare.NUMBER: "number",
}
Kinds = Mapping[str, Field]
"""What each field of a form takes; the field's own name comes from the texts."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SizesForm:
    """What stands in a form, and what is being typed.

    Parameters
    ----------
    texts
        Text of each field, as it was understood; a missing one is not entered.
    open_field
        The field the number pad types into.
    typing
        What has been typed there.
    untouched
        Whether no key was pressed since the field was opened: the first one starts anew.
    metric
        Whether bare lengths are in mm.
    """

    texts: Mapping[str, str] = field(default_factory=dict)
    open_field: str | None = None
    typing: str = ""
    untouched: bool = True
    metric: bool = False


def put(form: SizesForm, name: str, value: str) -> SizesForm:
    """Put a text into a field; an empty one clears it."""
    texts = {each: kept for each, kept in form.texts.items() if each != name}
    return replace(form, texts={**texts, name: value} if value else texts)


def open_field(form: SizesForm, name: str) -> SizesForm:
    """Type into a field; the same one again closes it."""
    if form.open_field == name:
        return close(form)
    return replace(form, open_field=name, typing=form.texts.get(name, ""), untouched=True)


def close(form: SizesForm) -> SizesForm:
    """Put the number pad away."""
    return replace(form, open_field=None, typing="")


def press(form: SizesForm, kinds: Kinds, key: str) -> SizesForm:
    """A key of the number pad."""
    kept = form.typing if form.untouched and key != SIGN else ""
    return _typed(form, kinds, pressed(form.typing.removeprefix(kept), "", key))


def erase(form: SizesForm, kinds: Kinds) -> SizesForm:
    """Take the last key back."""
    return _typed(form, kinds, erased(form.typing))


def clear(form: SizesForm, kinds: Kinds) -> SizesForm:
    """Take everything typed back."""
    return _typed(form, kinds, "")


def _typed(form: SizesForm, kinds: Kinds, typing: str) -> SizesForm:
    """What reads goes into its field; what does not reads as empty there."""
    typed = replace(form, typing=typing, untouched=False)
    return put(typed, form.open_field or "", understood(typed, kinds) or "")


def understood(form: SizesForm, kinds: Kinds) -> str | None:
    """What is typed, with its unit; none while it does not read."""
    try:
        return _read(form, kinds)
    except InputError:
        return None


def told(form: SizesForm, kinds: Kinds) -> str:
    """How what is typed is understood, or what to type."""
    if not form.typing:
        return text(f"pad.hint.{HINTS[_bare(form, kinds[form.open_field or ''])]}")
    try:
        return text("pad.read", read=_read(form, kinds))
    except InputError as error:
        return str(error)


def _read(form: SizesForm, kinds: Kinds) -> str:
    name = form.open_field or ""
    kind = kinds[name]
    named = replace(kind, name=text(f"field.{name}"), bare=_bare(form, kind))
    return read_quantity(form.typing, named).echo if form.typing else ""


def _bare(form: SizesForm, kind: Field) -> Bare:
    return IN_MM.get(kind.bare, kind.bare) if form.metric else kind.bare
