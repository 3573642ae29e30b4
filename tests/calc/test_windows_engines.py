"""Eight engines of our own, each worked by hand: window, word, and what would open a window.

Inch sizes are in thou. Sheets are taken as exact, so that every end can be worked on paper:
height h allows sheets from h / 0.25, bite up to h / 0.15 and not under 6 thou; a guarded end lies
1.644854 × half width / √3 inside the plain one.
"""

import math
from dataclasses import dataclass, field

import pytest

from core.calc.choice import Choice, choose
from core.calc.clearances import MeasuredValve
from core.calc.compression import CylinderVolumes
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
    Valve,
    ValveReading,
    Valves,
)
from core.calc.fit import Measured
from core.calc.gasket import Sheet, Standing
from core.calc.height import Bound
from core.calc.overlap import ChangeKind
from core.calc.valve_gear import CamDrive, Pushrod
from core.calc.vee import VeeGeometry
from core.tables.clearance_practice import RodMaterial

THOU = 0.0254


def sheet(thickness: float, unit: float = THOU) -> Sheet:
    return Sheet(thickness=thickness * unit, half_width=0.0)


def ring(height: float, u: float, name: str = "1", unit: float = THOU, down: bool = True) -> Ring:
    standing = Standing(bound=Bound.BOTH, value=height * unit, u=u * unit, dof=math.inf)
    return Ring(name=name, standing=standing, down=down)


def deck(below: float, half_width: float, unit: float = THOU) -> tuple[PistonDeck, ...]:
    measured = Measured(value=below * unit, half_width=half_width * unit)
    return (PistonDeck(name="1", deck=measured),)


@dataclass(frozen=True)
class Worked:
    """An engine with what was worked for it by hand, in `unit`."""

    name: str
    engine: Engine
    shelf: tuple[float, ...]
    unit: float = THOU
    low: float | None = None
    high: float | None = None
    run: float | None = None
    word: str = ""
    excluded: tuple[str, str] | None = None
    by: float = 0.0
    changes: dict[ChangeKind, float] = field(default_factory=dict)
    within: float = 0.0006


BLOWN = Worked(
    name="blown V8 on the sheet it has",
    # Highest ring 10.5 / 0.25 = 42. Lowest ring 10.0 / 0.15 = 66.667. Piston 40 - 5 = 35, guarded
    # by 1.644854 × 0.5 / 1.7321 = 0.475, so it does not decide. Thinnest on the shelf: 43.1.
    # Word: 0.25 × 43.1 - 10.5 = 0.275 over u 0.1 is 2.75, p 0.997: RUN.
    engine=Engine(
        sheet_on=sheet(43.1),
        rings=(ring(10.5, 0.1, "3"), ring(10.0, 0.1, "5"), ring(10.2, 0.1, "8")),
        pistons=Pistons(decks=deck(5.0, 0.5), rod=RodMaterial.STEEL),
        sheet_half_width=0.0,
    ),
    shelf=(32.3, 40.0, 43.1, 50.0, 64.6),
    low=42.0,
    high=66.667,
    run=43.1,
    word="run",
)

TRACK = Worked(
    name="12 thou measured on a 40 sheet, at the track",
    # 12 / 0.25 = 48; 12 / 0.15 = 80. First sheet: 50, head up 10. 12.5 - 12 = 0.5 over u 0.4 is
    # 1.25, p 0.894: RUN, CLOSE.
    engine=Engine(sheet_on=sheet(40.0), rings=(ring(12.0, 0.4),), sheet_half_width=0.0),
    shelf=(32.0, 40.0, 50.0, 64.6),
    low=48.0,
    high=80.0,
    run=50.0,
    word="run-close",
)

