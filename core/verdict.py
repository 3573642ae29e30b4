"""A value against a limit: pass, fail or undecided, and how sure that is.

Two rules, named with every check:

plain
    Simple acceptance (JCGM 106:2012, 8.2): the best value against the limit. For limits that are
    practice, whose guard is inside them already.
guarded
    The limit must be kept with a stated probability of conformity (JCGM 106:2012, 8.3;
    ISO 14253-1:2017), 95 % unless the user says otherwise. For limits that can break something.
"""

import math
from dataclasses import dataclass
from enum import StrEnum

from core.source import Source
from core.uncertain import student_cdf

TIE = 1e-6
"""Slack of a comparison of lengths [mm]: a tie passes, in inch and in millimetre alike."""


class Verdict(StrEnum):
    PASS = "pass"
    FAIL = "fail"
    UNDECIDED = "undecided"


class Rule(StrEnum):
    PLAIN = "plain"
    GUARDED = "guarded"


@dataclass(frozen=True, slots=True, kw_only=True)
class Acceptance:
    """The rule in force and the probability it asks for.

    Parameters
    ----------
    confidence
        Probability of conformity that the guarded rule asks for, and from which the plain rule
        calls a pass sure [1].
    """

    rule: Rule
    confidence: float = 0.95


PLAIN = Acceptance(rule=Rule.PLAIN)
GUARDED = Acceptance(rule=Rule.GUARDED)


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One engineering answer.

    Parameters
    ----------
    id
        Which check this is.
    word
        Key of the trade's word for the verdict.
    value, limit
        What was compared, in `unit`; `limit` is the one that decides.
    probability
        Probability of conformity [1]; none where one side of a reading cannot tell, and where
        two readings are held for agreement rather than one against a limit.
    rule
        Rule that gave the verdict.
    """

    id: str
    verdict: Verdict
    word: str
    value: float
    limit: float
    unit: str
    probability: float | None
    rule: Rule
    source: Source


def probability(margin: float, u: float, dof: float = math.inf) -> float:
    """Probability that a margin is not negative.

    All errors together are taken as normal. Where one bracket between two leaves outweighs the
    rest, that is off by up to 0.05 in the middle and 0.025 towards the ends.

    Parameters
    ----------
    margin
        Distance to the limit, positive on the good side.
    u
        Standard uncertainty of the margin, same unit.
    dof
        Effective degrees of freedom.

    Source
    ------
    JCGM 106:2012, clause 7; Student's distribution where repeats are few.

    Examples
    --------
    >>> round(probability(0.07, 0.05), 6)
    0.919243
    """
    if u <= 0.0:
        return 1.0 if margin >= -TIE else 0.0
    return student_cdf(margin / u, dof)


def judge(margin: float, p: float, acceptance: Acceptance, slack: float = TIE) -> Verdict:
    """Verdict of one margin under the rule in force.

    Parameters
    ----------
    margin
        Distance to the limit, positive on the good side.
    p
        Its probability of conformity [1].
    slack
        How far below zero still counts as a tie, in the unit of the margin.

    Source
    ------
    JCGM 106:2012, 8.2 (plain) and 8.3 (guarded); ISO 14253-1:2017.
    """
    if acceptance.rule is Rule.PLAIN:
        return Verdict.PASS if margin >= -slack else Verdict.FAIL
    if p >= acceptance.confidence:
        return Verdict.PASS
    return Verdict.FAIL if p <= 1.0 - acceptance.confidence else Verdict.UNDECIDED
