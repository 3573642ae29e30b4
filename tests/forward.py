"""A second way to every window: each part's own size at a thickness, against its own limit.

Nothing here solves for a thickness. Rules are plain; the worst cylinder is found by trying all.
"""

import math
import random

from core.calc.clearances import MeasuredValve, piston_to_head, valve_to_piston
from core.calc.compression import CylinderVolumes, ratio
from core.calc.engine import (
    CamTiming,
    Dowels,
    Engine,
    IntakeFaces,
    Lifters,
    PistonDeck,
    Pistons,
    RatioLimits,
    Ring,
    Threads,
    Valve,
    ValveReading,
    Valves,
)
from core.calc.fit import Measured
from core.calc.gasket import HeightRule, Sheet, Standing, bite, height_to_gasket
from core.calc.height import Bound
from core.calc.valve_gear import CamDrive, Pushrod, cam_shift, pushrod_growth
from core.calc.vee import VeeGeometry, vee_shift
from core.verdict import PLAIN, Verdict

THOU = 0.0254


def complete_engine(rng: random.Random, cylinders: int = 8) -> Engine:
    """An engine with every number entered, all at random, under plain rules."""
    names = [str(number) for number in range(1, cylinders + 1)]
    base = rng.uniform(7.0, 12.0)
    bore = rng.uniform(80.0, 120.0)
    stroke = rng.uniform(75.0, 120.0)
    hole = bore + rng.uniform(0.5, 3.0)
    squeezed = rng.uniform(9.0, 13.0)
    deck = rng.uniform(-10.0, 15.0) * THOU
    on_now = rng.uniform(30.0, 60.0) * THOU
    swept = 0.25 * math.pi * bore**2 * stroke
    chamber = swept / (squeezed - 1.0) - 0.25 * math.pi * (hole**2 * on_now + bore**2 * deck)
    return Engine(
        sheet_on=Sheet(thickness=on_now, half_width=0.0),
        rings=tuple(_ring(rng, name, base) for name in names),
        rule=HeightRule(acceptance=PLAIN),
        pistons=Pistons(
            decks=tuple(_deck(rng, name, deck) for name in names),
            least=rng.uniform(30.0, 45.0) * THOU,
        ),
        valves=Valves(
            readings=tuple(_valve(rng, name, valve) for name in names for valve in Valve),
            intake_least=rng.uniform(70.0, 90.0) * THOU,
            exhaust_least=rng.uniform(90.0, 110.0) * THOU,
        ),
        ratio=RatioLimits(
            cylinder=CylinderVolumes(
                bore=bore, stroke=stroke, chamber=chamber, deck=deck, gasket_bore=hole
            ),
            lowest=squeezed - rng.uniform(0.1, 1.0),
            highest=squeezed + rng.uniform(0.1, 1.0),
        ),
        lifters=Lifters(
            pushrod=Pushrod(
                length=rng.uniform(150.0, 250.0), tilt=math.radians(rng.uniform(0.0, 12.0))
            ),
            preload=rng.uniform(25.0, 40.0) * THOU,
            least=rng.uniform(5.0, 20.0) * THOU,
            most=rng.uniform(45.0, 70.0) * THOU,
        ),
        intake=IntakeFaces(
            vee=VeeGeometry(
                bank_angle=math.radians(rng.uniform(50.0, 95.0)),
                face_angle=math.radians(rng.uniform(75.0, 95.0)),
            ),
            largest_offset=rng.uniform(8.0, 40.0) * THOU,
        ),
        cam=CamTiming(
            drive=CamDrive(
                crank_teeth=18,
                cam_teeth=36,
                pitch=9.525,
                centres=rng.uniform(180.0, 400.0),
                lift_angle=math.radians(rng.uniform(-15.0, 15.0)),
            ),
            most_retard=math.radians(rng.uniform(0.5, 3.0)),
            most_advance=math.radians(rng.uniform(0.5, 3.0)),
        ),
        dowels=Dowels(proud=rng.uniform(240, 320) * THOU, least=rng.uniform(180, 220) * THOU),
        threads=Threads(
            engaged=rng.uniform(18.0, 24.0),
            least=rng.uniform(16.0, 18.0),
            room=rng.uniform(0.2, 2.0),
        ),
        safety=PLAIN,
        sheet_half_width=0.0,
    )


