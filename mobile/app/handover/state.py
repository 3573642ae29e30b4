"""What the screens of giving and taking show, as a frozen value."""

from dataclasses import dataclass

from core.handover.codes import Code
from mobile.app.handover.giving import Ready


@dataclass(frozen=True, slots=True, kw_only=True)
class HandOver:
    """A job made ready, the codes on the screen, and the text in the field for links.

    Parameters
    ----------
    ready
        None while it is being made.
    address
        Where this browser opens the report.
    codes, number
        The codes, and which of them is shown.
    """

    ready: Ready | None = None
    address: str = ""
    codes: tuple[Code, ...] = ()
    number: int = 0
    pasted: str = ""
