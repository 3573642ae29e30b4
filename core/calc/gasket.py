"""Wire height against the sheet: share of thickness, bite, and the largest height a sheet takes."""

from dataclasses import dataclass
from enum import StrEnum

from core.calc.height import Bound, Height
from core.source import Source
from core.tables.practice import BITE_SOURCE, HEIGHT, HEIGHT_SOURCE, HeightPractice
from core.uncertain import rectangular
from core.unit_types import Millimetre, Number
from core.verdict import PLAIN, TIE, Acceptance, Check, Rule, Verdict, probability

SURE = 0.95
"""Probability from which RUN is said without a second word."""


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
    """How far the wire stands into the sheet: height less the print in the head [mm]."""

    bound: Bound
    value: Millimetre
    u: Millimetre
    dof: float


def standing(height: Height, face: HeadFace, print_half_width: Millimetre) -> Standing:
    """Height that the sheet feels.

    A head that has run carries the print of the wire; the wire stands into the print and bites by
    the difference.

    Source
    ------
    *common practice, no source*.
    """
    if face.face is not Face.PRINTED:
        return Standing(bound=height.bound, value=height.value, u=height.u, dof=height.dof)
    u_print = rectangular(print_half_width)
    return Standing(
        bound=height.bound,
        value=height.value - face.depth,
        u=(height.u**2 + u_print**2) ** 0.5,
        dof=height.dof,
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
    p = probability(margin, _margin_u(wire.u, limit, sheet), wire.dof)
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


def _margin_u(u_height: Millimetre, share: Number, sheet: Sheet) -> Millimetre:
    return float((u_height**2 + (share * rectangular(sheet.half_width)) ** 2) ** 0.5)


def _height_verdict(
    wire: Standing, sheet: Sheet, rule: HeightRule, margin: Millimetre, p: float
) -> tuple[Verdict, str]:
    if wire.bound is Bound.LOWER and margin >= -TIE:
        return Verdict.UNDECIDED, "undecided"
    if wire.bound is Bound.UPPER and margin < -TIE:
        return Verdict.UNDECIDED, "undecided"
    if rule.acceptance.rule is Rule.GUARDED:
        return _guarded(rule, sheet, wire, p)
    if margin >= -TIE:
        return Verdict.PASS, "run" if p >= SURE else "run-close"
    if wire.value > rule.practice.borderline_share * sheet.thickness + TIE:
        return Verdict.FAIL, "too-high"
    return (Verdict.UNDECIDED if p > 1.0 - SURE else Verdict.FAIL), "borderline"


def _guarded(rule: HeightRule, sheet: Sheet, wire: Standing, p: float) -> tuple[Verdict, str]:
    confidence = rule.acceptance.confidence
    if p >= confidence:
        return Verdict.PASS, "run"
    if p > 1.0 - confidence:
        return Verdict.UNDECIDED, "undecided"
    over = wire.value > rule.practice.borderline_share * sheet.thickness + TIE
    return Verdict.FAIL, "too-high" if over else "borderline"


def bite(wire: Standing, sheet: Sheet, rule: HeightRule) -> Check:
    """Whether the wire stands high enough to bite.

    Source
    ------
    Limit: *from memory*. Rule: JCGM 106:2012, clauses 7 and 8.
    """
    limit = least_height(sheet, rule.practice)
    share = rule.practice.bite_share if limit > rule.practice.bite_height else 0.0
    margin = wire.value - limit
    p = probability(margin, _margin_u(wire.u, share, sheet), wire.dof)
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
    if acceptance.rule is Rule.PLAIN:
        return Verdict.PASS if good else Verdict.FAIL
    if p >= acceptance.confidence:
        return Verdict.PASS
    return Verdict.FAIL if p <= 1.0 - acceptance.confidence else Verdict.UNDECIDED


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
