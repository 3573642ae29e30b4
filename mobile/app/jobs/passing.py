"""Jobs out to a file and back in, pictures, and a quick check into a job and out of it."""

import flet as ft

from core.errors import RecordError, StandproudError
from core.records import Parcel
from core.records.model import Cylinder, Place, Tapped
from core.texts import text
from mobile.app.jobs.filing import bank_names, evidence
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.picture import shrunk
from mobile.app.jobs.state.desk import Layout
from mobile.app.jobs.state.passing import IncomingFile, OutgoingFile, file_name
from mobile.app.jobs.state.quick import entry_at, measured_of, sizes_of
from mobile.app.jobs.state.walk import reading_at

# ---- out ----


async def make_file(jobs: Jobs, job_id: str | None) -> None:
    """Put one job, or everything, into a file and hand it to the browser."""
    assert jobs.book is not None
    title = jobs.the_job.title if job_id and jobs.job else text("jobs.out.all")
    try:
        data = await jobs.book.export([job_id] if job_id else None)
    except RecordError as error:
        jobs.trouble = str(error)
        return
    jobs.outgoing = OutgoingFile(name=file_name(title, jobs.now()), data=data)
    await save_file(jobs)


async def save_file(jobs: Jobs) -> None:
    """Have the browser save the file that is ready."""
    assert jobs.outgoing is not None
    await ft.FilePicker().save_file(file_name=jobs.outgoing.name, src_bytes=jobs.outgoing.data)
    jobs.told = text("jobs.out.saved", name=jobs.outgoing.name)


async def share_file(jobs: Jobs) -> None:
    """Hand the file that is ready to another app of this device."""
    assert jobs.outgoing is not None
    file = ft.ShareFile(
        data=jobs.outgoing.data, mime_type="application/jsonl", name=jobs.outgoing.name
    )
    await ft.Share().share_files([file], title=jobs.outgoing.name)


# ---- in ----


async def show_incoming(jobs: Jobs, name: str, parcel: Parcel) -> None:
    """Show what a parcel would bring; nothing changes.

    Raises
    ------
    RecordError
        If a job here that it is about cannot be read.
    """
    assert jobs.book is not None
    ledgers = await jobs.book.preview(parcel)
    jobs.incoming = IncomingFile(name=name, parcel=parcel, ledgers=ledgers)
    jobs.go("incoming")


async def take_in(jobs: Jobs) -> None:
    """Take the file in, or its good part where lines of it cannot be taken."""
    assert jobs.book is not None
    assert jobs.incoming is not None
    parcel = jobs.incoming.parcel
    try:
        merged = await jobs.book.take(parcel, take_good_part=bool(parcel.faults))
    except RecordError as error:
        jobs.trouble = str(error)
        return
    jobs.incoming = None
    jobs.version += 1
    jobs.go("list")
    jobs.told = text("jobs.in.done", new=sum(len(each.new) for each in merged.values()))


# ---- pictures ----


async def add_picture(jobs: Jobs, data: bytes) -> None:
    """Scale a picture down and keep it with the evidence in hand."""
    found = evidence(jobs)
    assert jobs.book is not None
    assert found is not None
    try:
        small = await shrunk(data)
        name = await jobs.book.pictures.put(small)
    except StandproudError as error:
        jobs.trouble = str(error)
        return
    jobs.pictures[name] = small
    entries = [(found.id, "cylinder", found.cylinder), (found.id, f"pictures@{name}", "")]
    if jobs.enter(entries):
        jobs.told = text("jobs.picture.saved", kilobytes=f"{len(small) / 1e3:.0f}")


async def fetch_pictures(jobs: Jobs) -> None:
    """Read the pictures of the evidence in hand from the disk."""
    found = evidence(jobs)
    assert jobs.book is not None
    for name in found.pictures if found else ():
        if name not in jobs.pictures:
            try:
                jobs.pictures[name] = await jobs.book.pictures.get(name)
            except RecordError as error:
                jobs.trouble = str(error)


# ---- the quick check ----


def check_this(jobs: Jobs, cylinder: Cylinder, place: Place) -> None:
    """Open a place of a ring as a quick check; the check before can be brought back."""
    app = jobs.app
    readings = [reading_at(cylinder, place, side) for side in (Tapped.AFTER, Tapped.BEFORE)]
    reading = next(filter(None, readings), None)
    app.replace_check(entry_at(jobs.the_job, cylinder, place, app.entry, reading))
    jobs.shown(False)


def ask_where(jobs: Jobs) -> None:
    """Ask in which job the quick check is kept."""
    jobs.app.go_to("jobs")
    if jobs.book:
        jobs.leave_job()
        jobs.go("keep")


async def keep_check(jobs: Jobs, job_id: str | None) -> None:
    """The job that a quick check goes into: an open one, or a new one with one cylinder."""
    if job_id is None:
        assert jobs.book is not None
        job = await jobs.book.new_job(title=text("jobs.from_check"))
        job.add_bank(bank_names(Layout())[0], ("1",))
        job_id = job.id
    await jobs.open_job(job_id)
    jobs.go("keep")


def keep_check_at(jobs: Jobs, cylinder: Cylinder, place: Place) -> None:
    """Keep the quick check as the reading of a place, with the sizes the cylinder lacks."""
    texts = jobs.app.entry.texts
    measured = measured_of(texts, cylinder.id, place)
    reading = jobs.ledger().new("reading")
    entries = [(cylinder.id, name, size) for name, size in sizes_of(texts, cylinder, place).items()]
    if measured:
        entries.append((reading, "measured", measured))
    if jobs.enter(entries):
        jobs.go("cylinder", cylinder=cylinder.id)
        jobs.told = text("jobs.kept_check", cylinder=cylinder.number)
