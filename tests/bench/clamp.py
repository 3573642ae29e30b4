"""Clamp of a whole engine, and its draws, beside general libraries on the same loads."""

import random
from collections.abc import Iterator

import numpy as np
import uncertainties
from uncertainties import umath

from core.calc.bedding import ANNEALED, resistances
from core.calc.clamp import Cylinder, Joint
from core.calc.clamp_draws import DRAWS, cross_check
from core.calc.engine_clamp import EngineClamp, engine_clamp
from core.calc.fastener_layout import FastenerShare, Place, share_fasteners
from core.calc.fasteners import Fastener, read_thread, standard_fastener
from core.calc.gasket import HeadFace
from core.calc.preload import PercentOfProof
from core.calc.separation import entered_pressure
from core.uncertain import rectangular
from tests.measured import Row, median_seconds

INCH = 25.4
SPACING = 4.4 * INCH
REPEATS = 50
LENGTH = np.pi


def rows() -> Iterator[Row]:
    engines = [clamped(seed) for seed in range(REPEATS)]
    yield Row(
        what=f"8 cylinders, 34 fasteners from their places to verdicts, median of {REPEATS}",
        value=1e3 * median_seconds(clamped, range(REPEATS)),
        unit="ms",
        goal=5.0,
        peer="the same four loads by uncertainties alone, no verdicts",
        peer_value=1e3 * median_seconds(by_uncertainties, engines),
    )
    yield Row(
        what=f"{DRAWS} draws of that engine",
        value=median_seconds(draws, engines[:3]),
        unit="s",
        peer="numpy, all draws at once",
        peer_value=median_seconds(by_numpy, engines[:3]),
    )


def bank() -> tuple[FastenerShare, ...]:
    """Four bores, seventeen fasteners."""
    bores = [Place(x=SPACING * i, y=0.0) for i in range(4)]
    rows = [Place(x=SPACING * (i - 0.5), y=y) for i in range(5) for y in (-60.0, 60.0)]
    inner = [Place(x=SPACING * i, y=70.0) for i in range(4)]
    ends = [Place(x=SPACING * (i - 0.5), y=85.0) for i in (0, 2, 4)]
    return share_fasteners(bores, rows + inner + ends)


def clamped(seed: object) -> EngineClamp:
    rng = random.Random(seed)
    joint = Joint(
        fastener=stud(),
        tightening=PercentOfProof(share=rng.uniform(0.6, 0.8)),
        copper=ANNEALED,
        face=HeadFace(answered=True),
    )
    return engine_clamp(joint, [cylinder(i, share, rng) for i, share in enumerate(bank() + bank())])


def stud() -> Fastener:
    return standard_fastener(read_thread("7/16-14", "thread"), "8", "grade")


def cylinder(number: int, share: FastenerShare, rng: random.Random) -> Cylinder:
    return Cylinder(
        name=str(number + 1),
        ring_diameter=4.300 * INCH,
        wire_diameter=0.041 * INCH,
        height=rng.uniform(0.008, 0.014) * INCH,
        height_u=0.0003 * INCH,
        fasteners=share,
        pressure=entered_pressure(rng.uniform(6.0, 11.0)),
    )


def by_uncertainties(engine: EngineClamp) -> list[object]:
    term = engine.preload.terms
    common = uncertainties.ufloat(term[1].value, term[1].u)
    pressures = [each.pressure for each in (resistances(ANNEALED)[0], resistances(ANNEALED)[-1])]
    loads: list[object] = []
    for each in (judged.loads.cylinder for judged in engine.cylinders):
        scatter = uncertainties.ufloat(1.0, engine.preload.random / each.fasteners.independent**0.5)
        clamp = each.fasteners.count * engine.preload.best * common * scatter
        peak = uncertainties.ufloat(each.pressure.value, rectangular(each.pressure.half_width))
        height = uncertainties.ufloat(each.height, each.height_u)
        wire = uncertainties.ufloat(each.wire_diameter, rectangular(each.wire_half_width))
        half_width = umath.sqrt(wire * height - height * height)
        left = clamp - LENGTH / 4 * each.ring_diameter**2 * peak
        bodies = [clamp - p * 2 * half_width * LENGTH * each.ring_diameter for p in pressures]
        loads += [value.std_dev for value in (clamp, left, *bodies)]
    return loads


def draws(engine: EngineClamp) -> object:
    *_, last = cross_check(engine, random.Random(1))
    return last.compared


def by_numpy(engine: EngineClamp) -> list[float]:
    rng = np.random.default_rng(1)
    common = 1.0 + 3**0.5 * engine.preload.terms[1].u * rng.uniform(-1, 1, DRAWS)
    pressures = [each.pressure for each in (resistances(ANNEALED)[0], resistances(ANNEALED)[-1])]
    spreads: list[float] = []
    for each in (judged.loads.cylinder for judged in engine.cylinders):
        scatter = rng.normal(1.0, engine.preload.random / each.fasteners.independent**0.5, DRAWS)
        clamp = each.fasteners.count * engine.preload.best * common * scatter
        peak = each.pressure.value + each.pressure.half_width * rng.uniform(-1, 1, DRAWS)
        height = rng.normal(each.height, each.height_u, DRAWS)
        wire = each.wire_diameter + each.wire_half_width * rng.uniform(-1, 1, DRAWS)
        half_width = np.sqrt(wire * height - height**2)
        left = clamp - LENGTH / 4 * each.ring_diameter**2 * peak
        bodies = [clamp - p * 2 * half_width * LENGTH * each.ring_diameter for p in pressures]
        spreads += [float(np.std(value)) for value in (clamp, left, *bodies)]
    return spreads
