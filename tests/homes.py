"""Places to keep files that can be made to fail: memory, a disk and a browser with the power cut.

What was written but not synced may be lost, kept, or torn at any byte; names given but not synced
may be the old or the new ones.
"""

import errno
import itertools
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

from core.errors import NotSaved, StoreBusy
from core.records.file_storage import Disk


class PowerCut(BaseException):
    """The machine went dark."""


@dataclass
class Medium:
    """Content of one file: what is on the disk for good, and what is on its way."""

    durable: bytes = b""
    pending: list[tuple[int, bytes | None]] = field(default_factory=list)

    @property
    def content(self) -> bytes:
        return apply(self.durable, self.pending)

    def write(self, at: int, data: bytes) -> None:
        self.pending.append((at, data))

    def truncate(self, size: int) -> None:
        self.pending.append((size, None))

    def sync(self) -> None:
        self.durable, self.pending = self.content, []

    def after_power_cut(self) -> Iterator[bytes]:
        """Every content that may be found: any choice of changes kept, or one torn anywhere."""
        for count in range(len(self.pending)):
            for chosen in itertools.combinations(self.pending, count):
                yield apply(self.durable, list(chosen))
        for kept in range(len(self.pending) + 1):
            before = apply(self.durable, self.pending[:kept])
            yield before
            if kept < len(self.pending) and self.pending[kept][1] is not None:
                at, data = self.pending[kept]
                for size in range(1, len(data)):
                    yield apply(before, [(at, data[:size])])
                    # The far end reached the disk first, and what lies between is zeros.
                    yield apply(before, [(at + size, data[size:])])


def apply(content: bytes, changes: list[tuple[int, bytes | None]]) -> bytes:
    for at, data in changes:
        if data is None:
            content = content[:at].ljust(at, b"\0")
        else:
            content = content[:at].ljust(at, b"\0") + data + content[at + len(data) :]
    return content


class Faults:
    """Counts the calls that change something and lets one of them fail."""

    def __init__(self) -> None:
        self.calls: list[str] = []
        self.fail: Callable[[int, str], None] = lambda index, call: None

    def step(self, call: str) -> None:
        self.calls.append(call)
        self.fail(len(self.calls) - 1, call)


def at_call(index: int, error: BaseException) -> Callable[[int, str], None]:
    def fail(now: int, call: str) -> None:
        if now == index:
            raise error

    return fail


def full() -> OSError:
    return OSError(errno.ENOSPC, "No space left on device")


def broken() -> OSError:
    return OSError(errno.EIO, "Input/output error")


class FakeDisk(Disk):
    """A folder on a disk with the promises of POSIX and no more."""

    def __init__(self, names: dict[str, Medium] | None = None) -> None:
        self.names_now: dict[str, Medium] = dict(names or {})
        self.names_durable = dict(self.names_now)
        self.handles: dict[int, Medium] = {}
        self.faults = Faults()

    def open(self, path: Path) -> int:
        if path.name not in self.names_now:
            self.faults.step("create")
            self.names_now[path.name] = Medium()
        handle = len(self.handles) + 100
        self.handles[handle] = self.names_now[path.name]
        return handle

    def close(self, handle: int) -> None:
        self._medium(handle)
        self.handles[handle] = None

    def read(self, handle: int) -> bytes:
        return self._medium(handle).content

    def size(self, handle: int) -> int:
        return len(self._medium(handle).content)

    def write(self, handle: int, at: int, data: bytes) -> None:
        medium = self._medium(handle)
        medium.write(at, data)
        self.faults.step("write")

    def truncate(self, handle: int, size: int) -> None:
        self._medium(handle).truncate(size)
        self.faults.step("truncate")

    def sync(self, handle: int) -> None:
        medium = self._medium(handle)
        self.faults.step("sync")
        medium.sync()
        self.faults.step("synced")

    def rename(self, path: Path, to: Path) -> None:
        self.names_now[to.name] = self.names_now.pop(path.name)
        self.faults.step("rename")

    def remove(self, path: Path) -> None:
        if self.names_now.pop(path.name, None):
            self.faults.step("remove")

    def sync_folder(self, folder: Path) -> None:
        self.faults.step("sync folder")
        self.names_durable = dict(self.names_now)
        self.faults.step("synced folder")

    def names(self, folder: Path) -> list[str]:
        return sorted(self.names_now)

    def after_power_cut(self, name: str) -> Iterator["FakeDisk"]:
        """Every disk that may be found, as far as file `name` is concerned."""
        for names in (self.names_durable, self.names_now):
            if name not in names:
                yield FakeDisk()
                continue
            for content in names[name].after_power_cut():
                yield FakeDisk({name: Medium(content)})

    def _medium(self, handle: int) -> Medium:
        medium = self.handles.get(handle)
        if medium is None:
            raise OSError(errno.EBADF, "Bad file descriptor")
        return medium


