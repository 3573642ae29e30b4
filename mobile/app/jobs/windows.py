"""The other windows of this browser: who has the book, and asking for it.

A window that has the book holds a Web Lock whose name says since when, so that even a window that
sleeps can be named. Asking goes over a broadcast channel (WHATWG HTML, 9.5): a window that is
awake gives the book at once, for everything it shows is on the disk.
"""

import asyncio
from collections.abc import Callable
from typing import Any

from mobile.app.jobs.state.room import Room

CHANNEL = "standproud-book"
ASK, GIVEN = "ask", "given"
LOCK = "standproud-book since "
PATIENCE = 3.0
"""How long a window that is awake may take to give the book away [s]."""


class Windows:
    """This window among the others.

    Parameters
    ----------
    on_asked
        Gives the book away; called when another window asks for it.
    on_given_late
        Takes the book; called when a window that slept gives it after all.
    """

    def __init__(self, on_asked: Callable[[], None], on_given_late: Callable[[], None]) -> None:
        import js
        from pyodide.ffi import create_proxy

        self._on_asked, self._on_given_late = on_asked, on_given_late
        self._name = str(js.crypto.randomUUID())
        self._asked_by = ""
        self._given: asyncio.Future[None] | None = None
        self._release: Any = None
        self._channel = js.BroadcastChannel.new(CHANNEL)
        self._channel.onmessage = create_proxy(lambda event: self._heard(str(event.data)))

    def hold(self, now: int) -> None:
        """Tell the other windows that this one has the book."""
        import js
        from pyodide.ffi import create_once_callable

        until_let_go = js.Promise.new(create_once_callable(self._keep_release))
        holding = create_once_callable(lambda _lock: until_let_go)
        js.navigator.locks.request(f"{LOCK}{now}", holding)

    def _keep_release(self, release: Any, _refuse: Any) -> None:
        self._release = release

    def let_go(self) -> None:
        """Tell the other windows that this one no longer has it."""
        if self._release:
            self._release(None)
        self._release = None

    async def held_since(self) -> int | None:
        """When the window that has the book took it [ms since 1970, UTC]."""
        import js

        held = (await js.navigator.locks.query()).held
        names = [str(each.name) for each in held]
        since = [name.removeprefix(LOCK) for name in names if name.startswith(LOCK)]
        return max((int(each) for each in since if each.isdecimal()), default=None)

    async def ask(self) -> bool:
        """Ask for the book; whether it was given."""
        self._given = asyncio.get_running_loop().create_future()
        self._channel.postMessage(f"{ASK} {self._name}")
        try:
            await asyncio.wait_for(self._given, PATIENCE)
        except TimeoutError:
            return False
        finally:
            self._given = None
        return True

    async def room(self) -> Room | None:
        """What the browser says of its storage."""
        import js
        from pyodide.ffi import JsException

        try:
            said = await js.navigator.storage.estimate()
        except JsException:  # Some browsers refuse in a private window: then it is not known.
            return None
        return Room(used=int(said.usage), granted=int(said.quota))

    def give(self) -> None:
        """Tell the window that asked that the book is free now."""
        self.let_go()
        self._channel.postMessage(f"{GIVEN} {self._asked_by}")

    def _heard(self, words: str) -> None:
        said, _, name = words.partition(" ")
        if said == ASK and self._release:
            self._asked_by = name
            self._on_asked()
        if said == GIVEN and name == self._name:
            self._take()

    def _take(self) -> None:
        if self._given is None:
            self._on_given_late()
        elif not self._given.done():
            self._given.set_result(None)
