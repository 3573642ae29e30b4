"""Whether wire and groove fit, and whether the wire is on the floor of its groove."""

import math
from dataclasses import dataclass

from core.calc.groove import ExpectedHeight, PressedWire, expected_height
from core.calc.height import RANGE_LEVEL, Bound, Height
from core.source import Source, derived
from core.tables.practice import INTERFERENCE, INTERFERENCE_SOURCE, InterferencePractice
from core.uncertain import coverage_factor, effective_dof, rectangular
from core.unit_types import Millimetre, Number
from core.verdict import PLAIN, TIE, Acceptance, Check, Rule, Verdict, judge, probability

SEATED = derived("height of a wire on the floor by a local flank model")
WIDEST_POINT = derived("groove depth less half the wire diameter")


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """A measured size and its limit of error.

    Parameters
    ----------
    value
        Best value [mm].
    half_width
        Limit of error, rectangular [mm].
    """

    value: Millimetre
    half_width: Millimetre

    @property
    def u(self) -> Millimetre:
        return rectangular(self.half_width)


def interference_check(
    wire: Measured,
    width: Measured,
    practice: InterferencePractice = INTERFERENCE,
    acceptance: Acceptance = PLAIN,
) -> Check:
    """Whether the groove holds the wire, and lets it be pressed in.

    Under the guarded rule the sizes may be too uncertain for any wire to pass; that is said.

    Source
    ------
    Limits: *common practice, no source*. Rule: JCGM 106:2012, clauses 7 and 8.
    """
    value = wire.value - width.value
    u = math.hypot(wire.u, width.u)
    loose, hard = practice.holds_from, practice.hard_above
    p = _between(value, loose, hard, u)
    margin = min(value - loose, hard - value)
    verdict = judge(margin, p, acceptance)
    return Check(
        id="interference",
        verdict=verdict,
        word=_interference_word(value, verdict, practice, _decidable(u, practice, acceptance)),
        value=value,
        limit=loose if value - loose <= hard - value else hard,
        unit="mm",
        probability=p,
        rule=acceptance.rule,
        source=INTERFERENCE_SOURCE,
    )


def _between(value: Millimetre, low: Millimetre, high: Millimetre, u: Millimetre) -> Number:
    """Probability that a value lies between two limits."""
    return max(0.0, probability(value - low, u) + probability(high - value, u) - 1.0)


def _decidable(u: Millimetre, practice: InterferencePractice, acceptance: Acceptance) -> bool:
    """Whether a wire right between the limits would pass."""
    loose, hard = practice.holds_from, practice.hard_above
    return _between(0.5 * (loose + hard), loose, hard, u) >= acceptance.confidence


def _interference_word(
    value: Millimetre, verdict: Verdict, practice: InterferencePractice, decidable: bool
) -> str:
    if verdict is Verdict.PASS:
        return "holds"
    if verdict is Verdict.UNDECIDED:
        return "undecided" if decidable else "too-uncertain"
    return "loose" if value < practice.holds_from else "hard-to-press"


def held_check(wire: Measured, depth: Measured, acceptance: Acceptance = PLAIN) -> Check:
    """Whether the widest point of a wire on the floor lies below the deck, so that it is held.

    Source
    ------
    *derived*: only then do the walls of the groove hold the wire down. Rule: JCGM 106:2012.
    """
    value = depth.value - 0.5 * wire.value
    p = probability(value, math.hypot(depth.u, 0.5 * wire.u))
    verdict = judge(value, p, acceptance)
    words = {Verdict.PASS: "below-deck", Verdict.FAIL: "above-deck"}
    return Check(
        id="held",
        verdict=verdict,
        word=words.get(verdict, "undecided"),
        value=value,
        limit=0.0,
        unit="mm",
        probability=p,
        rule=acceptance.rule,
        source=WIDEST_POINT,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """What a wire on the floor would read, and what was read.

    Parameters
    ----------
    floor, best, ceiling
        Height expected on the floor: least, best and greatest [mm].
    allowed
        How far a reading may be from these, at 95 % [mm].
    check
        The verdict.
    """

    floor: Millimetre
    best: Millimetre
    ceiling: Millimetre
    allowed: Millimetre
    check: Check


def seat(height: Height, wire: Measured, width: Measured, depth: Measured) -> Seat:
    """Whether the wire is on the floor of its groove.

    On the floor if the reading agrees with the best estimate (or lies down to the least) within
    its spread; between that and the greatest height it cannot be told; above, it is not down.
    Lower than the least, the groove is deeper or the wire thinner than entered.

    Source
    ------
    *derived*: flank model of a round wire pressed into a narrower rectangular groove; agreement
    at 95 % after JCGM 100:2008 (GUM), G.3.
    """
    expected = expected_height(PressedWire(wire=wire.value, width=width.value, depth=depth.value))
    parts = (height.u, wire.u, depth.u)
    dof = effective_dof(parts, (height.dof, math.inf, math.inf))
    allowed = coverage_factor(RANGE_LEVEL, dof) * math.hypot(*parts)
    verdict, word = _seat_verdict(height, expected, allowed)
    check = Check(
        id="seated",
        verdict=verdict,
        word=word,
        value=height.value,
        limit=_seat_limit(word, expected, allowed),
        unit="mm",
        probability=None,
        rule=Rule.PLAIN,
        source=SEATED,
    )
    return Seat(
        floor=expected.floor,
        best=expected.best,
        ceiling=expected.ceiling,
        allowed=allowed,
        check=check,
    )


def _seat_verdict(
    height: Height, expected: ExpectedHeight, allowed: Millimetre
) -> tuple[Verdict, str]:
    """A reading with one side decides only where the whole of that side agrees."""
    value, lower, upper = height.value, height.bound is Bound.LOWER, height.bound is Bound.UPPER
    if value > expected.ceiling + allowed + TIE and not upper:
        return Verdict.FAIL, "not-down"
    if lower:
        return Verdict.UNDECIDED, "undecided"
    if value < expected.floor - allowed - TIE:
        return Verdict.UNDECIDED, "lower-than-entered"
    if value <= expected.best + allowed + TIE:
        return Verdict.PASS, "on-the-floor"
    return Verdict.UNDECIDED, "undecided" if upper else "tap-and-measure"


def _seat_limit(word: str, expected: ExpectedHeight, allowed: Millimetre) -> Millimetre:
    """The end of the range that decided."""
    if word == "lower-than-entered":
        return expected.floor - allowed
    return (expected.ceiling if word == "not-down" else expected.best) + allowed


def tapped(before: Height, after: Height) -> Check:
    """Whether the wire was down before it was tapped, from both heights at one place.

    A drop of more than the spread of the readings says that it was not. The error that a leaf set
    brings to both readings is left in, so that only a clear drop counts.

    Source
    ------
    *common practice, no source*; agreement at 95 % after JCGM 100:2008 (GUM), G.3.
    """
    drop = before.value - after.value
    parts = (before.u, after.u)
    dof = effective_dof(parts, (before.dof, after.dof))
    limit = coverage_factor(RANGE_LEVEL, dof) * math.hypot(*parts)
    was_down = drop <= limit + TIE
    return Check(
        id="tapped",
        verdict=Verdict.PASS if was_down else Verdict.FAIL,
        word="was-down" if was_down else "was-not-down",
        value=drop,
        limit=limit,
        unit="mm",
        probability=None,
        rule=Rule.PLAIN,
        source=Source(INTERFERENCE_SOURCE.trust, "before and after the hammer at one place"),
    )
