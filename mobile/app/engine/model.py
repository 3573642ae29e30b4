"""The Engine way's state: its sub-screens, and which one is shown."""

from collections.abc import Callable
from dataclasses import dataclass, field

import flet as ft

from mobile.app.engine.clamp.model import Clamp
from mobile.app.engine.deck.model import Deck
from mobile.app.engine.sheet.entry import SheetEntry
from mobile.app.engine.sheet.model import SheetChoice
from mobile.app.engine.sheet.source import Source


@ft.observable
@dataclass
class Engine:
    """What the Engine way shows.

    Parameters
    ----------
    check_sheet
        Starts the choice of a sheet from the quick check.
    shown
        Name of the sub-screen.
    """

    sheet: SheetChoice = field(default_factory=SheetChoice)
    deck: Deck = field(default_factory=Deck)
    clamp: Clamp = field(default_factory=Clamp)
    check_sheet: Callable[[], None] = lambda: None
    shown: str = "sheet"

    def show(self, name: str) -> None:
        self.shown = name

    def open_sheet(self) -> None:
        """From the quick check to the choice of a sheet."""
        self.shown = "sheet"
        self.check_sheet()

    def open_job(self, source: Source, entry: SheetEntry) -> None:
        """From a job to the choice of its sheet."""
        self.shown = "sheet"
        self.sheet.start(source, entry)

    def strike(self, label: str) -> None:
        """A key of a real keyboard, while a number pad is open."""
        if self.shown == "sheet":
            self.sheet.strike(label)
        if self.shown == "deck":
            self.deck.strike(label)
        if self.shown == "clamp":
            self.clamp.strike(label)
