"""What a kept file must promise, wherever it is kept.

Two homes keep it: a folder of the computer (`file_storage`) and the browser's own disk
(`mobile.opfs_storage`). One contract test runs over both.
"""

import errno
from typing import Protocol

from core.errors import NotSaved
from core.texts import text


class Port(Protocol):
    """One kept file.

    `append` and `replace` return when the disk has taken the data for good. When they raise
    `NotSaved`, everything saved earlier is still there, and the next call may succeed.
    """

    def read(self) -> bytes:
        """Everything that was saved, and possibly the torn beginning of what was not."""

    def append(self, data: bytes) -> None:
        """Add to the end."""

    def replace(self, data: bytes) -> None:
        """Put new content in place of the old; at every moment one of the two is whole."""

    def close(self) -> None:
        """Let go, so that another window can open it."""


class Home(Protocol):
    """A place with kept files, used by one window at a time."""

    async def open(self, name: str) -> Port:
        """File `name`, made if absent.

        Raises
        ------
        StoreBusy
            If another window holds it.
        """

    async def names(self) -> tuple[str, ...]:
        """Names of the files that were ever made here."""

    def close(self) -> None:
        """Let go of the place."""


def not_saved(name: str, error: OSError) -> NotSaved:
    """Error that says why the disk did not take it."""
    full = error.errno in (errno.ENOSPC, errno.EDQUOT)
    key = "records.disk_full" if full else "records.disk_failed"
    return NotSaved(text(key, name=name, reason=error.strerror or str(error)))