DIESEL = Worked(
    name="inline diesel, bowl in the piston, in mm",
    # Height 0.35 / 0.25 = 1.4. Ratio of 16: Vs = π/4·100²·120 = 942.478 cc, Vc = Vs/15 = 62.8319;
    # less 60 bowl and - 2.35619 for a piston 0.30 proud leaves 5.18804 cc under a hole of 8171.28
    # mm²: 0.63491 mm. Apart by 0.76509. Piston 0.9 + 0.3 = 1.2 stops a deeper groove (0.635 is too
    # thin for it) and a higher piston or a cut deck (it gains 0.961 of what the piston loses).
    # What is left: 0.76509 × 8171.28 = 6251.8 mm³ less bowl or chamber.
    engine=Engine(
        sheet_on=sheet(1.4, 1.0),
        rings=(ring(0.35, 0.002, unit=1.0),),
        pistons=Pistons(decks=deck(-0.30, 0.0, 1.0), least=0.9),
        ratio=RatioLimits(
            cylinder=CylinderVolumes(
                bore=100.0,
                stroke=120.0,
                chamber=0.0,
                dish=60_000.0,
                deck=-0.30,
                gasket_bore=102.0,
            ),
            lowest=16.0,
        ),
        sheet_half_width=0.0,
    ),
    shelf=(1.0, 1.2, 1.4, 1.6),
    unit=1.0,
    excluded=("height-to-gasket", "ratio"),
    by=0.76509,
    changes={ChangeKind.CHAMBER_SMALLER: 6251.8},
    within=0.00002,
)

SINGLE = Worked(
    name="air-cooled single with an overhead cam, in mm",
    # Height 0.25 / 0.25 = 1.0, bite 1.667. One degree of the crank is half a degree of the cam:
    # 0.0087266 × 54.576 pitch radius = 0.47627 of chain; over cos 7.1249° = 0.47998 of rise: 1.480.
    # 1.0 is 25 % exactly: a tie passes, p 0.5: RUN, CLOSE.
    engine=Engine(
        sheet_on=sheet(1.0, 1.0),
        rings=(ring(0.25, 0.004, unit=1.0),),
        cam=CamTiming(
            drive=CamDrive(crank_teeth=18, cam_teeth=36, pitch=9.525, centres=220.0),
            most_retard=math.radians(1.0),
        ),
        sheet_half_width=0.0,
    ),
    shelf=(0.8, 1.0, 1.2, 1.5),
    unit=1.0,
    low=1.0,
    high=1.480,
    run=1.0,
    word="run-close",
    within=0.0005,
)

VEE = Worked(
    name="90° V8 with 10° intake faces, shim sheet to copper",
    # Ports may be 20 off: 20 / 0.863218 = 23.169 of rise, 34.669. Height 10 / 0.25 = 40: 5.331
    # apart. Groove: 10 - 0.25 × 34.669 = 1.333. Deck: 5.331. Spacer for 28.5 of rise:
    # 28.5 × 1.232803 = 35.135.
    engine=Engine(
        sheet_on=sheet(11.5),
        rings=(ring(10.0, 0.2, "2"),),
        intake=IntakeFaces(
            vee=VeeGeometry(bank_angle=math.radians(90.0), face_angle=math.radians(80.0)),
            largest_offset=20.0 * THOU,
        ),
        sheet_half_width=0.0,
    ),
    shelf=(21.6, 32.3, 43.1),
    excluded=("height-to-gasket", "intake-faces"),
    by=5.331,
    changes={
        ChangeKind.GROOVE_DEEPER: 1.333,
        ChangeKind.THINNER_WIRE: 1.333,
        ChangeKind.INTAKE_SPACER: 35.135,
        ChangeKind.DECK_CUT: 5.331,
    },
)

LOW_WIRE = Worked(
    name="ring that bites on no sheet",
    # 5 thou is under 6: no sheet. It needs 1 more; 6 then suits any sheet from 24 to 40.
    engine=Engine(rings=(ring(5.0, 0.1, "4"), ring(6.5, 0.1, "6")), sheet_half_width=0.0),
    shelf=(21.6, 32.3, 43.1),
    excluded=("height-to-gasket", "bite"),
    by=26.0,  # from nothing to 6.5 / 0.25
    changes={ChangeKind.THICKER_WIRE: 1.0},
)

NOT_DOWN = Worked(
    name="one ring that is not down",
    # 14 / 0.25 = 56; dowels stand 250 and need 200: 50. 6 apart. On 50 the ring may stand 12.5:
    # 1.5 to come down. A groove is not cut for a wire that is not down. A cut deck leaves dowels
    # 6 more.
    engine=Engine(
        sheet_on=sheet(43.1),
        rings=(ring(14.0, 0.2, "7", down=False), ring(10.0, 0.2, "1")),
        dowels=Dowels(proud=250.0 * THOU, least=200.0 * THOU),
        sheet_half_width=0.0,
    ),
    shelf=(43.1, 50.0, 64.6),
    excluded=("height-to-gasket", "dowels"),
    by=6.0,
    changes={ChangeKind.TAP_AGAIN: 1.5, ChangeKind.DECK_CUT: 6.0},
)

