"""Limits of the trade: common practice or from memory, no published source; editable."""

from dataclasses import dataclass

from core.source import MEMORY, PRACTICE, Source
from core.unit_types import INCH, Millimetre, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class HeightPractice:
    """Wire height against sheet thickness, for a soft copper sheet.

    Parameters
    ----------
    largest_share
        Largest height as a share of sheet thickness [1].
    borderline_share
        Up to here borderline, beyond it too high [1].
    bite_share
        Smallest height as a share of sheet thickness [1].
    bite_height
        Smallest height on any sheet [mm].
    """

    largest_share: Number = 0.25
    borderline_share: Number = 0.30
    bite_share: Number = 0.15
    bite_height: Millimetre = 0.006 * INCH


@dataclass(frozen=True, slots=True, kw_only=True)
class InterferencePractice:
    """Wire diameter less groove width.

    Parameters
    ----------
    holds_from
        Least interference that holds the wire [mm].
    aim
        What is cut for [mm].
    hard_above
        Beyond this the wire is hard to press [mm].
    """

    holds_from: Millimetre = 0.0005 * INCH
    aim: Millimetre = 0.001 * INCH
    hard_above: Millimetre = 0.003 * INCH


HEIGHT = HeightPractice()
HEIGHT_SOURCE: Source = PRACTICE
BITE_SOURCE: Source = MEMORY
INTERFERENCE = InterferencePractice()
INTERFERENCE_SOURCE: Source = PRACTICE
