"""Every case of every topic, and how each source fares: the same on a desk and on a phone."""

import importlib
import pkgutil
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import chain

import core.published
from core.published.case import Case
from core.source import Source, Trust


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceResult:
    """How many values of one source are met.

    Parameters
    ----------
    source
        Where the values stand, and how far they are trusted.
    cases, met
        How many there are, and how many are met.
    """

    source: str
    cases: int
    met: int


def all_cases() -> tuple[Case, ...]:
    """Every case, by topic file in the order of the alphabet."""
    names = sorted(each.name for each in pkgutil.iter_modules(core.published.__path__))
    modules = (importlib.import_module(f"core.published.{name}") for name in names)
    return tuple(chain.from_iterable(getattr(module, "CASES", ()) for module in modules))


def by_source(cases: Sequence[Case]) -> tuple[SourceResult, ...]:
    """Results of each source, the published ones first."""
    results: dict[Source, list[bool]] = {}
    for case in cases:
        results.setdefault(case.source, []).append(case.met())
    ordered = sorted(results, key=lambda each: (list(Trust).index(each.trust), each.where))
    return tuple(
        SourceResult(source=str(each), cases=len(results[each]), met=sum(results[each]))
        for each in ordered
    )
