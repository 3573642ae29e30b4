"""The list of jobs: one appended file, read at the start, never written to save a reading.

It can be lost without loss: everything in it can be read off the jobs again. A job is marked in it
when opened and unmarked with a fresh line when left, so the next start knows which lines are old.
"""

from collections.abc import Iterable
from dataclasses import astuple, dataclass, fields
from operator import attrgetter
from typing import Any, cast

from core.records.event import Json
from core.records.fold import Fold
from core.records.journal import Journal
from core.records.model import JobState
from core.records.port import Port
from core.records.view import job_view, live
from core.texts.sentence import Sentence

LIST = "list"
LINES_A_BATCH = 250
OLD_LINES_KEPT = 500


@dataclass(frozen=True, slots=True)
class JobLine:
    """What the list shows of one job.

    Parameters
    ----------
    touched
        When it was last changed [ms since 1970, UTC].
    events
        How many events its file held; fewer later means that something was lost.
    trouble
        Why its file cannot be read; empty when it can.
    """

    id: str
    title: str = ""
    engine: str = ""
    owner: str = ""
    block: str = ""
    head: str = ""
    state: str = JobState.PLANNED.value
    touched: int = 0
    stamp: str = ""
    cylinders: int = 0
    readings: int = 0
    events: int = 0
    deleted: bool = False
    demo: bool = False
    trouble: str = ""

    @property
    def words(self) -> str:
        """What a search looks through."""
        parts = (self.title, self.engine, self.owner, self.block, self.head, self.state)
        return "\n".join(parts).casefold()


COLUMNS = tuple(type(getattr(JobLine(""), part.name)) for part in fields(JobLine))


def line_of(job_id: str, fold: Fold) -> JobLine:
    """Line of a job, from its events."""
    job = job_view(fold)
    cylinders = live(job.cylinders)
    latest = max(fold, key=lambda event: event.id, default=None)
    return JobLine(
        id=job_id,
        title=job.title,
        engine=job.engine,
        owner=job.owner,
        block=job.block,
        head=job.head,
        state=job.state.value,
        touched=max((event.at for event in fold), default=0),
        stamp=latest.action if latest else "",
        cylinders=len(cylinders),
        readings=sum(len(live(each.readings)) for each in cylinders),
        events=len(fold),
        deleted=job.deleted,
        demo=job.demo,
    )


class JobIndex:
    """The list of jobs and its file.

    Parameters
    ----------
    port
        The file.

    Raises
    ------
    NewerFormat
        If a newer version wrote it.
    """

    def __init__(self, port: Port) -> None:
        self._journal = Journal(port, LIST, "")
        self._lines: dict[str, JobLine] = {}
        self._words: dict[str, str] = {}
        self._rows: list[tuple[str, JobLine]] = []
        self._open: set[str] = set()
        self.backup_at: int | None = None
        self._entries = 0
        self.misread = False
        for batch in self._journal.load(go_on=True):
            self._take(batch)
        self.told = (Sentence("records.list_damaged"),) if self.damaged else ()

    @property
    def empty(self) -> bool:
        """Whether no job is in it."""
        return not self._lines and not self._open

    @property
    def damaged(self) -> bool:
        """Whether lines were lost, so that the jobs themselves have to be asked."""
        told = self._journal.told
        return self.misread or any(each.key != "records.torn_tail" for each in told)

    @property
    def left_open(self) -> frozenset[str]:
        """Jobs that were opened and never left: their lines may be old."""
        return frozenset(self._open)

    def get(self, job_id: str) -> JobLine | None:
        """Line of a job."""
        return self._lines.get(job_id)

    def lines(self) -> tuple[JobLine, ...]:
        """Every line."""
        return tuple(self._lines.values())

    def put(self, line: JobLine) -> None:
        """Keep a fresh line; the job is no longer marked as open."""
        self._append([["job", *astuple(line)]])

    def mark_open(self, job_id: str) -> None:
        """Note that a job is about to be changed."""
        if job_id not in self._open:
            self._append([["open", job_id]])

    def forget(self, job_id: str) -> None:
        """Take out a job that was never begun."""
        self._append([["none", job_id]])

    def set_backup(self, at: int) -> None:
        """Note when everything was last exported [ms since 1970, UTC]."""
        self._append([["backup", at]])

    def refill(self, lines: Iterable[JobLine]) -> None:
        """Put these lines in place of all others."""
        self._lines = {line.id: line for line in lines}
        self._words.clear()
        self._rows.clear()
        self.tidy(always=True)

    def tidy(self, *, always: bool = False) -> None:
        """Write the file anew if most of it is old lines."""
        if not always and self._entries < 2 * len(self._lines) + OLD_LINES_KEPT:
            return
        entries: list[list[Any]] = [["job", *astuple(line)] for line in self._lines.values()]
        entries += [["open", job_id] for job_id in self._open]
        if self.backup_at is not None:
            entries.append(["backup", self.backup_at])
        starts = range(0, len(entries), LINES_A_BATCH)
        self._journal.rewrite(entries[start : start + LINES_A_BATCH] for start in starts)
        self._entries = len(entries)

    def search(self, query: str = "") -> tuple[JobLine, ...]:
        """Lines that hold every word of a query, last touched first."""
        rows = self._newest_first()
        for word in query.casefold().split():
            rows = [row for row in rows if word in row[0]]
        return tuple([line for _, line in rows])

    def close(self) -> None:
        """Let go of the file."""
        self._journal.close()

    def _append(self, entries: list[list[Any]]) -> None:
        self._journal.append(entries)
        self._take(cast(Json, entries))

    def _take(self, batch: Json) -> None:
        for entry in batch if isinstance(batch, list) else [batch]:
            self._entries += 1
            match entry:
                case ["job", *columns] if tuple(map(type, columns)) == COLUMNS:
                    self._set(JobLine(*cast(list[Any], columns)))
                case ["open", str(job_id)]:
                    self._open.add(job_id)
                case ["none", str(job_id)]:
                    self._open.discard(job_id)
                    self._lines.pop(job_id, None)
                    self._rows.clear()
                case ["backup", int(at)]:
                    self.backup_at = at
                case _:
                    self.misread = True

    def _set(self, line: JobLine) -> None:
        self._lines[line.id] = line
        self._open.discard(line.id)
        self._words.pop(line.id, None)
        self._rows.clear()

    def _newest_first(self) -> list[tuple[str, JobLine]]:
        """Lines with what a search looks through; made once after each change."""
        if not self._rows:
            for line in self._lines.values():
                if line.id not in self._words:
                    self._words[line.id] = line.words
            newest = sorted(self._lines.values(), key=attrgetter("touched"), reverse=True)
            self._rows = [(self._words[line.id], line) for line in newest]
        return self._rows
