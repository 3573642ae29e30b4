"""What has been typed and picked for the choice of a sheet, and how a tap changes it."""

from collections.abc import Callable, Mapping
from dataclasses import asdict, dataclass, field, replace
from typing import Any

from core.forms.limits_form import YES
from mobile.app.engine.sheet.fields import OF_A_CYLINDER
from mobile.app.state import sizes_form as forms
from mobile.app.state.sizes_form import SizesForm

FORMAT = 1
KEY = "sheet"
PARTS = ("choice", "numbers", "figures")
MOST_CYLINDERS = 12
FIRST = "1"


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetEntry:
    """One engine under way.

    Parameters
    ----------
    form
        Numbers of the engine, and those of the cylinder that is shown.
    cylinders
        Texts of every cylinder, by its number.
    cylinder
        The one whose numbers are shown.
    part
        Which part of the screen is shown.
    group
        Which group of numbers is open.
    picked
        Thickness that is looked at, where one was picked [mm].
    moves
        What is moved, by slider, in its base unit.
    """

    form: SizesForm = field(default_factory=SizesForm)
    cylinders: Mapping[str, Mapping[str, str]] = field(default_factory=lambda: {FIRST: {}})
    cylinder: str = FIRST
    part: str = "choice"
    group: str = "clearances"
    picked: float | None = None
    moves: Mapping[str, float] = field(default_factory=dict)


def change(entry: SheetEntry, transition: Callable[[SizesForm], SizesForm]) -> SheetEntry:
    """The form after a transition; what belongs to a cylinder goes to the one shown."""
    form = transition(entry.form)
    own = {name: form.texts[name] for name in OF_A_CYLINDER if name in form.texts}
    return replace(entry, form=form, cylinders={**entry.cylinders, entry.cylinder: own})


def choose_word(entry: SheetEntry, name: str, word: str) -> SheetEntry:
    """Choose one of a few words; the same again takes it back."""
    again = entry.form.texts.get(name) == word
    return change(entry, lambda form: forms.put(forms.close(form), name, "" if again else word))


def turn_over(entry: SheetEntry, name: str) -> SheetEntry:
    """Yes to no, and back."""
    return choose_word(entry, name, YES)


def show_cylinder(entry: SheetEntry, number: str) -> SheetEntry:
    """The numbers of another cylinder."""
    shared = {name: each for name, each in entry.form.texts.items() if name not in OF_A_CYLINDER}
    texts = {**shared, **entry.cylinders.get(number, {})}
    return replace(entry, form=replace(forms.close(entry.form), texts=texts), cylinder=number)


def add_cylinder(entry: SheetEntry) -> SheetEntry:
    """One more cylinder, shown at once."""
    if len(entry.cylinders) >= MOST_CYLINDERS:
        return entry
    number = str(1 + max(int(each) for each in entry.cylinders))
    more = replace(entry, cylinders={**entry.cylinders, number: {}})
    return show_cylinder(more, number)


def drop_cylinder(entry: SheetEntry) -> SheetEntry:
    """Take the last cylinder away; one always stays."""
    *kept, _last = entry.cylinders
    if not kept:
        return entry
    fewer = replace(entry, cylinders={each: entry.cylinders[each] for each in kept})
    return show_cylinder(fewer, entry.cylinder if entry.cylinder in kept else kept[-1])


def show_part(entry: SheetEntry, part: str) -> SheetEntry:
    """Another part of the screen."""
    return replace(entry, part=part, form=forms.close(entry.form))


def show_group(entry: SheetEntry, group: str) -> SheetEntry:
    """Open a group of numbers; the open one closes."""
    shown = "" if entry.group == group and entry.part == "numbers" else group
    return replace(show_part(entry, "numbers"), group=shown)


def pick(entry: SheetEntry, thickness: float | None) -> SheetEntry:
    """Look at one sheet; the same again looks at the one to run."""
    return replace(entry, picked=None if thickness == entry.picked else thickness)


def look_at(entry: SheetEntry, thickness: float | None) -> SheetEntry:
    """Look at a sheet of any thickness, or at the one to run."""
    return replace(entry, picked=thickness)


def in_unit(form: SizesForm, metric: bool) -> SizesForm:
    """Bare lengths in the unit in force."""
    return replace(form, metric=metric)


def with_moves(entry: SheetEntry, moves: Mapping[str, float]) -> SheetEntry:
    """What is moved, without what is not."""
    return replace(entry, moves={name: much for name, much in moves.items() if much})


def from_check(entry: SheetEntry, sheet_on: str) -> SheetEntry:
    """The check's sheet is the one on now."""
    chosen = show_part(entry, "choice")
    return (
        change(chosen, lambda form: forms.put(form, "sheet-on", sheet_on)) if sheet_on else chosen
    )


def as_json(entry: SheetEntry) -> dict[str, Any]:
    """What is written on every tap."""
    return {"format": FORMAT, **asdict(entry)}


def from_json(kept: Any) -> SheetEntry:
    """The entry of the last tap; a new one where nothing was kept, or not by this format."""
    if not isinstance(kept, dict) or kept.get("format") != FORMAT:
        return SheetEntry()
    values = {name: value for name, value in kept.items() if name != "format"}
    return SheetEntry(**{**values, "form": SizesForm(**values["form"])})
