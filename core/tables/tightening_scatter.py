"""How far the clamp of one fastener may be from what was aimed at, by method of tightening."""

import math
from dataclasses import dataclass
from enum import StrEnum
from statistics import fmean, stdev

from core.source import Source, Trust, published
from core.uncertain import rectangular
from core.unit_types import INCH, Millimetre, Number

VDI_1986 = published("VDI 2230:1986, scatter of assembly preload, as restated")
VDI_2015 = Source(Trust.MEMORY, "VDI 2230-1:2015, Table A8, tightening factor 1.2")
SHIGLEY_BOLTS = published(
    "Shigley's Mechanical Engineering Design, 9th ed., Table 8-14: ten lubricated bolts"
)
EVEN_SPLIT = Source(Trust.ASSUMED, "variance split evenly between fastener and method")


class Method(StrEnum):
    """How the fasteners are brought to their load."""

    NOT_TOLD = "not-told"
    TORQUE_ESTIMATED = "torque-estimated"
    TORQUE_TESTED = "torque-tested"
    IMPACT = "impact"
    ANGLE = "angle"
    STRETCH = "stretch"


@dataclass(frozen=True, slots=True, kw_only=True)
class Scatter:
    """Scatter of one method, relative to the aim.

    Parameters
    ----------
    band
        Half width of the whole band, random and common together [1].
    random
        Standard deviation from fastener to fastener: it averages out over n as 1/√n [1].
    """

    band: Number
    random: Number
    source: Source
    random_source: Source

    @property
    def common(self) -> Number:
        """Standard uncertainty that every fastener shares, which no number of them averages [1].

        Source
        ------
        *derived*: variance of the band, taken as rectangular, less the random variance.
        """
        return math.sqrt(rectangular(self.band) ** 2 - self.random**2)


TEN_BOLTS: tuple[float, ...] = (30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5)
"""Preloads of ten lubricated bolts, all at 90 N·m, in kN."""
RANDOM_BY_TORQUE: Number = stdev(TEN_BOLTS) / fmean(TEN_BOLTS)
WRENCH = 0.04
"""Limit of error of a torque wrench, half width, relative."""
WRENCH_SOURCE = Source(Trust.MEMORY, "ISO 6789-1:2017, permissible deviation 4 %")
STRETCH_READING: Millimetre = 0.0005 * INCH
"""Limit of error of one stretch reading, half width."""
STRETCH_READING_SOURCE = Source(Trust.ASSUMED, "stretch micrometer, 0.0005 in")


def _by_torque(band: Number, source: Source) -> Scatter:
    return Scatter(band=band, random=RANDOM_BY_TORQUE, source=source, random_source=SHIGLEY_BOLTS)


def _even(band: Number, source: Source) -> Scatter:
    return Scatter(
        band=band,
        random=rectangular(band) / math.sqrt(2.0),
        source=source,
        random_source=EVEN_SPLIT,
    )


SCATTER: dict[Method, Scatter] = {
    Method.NOT_TOLD: _by_torque(0.30, Source(Trust.PRACTICE, "plain torque wrench, 30 %")),
    Method.TORQUE_ESTIMATED: _by_torque(0.28, VDI_1986),
    Method.TORQUE_TESTED: _by_torque(0.23, VDI_1986),
    Method.IMPACT: _by_torque(0.43, VDI_1986),
    Method.ANGLE: _even(0.12, VDI_1986),
    Method.STRETCH: _even(0.2 / 2.2, VDI_2015),
}
