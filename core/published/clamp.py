"""Preload, torque, scatter and bolted joints, as books print them."""

from collections.abc import Callable
from functools import partial
from statistics import fmean, stdev

from core.calc.fasteners import Fastener, proof_from_yield, read_thread, standard_fastener
from core.calc.preload import (
    PercentOfProof,
    preload_from_torque,
    scatter_of,
    tightening_factor,
    torque_for,
)
from core.calc.separation import (
    left_at_peak,
    load_share,
    proof_factor,
    separation_factor,
    stud_at_peak,
)
from core.published.case import Case
from core.source import Source, derived, published
from core.tables.tightening_scatter import TEN_BOLTS
from core.unit_types import INCH, LBF

LBF_FT = LBF * 12.0 * INCH
SHIGLEY = "Shigley's Mechanical Engineering Design, 9th ed., "
EXAMPLE_3 = published(SHIGLEY + "example 8-3")
EXAMPLE_5 = published(SHIGLEY + "example 8-5")
PROBLEM = published(SHIGLEY + "chapter 8, problem with At 561 mm², solutions manual")
TABLE_14 = published(SHIGLEY + "Table 8-14")
TARGET = published(SHIGLEY + "p. 442")
VDI = published("VDI 2230, tightening factor 1.8: least preload of an M12 in a worked example")
WORKED = derived("T = K·F·d and F = share·At·Sp, worked apart from this program")
SCATTER = derived("definition of the tightening factor, worked apart from this program")


def _case(
    name: str,
    source: Source,
    printed: str,
    unit: str,
    compute: Callable[[], float],
    topic: str = "separation",
) -> Case:
    return Case(topic=topic, name=name, source=source, compute=compute, printed=printed, unit=unit)


def _target(thread: str, grade: str) -> float:
    fastener = standard_fastener(read_thread(thread, "thread"), grade, "grade")
    return PercentOfProof(share=0.75).preload(fastener).best


def _torque(thread: str, grade: str, friction: float, scale: float) -> float:
    diameter = read_thread(thread, "thread").diameter
    return torque_for(_target(thread, grade), friction, diameter) / scale


def _torques(
    thread: str, grade: str, printed: dict[float, str], unit: str, scale: float
) -> tuple[Case, ...]:
    return tuple(
        _case(
            f"torque {thread} grade {grade}, K {friction}",
            WORKED,
            figure,
            unit,
            partial(_torque, thread, grade, friction, scale),
            "preload",
        )
        for friction, figure in printed.items()
    )


def _preload(thread: str, grade: str, printed: str, unit: str, scale: float) -> Case:
    name = f"75 % of proof, {thread} grade {grade}"
    return _case(name, WORKED, printed, unit, lambda: _target(thread, grade) / scale, "preload")


def _from_torque(
    torque: float, thread: str, friction: float, printed: str, unit: str, scale: float
) -> Case:
    diameter = read_thread(thread, "thread").diameter
    return _case(
        f"preload {thread}, K {friction}",
        WORKED,
        printed,
        unit,
        lambda: preload_from_torque(torque, friction, diameter) / scale,
        "preload",
    )


def _factor(percent: float, printed: str) -> Case:
    return _case(
        f"tightening factor of {percent} %",
        SCATTER,
        printed,
        "1",
        lambda: tightening_factor(percent / 100.0),
        "preload",
    )


def _percent(factor: float, printed: str) -> Case:
    return _case(
        f"scatter of tightening factor {factor}",
        SCATTER,
        printed,
        "%",
        lambda: 100.0 * scatter_of(factor),
        "preload",
    )


def _five_eighths() -> Fastener:
    """The bolt of the example, in its own units: in² and ksi."""
    return Fastener(
        thread=read_thread("5/8-11", "thread"), area=0.226, proof_strength=85.0, source=EXAMPLE_5
    )


def _least_of(greatest: float, factor: float) -> float:
    """Least preload, from the greatest and the tightening factor."""
    scatter = scatter_of(factor)
    return greatest / (1.0 + scatter) * (1.0 - scatter)


