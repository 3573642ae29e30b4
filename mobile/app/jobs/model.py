"""The book on the screen: where somebody is in it, and what a tap does to it."""

import os
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from typing import Any

import flet as ft

from core.errors import NotSaved, RecordError, StandproudError, StoreBusy
from core.forms.kept_verdicts import JudgedBank, JudgedRing, judge_job, judge_ring, judging
from core.records import Book, JobBook, JobLine, open_book
from core.records.event import kind_of
from core.records.ledger import Ledger
from core.records.model import SHOP_KINDS, Cylinder, Entry, Job
from core.records.port import Home
from core.records.view import JOB, live
from core.texts import text
from mobile.app.handover.state import HandOver
from mobile.app.jobs.state import desk as desks
from mobile.app.jobs.state.desk import OF_A_CYLINDER, PARENTS, Desk
from mobile.app.jobs.state.passing import IncomingFile, OutgoingFile
from mobile.app.jobs.state.room import Room
from mobile.app.jobs.windows import Windows
from mobile.app.model import App
from mobile.app.notes import Notes
from mobile.app.overview.state import Overview
from mobile.app.state.draft import DRAFT, from_json
from mobile.app.state.leaf_pad import PadWindow

DESK = "desk"
Run = Callable[..., Any]
Entries = Iterable[tuple[str, str, Any]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Elsewhere:
    """The book is open in another window.

    Parameters
    ----------
    asked
        Whether that window was asked for it and did not answer.
    since
        When it took the book [ms since 1970, UTC]; none where that is not known.
    """

    asked: bool = False
    since: int | None = None


@ft.observable
@dataclass
class Jobs:
    """Every job, as far as the screens show it.

    Parameters
    ----------
    app
        The window around the jobs: unit, shelf and leaves, and the quick check.
    run
        Runs a coroutine in this page.
    home
        Opens the place where the files are kept.
    now
        The device's clock [ms since 1970, UTC].
    notes
        What is under way outside the jobs; it goes where the book goes.
    windows
        The other windows of this browser.
    picker
        Picks a file or takes a picture.
    """

    app: App
    run: Run
    home: Callable[[], Any]
    now: Callable[[], int]
    notes: Notes
    windows: Windows
    picker: ft.FilePicker
    book: Book | None = None
    job: JobBook | None = None
    desk: Desk = field(default_factory=Desk)
    elsewhere: Elsewhere | None = None
    trouble: str = ""
    disk_failed: bool = False
    told: str = ""
    room: Room | None = None
    window: PadWindow = field(default_factory=PadWindow)
    pictures: dict[str, bytes] = field(default_factory=dict)
    incoming: IncomingFile | None = None
    outgoing: OutgoingFile | None = None
    asks_name: bool = True
    hand: HandOver = field(default_factory=HandOver)
    overview: Overview = field(default_factory=Overview)
    version: int = 0

    # ---- opening and giving away ----

    async def open(self) -> None:
        """Take the book; where another window has it, say so."""
        try:
            home: Home = await self.home()
            self.book = await open_book(home, self.now, os.urandom)
        except StoreBusy:
            self.elsewhere = Elsewhere(since=await self.windows.held_since())
            return
        except RecordError as error:
            self.trouble = str(error)
            return
        await self._opened(self.book)

    async def _opened(self, book: Book) -> None:
        self.windows.hold(self.now())
        self.elsewhere, self.trouble = None, " ".join(map(str, book.told))
        kept = desks.from_json(book.notebook.get(DESK))
        await self._take_up(kept)
        self.room = await self.windows.room()
        await self._look_for_unlisted(book)

    async def _take_up(self, kept: Desk) -> None:
        """Go on where the last tap was."""
        if kept.job and not await self._open_job(kept.job):
            kept = Desk(query=kept.query)
        self.desk = kept
        if kept.in_front and self.app.screen == "check" and self.app.preview is None:
            self.app.go_to("jobs")

    async def _look_for_unlisted(self, book: Book) -> None:
        try:
            if await book.find_unlisted():
                self.version += 1
        except RecordError as error:
            self.trouble = str(error)

    async def ask_for_book(self) -> None:
        """Take the book if it is free by now, else have the window that holds it give it away."""
        await self.take_book()
        if self.book is None and await self.windows.ask():
            await self.take_book()
        if self.book is None:
            self.elsewhere = Elsewhere(asked=True, since=await self.windows.held_since())

    async def take_book(self) -> None:
        """Take the book, and with it what is under way outside the jobs."""
        await self.open()
        if self.book:
            await self._open_notes()

    async def _open_notes(self) -> None:
        """The notes come with the book; a check under way here stays."""
        await self.notes.open()
        kept = from_json(self.notes.get(DRAFT))
        self.app.take(self.app.entry if self.app.entry.under_way() else kept)

    async def give(self) -> None:
        """Another window asked for the book."""
        if self.book:
            self.book.close()
        self.notes.close()
        self.book = self.job = None
        self.elsewhere = Elsewhere(since=self.now())
        self.windows.give()

    # ---- where somebody is ----

    def go(self, screen: str, **changes: Any) -> None:
        """Show another of the jobs' screens."""
        self.told = self.trouble = ""
        self.move(replace(self.desk, screen=screen, **changes))

    def move(self, desk: Desk) -> None:
        """Keep where somebody is and what is half entered."""
        self.desk = replace(desk, in_front=True)
        self._keep_desk()

    def shown(self, in_front: bool) -> None:
        """Whether the jobs are on the screen."""
        if self.desk.in_front is not in_front:
            self.desk = replace(self.desk, in_front=in_front)
            self._keep_desk()

    def _keep_desk(self) -> None:
        if self.book:
            try:
                self.book.notebook.put(DESK, desks.as_json(self.desk))
            except RecordError as error:
                self.trouble = str(error)

    def back(self) -> None:
        """To the screen before."""
        here = self.desk.screen
        screen = self.desk.came_from if here in ("words", "history") else PARENTS.get(here, "list")
        if screen == "list":
            self.leave_job()
        self.go(screen, sizes=replace(self.desk.sizes, open_field=None, typing=""))

    # ---- jobs ----

    def lines(self) -> tuple[JobLine, ...]:
        """Jobs of the list as the search stands."""
        assert self.book is not None
        return self.book.jobs(self.desk.query, deleted=self.desk.deleted)

    def search(self, query: str) -> None:
        self.move(replace(self.desk, query=query))

    async def _open_job(self, job_id: str) -> bool:
        assert self.book is not None
        try:
            self.job = await self.book.open_job(job_id)
        except RecordError as error:
            self.trouble = str(error)
            return False
        self.trouble = " ".join(map(str, self.job.told))
        return True

    async def open_job(self, job_id: str) -> None:
        if await self._open_job(job_id):
            told = self.trouble
            self.go("job", job=job_id, cylinder="")
            self.trouble = told

    def leave_job(self) -> None:
        """Close the job in hand; the list then shows how it stands."""
        if self.book and self.job:
            self.attempt(lambda: self.book.leave(self.desk.job))
        self.job = None
        self.desk = replace(self.desk, job="", cylinder="")

    async def begin(self, make: Callable[[Book], Any]) -> None:
        """Begin a job and show it."""
        assert self.book is not None
        try:
            self.job = await make(self.book)
        except StandproudError as error:
            self.trouble = str(error)
            return
        self.go("job", job=self.job.id, cylinder="")

    async def open_anew(self) -> None:
        """Take hold of the job's file again after the disk failed."""
        assert self.book is not None
        try:
            self.job = await self.book.reopen(self.desk.job)
            self.trouble, self.disk_failed = "", False
        except RecordError as error:
            self.trouble = str(error)

    # ---- saving ----

    def ledger(self, name: str = "job") -> Ledger:
        """The job in hand, or what all jobs share."""
        ledger = self.book.shop if name == "shop" and self.book else self.job
        assert ledger is not None
        return ledger

    def attempt(self, do: Callable[[], Any]) -> bool:
        """Do something that writes; whether it is on the disk now. What went wrong is told."""
        try:
            saved = do()
        except StandproudError as error:
            self.trouble, self.disk_failed = str(error), isinstance(error, NotSaved)
            return False
        self.disk_failed = False
        self.trouble = " ".join(map(str, getattr(saved, "told", ())))
        self.version += 1
        return True

    def ledger_of(self, record: str) -> Ledger:
        """The job in hand or the shop, whichever a record belongs to."""
        return self.ledger("shop" if kind_of(record) in SHOP_KINDS else "job")

    def enter(self, entries: Entries, ledger: str = "job") -> bool:
        """Enter values; whether they are on the disk now."""
        return self.attempt(lambda: self.ledger(ledger).enter_all(list(entries)))

    def undo(self) -> None:
        if self.attempt(self.ledger().undo):
            self.told = text("jobs.undone")

    def redo(self) -> None:
        if self.attempt(self.ledger().redo):
            self.told = text("jobs.redone")

    def delete(self, *records: str, ledger: str = "job") -> None:
        self.attempt(lambda: self.ledger(ledger).delete(*records))

    def restore(self, *records: str, ledger: str = "job") -> None:
        self.attempt(lambda: self.ledger(ledger).restore(*records))

    def delete_job(self) -> None:
        """Take the job in hand off the list; it can be brought back."""
        self.delete(JOB)
        self.back()

    # ---- what the views ask ----

    @property
    def the_job(self) -> Job:
        """The job in hand as it stands."""
        assert self.job is not None
        return self.job.job

    @property
    def cylinder(self) -> Cylinder | None:
        """The cylinder in hand."""
        return self.cylinder_of(self.desk.cylinder)

    def cylinder_of(self, record: str) -> Cylinder | None:
        return next((each for each in self.the_job.cylinders if each.id == record), None)

    def judged(self) -> tuple[JudgedBank, ...]:
        """Every bank of the job in hand, judged once after each change."""
        assert self.book is not None
        key = (self.job, self.version)
        if getattr(self, "_judged", (None,))[0] != key:
            self._judged = key, judge_job(self.the_job, self.book.shop.shop)
        return self._judged[1]

    def judged_ring(self, cylinder: Cylinder) -> JudgedRing:
        """One ring of the job in hand."""
        assert self.book is not None
        return judge_ring(cylinder, judging(self.the_job, self.book.shop.shop))

    def entry(self, kind: Iterable[Entry], record: str) -> Entry | None:
        """An entry of the job or the shop by its record."""
        return next((each for each in kind if each.id == record), None)

    def screen(self) -> str:
        """The screen that can be shown: a job or cylinder may be gone by now."""
        here = self.desk.screen
        if here in OF_A_CYLINDER and (self.job is None or self.cylinder is None):
            here = "job"
        if here in ("job", *desks.OF_A_JOB) and self.job is None:
            return "list"
        return here

    def live_cylinders(self) -> tuple[Cylinder, ...]:
        return tuple(each for bank in live(self.the_job.banks) for each in live(bank.cylinders))