def _ring(rng: random.Random, name: str, base: float) -> Ring:
    height = (base + rng.uniform(-0.6, 0.6)) * THOU
    standing = Standing(bound=Bound.BOTH, value=height, u=0.3 * THOU, dof=math.inf)
    return Ring(name=name, standing=standing)


def _deck(rng: random.Random, name: str, deck: float) -> PistonDeck:
    below = deck + rng.uniform(-2.0, 2.0) * THOU
    return PistonDeck(name=name, deck=Measured(value=below, half_width=0.01))


def _valve(rng: random.Random, name: str, valve: Valve) -> ValveReading:
    wide = MeasuredValve(
        clearance=rng.uniform(80.0, 130.0) * THOU, tilt=math.radians(rng.uniform(0.0, 20.0))
    )
    return ValveReading(name=name, valve=valve, measured=wide, half_width=0.05)


def allows(engine: Engine, thickness: float) -> dict[str, bool]:
    """Whether each part allows a sheet of this thickness."""
    sheet = Sheet(thickness=thickness, half_width=0.0)
    assert engine.sheet_on is not None
    rise = thickness - engine.sheet_on.thickness
    return {
        "height-to-gasket": all(
            height_to_gasket(ring.standing, sheet, engine.rule).verdict is Verdict.PASS
            for ring in engine.rings
        ),
        "bite": all(
            bite(ring.standing, sheet, engine.rule).verdict is Verdict.PASS for ring in engine.rings
        ),
        "piston-to-head": _pistons(engine, thickness),
        "intake-valve": _valves(engine, Valve.INTAKE, engine.valves.intake_least, rise),
        "exhaust-valve": _valves(engine, Valve.EXHAUST, engine.valves.exhaust_least, rise),
        "ratio": _ratio(engine, thickness),
        "preload": _preload(engine, rise),
        "intake-faces": _intake(engine, rise),
        "cam-timing": _cam(engine, rise),
        "dowels": _dowels(engine, thickness),
        "threads": _threads(engine, rise),
    }


def _pistons(engine: Engine, thickness: float) -> bool:
    assert engine.pistons.least is not None
    least = engine.pistons.least
    return all(piston_to_head(each.deck.value, thickness) >= least for each in engine.pistons.decks)


def _valves(engine: Engine, valve: Valve, least: float | None, rise: float) -> bool:
    assert least is not None
    return all(
        valve_to_piston(each.measured, rise) >= least
        for each in engine.valves.readings
        if each.valve is valve
    )


def _ratio(engine: Engine, thickness: float) -> bool:
    limits = engine.ratio
    assert limits.cylinder is not None
    assert limits.lowest is not None
    assert limits.highest is not None
    return limits.lowest <= ratio(limits.cylinder, thickness) <= limits.highest


def _preload(engine: Engine, rise: float) -> bool:
    lifters = engine.lifters
    assert lifters is not None
    assert lifters.pushrod is not None
    assert lifters.preload is not None
    assert lifters.least is not None
    assert lifters.most is not None
    preload = lifters.preload - pushrod_growth(lifters.pushrod, rise)
    return lifters.least <= preload <= lifters.most


def _intake(engine: Engine, rise: float) -> bool:
    intake = engine.intake
    assert intake is not None
    assert intake.vee is not None
    assert intake.largest_offset is not None
    shift = vee_shift(intake.vee, rise)
    spaced = intake.thickest_spacer is not None and 0 < shift.side_spacer <= intake.thickest_spacer
    return spaced or abs(shift.riding_offset) <= intake.largest_offset


def _cam(engine: Engine, rise: float) -> bool:
    cam = engine.cam
    assert cam is not None
    assert cam.drive is not None
    assert cam.most_retard is not None
    assert cam.most_advance is not None
    return -cam.most_advance <= cam_shift(cam.drive, rise).crank <= cam.most_retard


def _dowels(engine: Engine, thickness: float) -> bool:
    assert engine.dowels.proud is not None
    assert engine.dowels.least is not None
    return engine.dowels.proud - thickness >= engine.dowels.least


def _threads(engine: Engine, rise: float) -> bool:
    threads = engine.threads
    assert threads.engaged is not None
    assert threads.least is not None
    assert threads.room is not None
    return threads.engaged - rise >= threads.least and threads.room + rise >= 0.0
