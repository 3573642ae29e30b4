"""Wire height against the sheet: share of thickness, bite, and the largest height a sheet takes."""

import math
from dataclasses import dataclass
from enum import StrEnum

from core.calc.height import Bound, Height
from core.source import Source
from core.tables.practice import BITE_SOURCE, HEIGHT, HEIGHT_SOURCE, HeightPractice
from core.uncertain import effective_dof, rectangular
from core.unit_types import Millimetre, Number
from core.verdict import PLAIN, TIE, Acceptance, Check, Verdict, judge, probability

SURE = 0.95
"""Probability from which a verdict is said without a second word, unless the user asks for more."""


class Face(StrEnum):
    """What the wire meets in the head."""

    FLAT = "flat"
    PRINTED = "printed"
    RECEIVER = "receiver"


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadFace:
    """Head face over the wire.

    Parameters
    ----------
    face
        Flat, printed by a wire before, or with a receiver groove.
    depth
        Depth of the print or of the receiver groove [mm].
    answered
        Whether the user said so; else "for a flat head face" goes with the verdict.
    """

    face: Face = Face.FLAT
    depth: Millimetre = 0.0
    answered: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A soft copper sheet.

    Parameters
    ----------
    thickness
        Thickness [mm].
    half_width
        Limit of error of the thickness [mm].
    """

    thickness: Millimetre
    half_width: Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class HeightRule:
    """Limits and rule in force for the height."""

    practice: HeightPractice = HEIGHT
    acceptance: Acceptance = PLAIN


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """How far the wire stands into the sheet: its height less the print in the head.

    Parameters
    ----------
    value
        Best value, or the side that is known [mm].
    u
        Standard uncertainty [mm].
    dof
        Its effective degrees of freedom [1].
    """

    bound: Bound
    value: Millimetre
    u: Millimetre
    dof: Number


def standing(height: Height, face: HeadFace, print_half_width: Millimetre) -> Standing:
    """Height that the sheet feels.

    A head that has run carries the print of the wire; the wire stands into the print and bites by
    the difference.

    Parameters
    ----------
    print_half_width
        Limit of error of the depth of the print [mm].

    Source
    ------
    *common practice, no source*.
    """
    if face.face is not Face.PRINTED:
        return Standing(bound=height.bound, value=height.value, u=height.u, dof=height.dof)
    parts = (height.u, rectangular(print_half_width))
    return Standing(
        bound=height.bound,
        value=height.value - face.depth,
        u=math.hypot(*parts),
        dof=effective_dof(parts, (height.dof, math.inf)),
    )


def largest_height(sheet: Sheet, practice: HeightPractice) -> Millimetre:
    """Largest height the sheet takes [mm].

    Source
    ------
    *common practice, no source*: 25 % of thickness for a soft copper sheet on a flat head face.
    """
    return practice.largest_share * sheet.thickness


def least_height(sheet: Sheet, practice: HeightPractice) -> Millimetre:
    """Smallest height that bites [mm].

    Source
    ------
    *from memory*: 15 % of thickness and never under 0.006 in.
    """
    return max(practice.bite_share * sheet.thickness, practice.bite_height)


def height_to_gasket(wire: Standing, sheet: Sheet, rule: HeightRule) -> Check:
    """Whether the sheet takes this height.

    The margin `limit · t − h` is judged, with both uncertain; the ratio would be biased.

    Source
    ------
    Limit: *common practice, no source*. Rule: JCGM 106:2012, clauses 7 and 8.
    """
    limit = rule.practice.largest_share
    margin = limit * sheet.thickness - wire.value
    p = _probability(margin, wire, limit, sheet)
    verdict, word = _height_verdict(wire, sheet, rule, margin, p)
    return _check(
        "height-to-gasket",
        verdict,
        word,
        wire.value / sheet.thickness,
        limit,
        "1",
        _told(p, wire.bound, Bound.UPPER, margin),
        rule,
        HEIGHT_SOURCE,
    )


def _probability(margin: Millimetre, wire: Standing, share: Number, sheet: Sheet) -> Number:
    """Probability of conformity where the limit is a `share` of an uncertain thickness."""
    parts = (wire.u, share * rectangular(sheet.half_width))
    return probability(margin, math.hypot(*parts), effective_dof(parts, (wire.dof, math.inf)))


def _height_verdict(
    wire: Standing, sheet: Sheet, rule: HeightRule, margin: Millimetre, p: float
) -> tuple[Verdict, str]:
    if wire.bound is Bound.LOWER and margin >= -TIE:
        return Verdict.UNDECIDED, "undecided"
    if wire.bound is Bound.UPPER and margin < -TIE:
        return Verdict.UNDECIDED, "undecided"
    verdict = judge(margin, p, rule.acceptance)
    if verdict is Verdict.PASS:
        return verdict, "run" if p >= rule.acceptance.confidence else "run-close"
    if verdict is Verdict.UNDECIDED:
        return verdict, "undecided"
    if wire.value > rule.practice.borderline_share * sheet.thickness + TIE:
        return verdict, "too-high"
    may_fit = p > 1.0 - rule.acceptance.confidence
    return (Verdict.UNDECIDED if may_fit else verdict), "borderline"


def bite(wire: Standing, sheet: Sheet, rule: HeightRule) -> Check:
    """Whether the wire stands high enough to bite.

    Source
    ------
    Limit: *from memory*. Rule: JCGM 106:2012, clauses 7 and 8.
    """
    limit = least_height(sheet, rule.practice)
    share = rule.practice.bite_share if limit > rule.practice.bite_height else 0.0
    margin = wire.value - limit
    p = _probability(margin, wire, share, sheet)
    verdict = _bite_verdict(wire.bound, rule.acceptance, margin, p)
    word = {Verdict.PASS: "bites", Verdict.FAIL: "too-low"}.get(verdict, "undecided")
    return _check(
        "bite",
        verdict,
        word,
        wire.value,
        limit,
        "mm",
        _told(p, wire.bound, Bound.LOWER, margin),
        rule,
        BITE_SOURCE,
    )


def _bite_verdict(bound: Bound, acceptance: Acceptance, margin: Millimetre, p: float) -> Verdict:
    good = margin >= -TIE
    if (bound is Bound.UPPER and good) or (bound is Bound.LOWER and not good):
        return Verdict.UNDECIDED
    return judge(margin, p, acceptance)


def _told(p: float, bound: Bound, good_side: Bound, margin: Millimetre) -> float | None:
    """Probability worth telling: one side that does not reach the limit has none."""
    reaches = margin >= -TIE if bound is good_side else margin < -TIE
    return p if bound is Bound.BOTH or reaches else None


def _check(
    name: str,
    verdict: Verdict,
    word: str,
    value: float,
    limit: float,
    unit: str,
    p: float | None,
    rule: HeightRule,
    source: Source,
) -> Check:
    return Check(
        id=name,
        verdict=verdict,
        word=word,
        value=value,
        limit=limit,
        unit=unit,
        probability=p,
        rule=rule.acceptance.rule,
        source=source,
    )
