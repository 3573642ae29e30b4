"""A job on its way in: link, pasted text or file lead to one preview, and nothing changes before.

Parts of a hand-over that came so far are kept by the device until the last one is here.
"""

import re
from dataclasses import dataclass
from typing import Any

from core.errors import DamagedFile
from core.handover.parts import ROUTE, Waiting, find_parts, parts_kept
from core.records import Parcel, read_parcel
from core.records.event import Event
from core.texts import text

WAITING = "waiting"
LINE_OF_A_FILE = re.compile(rb'^\[\d+,\d+,"[0-9a-f]{16}",\{', re.MULTILINE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """What came of one text or file.

    Parameters
    ----------
    parcel
        What would come in; None while parts are missing.
    faults
        Sentences on parts that are cut or changed.
    missing
        Numbers of the parts that have not come, and of how many.
    waiting
        Every part that is kept from now on.
    """

    parcel: Parcel | None
    faults: tuple[str, ...]
    missing: tuple[int, ...]
    of: int
    waiting: tuple[str, ...]

    @property
    def line(self) -> str:
        """What to get yet, in words."""
        parts = list(self.faults)
        if self.missing:
            numbers = ", ".join(map(str, self.missing))
            here = self.of - len(self.missing)
            parts.append(text("taking.missing", here=here, of=self.of, numbers=numbers))
        return " ".join(parts)


def is_hand_over(route: str) -> bool:
    """Whether a link carries a job."""
    return route.startswith(f"{ROUTE}?")


def take(data: bytes, kept: Any) -> Taken:
    """Look into a text or a file.

    Parameters
    ----------
    data
        A file of this app, or any text with links or parts in it.
    kept
        Parts that came before, as the device keeps them.

    Raises
    ------
    StandproudError
        If nothing in it can be used.
    """
    texts = kept if isinstance(kept, list) else []
    if LINE_OF_A_FILE.search(data):
        return Taken(
            parcel=read_parcel(data), faults=(), missing=(), of=0, waiting=tuple(map(str, texts))
        )
    found = find_parts(data.decode("utf-8", errors="replace"))
    waiting = Waiting()
    waiting.add(parts_kept(map(str, texts)))
    wholes = waiting.add(found.parts)
    ledgers: dict[str, list[Event]] = {}
    missing: tuple[int, ...] = ()
    of = 0
    for whole in wholes:
        lacking = waiting.missing(whole)
        if lacking:
            missing, of = lacking, whole[1]
        else:
            ledgers |= _whole(waiting, whole)
            waiting.drop(whole)
    return Taken(
        parcel=Parcel(ledgers=ledgers) if ledgers else None,
        faults=found.faults,
        missing=missing,
        of=of,
        waiting=waiting.texts(),
    )


def _whole(waiting: Waiting, whole: tuple[str, int]) -> dict[str, list[Event]]:
    """Events of a whole; parts that do not fit are forgotten, so that they can be got again."""
    try:
        return waiting.ledgers(whole)
    except DamagedFile:
        waiting.drop(whole)
        raise
