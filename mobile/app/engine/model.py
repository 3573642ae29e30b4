"""The Engine way's state: its sub-screens, and which one is shown."""

from dataclasses import dataclass, field

import flet as ft

from mobile.app.engine.clamp.model import Clamp


@ft.observable
@dataclass
class Engine:
    """What the Engine way shows.

    Parameters
    ----------
    shown
        Name of the sub-screen.
    """

    clamp: Clamp = field(default_factory=Clamp)
    shown: str = "clamp"

    def show(self, name: str) -> None:
        self.shown = name

    def strike(self, label: str) -> None:
        """A key of a real keyboard, while a number pad is open."""
        if self.shown == "clamp":
            self.clamp.strike(label)
