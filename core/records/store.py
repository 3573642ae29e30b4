"""Events in TinyDB, one database a job, kept by our journal.

TinyDB hands its storage the whole table at each change. Events are only ever added and a table
keeps the order in which they came, so what the journal has not seen yet is the end of the table:
one change is one appended line, whatever the size of the job.
"""

from collections.abc import Iterable
from itertools import islice
from typing import Any, cast

from tinydb import TinyDB, where
from tinydb.storages import Storage

from core.errors import RecordError
from core.records.codec import event_from_json, event_to_json
from core.records.event import Event, Json
from core.records.journal import Journal
from core.records.port import Port
from core.texts import text
from core.texts.sentence import Sentence

TABLE = "events"
Documents = dict[str, dict[str, Any]]


class JournalStorage(Storage):
    """TinyDB's storage over a journal."""

    def __init__(self, journal: Journal, batches: Iterable[Json]) -> None:
        self._journal = journal
        self._documents: Documents = {}
        self.unreadable = 0
        for batch in batches:
            self._take(batch)

    def read(self) -> dict[str, Documents]:
        """Every document."""
        return {TABLE: self._documents}

    def write(self, data: dict[str, Documents]) -> None:
        """Append the documents that are new."""
        documents = data[TABLE]
        if len(documents) < len(self._documents):
            raise RecordError(text("records.only_added"))
        new = list(islice(documents.values(), len(self._documents), None))
        if new:
            self._journal.append(new)
        self._documents = documents

    def close(self) -> None:
        """Let go of the file."""
        self._journal.close()

    def _take(self, batch: Json) -> None:
        for document in batch if isinstance(batch, list) else [batch]:
            try:
                event_from_json(document)
            except ValueError:
                self.unreadable += 1
                continue
            key = str(len(self._documents) + 1)
            self._documents[key] = cast(dict[str, Any], document)


class EventStore:
    """Every event of one job, or of the shop.

    Parameters
    ----------
    port
        The file.
    what, of
        What the file is and which one, as its first line says.
    go_on
        A file without one readable line is told and added to, not refused.

    Raises
    ------
    NewerFormat
        If a newer version wrote the file.
    DamagedFile
        If it is another file or none of ours.
    """

    def __init__(self, port: Port, what: str, of: str, *, go_on: bool = False) -> None:
        journal = Journal(port, what, of)
        self._storage = JournalStorage(journal, journal.load(go_on=go_on))
        self._database = TinyDB(storage=lambda: self._storage)
        self._table = self._database.table(TABLE)
        self.told = (*journal.told, *self._unreadable(what, of))

    def events(self) -> tuple[Event, ...]:
        """Every event, in the order in which they were kept."""
        return tuple(map(event_from_json, self._table.all()))

    def of(self, record: str) -> tuple[Event, ...]:
        """Every event of one record, in the order in which they were kept."""
        return tuple(map(event_from_json, self._table.search(where("record") == record)))

    def insert(self, events: Iterable[Event]) -> None:
        """Keep events; they are on the disk when this returns.

        Raises
        ------
        NotSaved
            If the disk did not take them; nothing has changed.
        """
        self._table.insert_multiple(map(event_to_json, events))

    def close(self) -> None:
        """Let go of the file."""
        self._database.close()

    def _unreadable(self, what: str, of: str) -> tuple[Sentence, ...]:
        count = self._storage.unreadable
        places = {"name": f"{what} {of}".strip(), "count": count}
        return (Sentence("records.unreadable_events", places),) if count else ()
