"""The app's state and what a tap does to it; each handler hands on to a pure function."""

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import partial
from typing import Any

import flet as ft

from core.calc.leaves import Stack
from core.calc.say import marks
from core.errors import InputError, RecordError
from core.texts import text
from mobile.app.engine.model import Engine
from mobile.app.state import entry as entries
from mobile.app.state import phrases
from mobile.app.state.draft import as_json
from mobile.app.state.entry import READINGS, Entry
from mobile.app.state.keys import Keys, strike
from mobile.app.state.leaf_pad import PadWindow
from mobile.app.state.link import link_of, texts_of
from mobile.app.state.own_leaves import leaf_set, leaves_field
from mobile.app.state.sizes_list import with_size, without_size
from mobile.app.state.told import Told, form_texts, tell
from mobile.app.state.typing import read_typing
from mobile.page_bridge import PageState

Keep = Callable[[Any], None]
LISTS = {"new-sheet": "shelf", "new-leaf": ""}


@ft.observable
@dataclass
class App:
    """Everything the screens show.

    Parameters
    ----------
    keep
        Puts the draft on the disk; returns when it is there.
    address
        Address of this app, before the route.
    use_new_version
        Changes to the version that waits.
    leave_last_answer
        Leaves the answer for the first picture of the next start.
    link_taken
        Has the address forget the link it held.
    to_job
        Asks in which job the check is kept.
    """

    keep: Keep
    address: str
    use_new_version: Callable[[], None]
    leave_last_answer: Callable[..., None]
    link_taken: Callable[[], None]
    entry: Entry = field(default_factory=Entry)
    told: Told = field(default_factory=lambda: tell(Entry()))
    to_job: Callable[[], None] | None = None
    engine: Engine = field(default_factory=Engine)
    screen: str = "check"
    window: PadWindow = field(default_factory=PadWindow)
    dropped: Entry | None = None
    dropped_size: tuple[str, str] | None = None
    preview: dict[str, str] | None = None
    link_trouble: str = ""
    draft_trouble: str = ""
    page_state: PageState = field(default_factory=PageState)
    width: float = 390.0
    height: float = 844.0
    dark: bool = False

    # ---- the entry ----

    def take(self, entry: Entry) -> None:
        """Show an entry and put it on the disk at once."""
        self.entry = entry
        self.told = tell(entry)
        self._keep()

    def _keep(self) -> None:
        try:
            self.keep(as_json(self.entry))
        except RecordError as error:
            self.draft_trouble = str(error)
        else:
            self.draft_trouble = ""
        self._leave_answer()

    def _leave_answer(self) -> None:
        answer = self.told.answer
        if answer is None:
            return
        self.leave_last_answer(
            height=phrases.height_lines(answer.asked.height)[0],
            suggestion=phrases.suggestion_line(answer, self.entry.metric),
            say=phrases.say_line(self.told),
        )

    def move_pad(self, window: PadWindow) -> None:
        self.window = window

    def tap_leaf(self, side: str, stack: Stack, window: PadWindow) -> None:
        self.dropped, self.window = None, window
        self.take(entries.tap_leaf(self.entry, side, stack))

    def arm(self, side: str) -> None:
        self.take(entries.arm(self.entry, side))

    def choose_face(self, face: str) -> None:
        self.take(entries.choose_face(self.entry, face))

    def switch_unit(self) -> None:
        self.window = PadWindow()
        self.take(entries.switch_unit(self.entry))
        if self.entry.open_field:
            self._type(self.entry)

    def drop_text(self, field: str) -> None:
        self.take(entries.set_text(self.entry, field, ""))

    def draw_sheet(self, thickness: float) -> None:
        self.take(entries.draw_sheet(self.entry, thickness))

    def begin_anew(self) -> None:
        before = self.entry
        self.take(entries.begin_anew(self.entry))
        self.dropped = before if before.under_way() else None

    def bring_back(self) -> None:
        if self.dropped is not None:
            self.take(self.dropped)
        self.dropped = None

    def replace_check(self, entry: Entry) -> None:
        """Show another check; the one before can be brought back."""
        before = self.entry
        self.take(entry)
        self.dropped = before if before.under_way() else None
        self.go_to("check")

    # ---- the number pad ----

    def open_pad(self, field: str) -> None:
        self.take(entries.open_pad(self.entry, field))

    def press(self, key: str) -> None:
        self._type(entries.press(self.entry, key))

    def erase(self) -> None:
        self._type(entries.erase(self.entry))

    def clear_field(self) -> None:
        self._type(entries.clear_typing(self.entry))

    def _type(self, entry: Entry) -> None:
        """What reads goes into its field; what does not reads as empty there."""
        field = entry.open_field or ""
        if field not in LISTS:
            entry = entries.set_text(entry, field, read_typing(entry).text or "")
        self.take(entry)

    def strike(self, label: str) -> None:
        """A key of a real keyboard, while the number pad is open."""
        if self.screen == "engine":
            self.engine.strike(label)
        elif self.entry.open_field:
            strike(self.keys(), label)

    def close_pad(self) -> None:
        field = self.entry.open_field or ""
        size = read_typing(self.entry).text
        if field in LISTS and size:
            self._add_size(LISTS[field] or leaves_field(self.entry.metric), size)
        self.take(entries.close_pad(self.entry))

    def keys(self) -> Keys:
        """What the number pad types into now."""
        field, after = self.entry.open_field or "", entries.next_field(self.entry)
        return Keys(
            title=text(f"field.{field}"),
            typed=self.entry.typing,
            told=read_typing(self.entry).told,
            press=self.press,
            erase=self.erase,
            clear=self.clear_field,
            done=self.close_pad,
            next=partial(self.open_pad, after) if after else None,
            stacks=field in READINGS,
        )

    # ---- shelf and leaves ----

    def own_leaf_texts(self) -> tuple[str, ...]:
        leaves = leaf_set(self.entry)
        return tuple(marks(Stack((leaf,)), leaves.metric)[0] for leaf in leaves.leaves)

    def _sizes(self, field: str) -> str:
        if field == "shelf":
            return self.entry.texts.get(field, "")
        return "; ".join(self.own_leaf_texts())

    def _add_size(self, field: str, size: str) -> None:
        self.dropped_size = None
        sizes = with_size(self._sizes(field), field, size)
        self.take(entries.set_text(self.entry, field, sizes))

    def drop_size(self, field: str, size: str) -> None:
        sizes = without_size(self._sizes(field), size)
        if sizes or field == "shelf":
            self.dropped_size = (field, size)
            self.take(entries.set_text(self.entry, field, sizes))

    def bring_size_back(self) -> None:
        if self.dropped_size is not None:
            self._add_size(*self.dropped_size)

    # ---- links ----

    def follow(self, route: str) -> None:
        """Open what a link holds; over an entry under way it waits for a word."""
        self.link_trouble = ""
        try:
            texts = texts_of(route)
        except InputError as error:
            self.screen, self.link_trouble = "check", str(error)
            return
        if texts is None:
            return
        self.screen = "check"
        self.preview = texts
        if not self.entry.under_way():
            self.use_link()

    def use_link(self) -> None:
        before, texts = self.entry, self.preview or {}
        self.take(entries.from_link(before, texts))
        self.dropped = before if before.under_way() else None
        self.drop_link()

    def asks(self) -> bool:
        """Whether a link waits for a word."""
        return self.preview is not None or bool(self.link_trouble)

    def drop_link(self) -> None:
        """A word was said: the link is used up, whichever it was."""
        self.preview, self.link_trouble = None, ""
        self.link_taken()

    def previewed(self) -> Told:
        """What the check of a link comes to."""
        return tell(entries.from_link(self.entry, self.preview or {}))

    def link(self) -> str:
        return f"{self.address}#{link_of(form_texts(self.entry))}"

    # ---- the window ----

    def go_to(self, screen: str) -> None:
        if self.entry.open_field:
            self.close_pad()
        self.screen = screen

    def open_engine(self) -> None:
        self.engine.open_sheet()
        self.go_to("engine")

    # ---- what the views ask ----

    def entered(self) -> frozenset[str]:
        return frozenset(name for name, each in self.entry.texts.items() if each)

    def shown(self, field: str) -> str:
        return self.entry.texts.get(field, "")

    def side_label(self, side: str) -> str:
        return entries.side_label(self.entry, side)