PUSHRODS = Worked(
    name="pushrod engine short of valve clearance",
    # Intake 85 at a 43 sheet, 100 wanted: 58; clearance known to 5: guard 1.644854 × 5 / 1.7321 =
    # 4.748, 62.748. Preload 30 now, 20 at least: 53. 9.748 apart. Lower pistons or longer pushrods
    # by so much; a cut deck moves both alike. Preload of 40 at most: 33.
    engine=Engine(
        sheet_on=sheet(43.0),
        rings=(ring(10.0, 0.1),),
        valves=Valves(
            readings=(
                ValveReading(
                    name="3",
                    valve=Valve.INTAKE,
                    measured=MeasuredValve(clearance=85.0 * THOU),
                    half_width=5.0 * THOU,
                ),
            ),
            intake_least=100.0 * THOU,
        ),
        lifters=Lifters(
            pushrod=Pushrod(length=8000.0 * THOU),
            preload=30.0 * THOU,
            least=20.0 * THOU,
            most=40.0 * THOU,
        ),
        sheet_half_width=0.0,
    ),
    shelf=(43.1, 50.0, 64.6),
    excluded=("intake-valve", "preload"),
    by=9.748,
    changes={ChangeKind.PISTON_LOWER: 9.748, ChangeKind.PUSHROD_LONGER: 9.748},
)

ENGINES = (BLOWN, TRACK, DIESEL, SINGLE, VEE, LOW_WIRE, NOT_DOWN, PUSHRODS)
OPEN = tuple(each for each in ENGINES if each.excluded is None)
CLOSED = tuple(each for each in ENGINES if each.excluded is not None)


def chosen(worked: Worked) -> Choice:
    return choose(worked.engine, [sheet(each, worked.unit) for each in worked.shelf])


def named(worked: Worked) -> str:
    return worked.name


@pytest.mark.parametrize("worked", OPEN, ids=named)
def test_the_window_is_the_one_worked_by_hand(worked: Worked) -> None:
    found = chosen(worked).overlap
    assert found is not None
    assert found.low is not None
    assert found.high is not None
    assert found.low.end.allowed / worked.unit == pytest.approx(worked.low, abs=worked.within)
    assert found.high.end.allowed / worked.unit == pytest.approx(worked.high, abs=worked.within)


@pytest.mark.parametrize("worked", OPEN, ids=named)
def test_the_sheet_to_run_and_its_word_are_those_worked_by_hand(worked: Worked) -> None:
    run = chosen(worked).run
    assert run is not None
    assert run.fit is not None
    assert run.candidate.sheet.thickness / worked.unit == pytest.approx(worked.run)
    assert run.fit.word == worked.word


@pytest.mark.parametrize("worked", CLOSED, ids=named)
def test_the_two_that_exclude_each_other_are_named_with_their_distance(worked: Worked) -> None:
    choice = chosen(worked)
    assert choice.overlap is None
    assert choice.run is None
    assert choice.conflict is not None
    assert choice.conflict.thicker is not None
    parts = (choice.conflict.thicker.part, choice.conflict.thinner.part)
    assert parts == worked.excluded
    assert choice.conflict.by / worked.unit == pytest.approx(worked.by, abs=worked.within)


@pytest.mark.parametrize("worked", CLOSED, ids=named)
def test_the_smallest_changes_are_exactly_those_worked_by_hand(worked: Worked) -> None:
    conflict = chosen(worked).conflict
    assert conflict is not None
    found = {
        each.kind: each.amount / (worked.unit if each.unit == "mm" else 1.0)
        for each in conflict.changes
    }
    assert set(found) == set(worked.changes)
    for kind, amount in worked.changes.items():
        assert found[kind] == pytest.approx(amount, rel=2e-5, abs=worked.within)


def test_the_ring_that_decides_is_named() -> None:
    found = chosen(BLOWN).overlap
    assert found is not None
    assert found.low is not None
    assert found.high is not None
    assert (found.low.end.decided_by, found.high.end.decided_by) == ("3", "5")


def test_a_ring_that_bites_on_no_sheet_is_named() -> None:
    conflict = chosen(LOW_WIRE).conflict
    assert conflict is not None
    assert str(conflict.sentence) == "4 stands too low to bite on any sheet."
