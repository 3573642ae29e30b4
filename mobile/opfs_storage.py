"""Kept files on the browser's own disk: the origin private file system.

WHATWG *File System* standard, `FileSystemSyncAccessHandle`: a handle belongs to one window, and
reads, writes and flushes without waiting. Handles are had before use, so a reading is saved in one
go. "Saved" means that `flush` returned.

Cutting a file and writing it anew would leave a moment without a whole copy. So a kept file has
two slots, each starting with its generation; new content goes into the other slot, which counts
only once its generation, higher by one, is on the disk.
"""

import contextlib
import errno
from hashlib import blake2b
from typing import Any, Protocol

from core.errors import DamagedFile, RecordError, StoreBusy
from core.records.port import not_saved
from core.texts import text

SLOTS = (".a", ".b")
MARK = b"standproud slot "
MARK_SIZE = 64
FOLDER = "standproud"


class Handle(Protocol):
    """A file of the browser; every call may raise `OSError`."""

    def read(self) -> bytes:
        """Whole content."""

    def write(self, at: int, data: bytes) -> None:
        """Write all of the data at a place."""

    def truncate(self, size: int) -> None:
        """Cut or stretch to a size [bytes]."""

    def flush(self) -> None:
        """Return when the content is on the disk."""

    def size(self) -> int:
        """Size of the content [bytes]."""

    def close(self) -> None:
        """Let another window have it."""


class Folder(Protocol):
    """The folder of this origin."""

    async def handle(self, name: str) -> Handle:
        """Handle of a file, made if absent; `StoreBusy` if another window has it."""

    async def names(self) -> list[str]:
        """Names of its files."""


class OpfsPort:
    """One kept file, in two slots.

    Raises
    ------
    DamagedFile
        If both slots hold content and neither says which is newer; both are left untouched.
    """

    def __init__(self, name: str, handles: tuple[Handle, Handle]) -> None:
        self._name, self._handles = name, handles
        try:
            self._current, self._generation = self._choose()
            self._end = max(handles[self._current].size(), MARK_SIZE)
        except OSError as error:
            raise RecordError(text("records.cannot_read", name=name)) from error
        self._leftover = False
        self._other_in_doubt = False

    def read(self) -> bytes:
        """Everything saved, and possibly a torn beginning of what was not."""
        try:
            return self._handles[self._current].read()[MARK_SIZE:]
        except OSError as error:
            raise RecordError(text("records.cannot_read", name=self._name)) from error

    def append(self, data: bytes) -> None:
        """Add to the end."""
        handle = self._handles[self._current]
        try:
            self._settle()
            self._leftover = True
            handle.write(self._end, data)
            handle.flush()
        except OSError as error:
            raise not_saved(self._name, error) from error
        self._leftover = False
        self._end += len(data)

    def replace(self, data: bytes) -> None:
        """Put new content in place of the old."""
        old, new = self._current, 1 - self._current
        try:
            self._settle()
            self._other_in_doubt = True
            self._handles[new].truncate(0)
            self._handles[new].write(MARK_SIZE, data)
            self._handles[new].flush()
            self._mark(new, self._generation + 1)
        except OSError as error:
            raise not_saved(self._name, error) from error
        self._current, self._generation = new, self._generation + 1
        self._end, self._leftover, self._other_in_doubt = MARK_SIZE + len(data), False, False
        with contextlib.suppress(OSError):
            self._handles[old].truncate(0)

    def close(self) -> None:
        """Let another window have the file."""
        for handle in self._handles:
            with contextlib.suppress(OSError):
                handle.close()

    def _choose(self) -> tuple[int, int]:
        """Slot to use and its generation; generation 0 has no mark yet."""
        marks = [_generation(handle.read()[:MARK_SIZE]) for handle in self._handles]
        if any(marks):
            best = marks.index(max(marks))
            return best, marks[best]
        filled = [i for i, handle in enumerate(self._handles) if handle.size() > MARK_SIZE]
        if len(filled) > 1:
            raise DamagedFile(text("records.slots_unmarked", name=self._name))
        return (filled or [0])[0], 0

    def _settle(self) -> None:
        """Make good what an earlier call left undone: nothing may be built on it before."""
        if self._other_in_doubt:
            other = self._handles[1 - self._current]
            other.truncate(0)
            other.flush()
            self._other_in_doubt = False
        if self._leftover:
            self._handles[self._current].truncate(self._end)
            self._leftover = False
        if self._generation == 0:
            self._mark(self._current, 1)
            self._generation = 1

    def _mark(self, slot: int, generation: int) -> None:
        self._handles[slot].write(0, slot_mark(generation))
        self._handles[slot].flush()


