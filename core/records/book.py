"""The whole book of one device: list, jobs and shop, and what goes out and comes in."""

import contextlib
from collections.abc import AsyncIterator, Callable, Iterable
from dataclasses import dataclass, replace
from typing import Any

from core.errors import DamagedFile, NotSaved, RecordError
from core.records import starts
from core.records.demo import DEMO_JOB, demo_events
from core.records.event import Event
from core.records.fold import Fold
from core.records.job_book import JobBook, ShopBook
from core.records.job_index import LIST, JobIndex, JobLine, line_of
from core.records.ledger import Device, Merged, Pen, alike
from core.records.model import Template
from core.records.notebook import DEVICE, Notebook
from core.records.parcel import SHOP, Parcel, ParcelWriter
from core.records.pictures import Pictures
from core.records.port import Home
from core.records.stamp import DAY, Clock, read_stamp
from core.records.store import EventStore
from core.records.view import JOB
from core.texts.sentence import Sentence

JOB_FILE = "job-"
JOB_KEY_BYTES = 8
DEVICE_KEY_BYTES = 4
SITTING_BYTES = 2
PICTURES_FIELD = "pictures@"


@dataclass(frozen=True, slots=True, kw_only=True)
class Backup:
    """When everything was last exported [ms since 1970, UTC], and what came since."""

    at: int | None
    jobs_since: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Incoming:
    """What one ledger of a parcel would bring.

    Parameters
    ----------
    new, known
        Number of events that would be taken in, and of those that are here already.
    clashing
        Ids that are here with another body.
    differs
        Fields on which people would disagree after it, record and field.
    before, after
        Events here now, and those that would be; to be read only.
    """

    ledger: str
    title: str
    new: int
    known: int
    clashing: tuple[str, ...]
    differs: tuple[tuple[str, str], ...]
    before: Fold
    after: Fold


