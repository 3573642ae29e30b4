"""What the list and the comparison show, as a frozen value."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from core.report.compared import Compared
from mobile.app.overview.narrowed import Facts, Narrowed


@dataclass(frozen=True, slots=True, kw_only=True)
class Overview:
    """What is chosen of the list, and two jobs compared.

    Parameters
    ----------
    facts
        What the jobs themselves told, by their key.
    to_read
        Jobs that are still to be read.
    with_job, rows
        Title of the other job, and the comparison.
    address
        Where this browser opens the comparison as a page.
    """

    chosen: Narrowed = field(default_factory=Narrowed)
    facts: Mapping[str, Facts] = field(default_factory=dict)
    to_read: int = 0
    with_job: str = ""
    address: str = ""
    rows: tuple[Compared, ...] = ()
