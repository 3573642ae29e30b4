"""Even or not: the places round one ring, and the rings along one bank."""

from collections.abc import Sequence
from statistics import median

from core.tables.cut_practice import BANK_SOURCE, EVEN, PROUD_SOURCE, EvenPractice
from core.unit_types import Millimetre
from core.verdict import TIE, Check, Rule, Verdict


def over_median(heights: Sequence[Millimetre]) -> tuple[Millimetre, ...]:
    """How far each place stands over the median of its ring [mm].

    Parameters
    ----------
    heights
        Heights, or depths of a print, round one ring, shape (n,) [mm].

    Source
    ------
    *derived*: the median is not moved by one proud place.

    Examples
    --------
    >>> over_median([0.25, 0.25, 0.5])
    (0.0, 0.0, 0.25)
    """
    middle = median(heights)
    return tuple(height - middle for height in heights)


def is_proud(over: Millimetre, practice: EvenPractice = EVEN) -> bool:
    """Whether a place stands too far over the median of its ring.

    Parameters
    ----------
    over
        Over the median [mm].

    Source
    ------
    *from memory*: 0.001 in.
    """
    return over > practice.proud + TIE


def even_ring(over: Sequence[Millimetre], practice: EvenPractice = EVEN) -> Check:
    """Whether every place is near the median of its ring; a low place counts as a proud one does.

    Parameters
    ----------
    over
        Over the median at each place, shape (n,) [mm].

    Source
    ------
    *from memory*: within 0.001 in.
    """
    worst = max(over, key=abs)
    even = abs(worst) <= practice.proud + TIE
    return Check(
        id="even-ring",
        verdict=Verdict.PASS if even else Verdict.FAIL,
        word="even" if even else "proud" if worst > 0.0 else "low-place",
        value=worst,
        limit=practice.proud,
        unit="mm",
        probability=None,
        rule=Rule.PLAIN,
        source=PROUD_SOURCE,
    )


def even_bank(medians: Sequence[Millimetre], practice: EvenPractice = EVEN) -> Check:
    """Whether the rings of a bank are near each other; fewer than two are.

    Parameters
    ----------
    medians
        Median of each ring, shape (n,) [mm].

    Source
    ------
    *common practice, no source*: medians within 0.001 in of each other.
    """
    spread = max(medians) - min(medians) if medians else 0.0
    even = spread <= practice.bank + TIE
    return Check(
        id="even-bank",
        verdict=Verdict.PASS if even else Verdict.FAIL,
        word="even" if even else "uneven",
        value=spread,
        limit=practice.bank,
        unit="mm",
        probability=None,
        rule=Rule.PLAIN,
        source=BANK_SOURCE,
    )
