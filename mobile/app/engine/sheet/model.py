"""The state of the choice of a sheet and what a tap does to it."""

from collections.abc import Callable
from dataclasses import dataclass, field

import flet as ft

from core.errors import RecordError
from mobile.app.engine.sheet import entry as entries
from mobile.app.engine.sheet.basis import Basis
from mobile.app.engine.sheet.entry import SheetEntry
from mobile.app.engine.sheet.fields import KINDS
from mobile.app.engine.sheet.sliders import SHEET, Slider
from mobile.app.engine.sheet.source import Source, nowhere
from mobile.app.state.keys import Keys, strike
from mobile.app.state.sizes_form import SizesForm, close
from mobile.app.views.sizes_form import form_keys


@ft.observable
@dataclass
class WhatIf:
    """What the sliders show while a finger is on one; the rest of the screen waits for the end.

    Parameters
    ----------
    values
        Where each slider that was touched stands, in its base unit.
    """

    values: dict[str, float] = field(default_factory=dict)

    def slide(self, slider: Slider, value: float) -> None:
        """A finger moves a slider."""
        self.values = {**self.values, slider.name: slider.placed(value)}


@ft.observable
@dataclass
class SheetChoice:
    """Everything the screen shows.

    Parameters
    ----------
    source
        The check, or a job.
    trouble
        Why the last tap was not kept.
    """

    source: Source = field(default_factory=nowhere)
    entry: SheetEntry = field(default_factory=SheetEntry)
    what_if: WhatIf = field(default_factory=WhatIf)
    trouble: str = ""

    def take(self, entry: SheetEntry) -> None:
        """Show an entry and put it on the disk at once."""
        self.restore(entry)
        try:
            self.source.keep(entry)
        except RecordError as error:
            self.trouble = str(error)
        else:
            self.trouble = ""

    def restore(self, entry: SheetEntry) -> None:
        """Show an entry that was kept."""
        self.entry = entry
        picked = {} if entry.picked is None else {SHEET: entry.picked}
        self.what_if.values = {**entry.moves, **picked}

    def start(self, source: Source, entry: SheetEntry) -> None:
        """Another source, and what it keeps."""
        self.source, self.trouble = source, ""
        self.restore(entry)

    @property
    def basis(self) -> Basis:
        """What the source knows now."""
        return self.source.basis()

    def leave(self) -> None:
        self.source.leave()

    def change(self, transition: Callable[[SizesForm], SizesForm]) -> None:
        def in_unit(form: SizesForm) -> SizesForm:
            return transition(entries.in_unit(form, self.basis.metric))

        self.take(entries.change(self.entry, in_unit))

    def choose_word(self, name: str, word: str) -> None:
        self.take(entries.choose_word(self.entry, name, word))

    def turn_over(self, name: str) -> None:
        self.take(entries.turn_over(self.entry, name))

    def show_cylinder(self, number: str) -> None:
        self.take(entries.show_cylinder(self.entry, number))

    def add_cylinder(self) -> None:
        self.take(entries.add_cylinder(self.entry))

    def drop_cylinder(self) -> None:
        self.take(entries.drop_cylinder(self.entry))

    def show_part(self, part: str) -> None:
        self.take(entries.show_part(self.entry, part))

    def show_group(self, group: str) -> None:
        self.take(entries.show_group(self.entry, group))

    def pick(self, thickness: float | None) -> None:
        self.take(entries.pick(self.entry, thickness))

    def begin_anew(self) -> None:
        self.take(SheetEntry())

    # ---- what if ----

    def settle(self) -> None:
        """The finger is off the slider: everything follows, and it is kept."""
        values = dict(self.what_if.values)
        picked = values.pop(SHEET, None)
        moved = entries.with_moves(self.entry, values)
        self.take(entries.look_at(moved, picked))

    def step(self, slider: Slider, value: float) -> None:
        """One step of a slider, by its keys."""
        self.what_if.slide(slider, value)
        self.settle()

    def put_back(self) -> None:
        """Nothing is moved."""
        self.take(entries.look_at(entries.with_moves(self.entry, {}), None))

    # ---- the number pad ----

    def keys(self) -> Keys:
        """What the number pad types into now."""
        form = entries.in_unit(self.entry.form, self.basis.metric)
        return form_keys(form, KINDS, self.change)

    def close_pad(self) -> None:
        if self.entry.form.open_field:
            self.change(close)

    def strike(self, label: str) -> None:
        """A key of a real keyboard, while the number pad is open."""
        if self.entry.form.open_field:
            strike(self.keys(), label)