class FakeHandle:
    """A browser's sync access handle: exclusive, and nothing is kept before `flush`."""

    def __init__(self, folder: "FakeFolder", name: str) -> None:
        self._folder, self._name = folder, name
        self._medium = folder.files.setdefault(name, Medium())
        self._open = True

    def read(self) -> bytes:
        return self._check().content

    def write(self, at: int, data: bytes) -> None:
        self._check().write(at, data)
        self._folder.faults.step("write")

    def truncate(self, size: int) -> None:
        self._check().truncate(size)
        self._folder.faults.step("truncate")

    def flush(self) -> None:
        medium = self._check()
        self._folder.faults.step("sync")
        medium.sync()
        self._folder.faults.step("synced")

    def size(self) -> int:
        return len(self._check().content)

    def close(self) -> None:
        self._open = False
        self._folder.held.discard(self._name)

    def lose(self) -> None:
        self._open = False

    def _check(self) -> Medium:
        if not self._open:
            raise OSError(errno.EIO, "InvalidStateError")
        return self._medium


class FakeFolder:
    """The browser's folder of one origin."""

    def __init__(self, files: dict[str, Medium] | None = None) -> None:
        self.files = dict(files or {})
        self.held: set[str] = set()
        self.handles: list[FakeHandle] = []
        self.faults = Faults()

    async def handle(self, name: str) -> FakeHandle:
        if name in self.held:
            raise StoreBusy("held")
        self.held.add(name)
        self.handles.append(FakeHandle(self, name))
        return self.handles[-1]

    async def names(self) -> list[str]:
        return sorted(self.files)

    def after_power_cut(self, name: str) -> Iterator["FakeFolder"]:
        """Every folder that may be found, as far as file `name` is concerned."""
        slots = [self.files.get(name + end, Medium()) for end in (".a", ".b")]
        for first in slots[0].after_power_cut():
            for second in slots[1].after_power_cut():
                yield FakeFolder({name + ".a": Medium(first), name + ".b": Medium(second)})


class MemoryPort:
    """A kept file in memory."""

    def __init__(self, home: "MemoryHome", name: str) -> None:
        self._home, self._name = home, name
        home.held.add(name)
        home.files.setdefault(name, b"")
        self._open = True

    def read(self) -> bytes:
        return self._home.files[self._name]

    def append(self, data: bytes) -> None:
        self.replace(self.read() + data)

    def replace(self, data: bytes) -> None:
        if not self._open:
            raise NotSaved("closed")
        self._home.files[self._name] = data

    def close(self) -> None:
        self._open = False
        self._home.held.discard(self._name)


class MemoryHome:
    """Kept files in memory."""

    def __init__(self, files: dict[str, bytes] | None = None, held: set[str] | None = None) -> None:
        self.files = {} if files is None else files
        self.held = set() if held is None else held

    async def open(self, name: str) -> MemoryPort:
        if name in self.held:
            raise StoreBusy("held")
        return MemoryPort(self, name)

    async def names(self) -> tuple[str, ...]:
        return tuple(sorted(self.files))

    def close(self) -> None:
        pass


def at_once(coroutine):
    """Result of a coroutine that never really waits, without an event loop."""
    try:
        coroutine.send(None)
    except StopIteration as done:
        return done.value
    raise AssertionError("it waited")
