"""Load of one fastener by the way it was tightened, and what that load rests on.

Errors that all fasteners share (friction, wrench) are kept apart from errors from fastener to
fastener: only the second kind averages out over several fasteners.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from core.calc.fasteners import Fastener, Grip, stud_stiffness
from core.source import Source, Trust, derived, published
from core.tables.friction import Lubricant
from core.tables.tightening_scatter import (
    SCATTER,
    STRETCH_READING,
    WRENCH,
    WRENCH_SOURCE,
    Method,
    Scatter,
)
from core.texts import text
from core.uncertain import Term, rectangular
from core.unit_types import (
    Millimetre,
    Newton,
    NewtonMillimetre,
    NewtonPerMillimetre,
    Number,
    Radian,
)

TYPED = Source(Trust.ASSUMED, "as typed")
SHIGLEY_TORQUE = published(
    "Shigley's Mechanical Engineering Design, 9th ed., eq. 8-27, as restated"
)
SHIGLEY_TARGET = published("Shigley's Mechanical Engineering Design, 9th ed., eq. 8-31, 8-32")
TURN_OF_NUT = derived("stud and joint as springs in series, taken up by the turn of the nut")
STRETCH_OF_STUD = derived("stiffness of the stud times its stretch")


def preload_from_torque(torque: NewtonMillimetre, friction: Number, diameter: Millimetre) -> Newton:
    """Preload of one fastener [N].

    Parameters
    ----------
    torque
        Tightening torque [N·mm].
    friction
        Torque coefficient K [1].
    diameter
        Nominal diameter [mm].

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., eq. 8-27, as restated.
    """
    return torque / (friction * diameter)


def torque_for(preload: Newton, friction: Number, diameter: Millimetre) -> NewtonMillimetre:
    """Torque that gives a preload [N·mm].

    Parameters
    ----------
    preload
        Wanted preload [N].
    friction
        Torque coefficient K [1].
    diameter
        Nominal diameter [mm].

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., eq. 8-27, as restated.
    """
    return friction * preload * diameter


def preload_from_angle(
    angle: Radian,
    pitch: Millimetre,
    stud_stiffness: NewtonPerMillimetre,
    joint_stiffness: NewtonPerMillimetre,
) -> Newton:
    """Preload that a turn of the nut adds, below yield [N].

    Parameters
    ----------
    angle
        Turn after the snug torque [rad].
    pitch
        Thread pitch [mm].
    stud_stiffness, joint_stiffness
        Stiffness of stud and of clamped parts [N/mm].

    Source
    ------
    *derived*: the travel of the nut is shared by two springs in series.
    """
    series = 1.0 / (1.0 / stud_stiffness + 1.0 / joint_stiffness)
    return angle / (2.0 * math.pi) * pitch * series


def preload_from_stretch(stretch: Millimetre, stud_stiffness: NewtonPerMillimetre) -> Newton:
    """Preload of a stud whose stretch was measured [N].

    Parameters
    ----------
    stretch
        Loaded less free length [mm].
    stud_stiffness
        Stiffness of the stud [N/mm].

    Source
    ------
    *derived*: Hooke's law.
    """
    return stretch * stud_stiffness


def tightening_factor(scatter: Number) -> Number:
    """Greatest over least preload [1], from the half width of the scatter [1].

    Source
    ------
    VDI 2230-1:2015, definition of the tightening factor.
    """
    return (1.0 + scatter) / (1.0 - scatter)


def scatter_of(tightening_factor: Number) -> Number:
    """Half width of the scatter [1], from greatest over least preload [1].

    Source
    ------
    VDI 2230-1:2015, definition of the tightening factor.
    """
    return (tightening_factor - 1.0) / (tightening_factor + 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Preload:
    """Load of one fastener and what it rests on.

    Parameters
    ----------
    force
        Preload from the values of `terms`, in their order [N].
    terms
        What all fasteners share, limits of error taken as rectangular.
    random
        Relative standard deviation from fastener to fastener [1].
    best
        Best value [N].
    low_end, high_end
        Preload at the high-friction and at the low-friction end of the range, or at the ends of
        the method's band [N].
    """

    force: Callable[..., Newton]
    terms: tuple[Term, ...]
    random: Number
    random_source: Source
    best: Newton
    low_end: Newton
    high_end: Newton
    formula: str
    source: Source


class Tightening(Protocol):
    """A way of bringing a fastener to its load."""

    def preload(self, fastener: Fastener) -> Preload:
        """Load of one such fastener."""


def _term(key: str, value: float, unit: str, u: float = 0.0, source: Source = TYPED) -> Term:
    return Term(name=text(f"clamp.term.{key}"), value=value, u=u, unit=unit, source=source)


def _method_term(scatter: Scatter) -> Term:
    return _term("method", 1.0, "1", scatter.common, scatter.source)


@dataclass(frozen=True, slots=True, kw_only=True)
class PercentOfProof:
    """Tightened to a share of proof load.

    Parameters
    ----------
    share
        Share of the proof load aimed at [1].
    """

    share: Number
    method: Method = Method.NOT_TOLD

    def preload(self, fastener: Fastener) -> Preload:
        """Load of one such fastener, by Shigley 9th ed., eq. 8-31 and 8-32."""
        scatter = SCATTER[self.method]
        best = self.share * fastener.proof_load
        return Preload(
            force=lambda share, method: share * fastener.proof_load * method,
            terms=(_term("share", self.share, "1"), _method_term(scatter)),
            random=scatter.random,
            random_source=scatter.random_source,
            best=best,
            low_end=best * (1.0 - scatter.band),
            high_end=best * (1.0 + scatter.band),
            formula="Fi = share · Sp · At · method",
            source=SHIGLEY_TARGET,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Friction:
    """The torque coefficient that somebody chose.

    Parameters
    ----------
    value
        Torque coefficient K [1].
    half_width
        How far it may be off; none where the scatter of the method stands for it [1].
    """

    value: Number
    half_width: Number | None
    source: Source


def friction_of(lubricant: Lubricant) -> Friction:
    """Middle of everything printed for a lubricant, with the whole range about it.

    Source
    ------
    As the lubricant says; the middle is *derived*.
    """
    half_width = 0.5 * (lubricant.high - lubricant.low)
    return Friction(
        value=0.5 * (lubricant.high + lubricant.low),
        half_width=half_width or None,
        source=lubricant.source,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class ByTorque:
    """Tightened to a torque.

    Parameters
    ----------
    torque
        Tightening torque [N·mm].
    friction
        The torque coefficient chosen; there is no default.
    method
        Whose scatter stands for a friction that was given without its own.
    """

    torque: NewtonMillimetre
    friction: Friction
    method: Method = Method.TORQUE_ESTIMATED

    def preload(self, fastener: Fastener) -> Preload:
        """Load of one such fastener, by Shigley 9th ed., eq. 8-27, as restated."""
        scatter, diameter = SCATTER[self.method], fastener.thread.diameter
        return Preload(
            force=lambda torque, friction, method: (
                preload_from_torque(torque, friction, diameter) * method
            ),
            terms=self._terms(scatter),
            random=scatter.random,
            random_source=scatter.random_source,
            best=preload_from_torque(self.torque, self.friction.value, diameter),
            low_end=self._end(scatter, diameter, -1.0),
            high_end=self._end(scatter, diameter, 1.0),
            formula="Fi = T ÷ (K · d) · method",
            source=SHIGLEY_TORQUE,
        )

    def _terms(self, scatter: Scatter) -> tuple[Term, ...]:
        chosen = self.friction
        if chosen.half_width is None:
            return (
                _term("torque", self.torque, "N·mm"),
                _term("friction", chosen.value, "1", 0.0, chosen.source),
                _method_term(scatter),
            )
        return (
            _term("torque", self.torque, "N·mm", rectangular(WRENCH * self.torque), WRENCH_SOURCE),
            _term("friction", chosen.value, "1", rectangular(chosen.half_width), chosen.source),
            _term("method", 1.0, "1", 0.0, scatter.source),
        )

    def _end(self, scatter: Scatter, diameter: Millimetre, side: float) -> Newton:
        """Preload at the low-friction end (side 1) or the high-friction end (side −1)."""
        chosen = self.friction
        if chosen.half_width is None:
            aimed = preload_from_torque(self.torque, chosen.value, diameter)
            return aimed * (1.0 + side * scatter.band)
        return preload_from_torque(self.torque, chosen.value - side * chosen.half_width, diameter)


@dataclass(frozen=True, slots=True, kw_only=True)
class ByAngle:
    """Tightened to a snug torque and turned on by an angle.

    Parameters
    ----------
    snug_torque
        Torque before the turn [N·mm].
    angle
        Turn after it [rad].
    grip
        What stretches of the stud.
    load_share
        Stiffness of the stud over that of stud and joint together, more than 0 [1].
    """

    snug_torque: NewtonMillimetre
    friction: Friction
    angle: Radian
    grip: Grip
    load_share: Number

    def preload(self, fastener: Fastener) -> Preload:
        """Load of one such fastener, *derived*: springs in series, below yield."""
        scatter, thread, chosen = SCATTER[Method.ANGLE], fastener.thread, self.friction
        slack = chosen.half_width or 0.0
        stud = stud_stiffness(fastener, self.grip)
        joint = stud * (1.0 - self.load_share) / self.load_share
        turn = preload_from_angle(self.angle, thread.pitch, stud, joint)

        def force(friction: Number, turned: Newton, method: Number) -> Newton:
            snug = preload_from_torque(self.snug_torque, friction, thread.diameter)
            return (snug + turned) * method

        return Preload(
            force=force,
            terms=(
                _term("friction", chosen.value, "1", rectangular(slack), chosen.source),
                _term("turn", turn, "N", 0.0, TURN_OF_NUT),
                _method_term(scatter),
            ),
            random=scatter.random,
            random_source=scatter.random_source,
            best=force(chosen.value, turn, 1.0),
            low_end=force(chosen.value + slack, turn, 1.0 - scatter.band),
            high_end=force(chosen.value - slack, turn, 1.0 + scatter.band),
            formula="Fi = (T ÷ (K · d) + θ/2π · P · k) · method",
            source=TURN_OF_NUT,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ByStretch:
    """Tightened until the stud is longer by a measured stretch.

    Parameters
    ----------
    stretch
        Loaded less free length [mm].
    grip
        What stretches of the stud.
    reading
        Limit of error of one stretch reading, half width [mm].
    """

    stretch: Millimetre
    grip: Grip
    reading: Millimetre = STRETCH_READING

    def preload(self, fastener: Fastener) -> Preload:
        """Load of one such fastener, *derived*: Hooke's law, below yield."""
        scatter, read = SCATTER[Method.STRETCH], self.reading / self.stretch
        stud = stud_stiffness(fastener, self.grip)
        best = preload_from_stretch(self.stretch, stud)
        return Preload(
            force=lambda stretch, stiffness, method: (
                preload_from_stretch(stretch, stiffness) * method
            ),
            terms=(
                _term("stretch", self.stretch, "mm"),
                _term("stud", stud, "N/mm"),
                _method_term(scatter),
            ),
            random=math.hypot(scatter.random, rectangular(read)),
            random_source=scatter.random_source,
            best=best,
            low_end=best * (1.0 - scatter.band - read),
            high_end=best * (1.0 + scatter.band + read),
            formula="Fi = stretch · k · method",
            source=STRETCH_OF_STUD,
        )