class Book:
    """Every job of one device. Make it with `open_book`."""

    def __init__(
        self, home: Home, notebook: Notebook, index: JobIndex, shop: ShopBook, pen: Pen
    ) -> None:
        self._home, self._pen = home, pen
        self._index = index
        self._open: dict[str, JobBook] = {}
        self.notebook, self.shop = notebook, shop
        self.pictures = Pictures(home)
        self.told: tuple[Sentence, ...] = (*index.told, *notebook.told, *shop.told)

    @property
    def device(self) -> Device:
        """This device."""
        return self._pen.device

    def name_device(self, name: str) -> None:
        """Give this device a name; it is kept with everything entered from now on."""
        self.notebook.put(DEVICE, {"id": self.device.id, "name": name})
        self._pen.device = replace(self.device, name=name)

    def jobs(self, query: str = "", *, deleted: bool = False) -> tuple[JobLine, ...]:
        """Jobs that hold every word of a query, last touched first."""
        return tuple(line for line in self._index.search(query) if line.deleted is deleted)

    async def open_job(self, job_id: str) -> JobBook:
        """A job to read and to write; the same one while it is open.

        Raises
        ------
        NewerFormat, DamagedFile
            If its file cannot be used; it is left untouched.
        StoreBusy
            If another window holds it.
        """
        if job_id not in self._open:
            with contextlib.suppress(NotSaved):  # A full disk must not keep anyone from reading.
                self._index.mark_open(job_id)
            line = self._index.get(job_id) or JobLine(job_id)
            self._open[job_id] = await self._read_job(job_id, line.events)
        return self._open[job_id]

    async def new_job(self, *, template: Template | None = None, **fields: Any) -> JobBook:
        """Begin a job with the given fields, laid out as a template says."""
        laid_out = starts.from_template(template, self._pen.new_record) if template else []
        return await self._begin([*laid_out, *((JOB, name, fields[name]) for name in fields)])

    async def duplicate(self, job_id: str, **fields: Any) -> JobBook:
        """Begin the next job on the same engine; what stays in the block is taken over."""
        job = (await self.open_job(job_id)).job
        entries = starts.from_job(job, job_id, self._pen.new_record)
        return await self._begin([*entries, *((JOB, name, fields[name]) for name in fields)])

    async def add_demo(self) -> JobBook:
        """The demo job, brought back if it was deleted."""
        job = await self.open_job(DEMO_JOB)
        job.merge(demo_events())
        job.restore(JOB)
        self.refresh(DEMO_JOB)
        return job

    def refresh(self, job_id: str) -> None:
        """Write the line of an open job into the list; never called while a reading is saved."""
        self._index.put(self._open[job_id].line)
        self._index.mark_open(job_id)

    def leave(self, job_id: str) -> None:
        """Close a job; the list then shows how it stands.

        Raises
        ------
        NotSaved
            If the list could not be written; the next start reads the job itself.
        """
        job = self._open.pop(job_id)
        job.close()
        if len(job):
            self._index.put(job.line)
        else:
            self._index.forget(job_id)

    async def reopen(self, job_id: str) -> JobBook:
        """Open a job anew after its file was lost hold of; everything saved is there."""
        job = self._open.pop(job_id, None)
        if job:
            job.close()
        return await self.open_job(job_id)

    async def merge(self, ledger: str, events: Iterable[Event]) -> Merged:
        """Take events from elsewhere into one ledger; repeats and order are harmless."""
        if ledger == SHOP:
            return self.shop.merge(events)
        job_id = ledger.removeprefix(JOB_FILE)
        was_open = job_id in self._open
        merged = (await self.open_job(job_id)).merge(events)
        if was_open:
            self.refresh(job_id)
        else:
            self.leave(job_id)
        return merged

    @property
    def open_jobs(self) -> frozenset[str]:
        """Keys of the jobs that are open."""
        return frozenset(self._open)

    async def events_of(self, job_id: str) -> Fold:
        """Events of a job, to be read only; nothing changes on the disk and nothing stays open.

        Raises
        ------
        NewerFormat, DamagedFile
            If its file cannot be used.
        """
        return await self._fold_of(JOB_FILE + job_id)

    async def preview(self, parcel: Parcel) -> tuple[Incoming, ...]:
        """What a parcel would bring; nothing changes."""
        return tuple([await self._incoming(*each) for each in parcel.ledgers.items()])

    async def take(self, parcel: Parcel, *, take_good_part: bool = False) -> dict[str, Merged]:
        """Take a parcel in; by ledger, what it brought.

        Raises
        ------
        DamagedFile
            If lines of it cannot be taken and nobody said to take the good part.
        NotSaved
            If the disk is full half-way: taking it again goes on where it stopped.
        """
        if not take_good_part:
            parcel.refuse_if_faulty()
        for data in parcel.pictures.values():
            await self.pictures.put(data)
        return {name: await self.merge(name, events) for name, events in parcel.ledgers.items()}

    async def export(self, job_ids: Iterable[str] | None = None) -> bytes:
        """One file with these jobs; with all of them and the shop's things if none are named.

        A picture that has not arrived here yet is left out and told.
        """
        parts = [part async for part in self.export_parts(job_ids)]
        return b"".join(parts)

    async def export_parts(self, job_ids: Iterable[str] | None = None) -> AsyncIterator[bytes]:
        """The same file part by part, so that it never has to be held whole."""
        ids = [line.id for line in self._index.lines()] if job_ids is None else list(job_ids)
        ledgers = [JOB_FILE + job_id for job_id in ids] + ([SHOP] if job_ids is None else [])
        writer, pictures = ParcelWriter(), dict[str, None]()
        yield writer.title()
        for ledger in ledgers:
            events = tuple(await self._fold_of(ledger))
            pictures |= dict.fromkeys(pictures_in(events))
            yield b"".join(writer.event(ledger, event) for event in events)
        for name in pictures:
            with contextlib.suppress(DamagedFile):
                yield writer.picture(name, await self.pictures.get(name))
        yield writer.end()
        if job_ids is None:
            self._index.set_backup(self._pen.clock.now())

    @property
    def backup(self) -> Backup:
        """Last export of everything."""
        at = self._index.backup_at
        own = (line for line in self._index.lines() if not line.demo)
        since = sum(line.touched > (at or 0) for line in own)
        return Backup(at=at, jobs_since=since)

    async def rebuild_list(self, progress: Callable[[int, int], None] | None = None) -> None:
        """Read every job and write the list anew."""
        names = await self._job_files()
        lines = []
        for done, name in enumerate(names, start=1):
            line = await self._line_from_file(name.removeprefix(JOB_FILE))
            if line.events or line.trouble:
                lines.append(line)
            if progress:
                progress(done, len(names))
        self._index.refill(lines)

    async def find_unlisted(self) -> tuple[JobLine, ...]:
        """Read jobs that are on the disk but not in the list, and list them.

        The list cannot tell that its own end was lost. Call it when the list is on the screen.
        """
        found = []
        for name in await self._job_files():
            job_id = name.removeprefix(JOB_FILE)
            if self._index.get(job_id) is None and job_id not in self._open:
                line = await self._line_from_file(job_id)
                if line.events or line.trouble:
                    self._index.put(line)
                    found.append(line)
        return tuple(found)

    def close(self) -> None:
        """Let go of everything, so that another window can have the book."""
        for job_id in list(self._open):
            with contextlib.suppress(NotSaved):
                self.leave(job_id)
        for each in (self.notebook, self.shop, self._index, self._home):
            each.close()

    async def catch_up(self, progress: Callable[[int, int], None] | None = None) -> None:
        """Bring the list up to date with jobs that were open when the app was stopped."""
        if self._index.damaged or (self._index.empty and await self._job_files()):
            with contextlib.suppress(NotSaved):
                await self.rebuild_list(progress)
        for job_id in self._index.left_open - self._open.keys():
            line = await self._line_from_file(job_id)
            with contextlib.suppress(NotSaved):
                if line.events or line.trouble:
                    self._index.put(line)
                else:
                    self._index.forget(job_id)
        with contextlib.suppress(NotSaved):
            self._index.tidy()
        self._set_clock()

    def _set_clock(self) -> None:
        """Stamp later than everything in the book, except what a wrong clock dated far ahead."""
        limit = f"{self._pen.clock.now() + DAY:011x}"
        latest = max((e.stamp for e in self._index.lines() if e.stamp <= limit), default="")
        if latest:
            self._pen.clock.saw(read_stamp(latest))

    async def _job_files(self) -> list[str]:
        return [name for name in await self._home.names() if name.startswith(JOB_FILE)]

    async def _begin(self, entries: starts.Entries) -> JobBook:
        job = await self.open_job(self._pen.randomness(JOB_KEY_BYTES).hex())
        job.enter_all(entries)
        self.refresh(job.id)
        return job

    async def _read_job(self, job_id: str, remembered: int) -> JobBook:
        port = await self._home.open(JOB_FILE + job_id)
        try:
            return JobBook(EventStore(port, JOB, job_id), self._pen, job_id, remembered)
        except RecordError:
            port.close()
            raise

    async def _line_from_file(self, job_id: str) -> JobLine:
        known = self._index.get(job_id) or JobLine(job_id)
        try:
            job = self._open.get(job_id) or await self._read_job(job_id, known.events)
        except RecordError as error:
            self.told = (*self.told, Sentence("records.job_unreadable", {"reason": error}))
            return replace(known, title=known.title or job_id, trouble=str(error))
        self.told = (*self.told, *job.told)
        if job_id not in self._open:
            job.close()
        return job.line

    async def _fold_of(self, ledger: str) -> Fold:
        """Events of a ledger; nothing changes on the disk."""
        if ledger == SHOP:
            return self.shop.fold
        job_id = ledger.removeprefix(JOB_FILE)
        line = self._index.get(job_id)
        if job_id in self._open or line is None:
            return self._open[job_id].fold if job_id in self._open else Fold()
        job = await self._read_job(job_id, line.events)
        job.close()
        return job.fold

    async def _incoming(self, ledger: str, events: list[Event]) -> Incoming:
        fold = await self._fold_of(ledger)
        would_be = Fold((*fold, *events))
        here = [(event, known) for event in events if (known := fold.get(event.id))]
        return Incoming(
            ledger=ledger,
            title=line_of(ledger, would_be).title,
            new=len(would_be) - len(fold),
            known=len(here),
            clashing=tuple(event.id for event, known in here if not alike(event, known)),
            differs=tuple(would_be.rivals().keys() - fold.rivals().keys()),
            before=fold,
            after=would_be,
        )


