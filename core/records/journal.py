"""A file that only grows: batches of documents, each a line of its own.

Opening never writes. An unfinished line at the end, which was never shown as saved, is cut off by
the next append; lines that are damaged stay where they are and are named at each opening.
"""

from collections.abc import Iterable
from typing import Any

from core.errors import DamagedFile, NewerFormat
from core.records.codec import FORMAT, from_bytes, to_bytes
from core.records.event import Json
from core.records.lines import Line, Scan, scan, write_line
from core.records.port import Port
from core.texts import text
from core.texts.sentence import Sentence

NO_LONGER_THAN_A_TITLE = 256
"""A file without a good line is an unfinished first write up to this size [bytes]."""


class Journal:
    """Batches kept in one file.

    Parameters
    ----------
    port
        The file.
    what
        What the file is, such as ``job``; part of its first line.
    of
        Key of the thing it is about.
    """

    def __init__(self, port: Port, what: str, of: str) -> None:
        self._port = port
        self._title: dict[str, Json] = {"standproud": what, "format": FORMAT, "of": of}
        self._name = f"{what} {of}".strip()
        self._number = 0
        self._mended: bytes | None = None
        self.told: tuple[Sentence, ...] = ()

    def load(self, *, go_on: bool = False) -> list[Json]:
        """Every batch that can be read, in the order written; `told` names what cannot.

        Parameters
        ----------
        go_on
            A file without one readable line is told and added to, not refused.

        Raises
        ------
        NewerFormat
            If a newer version wrote the file.
        DamagedFile
            If it is another file or none of ours; it is left untouched.
        """
        data = self._port.read()
        found = scan(data)
        hopeless = not found.lines and len(data) > NO_LONGER_THAN_A_TITLE
        if hopeless and not go_on:
            raise DamagedFile(text("records.nothing_readable", name=self._name, size=len(data)))
        self._check_title(found)
        batches, unreadable = _parse(found.lines)
        self._number = max((line.number for line in found.lines), default=-1) + 1
        self._mended = data[: len(data) - found.torn] if found.torn and not hopeless else None
        self.told = tuple(self._notices(found, unreadable))
        return batches

    def append(self, batch: Json | list[Any]) -> None:
        """Add one batch; it is on the disk when this returns.

        Raises
        ------
        NotSaved
            If the disk did not take it; nothing has changed.
        """
        number, start = self._number, b""
        if number == 0:
            start, number = write_line(0, to_bytes(self._title)), 1
        data = start + write_line(number, to_bytes(batch))
        if self._mended is None:
            self._port.append(data)
        else:
            self._port.replace(self._mended + data)
        self._mended, self._number = None, number + 1

    def rewrite(self, batches: Iterable[Json | list[Any]]) -> None:
        """Put these batches in place of all others, in one step."""
        lines = [to_bytes(self._title), *map(to_bytes, batches)]
        self._port.replace(b"".join(write_line(i, body) for i, body in enumerate(lines)))
        self._mended, self._number = None, len(lines)

    def close(self) -> None:
        """Let go of the file."""
        self._port.close()

    def _check_title(self, found: Scan) -> None:
        title = next((line for line in found.lines if line.number == 0), None)
        if title:
            check_title(from_bytes(title.body), self._title, self._name)

    def _notices(self, found: Scan, unreadable: list[int]) -> Iterable[Sentence]:
        if found.torn:
            yield Sentence("records.torn_tail", {"name": self._name, "size": found.torn})
        for gap in found.gaps:
            places = {"name": self._name, "line": gap.line, "size": gap.size}
            yield Sentence("records.damaged_line", places)
        for number in unreadable:
            yield Sentence("records.unreadable_line", {"name": self._name, "number": number})
        for first, last in missing_numbers([line.number for line in found.lines]):
            places = {"name": self._name, "first": first, "last": last}
            yield Sentence("records.missing_lines", places)


def check_title(found: Json, expected: dict[str, Json], name: str) -> None:
    """Refuse a file that a newer version wrote or that is about something else.

    Raises
    ------
    NewerFormat
        If its format is newer than ours.
    DamagedFile
        If it is not what is expected here.
    """
    title = found if isinstance(found, dict) else {}
    version = title.get("format")
    if isinstance(version, int) and version > FORMAT:
        raise NewerFormat(text("records.newer", name=name, version=version, ours=FORMAT))
    if any(title.get(key) != value for key, value in expected.items() if key != "format"):
        raise DamagedFile(text("records.other_file", name=name))


def missing_numbers(numbers: list[int]) -> Iterable[tuple[int, int]]:
    """Runs of numbers that are not there, up to the highest.

    Examples
    --------
    >>> list(missing_numbers([0, 1, 4, 5, 7]))
    [(2, 3), (6, 6)]
    """
    expected = 0
    for number in sorted(set(numbers)):
        if number > expected:
            yield expected, number - 1
        expected = number + 1


def _parse(lines: tuple[Line, ...]) -> tuple[list[Json], list[int]]:
    batches: list[Json] = []
    unreadable: list[int] = []
    for line in lines:
        if line.number == 0:
            continue
        try:
            batches.append(from_bytes(line.body))
        except ValueError:
            unreadable.append(line.number)
    return batches, unreadable
