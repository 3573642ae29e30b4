"""What is under way on this device: checks and forms half filled in, on the disk at every tap."""

from collections.abc import Awaitable, Callable
from typing import Any

from core.errors import RecordError, StoreBusy
from core.records.notebook import Notebook
from core.records.port import Home
from core.texts import text

FILE = "draft"


class Notes:
    """The device's own notes, or why there are none: a check works without them.

    Parameters
    ----------
    home
        Opens the place where the files are kept.
    """

    def __init__(self, home: Callable[[], Awaitable[Home]]) -> None:
        self._home = home
        self._notebook: Notebook | None = None
        self._why = ""

    async def open(self) -> None:
        """Take the notes; where another window has them, every `put` says so."""
        if self._notebook:
            return
        try:
            home = await self._home()
            self._notebook = Notebook(await home.open(FILE))
        except StoreBusy:
            self._why = text("draft.elsewhere")
        except RecordError as error:
            self._why = str(error)

    def get(self, key: str) -> Any:
        """What was noted; none where nothing was."""
        return self._notebook.get(key) if self._notebook else None

    def put(self, key: str, value: Any) -> None:
        """Note something; it is on the disk when this returns.

        Raises
        ------
        RecordError
            If it is not.
        """
        if self._notebook is None:
            raise RecordError(self._why)
        self._notebook.put(key, value)

    def close(self) -> None:
        """Let another window have them."""
        if self._notebook:
            self._notebook.close()
        self._notebook, self._why = None, text("draft.elsewhere")
