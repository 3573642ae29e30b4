"""A measured figure, printed beside its peer or its goal."""

import statistics
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One figure.

    Parameters
    ----------
    what
        What was measured and how.
    value, unit
        The figure.
    goal
        Greatest value that is good enough; none for a figure without one.
    peer, peer_value
        What was measured beside it in the same run.
    """

    what: str
    value: float
    unit: str
    goal: float | None = None
    peer: str = ""
    peer_value: float | None = None

    @property
    def met(self) -> bool:
        return self.goal is None or self.value <= self.goal

    def __str__(self) -> str:
        goal = (
            "" if self.goal is None else f"  goal ≤ {self.goal:g} {'met' if self.met else 'MISSED'}"
        )
        beside = (
            ""
            if self.peer_value is None
            else f"  beside {self.peer}: {self.peer_value:.4g} {self.unit}"
        )
        return f"{self.what}: {self.value:.4g} {self.unit}{goal}{beside}"


def median_seconds(work: Callable[[object], object], inputs: Sequence[object]) -> float:
    """Median time of `work` over `inputs`, one call each."""
    times = []
    for each in inputs:
        start = time.perf_counter()
        work(each)
        times.append(time.perf_counter() - start)
    return statistics.median(times)
