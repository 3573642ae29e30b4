"""How likely readings scatter as much as they do, if their spreads are right."""

import math
from enum import StrEnum

from core.unit_types import Number

DISAGREE_BELOW = 0.05
SUSPICIOUSLY_CLOSE_ABOVE = 0.999


class Agreement(StrEnum):
    """What the scatter of the readings says about them."""

    NOTHING_TO_COMPARE = "nothing-to-compare"
    AGREE = "agree"
    DISAGREE = "disagree"
    CLOSER_THAN_STATED = "closer-than-stated"


def survival(chi2: Number, dof: int) -> Number:
    """Probability that chi-square is at least `chi2` by chance [1].

    Parameters
    ----------
    chi2
        Sum of squared residuals, each over its standard uncertainty [1].
    dof
        Readings less what was fitted; 1 or more.

    Source
    ------
    Abramowitz & Stegun, Handbook of Mathematical Functions, 26.4.4 and 26.4.5.

    Examples
    --------
    >>> f"{survival(3.841, 1):.4f} {survival(5.991, 2):.4f} {survival(7.815, 3):.4f}"
    '0.0500 0.0500 0.0500'
    """
    half = 0.5 * chi2
    odd = dof % 2
    term = math.exp(-half) * (2.0 * math.sqrt(half / math.pi) if odd else 1.0)
    terms = []
    for k in range(dof // 2):
        terms.append(term)
        term *= half / (k + (1.5 if odd else 1.0))
    return math.fsum((math.erfc(math.sqrt(half)) if odd else 0.0, *terms))


def agreement(chi2: Number, dof: int) -> Agreement:
    """What a chi-square says: at 5 % the readings contradict each other.

    Parameters
    ----------
    chi2
        Sum of squared residuals, each over its standard uncertainty [1].

    Source
    ------
    Level of 5 %: *common practice, no source*.
    """
    if dof == 0:
        return Agreement.NOTHING_TO_COMPARE
    p = survival(chi2, dof)
    if p < DISAGREE_BELOW:
        return Agreement.DISAGREE
    return Agreement.CLOSER_THAN_STATED if p > SUSPICIOUSLY_CLOSE_ABOVE else Agreement.AGREE
