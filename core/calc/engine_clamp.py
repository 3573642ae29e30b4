"""Every cylinder of an engine under its clamp, and the weakest of them."""

from collections.abc import Sequence
from dataclasses import dataclass

from core.calc.clamp import Cylinder, CylinderLoads, Joint, cylinder_loads
from core.calc.clamp_verdicts import (
    CAUTION,
    RULES,
    SEVERITY,
    Judgement,
    Rules,
    explained_proof_share,
    judge_cylinder,
    judge_proof,
    worst_first,
)
from core.calc.preload import Preload
from core.errors import Fault, InputError, fault
from core.texts.sentence import Sentence
from core.uncertain import Explained
from core.unit_types import Newton, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgedCylinder:
    """One cylinder with its verdicts."""

    loads: CylinderLoads
    judgements: tuple[Judgement, ...]

    @property
    def worst(self) -> Judgement:
        """The verdict that decides."""
        return worst_first(self.judgements)[0]


@dataclass(frozen=True, slots=True, kw_only=True)
class EngineClamp:
    """An engine under its clamp.

    Parameters
    ----------
    preload
        Load of one fastener and what it rests on.
    proof_share
        That load as a share of proof [1].
    proof_share_high
        The same at the low-friction end of the range [1].
    weakest
        The cylinder with the worst verdicts; of those, the one nearest to lifting; of those, the
        one with the least load on the body of its sheet.
    scale
        Full length of every load bar of this engine [N].
    """

    joint: Joint
    preload: Preload
    proof_share: Explained
    proof_share_high: Number
    proof: Judgement
    cylinders: tuple[JudgedCylinder, ...]
    weakest: JudgedCylinder
    scale: Newton
    caution: Sentence = CAUTION


def engine_clamp(joint: Joint, cylinders: Sequence[Cylinder], rules: Rules = RULES) -> EngineClamp:
    """Loads and verdicts of every cylinder.

    Parameters
    ----------
    cylinders
        At least one, shape (n,).

    Raises
    ------
    InputError
        If a size cannot be calculated, each named.

    Source
    ------
    As each load and verdict says.
    """
    check_sizes(joint, cylinders)
    preload = joint.tightening.preload(joint.fastener)
    share = explained_proof_share(joint, preload)
    proof = judge_proof(joint, preload, share, rules)
    judged = tuple(_judged(joint, preload, each, rules, proof) for each in cylinders)
    return EngineClamp(
        joint=joint,
        preload=preload,
        proof_share=share,
        proof_share_high=preload.high_end / joint.fastener.proof_load,
        proof=proof,
        cylinders=judged,
        weakest=min(judged, key=_strength),
        scale=max(max(each.loads.proof, each.loads.clamp_range.high) for each in judged),
    )


def _judged(
    joint: Joint, preload: Preload, cylinder: Cylinder, rules: Rules, proof: Judgement
) -> JudgedCylinder:
    loads = cylinder_loads(joint, preload, cylinder)
    return JudgedCylinder(loads=loads, judgements=judge_cylinder(joint, loads, rules, proof))


def _strength(judged: JudgedCylinder) -> tuple[list[int], float, float]:
    severities = sorted(SEVERITY.index(each.check.verdict) for each in judged.judgements)
    return severities, judged.loads.separation, judged.loads.body_at_least.value


def check_sizes(joint: Joint, cylinders: Sequence[Cylinder]) -> None:
    """Refuse sizes that cannot be calculated.

    Raises
    ------
    InputError
        With every fault, each naming its field.
    """
    faults = [each for cylinder in cylinders for each in _faults(cylinder)]
    if not cylinders:
        faults.append(fault("cylinders", "clamp.cylinder.none"))
    if joint.load_share is not None and not 0.0 <= joint.load_share < 1.0:
        faults.append(fault("load-share", "clamp.load_share"))
    if faults:
        raise InputError(faults)


def _faults(cylinder: Cylinder) -> list[Fault]:
    faults = []
    if cylinder.height >= cylinder.wire_diameter:
        faults.append(fault("height", "clamp.cylinder.height"))
    if cylinder.wire_diameter >= 0.5 * cylinder.ring_diameter:
        faults.append(fault("ring", "clamp.cylinder.ring"))
    if cylinder.pressure.half_width >= cylinder.pressure.value:
        faults.append(fault("pressure-tol", "clamp.cylinder.pressure"))
    if cylinder.fasteners.count <= 0.0:
        faults.append(fault("fasteners", "clamp.cylinder.fasteners"))
    return faults
