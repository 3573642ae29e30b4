"""Will it hold: verdicts on clamp, separation and bedding, each with reason and what settles it.

Proof and separation can break something, so the guarded rule is in force there; bedding is judged
plainly by every answer for the copper. Where answers or bounds disagree, the verdict is undecided
and names the input that is missing.
"""

import math
from dataclasses import dataclass

from core.calc.clamp import CylinderLoads, Joint, single_fastener_terms
from core.calc.gasket import SURE
from core.calc.preload import Preload
from core.source import Source, derived, published
from core.texts import text
from core.texts.force import Force
from core.texts.length import Length
from core.texts.sentence import Sentence
from core.texts.share import Share, Sureness
from core.uncertain import Explained, Term, explain
from core.unit_types import Number
from core.verdict import GUARDED, PLAIN, Acceptance, Check, Verdict, judge, probability

PROOF_SOURCE = published("ISO 898-1:2013 and SAE J429, proof load; Shigley 9th ed., eq. 8-28")
SEPARATION_SOURCE = published("Shigley's Mechanical Engineering Design, 9th ed., eq. 8-30")
BEDS_SOURCE = derived("clamp against the load that beds the wire, slip line to hardness")
SLACK = 1e-9
SEVERITY = (Verdict.FAIL, Verdict.UNDECIDED, Verdict.PASS)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rules:
    """Rules in force: for what can break something, and for bedding."""

    breaking: Acceptance = GUARDED
    bedding: Acceptance = PLAIN


RULES = Rules()


@dataclass(frozen=True, slots=True, kw_only=True)
class Judgement:
    """A verdict with its reason, the input that would settle it, and what to change."""

    check: Check
    because: Sentence
    settle: Sentence | None = None
    change: Sentence | None = None


def deciding_input(explained: Explained) -> tuple[Term, Number]:
    """The input that brings most of the spread, and its share of the variance [1].

    Source
    ------
    JCGM 100:2008 (GUM), 5.1.2: shares of the combined variance.
    """
    pairs = zip(explained.terms, explained.shares, strict=True)
    return max(pairs, key=lambda pair: pair[1])


def _decides(explained: Explained) -> Sentence:
    term, share = deciding_input(explained)
    return Sentence("clamp.settle.input", {"input": term.name, "share": Share(share)})


def explained_proof_share(joint: Joint, preload: Preload) -> Explained:
    """Load of one tightened fastener as a share of proof [1].

    Source
    ------
    ISO 898-1:2013, SAE J429: proof load; preload by its own method.
    """
    proof = joint.fastener.proof_load
    return explain(
        lambda *values: preload.force(*values[:-1]) * values[-1] / proof,
        single_fastener_terms(preload),
        unit="1",
        formula=f"Fi ÷ (Sp · At); {preload.formula}",
        source=preload.source,
        assumptions=(text("clamp.assumes.area"),),
    )


def judge_proof(joint: Joint, preload: Preload, share: Explained, rules: Rules) -> Judgement:
    """Whether the tightened fastener stays below proof; above it at low friction it will yield.

    Source
    ------
    Proof load: ISO 898-1:2013, SAE J429. Rule: JCGM 106:2012, 8.3.
    """
    high = preload.high_end / joint.fastener.proof_load
    forced = Verdict.FAIL if high > 1.0 + SLACK else None
    check = _below_proof("clamp-to-proof", share, rules.breaking, forced, joint.fastener.source)
    return Judgement(
        check=check,
        because=Sentence(
            f"clamp.proof.{check.word}", {"best": Share(share.value), "high": Share(high)}
        ),
        settle=_decides(share) if check.verdict is Verdict.UNDECIDED else None,
        change=_less_tightening(share.value / high, check.verdict),
    )


