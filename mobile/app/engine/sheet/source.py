"""Where the choice of a sheet starts from, is kept, and goes back to: the check, or a job."""

from collections.abc import Callable
from dataclasses import dataclass

from mobile.app.engine.sheet.basis import Basis
from mobile.app.engine.sheet.entry import SheetEntry


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """The check, or a job.

    Parameters
    ----------
    basis
        What it knows now.
    keep
        Puts the entry on the disk; returns when it is there.
    leave
        Goes back to it.
    of_a_job
        Whether cylinders are the job's, so that none comes or goes here.
    """

    basis: Callable[[], Basis]
    keep: Callable[[SheetEntry], None]
    leave: Callable[[], None]
    of_a_job: bool = False


def nowhere() -> Source:
    """Nothing is known and nothing is kept."""
    return Source(basis=lambda: Basis(metric=False), keep=lambda _entry: None, leave=lambda: None)