CASES: tuple[Case, ...] = (
    _case("stud's share C", EXAMPLE_3, "0.320", "1", lambda: load_share(6.50, 13.8)),
    _case(
        "preload stress", EXAMPLE_3, "67.02", "ksi", lambda: stud_at_peak(25.0, 0.0, 0.320) / 0.373
    ),
    _case(
        "stress in service",
        EXAMPLE_3,
        "72.17",
        "ksi",
        lambda: stud_at_peak(25.0, 6.0, load_share(6.50, 13.8)) / 0.373,
    ),
    _case(
        "torque, K 0.20",
        EXAMPLE_3,
        "3750",
        "lbf·in",
        lambda: torque_for(25000.0, 0.20, 0.75),
        "preload",
    ),
    _case(
        "preload, 75 % of proof",
        EXAMPLE_5,
        "14.4",
        "kip",
        lambda: PercentOfProof(share=0.75).preload(_five_eighths()).best,
        "preload",
    ),
    _case(
        "proof load over load at peak",
        EXAMPLE_5,
        "1.22",
        "1",
        lambda: proof_factor(85.0 * 0.226, 14.4, 5.0, 0.280),
    ),
    _case("separation factor", EXAMPLE_5, "4.00", "1", lambda: separation_factor(14.4, 5.0, 0.280)),
    _case(
        "separation factor, metric",
        PROBLEM,
        "4.71",
        "1",
        lambda: separation_factor(0.75 * 561.0 * 0.600, 80.0, 0.33),
    ),
    _case(
        "mean of ten lubricated bolts",
        TABLE_14,
        "34.18",
        "kN",
        lambda: fmean(TEN_BOLTS),
        "tightening_scatter",
    ),
    _case(
        "standard deviation of ten lubricated bolts",
        TABLE_14,
        "2.88",
        "kN",
        lambda: stdev(TEN_BOLTS),
        "tightening_scatter",
    ),
    _case(
        "proof from a yield of 100 ksi",
        TARGET,
        "85",
        "ksi",
        lambda: proof_from_yield(100.0),
        "fasteners",
    ),
    _case("least preload from 41.9 kN", VDI, "23.3", "kN", lambda: _least_of(41.9, 1.8), "preload"),
    *(
        _factor(each, figure)
        for each, figure in (
            (17, "1.4096"),
            (23, "1.5974"),
            (25, "1.6667"),
            (30, "1.8571"),
            (35, "2.0769"),
        )
    ),
    *(
        _percent(each, figure)
        for each, figure in (
            (1.4, "16.667"),
            (1.6, "23.077"),
            (1.8, "28.571"),
            (2.0, "33.333"),
            (2.5, "42.857"),
        )
    ),
    _preload("7/16-14", "5", "6777.14", "lbf", LBF),
    _preload("7/16-14", "8", "9567.73", "lbf", LBF),
    _preload("M11x1.5", "8.8", "31.4384", "kN", 1e3),
    _preload("M11x1.5", "10.9", "44.9895", "kN", 1e3),
    _preload("M12x1.75", "8.8", "36.6559", "kN", 1e3),
    _preload("M12x1.75", "10.9", "52.4558", "kN", 1e3),
    _preload("M12x1.75", "12.9", "61.3038", "kN", 1e3),
    *_torques(
        "7/16-14",
        "5",
        {0.12: "29.650", 0.18: "44.475", 0.20: "49.417", 0.30: "74.125"},
        "lbf·ft",
        LBF_FT,
    ),
    *_torques(
        "7/16-14",
        "8",
        {0.12: "41.859", 0.18: "62.788", 0.20: "69.765", 0.30: "104.647"},
        "lbf·ft",
        LBF_FT,
    ),
    *_torques("M11x1.5", "8.8", {0.12: "41.499", 0.18: "62.248", 0.20: "69.165"}, "N·m", 1e3),
    *_torques("M11x1.5", "10.9", {0.12: "59.386", 0.18: "89.079", 0.20: "98.977"}, "N·m", 1e3),
    *_torques("M12x1.75", "8.8", {0.12: "52.784", 0.18: "79.177", 0.20: "87.974"}, "N·m", 1e3),
    *_torques("M12x1.75", "10.9", {0.12: "75.536", 0.18: "113.305", 0.20: "125.894"}, "N·m", 1e3),
    *_torques("M12x1.75", "12.9", {0.12: "88.277", 0.18: "132.416", 0.20: "147.129"}, "N·m", 1e3),
    _from_torque(65.0 * LBF_FT, "7/16-14", 0.18, "9904.76", "lbf", LBF),
    _from_torque(65.0 * LBF_FT, "7/16-14", 0.20, "8914.29", "lbf", LBF),
    _from_torque(100e3, "M11x1.5", 0.20, "45.4545", "kN", 1e3),
    _case(
        "stud at peak, 7/16-14 grade 8 at 75 % of proof, 5125.4 lbf a stud, C 0.2",
        WORKED,
        "10592.8",
        "lbf",
        lambda: stud_at_peak(9567.73, 21783.0 / 4.25, 0.2),
    ),
    _case(
        "left at peak, C 0.2", WORKED, "23236.4", "lbf", lambda: left_at_peak(40662.8, 21783.0, 0.2)
    ),
)