def _below_proof(
    name: str, share: Explained, acceptance: Acceptance, forced: Verdict | None, source: Source
) -> Check:
    """A share of proof against 1; a verdict forced from elsewhere has no probability."""
    p = probability(1.0 - share.value, share.u)
    judged = judge(1.0 - share.value, p, acceptance, SLACK)
    verdict = forced or judged
    words = {Verdict.PASS: "below-proof", Verdict.FAIL: "will-yield"}
    return Check(
        id=name,
        verdict=verdict,
        word=words.get(verdict, "undecided"),
        value=share.value,
        limit=1.0,
        unit="1",
        probability=p if verdict is judged else None,
        rule=acceptance.rule,
        source=source,
    )


def _less_tightening(share: Number, verdict: Verdict) -> Sentence | None:
    """Share of proof to aim at so that the low-friction end stays on proof."""
    if verdict is not Verdict.FAIL:
        return None
    return Sentence("clamp.change.proof", {"share": Share(math.floor(100.0 * share) / 100.0)})


def judge_cylinder(
    joint: Joint, loads: CylinderLoads, rules: Rules, proof: Judgement
) -> tuple[Judgement, ...]:
    """Fastener at peak, separation and bedding of one cylinder.

    Parameters
    ----------
    proof
        The verdict on the tightened fastener: one that yields then is not saved by gas.
    """
    return (
        _judge_at_peak(joint, loads, rules.breaking, proof.check.verdict),
        _judge_separation(loads, rules.breaking),
        _judge_beds(loads, rules.bedding),
    )


def _floored(verdict: Verdict, loads: CylinderLoads) -> Verdict:
    """A floor of the pressure can show that it fails, never that it holds."""
    floor = loads.cylinder.pressure.is_floor and verdict is Verdict.PASS
    return Verdict.UNDECIDED if floor else verdict


def _judge_at_peak(
    joint: Joint, loads: CylinderLoads, acceptance: Acceptance, tightened: Verdict
) -> Judgement:
    share = loads.at_peak
    free = _below_proof("fastener-at-peak", share, acceptance, None, PROOF_SOURCE)
    bound_only = joint.load_share is None and free.verdict is not Verdict.PASS
    forced = Verdict.UNDECIDED if bound_only else _floored(free.verdict, loads)
    if tightened is Verdict.FAIL:
        forced = tightened
    check = _below_proof(free.id, share, acceptance, forced, PROOF_SOURCE)
    return Judgement(
        check=check,
        because=_at_peak_because(joint, loads),
        settle=_settle_at_peak(check.verdict, bound_only, loads),
        change=Sentence("clamp.change.at_peak") if check.verdict is Verdict.FAIL else None,
    )


def _at_peak_because(joint: Joint, loads: CylinderLoads) -> Sentence:
    values: dict[str, object] = {
        "share": Share(loads.at_peak.value),
        "high": Share(loads.at_peak_range.high),
        "taken": Share(joint.fastener_share),
    }
    return Sentence(f"clamp.at_peak.{'bound' if joint.load_share is None else 'given'}", values)


def _settle_at_peak(verdict: Verdict, bound_only: bool, loads: CylinderLoads) -> Sentence | None:
    if bound_only and verdict is Verdict.UNDECIDED:
        return Sentence("clamp.settle.stiffness")
    return _settle_gas(verdict, loads.at_peak, loads)


def _settle_gas(verdict: Verdict, explained: Explained, loads: CylinderLoads) -> Sentence | None:
    if verdict is not Verdict.UNDECIDED:
        return None
    floor = loads.cylinder.pressure.is_floor
    return Sentence("clamp.settle.pressure") if floor else _decides(explained)


def _judge_separation(loads: CylinderLoads, acceptance: Acceptance) -> Judgement:
    p = probability(loads.left.value, loads.left.u)
    judged = judge(loads.left.value, p, acceptance)
    verdict = _floored(judged, loads)
    words = {Verdict.PASS: "holds-down", Verdict.FAIL: "lifts"}
    check = Check(
        id="separation",
        verdict=verdict,
        word=words.get(verdict, "undecided"),
        value=loads.separation,
        limit=1.0,
        unit="1",
        probability=p if verdict is judged else None,
        rule=acceptance.rule,
        source=SEPARATION_SOURCE,
    )
    return Judgement(
        check=check,
        because=_separation_because(loads),
        settle=_settle_gas(verdict, loads.left, loads),
        change=Sentence("clamp.change.separation") if verdict is Verdict.FAIL else None,
    )


