"""Jobs as one file: JSON lines, each with its checksum, and one checksum over the whole.

Line 0 is the title; then one line an event and one line a picture; the last line says how many
there were and what they sum to. Reading looks at everything before anything is taken.
"""

import base64
import binascii
import re
from dataclasses import dataclass, field
from hashlib import blake2b

from core.errors import DamagedFile
from core.records.codec import FORMAT, event_from_json, event_to_json, from_bytes, to_bytes
from core.records.event import Event, Json
from core.records.journal import check_title, missing_numbers
from core.records.lines import Line, scan, write_line
from core.records.pictures import NAME, name_of
from core.texts import text
from core.texts.sentence import Sentence

EXPORT = "export"
SHOP = "shop"
LEDGER = re.compile(r"shop|job-[a-z0-9]{1,32}")
TITLE: dict[str, Json] = {"standproud": EXPORT, "format": FORMAT, "of": ""}


@dataclass(frozen=True, slots=True)
class LineFault:
    """One line that cannot be taken, counted from 1, and why."""

    line: int
    reason: Sentence

    def __str__(self) -> str:
        return text("records.line_fault", line=self.line, reason=self.reason)


@dataclass(slots=True)
class Parcel:
    """What a file holds.

    Parameters
    ----------
    ledgers
        Events by ledger: ``shop``, or ``job-`` and the key of the job.
    pictures
        Pictures by name.
    faults
        Lines that cannot be taken.
    """

    ledgers: dict[str, list[Event]] = field(default_factory=dict)
    pictures: dict[str, bytes] = field(default_factory=dict)
    faults: list[LineFault] = field(default_factory=list)

    def refuse_if_faulty(self) -> None:
        """Refuse the file whole, with the first line that cannot be taken.

        Raises
        ------
        DamagedFile
            If there is such a line.
        """
        if self.faults:
            first, more = self.faults[0], len(self.faults) - 1
            raise DamagedFile(text("records.import_refused", fault=first, more=more))


class ParcelWriter:
    """Writes a file line by line, so that it never has to be held whole."""

    def __init__(self) -> None:
        self._whole = blake2b(digest_size=16)
        self._number = 0

    def title(self) -> bytes:
        """First line."""
        return self._line(TITLE)

    def event(self, ledger: str, event: Event) -> bytes:
        """Line of an event."""
        return self._line({"ledger": ledger, "event": event_to_json(event)})

    def picture(self, name: str, data: bytes) -> bytes:
        """Line of a picture."""
        return self._line({"picture": name, "base64": base64.b64encode(data).decode()})

    def end(self) -> bytes:
        """Last line: how many there were, and what they sum to."""
        return self._line({"lines": self._number, "sum": self._whole.hexdigest()})

    def _line(self, body: Json) -> bytes:
        line = write_line(self._number, to_bytes(body))
        self._number += 1
        self._whole.update(line)
        return line


def read_parcel(data: bytes) -> Parcel:
    """What a file holds, and what in it cannot be taken; nothing is changed.

    Raises
    ------
    NewerFormat
        If a newer version wrote it.
    DamagedFile
        If nothing in it can be read, or it is another kind of file.
    """
    found = scan(data)
    name = text("records.export_file")
    title = next((line for line in found.lines if line.number == 0), None)
    if not found.lines:
        raise DamagedFile(text("records.nothing_readable", name=name, size=len(data)))
    if title:
        check_title(from_bytes(title.body), TITLE, name)
    parcel = Parcel()
    for gap in found.gaps:
        parcel.faults.append(LineFault(gap.line, Sentence("records.line_damaged", {})))
    for line in found.lines:
        _take(parcel, line)
    for first, last in missing_numbers([line.number for line in found.lines]):
        reason = Sentence("records.line_missing", {"last": last + 1})
        parcel.faults.append(LineFault(first + 1, reason))
    _check_whole(parcel, data, found.lines)
    parcel.faults.sort(key=lambda fault: fault.line)
    return parcel


def _take(parcel: Parcel, line: Line) -> None:
    try:
        body = from_bytes(line.body)
        match body:
            case {"ledger": str(ledger), "event": document} if LEDGER.fullmatch(ledger):
                event = event_from_json(document)
                parcel.ledgers.setdefault(ledger, []).append(event)
            case {"picture": str(name), "base64": str(coded)} if NAME.fullmatch(name):
                parcel.pictures[name] = _picture(name, coded)
            case {"lines": int(), "sum": str()} | {"standproud": _}:
                pass
            case _:
                raise ValueError(text("records.line_unknown"))
    except ValueError as error:
        reason = Sentence("records.line_unreadable", {"reason": error})
        parcel.faults.append(LineFault(line.number + 1, reason))


def _picture(name: str, coded: str) -> bytes:
    try:
        data = base64.b64decode(coded, validate=True)
    except binascii.Error as error:
        raise ValueError(text("records.picture_damaged", name=name[:8])) from error
    if name_of(data) != name:
        raise ValueError(text("records.picture_damaged", name=name[:8]))
    return data


def _check_whole(parcel: Parcel, data: bytes, lines: tuple[Line, ...]) -> None:
    last = lines[-1]
    end = from_bytes(last.body) if last.body.startswith(b'{"lines"') else None
    if not isinstance(end, dict):
        reason = Sentence("records.cut_short", {})
        parcel.faults.append(LineFault(data.count(b"\n") + 1, reason))
        return
    before = data[: len(data) - len(write_line(last.number, last.body))]
    if blake2b(before, digest_size=16).hexdigest() != end.get("sum") and not parcel.faults:
        parcel.faults.append(LineFault(last.number + 1, Sentence("records.sum_differs", {})))