def pictures_in(events: Iterable[Event]) -> tuple[str, ...]:
    """Names of the pictures that events speak of, in order, each once."""
    fields = (event.field for event in events if event.field.startswith(PICTURES_FIELD))
    return tuple(dict.fromkeys(field.removeprefix(PICTURES_FIELD) for field in fields))


async def open_book(
    home: Home,
    now: Callable[[], int],
    randomness: Callable[[int], bytes],
    progress: Callable[[int, int], None] | None = None,
) -> Book:
    """Open the book of this device; all earlier work is in it.

    Parameters
    ----------
    home
        Where the files are kept.
    now
        The device's clock: milliseconds since 1970, UTC.
    randomness
        Gives that many random bytes.
    progress
        Called with done and total while the list is made anew.

    Raises
    ------
    StoreBusy
        If another window holds it.
    NewerFormat
        If a newer version wrote it; everything is left untouched.
    """
    with contextlib.ExitStack() as opened:
        opened.callback(home.close)
        index = JobIndex(opened.enter_context(contextlib.closing(await home.open(LIST))))
        notebook = Notebook(opened.enter_context(contextlib.closing(await home.open(DEVICE))))
        device = _device(notebook, randomness)
        author = f"{device.id}-{randomness(SITTING_BYTES).hex()}"
        pen = Pen(device=device, clock=Clock(author, now), randomness=randomness)
        port = opened.enter_context(contextlib.closing(await home.open(SHOP)))
        shop = ShopBook(EventStore(port, SHOP, "", go_on=True), pen)
        book = Book(home, notebook, index, shop, pen)
        await book.catch_up(progress)
        opened.pop_all()
    return book


def _device(notebook: Notebook, randomness: Callable[[int], bytes]) -> Device:
    match notebook.get(DEVICE):
        case {"id": str(key), "name": str(name)}:
            return Device(id=key, name=name)
    device = Device(id=randomness(DEVICE_KEY_BYTES).hex(), name="")
    with contextlib.suppress(NotSaved):
        notebook.put(DEVICE, {"id": device.id, "name": ""})
    return device
