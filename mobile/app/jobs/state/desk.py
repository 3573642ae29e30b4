"""Where somebody is among the jobs, and what is half entered there; kept on every tap."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from typing import Any

from core.records.model import ReadingKind, Tapped
from mobile.app.jobs.state.walk import Walk
from mobile.app.state.entry import Entry
from mobile.app.state.sizes_form import SizesForm

FORMAT = 1
LIST = "list"
MOST_CYLINDERS = 12
PARENTS = {
    "new": LIST,
    "book": LIST,
    "shop": LIST,
    "incoming": "take",
    "keep": LIST,
    "job": LIST,
    "identity": "job",
    "steps": "job",
    "sheet": "job",
    "squeeze": "job",
    "cylinder": "job",
    "walk": "cylinder",
    "sizes": "cylinder",
    "evidence": "cylinder",
    "readings": "cylinder",
    "thing": "shop",
    "give": "job",
    "codes": "give",
    "compare": "job",
    "take": LIST,
    "narrow": LIST,
}
"""The screen that a way back leads to; `words` and `history` go back to where they came from."""
OF_A_JOB = (
    "job",
    "identity",
    "steps",
    "sheet",
    "squeeze",
    "cylinder",
    "walk",
    "sizes",
    "give",
    "codes",
    "compare",
)
OF_A_CYLINDER = ("cylinder", "walk", "sizes", "evidence", "readings")


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """A text being typed.

    Parameters
    ----------
    record, field
        Where it goes when it is kept.
    title
        What is asked.
    text
        What stands there so far.
    ledger
        ``job``, ``shop``, or ``device`` for this device's own name.
    """

    record: str
    field: str
    title: str
    text: str = ""
    ledger: str = "job"


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """How the engine of a new job is laid out.

    Parameters
    ----------
    odd_even
        Whether the first bank has the odd numbers and the second the even ones.
    """

    banks: int = 1
    cylinders: int = 4
    odd_even: bool = False

    def numbers(self) -> tuple[tuple[str, ...], ...]:
        """Cylinder numbers of each bank, from the front."""
        every = range(1, self.banks * self.cylinders + 1)
        if self.odd_even and self.banks > 1:
            return tuple(tuple(map(str, every[bank :: self.banks])) for bank in range(self.banks))
        return tuple(
            tuple(map(str, every[bank * self.cylinders : (bank + 1) * self.cylinders]))
            for bank in range(self.banks)
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Desk:
    """Everything that a tap among the jobs changes and that is no entry yet.

    Parameters
    ----------
    in_front
        Whether the jobs were on the screen at the last tap.
    screen
        Which of the jobs' screens.
    came_from
        Screen that `words` and `history` go back to.
    record
        What `history`, `squeeze`, `evidence` and `thing` are about.
    """

    in_front: bool = False
    screen: str = LIST
    came_from: str = LIST
    job: str = ""
    cylinder: str = ""
    record: str = ""
    query: str = ""
    deleted: bool = False
    words: Words | None = None
    sizes: SizesForm = field(default_factory=SizesForm)
    walk: Walk | None = None
    layout: Layout = field(default_factory=Layout)


def as_json(desk: Desk) -> dict[str, Any]:
    """What is written on every tap."""
    return {"format": FORMAT, **asdict(desk)}


def from_json(kept: Any) -> Desk:
    """Where the last tap was; the list where nothing was kept, or not by this format."""
    if not isinstance(kept, dict) or kept.get("format") != FORMAT:
        return Desk()
    values = {name: value for name, value in kept.items() if name != "format"}
    return Desk(
        **values
        | {
            "words": _words(values["words"]),
            "sizes": SizesForm(**values["sizes"]),
            "walk": _walk(values["walk"]),
            "layout": Layout(**values["layout"]),
        }
    )


def _words(kept: Mapping[str, Any] | None) -> Words | None:
    return Words(**kept) if kept else None


def _walk(kept: Mapping[str, Any] | None) -> Walk | None:
    if not kept:
        return None
    return Walk(
        **{
            **kept,
            "tapped": Tapped(kept["tapped"]),
            "kind": ReadingKind(kept["kind"]),
            "entry": Entry(**kept["entry"]),
        }
    )
