"""A job made ready to be given away: everything is there before a key is tapped."""

from dataclasses import dataclass
from datetime import datetime

from core.errors import RecordError
from core.handover.codes import Code, codes
from core.handover.packing import Ledgers
from core.handover.parts import link, split
from core.records import Book, JobBook
from core.records.book import JOB_FILE, pictures_in
from core.report.account import Account, Printed, account
from core.report.page import report_page
from core.report.plain import file_name
from core.report.readings_table import readings_table
from core.report.say import sentence, summary


@dataclass(frozen=True, slots=True, kw_only=True)
class Ready:
    """A job in every form in which it leaves this device.

    Parameters
    ----------
    page_name, page
        The report as a file.
    table_name, table
        The readings as a file.
    message
        Plain text.
    sentence
        What to say on the phone.
    link
        Address that opens the job on another device, in one part.
    left_out
        Pictures that neither link nor codes carry.
    """

    page_name: str
    page: bytes
    table_name: str
    table: bytes
    message: str
    sentence: str
    link: str
    left_out: int


async def ready(book: Book, job: JobBook, at: int, address: str) -> Ready:
    """Make a job ready.

    Parameters
    ----------
    at
        The device's clock [ms since 1970, UTC].
    address
        Where this app is.
    """
    told = await told_of(book, job, at)
    day = told.printed.day(at)
    (whole,) = split(ledgers_of(job))
    return Ready(
        page_name=file_name(told.job.title, day, "html"),
        page=report_page(told).encode("utf-8"),
        table_name=file_name(told.job.title, day, "csv"),
        table=readings_table(told, book.shop.shop),
        message=summary(told),
        sentence=sentence(told),
        link=link(address, whole),
        left_out=len(pictures_in(job.fold)),
    )


async def told_of(book: Book, job: JobBook, at: int) -> Account:
    """What a job says, with the pictures that are on this device."""
    pictures = {}
    for name in pictures_in(job.fold):
        try:
            pictures[name] = await book.pictures.get(name)
        except RecordError:
            continue
    zone = datetime.fromtimestamp(at / 1000).astimezone().tzinfo
    assert zone is not None
    printed = Printed(at=at, zone=zone, device=book.device.name)
    return account(job, book.shop.shop, printed, pictures)


def ledgers_of(job: JobBook) -> Ledgers:
    """What link and codes carry of a job: every entry, no picture."""
    return {JOB_FILE + job.id: list(job.fold)}


def codes_of(job: JobBook, address: str) -> tuple[Code, ...]:
    """The job as codes for a screen."""
    return codes(ledgers_of(job), address)
