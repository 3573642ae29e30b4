"""A file on its way out, and one on its way in."""

from dataclasses import dataclass
from datetime import datetime

from core.records import Incoming, Parcel
from core.texts import text

MOST_FAULTS_SHOWN = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class OutgoingFile:
    """A file that is ready to be saved or sent."""

    name: str
    data: bytes


@dataclass(frozen=True, slots=True, kw_only=True)
class IncomingFile:
    """A file that was read and waits for a word.

    Parameters
    ----------
    ledgers
        What each job, or the shop, would bring.
    """

    name: str
    parcel: Parcel
    ledgers: tuple[Incoming, ...]

    @property
    def new(self) -> int:
        """Entries that are not here yet."""
        return sum(each.new for each in self.ledgers)


def file_name(of: str, now: int) -> str:
    """Name of a file: what it holds and the day.

    Examples
    --------
    >>> file_name("Four in line!", 0)
    'standproud-four-in-line-1970-01-01.jsonl'
    """
    plain = "".join(each if each.isalnum() else "-" for each in of.casefold())
    short = "-".join(filter(None, plain.split("-")))[:40] or "job"
    return f"standproud-{short}-{datetime.fromtimestamp(now / 1e3):%Y-%m-%d}.jsonl"


def fault_lines(parcel: Parcel) -> tuple[str, ...]:
    """Lines of a file that cannot be taken; the first few by name, the rest by number."""
    shown = [str(each) for each in parcel.faults[:MOST_FAULTS_SHOWN]]
    more = len(parcel.faults) - len(shown)
    return (*shown, *([text("jobs.in.more_faults", n=more)] if more else []))
