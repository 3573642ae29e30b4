"""Where the rule of the trade is clear, and where it is not: then both readings, never a guess."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from core.calc.gasket import Face
from core.source import PRACTICE, Source
from core.tables.lockwire import WireMaterial
from core.texts.sentence import Sentence
from core.verdict import Verdict


class SheetMaterial(StrEnum):
    """What the gasket is made of."""

    SOFT_COPPER = "soft-copper"
    OTHER = "other"


class WireIn(StrEnum):
    """Where the wire sits."""

    BLOCK = "block"
    HEAD = "head"
    BOTH = "both"


@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """What makes a job unlike the usual one."""

    wire: WireMaterial = WireMaterial.STAINLESS_304
    sheet: SheetMaterial = SheetMaterial.SOFT_COPPER
    face: Face = Face.FLAT
    wire_in: WireIn = WireIn.BLOCK
    loose: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Standpoint:
    """What the trade says about one point of a job.

    Parameters
    ----------
    verdict
        Pass where the rule is clear and holds, fail where it is clear and broken, undecided where
        the trade does not agree.
    sentences
        The rule; two readings where undecided.
    """

    point: str
    verdict: Verdict
    sentences: tuple[Sentence, ...]
    source: Source = PRACTICE


_Case = tuple[Callable[[Situation], bool], str, Verdict]

_CASES: tuple[_Case, ...] = (
    (lambda job: job.loose, "loose", Verdict.FAIL),
    (lambda job: job.wire_in is WireIn.BOTH, "both", Verdict.FAIL),
    (lambda job: job.wire_in is WireIn.HEAD, "head", Verdict.PASS),
    (lambda job: job.face is Face.PRINTED, "printed", Verdict.PASS),
    (lambda job: job.face is Face.RECEIVER, "receiver", Verdict.UNDECIDED),
    (lambda job: job.wire is WireMaterial.COPPER, "copper-wire", Verdict.UNDECIDED),
    (lambda job: job.wire is WireMaterial.STAINLESS_304_SPRING, "spring-wire", Verdict.UNDECIDED),
    (lambda job: job.sheet is SheetMaterial.OTHER, "other-sheet", Verdict.UNDECIDED),
)


def standpoints(job: Situation) -> tuple[Standpoint, ...]:
    """Points on which a job leaves the usual one: annealed stainless in the block, soft copper.

    Source
    ------
    *common practice, no source*.

    Examples
    --------
    >>> [point.point for point in standpoints(Situation(face=Face.RECEIVER, loose=True))]
    ['loose', 'receiver']
    """
    return tuple(_standpoint(point, verdict) for holds, point, verdict in _CASES if holds(job))


def _standpoint(point: str, verdict: Verdict) -> Standpoint:
    readings = ("one", "other") if verdict is Verdict.UNDECIDED else ("rule",)
    return Standpoint(
        point=point,
        verdict=verdict,
        sentences=tuple(Sentence(f"cut.rule.{point}.{reading}") for reading in readings),
    )