def _separation_because(loads: CylinderLoads) -> Sentence:
    values: dict[str, object] = {
        "clamp": Force(loads.clamp.value),
        "gas": Force(loads.gas),
        "low": loads.separation_range.low,
        "high": loads.separation_range.high,
    }
    return Sentence(
        f"clamp.separation.{'floor' if loads.cylinder.pressure.is_floor else 'peak'}", values
    )


def _judge_beds(loads: CylinderLoads, acceptance: Acceptance) -> Judgement:
    hard, soft = loads.body_at_least, loads.body_at_most
    sure = probability(hard.value, hard.u)
    possible = probability(soft.value, soft.u)
    verdict, word = _beds_verdict(loads, sure, possible, acceptance)
    check = Check(
        id="beds",
        verdict=verdict,
        word=word,
        value=hard.value,
        limit=0.0,
        unit="N",
        probability=_told(verdict, sure, possible),
        rule=acceptance.rule,
        source=BEDS_SOURCE,
    )
    return Judgement(
        check=check,
        because=_beds_because(loads, word, sure),
        settle=_settle_beds(loads, hard) if verdict is Verdict.UNDECIDED else None,
        change=_change_beds(loads) if verdict is not Verdict.PASS else None,
    )


def _told(verdict: Verdict, sure: Number, possible: Number) -> Number | None:
    """Probability by the answer that decided; none where the answers disagree."""
    told = {Verdict.PASS: sure, Verdict.FAIL: possible}
    return told.get(verdict)


def _beds_verdict(
    loads: CylinderLoads, sure: Number, possible: Number, acceptance: Acceptance
) -> tuple[Verdict, str]:
    touches = [case.depth > 0.0 for case in loads.bedding]
    if not any(touches):
        return Verdict.FAIL, "does-not-touch"
    if not all(touches):
        return Verdict.UNDECIDED, "undecided"
    if judge(loads.body_at_least.value, sure, acceptance) is Verdict.PASS:
        return Verdict.PASS, "beds" if sure >= SURE else "beds-close"
    if judge(loads.body_at_most.value, possible, acceptance) is Verdict.FAIL:
        return Verdict.FAIL, "will-not-bed"
    return Verdict.UNDECIDED, "undecided"


def _beds_because(loads: CylinderLoads, word: str, sure: Number) -> Sentence:
    needed = [case.needed for case in loads.bedding]
    values: dict[str, object] = {
        "low": Force(needed[0]),
        "high": Force(needed[-1]),
        "clamp": Force(loads.clamp.value),
        "sure": Sureness(sure),
    }
    return Sentence(f"clamp.beds.{word}", values)


def _settle_beds(loads: CylinderLoads, hard: Explained) -> Sentence:
    if len({case.depth for case in loads.bedding}) > 1:
        return Sentence("clamp.settle.receiver")
    models_agree = (loads.body_at_least.value > 0.0) == (loads.body_at_most.value > 0.0)
    return _decides(hard) if models_agree else Sentence("clamp.settle.hardness")


def _change_beds(loads: CylinderLoads) -> Sentence | None:
    """Heights at which the wire just beds, hardest and softest answer."""
    hardest, softest = loads.slack_height
    if hardest is None:
        return None
    if softest is None:
        return Sentence("clamp.change.beds_from", {"low": Length(hardest)})
    return Sentence("clamp.change.beds", {"low": Length(hardest), "high": Length(softest)})


def worst_first(judgements: tuple[Judgement, ...]) -> tuple[Judgement, ...]:
    """Judgements with the worst verdict first, else in their order."""
    return tuple(sorted(judgements, key=lambda each: SEVERITY.index(each.check.verdict)))


CAUTION = Sentence("clamp.caution")
