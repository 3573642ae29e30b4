"""When something was entered, in an order that wrong clocks cannot break.

A hybrid logical clock (Kulkarni and others, *Logical Physical Clocks*, OPODIS 2014, section 3): the
device's own clock, never smaller than the last stamp given or seen, and a counter within one
millisecond.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass

DAY = 86_400_000
"""One day [ms]."""
NOTABLE_JUMP = 60_000
"""A clock that goes back by more than this is told to the person [ms]."""
HIGHEST_COUNT = 0xFFFF
PATTERN = re.compile(r"([0-9a-f]{11})\.([0-9a-f]{4})\.([a-z0-9]{1,16}-[0-9a-f]{4})")


@dataclass(frozen=True, slots=True, order=True)
class Stamp:
    """One moment on one device; stamps are ordered as their texts are.

    Parameters
    ----------
    wall
        Milliseconds since 1970, UTC.
    count
        Order within one millisecond.
    author
        Device and sitting: two sittings never share stamps, not even those of a cloned device.
    """

    wall: int
    count: int
    author: str

    def __str__(self) -> str:
        return f"{self.wall:011x}.{self.count:04x}.{self.author}"


def read_stamp(written: str) -> Stamp:
    """Stamp from its text.

    Raises
    ------
    ValueError
        If the text is no stamp.

    Examples
    --------
    >>> str(read_stamp("0193a1b2c3d.0001.ab12-0f3c"))
    '0193a1b2c3d.0001.ab12-0f3c'
    """
    match = PATTERN.fullmatch(written)
    if not match:
        raise ValueError(written)
    return Stamp(int(match[1], 16), int(match[2], 16), match[3])


class Clock:
    """Gives stamps that only grow, whatever the device's clock does.

    Parameters
    ----------
    author
        Device and sitting.
    now
        The device's clock: milliseconds since 1970, UTC.
    """

    def __init__(self, author: str, now: Callable[[], int]) -> None:
        self._now = now
        self._last = Stamp(0, 0, author)
        self.latest = 0
        self.went_back = 0

    def now(self) -> int:
        """What the device's clock says; notes in `went_back` how far it jumped back [ms]."""
        now = self._now()
        self.went_back = max(0, self.latest - now)
        self.latest = now
        return now

    def tick(self) -> Stamp:
        """Next stamp."""
        wall, last = self.now(), self._last
        if wall > last.wall:
            self._last = Stamp(wall, 0, last.author)
        elif last.count < HIGHEST_COUNT:
            self._last = Stamp(last.wall, last.count + 1, last.author)
        else:
            self._last = Stamp(last.wall + 1, 0, last.author)
        return self._last

    def saw(self, stamp: Stamp) -> None:
        """Never stamp earlier than this one, unless its clock was plainly wrong."""
        within_a_day = stamp.wall <= self._now() + DAY
        if within_a_day and (stamp.wall, stamp.count) > (self._last.wall, self._last.count):
            self._last = Stamp(stamp.wall, stamp.count, self._last.author)
