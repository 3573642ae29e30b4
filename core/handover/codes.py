"""A part as a matrix code (QR, ISO/IEC 18004), to be drawn; the only segno module.

The address goes in byte mode, the data in alphanumeric mode: two segments in one code.
"""

from dataclasses import dataclass
from typing import Any

import segno
from segno.consts import MODE_ALPHANUMERIC, MODE_BYTE

from core.handover.packing import Ledgers
from core.handover.parts import Part, link, split

SIGNS_AT_LARGEST = 1249
"""Alphanumeric signs of version 20 at level L (ISO/IEC 18004, table 7): 97 modules a side, so that
on a screen 320 px wide a module is still 3 px. *From memory*: a phone reads that."""
BITS_A_BYTE, BITS_A_SIGN = 8.0, 5.5
HEADER_SIGNS = 40
"""Room for the second segment's header and the header of a part."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Code:
    """One part as a code.

    Parameters
    ----------
    rows
        Modules row by row, true where dark, quiet zone left out.
    """

    part: Part
    rows: tuple[tuple[bool, ...], ...]


def codes(ledgers: Ledgers, address: str) -> tuple[Code, ...]:
    """Codes that carry these events, few and each small enough for a screen.

    Parameters
    ----------
    address
        Where the app is, so that a camera that opens links opens it.
    """
    prefix = len(link(address, Part(name="", number=1, of=1, data="")))
    room = SIGNS_AT_LARGEST - HEADER_SIGNS - int(prefix * BITS_A_BYTE / BITS_A_SIGN)
    return tuple(_code(part, address) for part in split(ledgers, room))


def _code(part: Part, address: str) -> Code:
    before = link(address, part).removesuffix(str(part))
    # segno takes segments of several modes; its annotation only names the single texts.
    segments: Any = [(before, MODE_BYTE), (str(part), MODE_ALPHANUMERIC)]
    made = segno.make(segments, error="L", micro=False)
    return Code(part=part, rows=tuple(tuple(map(bool, row)) for row in made.matrix))
