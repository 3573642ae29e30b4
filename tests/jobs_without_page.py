"""The jobs without a browser: the book on a disk in memory, taps go to what the screen offers."""

import asyncio
from collections.abc import Awaitable, Callable
from typing import Any

import flet as ft
from flet.components.component import Renderer
from flet.controls.context import _context_page

from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.room import Room
from mobile.app.jobs.views.root import jobs_window
from mobile.app.notes import Notes
from mobile.app.theme import LIGHT
from mobile.app.views.look import Look
from tests.app_without_page import AppWithoutPage, NoPage, controls
from tests.homes import MemoryHome

START = 1_795_600_000_000
PHONE = Look(palette=LIGHT, width=390, height=844, text_scale=1.0)


class OneWindow:
    """No other window; or one that has the book, and gives it or sleeps."""

    def __init__(
        self, since: int | None = None, gives: Callable[[], Awaitable[None]] | None = None
    ) -> None:
        self.since, self._gives = since, gives
        self.held = False

    def hold(self, now: int) -> None:
        self.held, self.since = True, now

    def let_go(self) -> None:
        self.held = False

    def give(self) -> None:
        self.let_go()

    async def held_since(self) -> int | None:
        return self.since

    async def ask(self) -> bool:
        if self._gives is None:
            return False
        await self._gives()
        return True

    async def room(self) -> Room:
        return Room(used=1_000_000, granted=900_000_000)


class JobsWithoutPage:
    """The jobs on a disk that outlives them.

    Parameters
    ----------
    home
        The disk.
    """

    def __init__(self, home: Any = None, windows: OneWindow | None = None) -> None:
        self.home = home or MemoryHome()
        self.minutes = 0
        self.app = AppWithoutPage().app
        self.jobs = Jobs(
            app=self.app,
            run=self._run,
            home=self._home,
            now=self._now,
            notes=Notes(self._home),
            windows=windows or OneWindow(),
            picker=ft.FilePicker(),
        )
        self._run(self.jobs.open)

    async def _home(self) -> Any:
        return self.home

    def _now(self) -> int:
        self.minutes += 1
        return START + self.minutes * 60_000

    @staticmethod
    def _run(work: Callable[..., Awaitable[Any]], *values: Any) -> None:
        async def done() -> None:
            await work(*values)

        asyncio.run(done())

    def names(self, look: Look = PHONE) -> dict[str, ft.Semantics]:
        """What the screen in front offers, by name; no name stands twice."""
        found = [
            each
            for each in controls(self.drawn(look))
            if isinstance(each, ft.Semantics) and each.identifier
        ]
        names = [each.identifier for each in found]
        assert sorted(names) == sorted(set(names)), names
        return {each.identifier: each for each in found}

    def drawn(self, look: Look = PHONE) -> ft.Control:
        token = _context_page.set(NoPage())
        try:
            return Renderer().render(jobs_window.__component_impl__, self.jobs, self.app, look)
        finally:
            _context_page.reset(token)

    def tap(self, *names: str) -> None:
        """Tap what has these names, one after the other."""
        for name in names:
            found = self.names()
            assert name in found, f"{name} is none of {sorted(found)}"
            found[name].on_tap(None)

    def phrase(self, name: str) -> str:
        return str(self.names()[name].label)

    def type(self, name: str, words: str) -> None:
        """Type into a field by the system's keyboard."""
        (field,) = (each for each in controls(self.names()[name]) if isinstance(each, ft.TextField))
        field.value = words
        field.on_change(type("Event", (), {"control": field})())

    def keys(self, typed: str) -> None:
        """Type on the number pad."""
        for sign in typed:
            self.tap("key-point" if sign == "." else f"key-{sign}")

    def after_a_kill(self) -> "JobsWithoutPage":
        """The same disk in a new app: the old one never got to close anything."""
        return JobsWithoutPage(MemoryHome(dict(self.home.files)))
