"""The clamp screen's state and what a tap does to it; each handler hands on to a pure function."""

from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from functools import partial
from typing import Any

import flet as ft

from core.calc.tightening import STEPS
from core.errors import RecordError
from mobile.app.engine.clamp import entry as entries
from mobile.app.engine.clamp.draws import Draws
from mobile.app.engine.clamp.entry import ClampEntry
from mobile.app.engine.clamp.kept import as_json
from mobile.app.engine.clamp.told import ClampTold, tell
from mobile.app.state.keys import Keys, strike

Run = Callable[[Callable[[], Awaitable[None]]], object]
"""Starts a task beside the taps."""


@ft.observable
@dataclass
class Clamp:
    """Everything the clamp screen shows.

    Parameters
    ----------
    keep
        Puts the entry on the disk; returns when it is there.
    run
        Starts the draws.
    metric
        Whether bare numbers are in mm, bar and N·m.
    check
        Wire, height and sheet as the quick check has them.
    trouble
        Why the last tap was not kept.
    """

    keep: Callable[[Any], None] = lambda _entry: None
    run: Run = lambda _task: None
    metric: Callable[[], bool] = lambda: False
    check: Callable[[], dict[str, str]] = dict
    entry: ClampEntry = field(default_factory=ClampEntry)
    told: ClampTold = field(default_factory=lambda: tell(ClampEntry()))
    trouble: str = ""
    draws: Draws = field(default_factory=Draws)

    def take(self, entry: ClampEntry) -> None:
        """Show an entry and put it on the disk at once."""
        told = tell(entry, self.told)
        if told is not self.told:
            self.draws.forget()
        self.entry, self.told = entry, told
        self._keep()

    def restore(self, entry: ClampEntry) -> None:
        """Show an entry that was kept."""
        self.entry, self.told = entry, tell(entry)

    def _keep(self) -> None:
        try:
            self.keep(as_json(self.entry))
        except RecordError as error:
            self.trouble = str(error)
        else:
            self.trouble = ""

    def open_choice(self, name: str) -> None:
        self.take(entries.open_choice(self.entry, name))

    def choose(self, name: str, value: str) -> None:
        self.take(entries.choose(self.entry, name, value))

    def open_pad(self, name: str) -> None:
        self.take(entries.open_pad(self.entry, name))

    def press(self, key: str) -> None:
        self.take(entries.press(self.entry, key, self.metric()))

    def erase(self) -> None:
        self.take(entries.erase(self.entry, self.metric()))

    def clear(self) -> None:
        self.take(entries.clear(self.entry, self.metric()))

    def done(self) -> None:
        self.take(entries.done(self.entry))

    def go_on(self) -> None:
        self.take(entries.go_on(entries.show_part(self.entry, "entry")))

    def take_check(self) -> None:
        self.take(entries.fill(self.entry, self.check()))

    def keys(self) -> Keys:
        """What the number pad types into now."""
        return Keys(
            title=entries.label(self.entry, self.entry.open_field or ""),
            typed=self.entry.typing,
            told=entries.told(self.entry, self.metric()),
            press=self.press,
            erase=self.erase,
            clear=self.clear,
            done=self.done,
        )

    def strike(self, label: str) -> None:
        """A key of a real keyboard, while the number pad is open."""
        if self.entry.open_field:
            strike(self.keys(), label)

    def show_part(self, part: str) -> None:
        self.take(entries.show_part(self.entry, part))

    def show_cylinder(self, cylinder: str) -> None:
        self.take(entries.show_cylinder(self.entry, cylinder))

    def show_quantity(self, quantity: str) -> None:
        self.take(entries.show_quantity(self.entry, quantity))

    def turn(self, by: int) -> None:
        pattern = self.told.form.pattern if self.told.form else None
        most = STEPS * len(pattern.fasteners) if pattern else 0
        self.take(entries.turn(self.entry, by, most))

    def begin_anew(self) -> None:
        self.take(ClampEntry())

    def draw(self) -> None:
        if self.told.engine is not None:
            self.run(partial(self.draws.draw, self.told.engine))

    def stop(self) -> None:
        self.draws.forget()
