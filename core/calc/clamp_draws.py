"""The same loads by chance: ten thousand engines drawn, beside the first-order spread.

Written as a generator, so that a screen can draw its progress between two slices.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from random import Random

from core.calc.clamp import BeddingCase, CylinderLoads, bedding_load
from core.calc.engine_clamp import EngineClamp
from core.calc.separation import gas_force, left_at_peak
from core.uncertain import SQRT3, Explained, Term
from core.unit_types import Newton, Number
from core.verdict import probability

DRAWS = 10_000
SLICE = 250
AGREES = 0.02
"""First order and draws agree where their spreads differ by less than this."""
QUANTITIES = ("clamp", "left", "body-at-least", "body-at-most")


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """One load by both ways.

    Parameters
    ----------
    quantity
        One of `QUANTITIES`.
    mean, u
        Mean and standard deviation of the draws [N].
    first_order_u
        Standard uncertainty, first order [N].
    above_zero
        Share of the draws above zero [1].
    first_order_above_zero
        The same, first order [1].
    near_linear
        Whether both spreads agree within 2 %; where not, the draws are to be believed.
    """

    cylinder: str
    quantity: str
    mean: Newton
    u: Newton
    first_order_u: Newton
    above_zero: Number
    first_order_above_zero: Number
    near_linear: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far the draws are; the last one carries the comparison."""

    done: int
    draws: int
    compared: tuple[Compared, ...] | None = None


@dataclass(slots=True)
class _Tally:
    """Running sums of one load."""

    count: int = 0
    mean: float = 0.0
    squares: float = 0.0
    above: int = 0

    def add(self, value: float) -> None:
        self.count += 1
        step = value - self.mean
        self.mean += step / self.count
        self.squares += step * (value - self.mean)
        self.above += value > 0.0

    @property
    def u(self) -> float:
        return math.sqrt(self.squares / (self.count - 1))


def cross_check(
    engine: EngineClamp, random: Random, draws: int = DRAWS, slice_size: int = SLICE
) -> Iterator[Progress]:
    """Draw the inputs of an engine and compare the spreads.

    Limits of error are drawn as rectangular; heights, and the scatter from fastener to fastener,
    as normal. What the fasteners share is drawn once an engine.

    Parameters
    ----------
    random
        Seeded by the caller.
    draws, slice_size
        How many engines, and how many between two reports.

    Source
    ------
    JCGM 101:2008, propagation of distributions.
    """
    preload = engine.preload
    samplers = [_sampler(engine, each.loads, random) for each in engine.cylinders]
    tallies = [tuple(_Tally() for _ in QUANTITIES) for _ in engine.cylinders]
    for done in range(1, draws + 1):
        shared = preload.force(*(_rectangular(term, random) for term in preload.terms))
        for sample, row in zip(samplers, tallies, strict=True):
            for tally, value in zip(row, sample(shared), strict=True):
                tally.add(value)
        if done % slice_size == 0 and done < draws:
            yield Progress(done=done, draws=draws)
    yield Progress(done=draws, draws=draws, compared=_compared(engine, tallies))


def _rectangular(term: Term, random: Random) -> float:
    return term.value + SQRT3 * term.u * (2.0 * random.random() - 1.0)


def _sampler(
    engine: EngineClamp, loads: CylinderLoads, random: Random
) -> Callable[[Newton], tuple[float, float, float, float]]:
    """Function from the preload that all fasteners share to the loads of one drawn cylinder."""
    cylinder, share = loads.cylinder, engine.joint.separation_share
    pressure, count = cylinder.pressure, cylinder.fasteners.count
    scatter = engine.preload.random / math.sqrt(cylinder.fasteners.independent)
    hardest, softest = loads.bedding[-1], loads.bedding[0]

    def sample(shared: Newton) -> tuple[float, float, float, float]:
        clamp = count * shared * random.gauss(1.0, scatter)
        peak = pressure.value + pressure.half_width * (2.0 * random.random() - 1.0)
        off = random.gauss(0.0, cylinder.height_u)
        thicker = cylinder.wire_half_width * (2.0 * random.random() - 1.0)
        return (
            clamp,
            left_at_peak(clamp, gas_force(cylinder.ring_diameter, peak), share),
            clamp - _needed(loads, hardest, off, thicker),
            clamp - _needed(loads, softest, off, thicker),
        )

    return sample


def _needed(loads: CylinderLoads, case: BeddingCase, off: float, thicker: float) -> Newton:
    cylinder = loads.cylinder
    return bedding_load(
        case.resistance, cylinder.wire_diameter + thicker, case.depth + off, cylinder.ring_diameter
    )


def _compared(engine: EngineClamp, tallies: Sequence[tuple[_Tally, ...]]) -> tuple[Compared, ...]:
    return tuple(
        _row(each.loads.cylinder.name, quantity, explained, tally)
        for each, row in zip(engine.cylinders, tallies, strict=True)
        for quantity, explained, tally in zip(QUANTITIES, _explained(each.loads), row, strict=True)
    )


def _explained(loads: CylinderLoads) -> tuple[Explained, ...]:
    return loads.clamp, loads.left, loads.body_at_least, loads.body_at_most


def _row(name: str, quantity: str, explained: Explained, tally: _Tally) -> Compared:
    return Compared(
        cylinder=name,
        quantity=quantity,
        mean=tally.mean,
        u=tally.u,
        first_order_u=explained.u,
        above_zero=tally.above / tally.count,
        first_order_above_zero=probability(explained.value, explained.u),
        near_linear=abs(tally.u - explained.u) <= AGREES * tally.u,
    )
