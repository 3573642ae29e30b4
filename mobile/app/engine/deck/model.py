"""The deck screens' state and what a tap does to it; each handler hands on to a pure function."""

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass, field
from functools import partial
from typing import Any

import flet as ft

from core.errors import RecordError
from core.forms.kept_deck import kept_places, kept_prints
from core.records.model import Instrument, Job
from core.texts import text
from mobile.app.engine.deck import entry as entries
from mobile.app.engine.deck.entry import DeckEntry
from mobile.app.engine.deck.fields import SIGNED, base_of, label
from mobile.app.engine.deck.kept import as_json
from mobile.app.engine.deck.paper import FILE_NAME, page_of
from mobile.app.engine.deck.told import DeckTold, tell
from mobile.app.state.keys import Keys, strike

Change = Callable[[DeckEntry], DeckEntry]


@ft.observable
@dataclass
class Deck:
    """Everything the deck screens show.

    Parameters
    ----------
    keep
        Puts the entry on the disk; returns when it is there.
    run
        Starts what waits for the browser.
    metric
        Whether bare lengths are in mm.
    today
        Date as a person reads it.
    save
        Hands a file to the browser.
    trouble, saved
        Why the last tap was not kept; what became of the cut sheet.
    """

    keep: Callable[[Any], None] = lambda _entry: None
    run: Callable[[Callable[[], Awaitable[None]]], object] = lambda _task: None
    metric: Callable[[], bool] = lambda: False
    today: Callable[[], str] = lambda: ""
    save: Callable[[str, bytes], Awaitable[None]] | None = None
    entry: DeckEntry = field(default_factory=DeckEntry)
    told: DeckTold = field(default_factory=DeckTold)
    trouble: str = ""
    saved: str = ""

    def take(self, entry: DeckEntry) -> None:
        """Show an entry and put it on the disk at once."""
        self.restore(entry)
        self.saved = ""
        try:
            self.keep(as_json(entry))
        except RecordError as error:
            self.trouble = str(error)
        else:
            self.trouble = ""

    def restore(self, entry: DeckEntry) -> None:
        """Show an entry that was kept."""
        self.entry, self.told = entry, tell(entry)

    def change(self, change: Change) -> None:
        """Apply a transition to the entry as it stands now."""
        self.take(change(self.entry))

    def keys(self) -> Keys:
        """What the number pad types into now."""
        name = self.entry.open_field or ""
        return Keys(
            title=label(name),
            typed=self.entry.typing,
            told=entries.told(self.entry, self.metric()),
            press=lambda key: self.take(entries.press(self.entry, key, self.metric())),
            erase=lambda: self.take(entries.erase(self.entry, self.metric())),
            clear=lambda: self.take(entries.clear(self.entry, self.metric())),
            done=lambda: self.change(entries.done),
            signed=base_of(name) in SIGNED,
        )

    def strike(self, label: str) -> None:
        """A key of a real keyboard, while the number pad is open."""
        if self.entry.open_field:
            strike(self.keys(), label)

    def open_pad(self, name: str) -> None:
        self.take(entries.open_pad(self.entry, name))

    def choose(self, name: str, value: str) -> None:
        self.take(entries.choose(self.entry, name, value))

    def begin_anew(self) -> None:
        self.take(DeckEntry())

    def read_job(self, job: Job, instruments: Mapping[str, Instrument]) -> None:
        """Heights and prints that a job keeps, in place of those typed here."""
        read = entries.with_places(self.entry, "height", kept_places(job, instruments))
        self.take(entries.with_places(read, "print", kept_prints(job)))

    def save_sheet(self) -> None:
        """Hand the cut sheet to the browser."""
        if self.told.cut is not None and self.save is not None:
            page = page_of(self.told, self.today())
            self.run(partial(self._save, page.encode()))

    async def _save(self, page: bytes) -> None:
        assert self.save is not None
        await self.save(FILE_NAME, page)
        self.saved = text("deck.cut.saved", name=FILE_NAME)
