"""Kept files in a folder of the computer.

"Saved" means that `fsync` returned. New content in place of old is written beside it, synced, and
renamed over it, and then the folder is synced (POSIX.1-2017, rename: the name refers to one of the
two files at every moment).
"""

import contextlib
import os
import sys
from pathlib import Path

from core.errors import RecordError, StoreBusy
from core.records.port import not_saved
from core.texts import text

if sys.platform == "win32":
    import msvcrt
else:
    import fcntl

LOCK = "book.lock"
NEW = ".new"
LOST = -1
"""No open handle: the file has to be opened again."""


class Disk:
    """The calls to the operating system, in one place so that tests can cut the power."""

    def open(self, path: Path) -> int:
        """Handle of a file, made if absent."""
        return os.open(path, os.O_RDWR | os.O_CREAT | getattr(os, "O_BINARY", 0), 0o644)

    def close(self, handle: int) -> None:
        """Let go of a handle."""
        os.close(handle)

    def read(self, handle: int) -> bytes:
        """Whole content."""
        os.lseek(handle, 0, os.SEEK_SET)
        parts = []
        while part := os.read(handle, 1 << 20):
            parts.append(part)
        return b"".join(parts)

    def size(self, handle: int) -> int:
        """Size of the content [bytes]."""
        return os.fstat(handle).st_size

    def write(self, handle: int, at: int, data: bytes) -> None:
        """Write all of the data at a place."""
        os.lseek(handle, at, os.SEEK_SET)
        rest = memoryview(data)
        while rest:
            rest = rest[os.write(handle, rest) :]

    def truncate(self, handle: int, size: int) -> None:
        """Cut to a size [bytes]."""
        os.ftruncate(handle, size)

    def sync(self, handle: int) -> None:
        """Return when the content is on the disk."""
        os.fsync(handle)

    def rename(self, path: Path, to: Path) -> None:
        """Give a file the name of another, in one step."""
        path.replace(to)

    def remove(self, path: Path) -> None:
        """Remove a file if it is there."""
        path.unlink(missing_ok=True)

    def sync_folder(self, folder: Path) -> None:
        """Return when the names in a folder are on the disk."""
        if os.name == "nt":
            return
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)

    def names(self, folder: Path) -> list[str]:
        """Names in a folder."""
        return sorted(os.listdir(folder))


class FilePort:
    """One kept file of a folder."""

    def __init__(self, path: Path, disk: Disk) -> None:
        self._path, self._disk = path, disk
        self._new = path.with_name(path.name + NEW)
        disk.remove(self._new)
        self._handle = disk.open(path)
        self._end = disk.size(self._handle)
        self._leftover = False
        self._name_unsynced = True

    def read(self) -> bytes:
        """Everything saved, and possibly a torn beginning of what was not."""
        try:
            return self._disk.read(self._handle)
        except OSError as error:
            raise RecordError(text("records.cannot_read", name=self._path.name)) from error

    def append(self, data: bytes) -> None:
        """Add to the end."""
        try:
            self._settle()
            self._leftover = True
            self._disk.write(self._handle, self._end, data)
            self._disk.sync(self._handle)
        except OSError as error:
            raise not_saved(self._path.name, error) from error
        self._leftover = False
        self._end += len(data)

    def replace(self, data: bytes) -> None:
        """Put new content in place of the old."""
        try:
            self._disk.size(self._handle)
            self._write_new(data)
            self._swap(len(data))
            self._settle()
        except OSError as error:
            raise not_saved(self._path.name, error) from error

    def close(self) -> None:
        """Let go of the file."""
        handle, self._handle = self._handle, LOST
        with contextlib.suppress(OSError):
            self._disk.close(handle)

    def _write_new(self, data: bytes) -> None:
        self._disk.remove(self._new)
        handle = self._disk.open(self._new)
        try:
            self._disk.write(handle, 0, data)
            self._disk.sync(handle)
        finally:
            self._disk.close(handle)

    def _swap(self, size: int) -> None:
        """Give the new file the name; some systems want both files closed for that.

        When it fails, only opening the file again can tell which of the two has the name.
        """
        self.close()
        self._disk.rename(self._new, self._path)
        self._handle, self._end = self._disk.open(self._path), size
        self._leftover, self._name_unsynced = False, True

    def _settle(self) -> None:
        """Make good what an earlier call left undone: nothing may be built on it before."""
        if self._leftover:
            self._disk.truncate(self._handle, self._end)
            self._leftover = False
        if self._name_unsynced:
            self._disk.sync_folder(self._path.parent)
            self._name_unsynced = False


class FileHome:
    """A folder with kept files; one process at a time.

    Parameters
    ----------
    folder
        Made if absent.

    Raises
    ------
    StoreBusy
        If another process holds the folder.
    """

    def __init__(self, folder: Path, disk: Disk | None = None) -> None:
        self._folder, self._disk = folder, disk or Disk()
        folder.mkdir(parents=True, exist_ok=True)
        self._lock = lock(folder / LOCK)

    async def open(self, name: str) -> FilePort:
        """File `name`, made if absent."""
        try:
            return FilePort(self._folder / name, self._disk)
        except OSError as error:
            raise RecordError(text("records.cannot_read", name=name)) from error

    async def names(self) -> tuple[str, ...]:
        """Names of the files kept here."""
        names = self._disk.names(self._folder)
        return tuple(name for name in names if name != LOCK and not name.endswith(NEW))

    def close(self) -> None:
        """Let another process have the folder."""
        with contextlib.suppress(OSError):
            os.close(self._lock)


def lock(path: Path) -> int:
    """Hold a file as the only process; the handle to close when done.

    Raises
    ------
    StoreBusy
        If another process holds it.
    """
    handle = os.open(path, os.O_RDWR | os.O_CREAT, 0o644)
    try:
        if sys.platform == "win32":
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        else:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as error:
        os.close(handle)
        raise StoreBusy(text("records.busy")) from error
    return handle