class OpfsHome:
    """The kept files of this origin."""

    def __init__(self, folder: Folder) -> None:
        self._folder = folder

    async def open(self, name: str) -> OpfsPort:
        """File `name`, made if absent.

        Raises
        ------
        StoreBusy
            If another window holds it.
        """
        first = await self._folder.handle(name + SLOTS[0])
        try:
            second = await self._folder.handle(name + SLOTS[1])
        except RecordError:
            first.close()
            raise
        try:
            return OpfsPort(name, (first, second))
        except RecordError:
            first.close()
            second.close()
            raise

    async def names(self) -> tuple[str, ...]:
        """Names of the files kept here."""
        stems = {name.removesuffix(end) for name in await self._folder.names() for end in SLOTS}
        return tuple(sorted(stem for stem in stems if not stem.endswith(SLOTS)))

    def close(self) -> None:
        """Nothing is held but the files themselves."""


class BrowserHandle:
    """A `FileSystemSyncAccessHandle`, its errors turned into ours."""

    def __init__(self, handle: Any) -> None:
        self._handle = handle

    def read(self) -> bytes:
        """Whole content."""
        from js import Uint8Array

        with _browser_errors():
            content = Uint8Array.new(self._handle.getSize())
            self._handle.read(content, _place(0))
            return bytes(content.to_bytes())

    def write(self, at: int, data: bytes) -> None:
        """Write all of the data at a place."""
        from pyodide.ffi import to_js

        with _browser_errors():
            written = self._handle.write(to_js(data), _place(at))
        if written != len(data):
            raise OSError(errno.ENOSPC, "QuotaExceededError")

    def truncate(self, size: int) -> None:
        """Cut or stretch to a size [bytes]."""
        with _browser_errors():
            self._handle.truncate(size)

    def flush(self) -> None:
        """Return when the content is on the disk."""
        with _browser_errors():
            self._handle.flush()

    def size(self) -> int:
        """Size of the content [bytes]."""
        with _browser_errors():
            return int(self._handle.getSize())

    def close(self) -> None:
        """Let another window have it."""
        with _browser_errors():
            self._handle.close()


class BrowserFolder:
    """The folder of this origin in the browser."""

    def __init__(self, folder: Any) -> None:
        self._folder = folder

    async def handle(self, name: str) -> BrowserHandle:
        """Handle of a file, made if absent."""
        from pyodide.ffi import JsException

        try:
            file = await self._folder.getFileHandle(name, _option("create", True))
            return BrowserHandle(await file.createSyncAccessHandle())
        except JsException as error:
            if error.name == "NoModificationAllowedError":
                raise StoreBusy(text("records.busy")) from error
            if error.name == "QuotaExceededError":
                raise not_saved(name, OSError(errno.ENOSPC, error.name)) from error
            raise RecordError(text("records.cannot_read", name=name)) from error

    async def names(self) -> list[str]:
        """Names of its files."""
        from js import Array

        return [str(name) for name in (await Array.fromAsync(self._folder.keys())).to_py()]


async def open_browser_home() -> OpfsHome:
    """Kept files of this origin; works in a worker of a secure context."""
    from js import navigator

    root = await navigator.storage.getDirectory()
    return OpfsHome(BrowserFolder(await root.getDirectoryHandle(FOLDER, _option("create", True))))


def slot_mark(generation: int) -> bytes:
    """First bytes of a slot, which say its generation."""
    content = MARK + b"%016x " % generation
    seal = blake2b(content, digest_size=8).hexdigest().encode()
    return (content + seal).ljust(MARK_SIZE - 1) + b"\n"


def _generation(mark: bytes) -> int:
    """Generation of a slot; 0 if the mark is none of ours."""
    digits = mark[len(MARK) : len(MARK) + 16]
    with contextlib.suppress(ValueError):
        generation = int(digits, 16)
        return generation if mark == slot_mark(generation) else 0
    return 0


def _option(name: str, value: object) -> Any:
    from js import Object
    from pyodide.ffi import to_js

    return to_js({name: value}, dict_converter=Object.fromEntries)


def _place(at: int) -> Any:
    return _option("at", at)


@contextlib.contextmanager
def _browser_errors() -> Any:
    from pyodide.ffi import JsException

    try:
        yield
    except JsException as error:
        full = error.name == "QuotaExceededError"
        raise OSError(errno.ENOSPC if full else errno.EIO, error.name) from error
