"""From a job to the choice of its sheet, and back: the numbers are the job's own records."""

from core.errors import RecordError
from core.records.job_book import JobBook
from core.texts import text
from mobile.app.engine.sheet.basis import Basis, basis_of
from mobile.app.engine.sheet.entry import SheetEntry
from mobile.app.engine.sheet.of_job import basis_of_job, entry_of, limits_in, written
from mobile.app.engine.sheet.source import Source
from mobile.app.jobs.model import Jobs


def open_sheet(jobs: Jobs) -> None:
    """Show the choice of a sheet for the job in hand."""
    job = jobs.job
    assert job is not None
    source = Source(
        basis=lambda: _basis(jobs, job),
        keep=lambda entry: _keep(jobs, job, entry),
        leave=lambda: _back(jobs),
        of_a_job=True,
    )
    jobs.app.engine.open_job(source, entry_of(job.job))
    jobs.app.go_to("engine")
    jobs.shown(False)


def _basis(jobs: Jobs, job: JobBook) -> Basis:
    check = basis_of(jobs.app.entry, jobs.app.told)
    return check if jobs.book is None else basis_of_job(job.job, jobs.book.shop.shop, check)


def _keep(jobs: Jobs, job: JobBook, entry: SheetEntry) -> None:
    """What is typed is written when its field is done with, as one action that can be undone."""
    if jobs.job is not job:
        raise RecordError(text("sheet.job_closed"))
    if entry.form.open_field is not None:
        return
    limits = limits_in(job.job)
    changes = written(job.job, entry, limits.id if limits else job.new("limits"))
    if changes and not jobs.enter(changes):
        raise RecordError(jobs.trouble)


def _back(jobs: Jobs) -> None:
    jobs.app.engine.sheet.close_pad()
    jobs.app.go_to("jobs")
    jobs.shown(True)
