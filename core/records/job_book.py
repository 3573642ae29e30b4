"""One job in hand, and what all jobs share: what screens read and write."""

from collections.abc import Iterable, Mapping
from typing import Any

from core.records.job_index import JobLine, line_of
from core.records.ledger import Ledger, Pen, Saved
from core.records.model import JOB_KINDS, SHOP_KINDS, Job, Measured, Shop, TemplateBank
from core.records.starts import lay_out_bank
from core.records.steps import Step
from core.records.store import EventStore
from core.records.view import JOB, MEASURED, job_view, shop_view
from core.texts.sentence import Sentence


class JobBook(Ledger):
    """One job.

    Examples of use: ``job.add_reading(Measured(...))`` returns when the reading is on the disk;
    ``job.enter(cylinder, bore=Length(...))``; ``job.enter_all([(cylinder, "groove_width@3",
    length)])``; ``job.enter("job", state=JobState.RUN)``; ``job.undo()``.

    Parameters
    ----------
    job_id
        Key of the job.
    remembered
        How many events the list of jobs remembers; fewer here is told.
    """

    def __init__(self, store: EventStore, pen: Pen, job_id: str, remembered: int = 0) -> None:
        super().__init__(store, pen, JOB_KINDS)
        self.id = job_id
        self._view: Job | None = None
        self.when_changed(self._forget_view)
        if len(self) < remembered:
            missing = remembered - len(self)
            self.told = (*self.told, Sentence("records.fewer_events", {"missing": missing}))

    @property
    def job(self) -> Job:
        """The job as it stands."""
        if self._view is None:
            self._view = job_view(self.fold)
        return self._view

    @property
    def line(self) -> JobLine:
        """What the list of jobs shows of it."""
        return line_of(self.id, self.fold)

    def add_reading(self, measured: Measured) -> Saved:
        """Keep a reading; it is on the disk when this returns.

        Raises
        ------
        InputError
            If a part does not fit.
        NotSaved
            If the disk did not take it; nothing was entered.
        """
        return self.enter_all([(self.new("reading"), MEASURED, measured)])

    def correct(self, reading: str, measured: Measured) -> Saved:
        """Put another measurement in place of one; the first stays in its history."""
        return self.enter_all([(reading, MEASURED, measured)])

    def add_bank(
        self, name: str, numbers: Iterable[str], common: Mapping[str, Any] | None = None
    ) -> Saved:
        """Add a bank with its cylinders and what they have in common (bore, wire and so on)."""
        bank = TemplateBank(name=name, cylinders=tuple(numbers))
        return self.enter_all(lay_out_bank(bank, len(self.job.banks), common or {}, self.new))

    def tick(self, step: Step, done: bool = True) -> Saved:
        """Tick a step, or take the tick off."""
        return self.enter(step.record, done=done)

    def rename(self, title: str) -> Saved:
        """Give the job another title."""
        return self.enter(JOB, title=title)

    def _forget_view(self) -> None:
        self._view = None


class ShopBook(Ledger):
    """Shelf, leaf sets, instruments, spools, cutters, test grooves and templates."""

    def __init__(self, store: EventStore, pen: Pen) -> None:
        super().__init__(store, pen, SHOP_KINDS)
        self._view: Shop | None = None
        self.when_changed(self._forget_view)

    @property
    def shop(self) -> Shop:
        """What the jobs share, as it stands."""
        if self._view is None:
            self._view = shop_view(self.fold)
        return self._view

    def _forget_view(self) -> None:
        self._view = None
