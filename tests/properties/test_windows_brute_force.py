"""Windows and changes against a second way: every part tried at a thickness, nothing solved."""

import math
import os
import random
from dataclasses import replace

import pytest

from core.calc.choice import choose
from core.calc.engine import Engine, Ring
from core.calc.gasket import Sheet
from core.calc.overlap import Change, ChangeKind, conflict, overlap
from core.calc.vee import VeeGeometry
from core.calc.windows import Window, windows
from core.verdict import Verdict
from tests.forward import THOU, allows, complete_engine

ENGINES = 1000 if os.environ.get("STANDPROUD_LONG") else 200
AT_AN_END = 1e-5
PART_OF_CHANGE = 0.98
SMALL = 0.001
"""Of so little, a part is within the slack of a tie [mm]."""


def engine_of(seed: int, cylinders: int = 4) -> Engine:
    return complete_engine(random.Random(seed), cylinders)


def contains(window: Window, thickness: float) -> bool:
    low = window.low is None or thickness >= window.low.allowed
    return low and (window.high is None or thickness <= window.high.allowed)


def is_at_an_end(window: Window, thickness: float) -> bool:
    return any(abs(end.allowed - thickness) <= AT_AN_END for end in window.ends)


def test_a_thickness_lies_in_a_window_just_when_the_part_allows_it() -> None:
    compared = 0
    for seed in range(ENGINES):
        engine, rng = engine_of(seed), random.Random(-seed)
        found, left_out = windows(engine)
        assert left_out == ()
        for _ in range(15):
            thickness = rng.uniform(10.0, 120.0) * THOU
            expected = allows(engine, thickness)
            assert {window.part for window in found} == set(expected)
            for window in found:
                if not is_at_an_end(window, thickness):
                    assert contains(window, thickness) == expected[window.part], window.part
                    compared += 1
    assert compared > 150 * ENGINES


def test_every_end_is_where_its_part_changes_its_mind() -> None:
    for seed in range(ENGINES // 4):
        engine = engine_of(seed)
        for window in windows(engine)[0]:
            for end in window.ends:
                if end.allowed <= 2 * AT_AN_END:
                    continue
                inside = end.allowed + end.side.value * AT_AN_END
                outside = end.allowed - end.side.value * AT_AN_END
                assert not allows(engine, outside)[window.part]
                if contains(window, inside):
                    assert allows(engine, inside)[window.part]


def test_a_row_passes_just_when_every_part_allows_its_sheet() -> None:
    for seed in range(ENGINES):
        engine = engine_of(seed)
        shelf = [Sheet(thickness=each * THOU, half_width=0.0) for each in (32.3, 43.1, 52, 64.6)]
        for row in choose(engine, shelf).rows:
            expected = allows(engine, row.candidate.sheet.thickness)
            assert (row.verdict is Verdict.PASS) == all(expected.values())
            assert set(row.excluded_by) == {part for part, good in expected.items() if not good}


def applied(engine: Engine, change: Change, part: float) -> Engine:
    """The engine after a change, or after part of it."""
    much = part * change.amount
    match change.kind:
        case ChangeKind.TAP_AGAIN | ChangeKind.GROOVE_DEEPER | ChangeKind.THINNER_WIRE:
            return with_rings(engine, change, -part)
        case ChangeKind.THICKER_WIRE:
            return with_rings(engine, change, part)
        case ChangeKind.PISTON_LOWER:
            return with_pistons(engine, much)
        case ChangeKind.PISTON_HIGHER:
            return with_pistons(engine, -much)
        case ChangeKind.CHAMBER_LARGER:
            return with_chamber(engine, much)
        case ChangeKind.CHAMBER_SMALLER:
            return with_chamber(engine, -much)
        case ChangeKind.PUSHROD_LONGER:
            return with_preload(engine, much)
        case ChangeKind.PUSHROD_SHORTER:
            return with_preload(engine, -much)
        case ChangeKind.INTAKE_SPACER:
            assert engine.intake is not None
            return replace(engine, intake=replace(engine.intake, thickest_spacer=much))
        case ChangeKind.DECK_CUT:
            return with_deck_cut(engine, much)


def with_rings(engine: Engine, change: Change, part: float) -> Engine:
    moves = dict(change.rings)

    def moved(ring: Ring) -> Ring:
        height = ring.standing.value + part * moves.get(ring.name, 0.0)
        return replace(ring, standing=replace(ring.standing, value=height))

    return replace(engine, rings=tuple(map(moved, engine.rings)))


def with_pistons(engine: Engine, lower: float) -> Engine:
    decks = tuple(
        replace(each, deck=replace(each.deck, value=each.deck.value + lower))
        for each in engine.pistons.decks
    )
    cylinder = engine.ratio.cylinder
    assert cylinder is not None
    lowered = replace(cylinder, deck=cylinder.deck + lower)
    return replace(
        with_valves(engine, lower),
        pistons=replace(engine.pistons, decks=decks),
        ratio=replace(engine.ratio, cylinder=lowered),
    )


def with_valves(engine: Engine, apart: float) -> Engine:
    readings = tuple(
        replace(
            each,
            measured=replace(
                each.measured,
                clearance=each.measured.clearance + apart * math.cos(each.measured.tilt),
            ),
        )
        for each in engine.valves.readings
    )
    return replace(engine, valves=replace(engine.valves, readings=readings))


def with_chamber(engine: Engine, larger: float) -> Engine:
    cylinder = engine.ratio.cylinder
    assert cylinder is not None
    changed = replace(cylinder, chamber=cylinder.chamber + larger)
    return replace(engine, ratio=replace(engine.ratio, cylinder=changed))


def with_preload(engine: Engine, longer: float) -> Engine:
    assert engine.lifters is not None
    assert engine.lifters.preload is not None
    lifters = replace(engine.lifters, preload=engine.lifters.preload + longer)
    return replace(engine, lifters=lifters)


def with_deck_cut(engine: Engine, cut: float) -> Engine:
    """Head lower by the cut: as if the sheet at which all else was measured were thicker."""
    assert engine.sheet_on is not None
    assert engine.dowels.proud is not None
    assert engine.threads.engaged is not None
    on_now = replace(engine.sheet_on, thickness=engine.sheet_on.thickness + cut)
    pistons = with_pistons(engine, -cut)
    return replace(
        pistons,
        valves=engine.valves,
        sheet_on=on_now,
        dowels=replace(engine.dowels, proud=engine.dowels.proud + cut),
        threads=replace(engine.threads, engaged=engine.threads.engaged - cut),
    )


def is_open(engine: Engine) -> bool:
    return overlap(windows(engine)[0]) is not None


def test_every_change_opens_a_window_and_a_little_less_does_not() -> None:
    tried: dict[ChangeKind, int] = {}
    for seed in range(6 * ENGINES):
        engine = loosened(seed)
        found = conflict(engine, windows(engine)[0])
        for change in found.changes if found else ():
            tried[change.kind] = tried.get(change.kind, 0) + 1
            assert is_open(applied(engine, change, 1.0 + 1e-7)), (seed, change.kind)
            if change.amount > SMALL:
                assert not is_open(applied(engine, change, PART_OF_CHANGE)), (seed, change.kind)
    missing = set(ChangeKind) - set(tried)
    assert missing == set(), tried


def loosened(seed: int) -> Engine:
    """An engine with some groups entered and wide limits, so that one change can be enough."""
    rng = random.Random(seed)
    engine = complete_engine(rng, 3)
    kept = {
        group: getattr(engine, group)
        for group in ("pistons", "dowels", "threads", rng.choice(("valves", "lifters", "intake")))
    }
    if "lifters" in kept:
        kept["lifters"] = replace(kept["lifters"], preload=rng.uniform(0.0, 120.0) * THOU)
    rings = tuple(
        replace(
            ring,
            down=rng.random() < 0.7,
            standing=replace(ring.standing, value=ring.standing.value * rng.uniform(0.6, 1.5)),
        )
        for ring in engine.rings
    )
    wide = replace(
        engine.ratio,
        lowest=1.0 + rng.uniform(0.6, 1.0) * (engine.ratio.lowest or 0.0),
        highest=rng.uniform(0.8, 1.5) * (engine.ratio.highest or 0.0),
    )
    if wide.lowest is None or wide.highest is None or wide.lowest >= wide.highest:
        wide = replace(wide, lowest=None)
    return Engine(
        sheet_on=engine.sheet_on,
        rings=rings,
        ratio=wide,
        safety=engine.safety,
        sheet_half_width=0.0,
        **kept,
    )


def test_a_change_never_lowers_a_seated_wire() -> None:
    for seed in range(2 * ENGINES):
        engine = loosened(seed)
        found = conflict(engine, windows(engine)[0])
        seated = {ring.name for ring in engine.rings if ring.down}
        for change in found.changes if found else ():
            if change.kind is ChangeKind.TAP_AGAIN:
                assert not seated & {name for name, _ in change.rings}


def test_geometry_that_cannot_be_solved_leaves_the_rest_working() -> None:
    engine = engine_of(1)
    assert engine.intake is not None
    level = VeeGeometry(bank_angle=math.radians(90.0), face_angle=math.radians(45.0))
    found, left_out = windows(replace(engine, intake=replace(engine.intake, vee=level)))
    assert [each.part for each in left_out] == ["intake-faces"]
    assert "face-angle" in left_out[0].because
    assert "0.707 of the rise" in left_out[0].because
    assert len(found) == len(windows(engine)[0]) - 1


@pytest.mark.parametrize("seed", range(20))
def test_a_higher_wire_never_lets_a_thinner_sheet_in(seed: int) -> None:
    rng = random.Random(seed)
    engine = engine_of(seed)
    higher = tuple(
        replace(
            ring,
            standing=replace(ring.standing, value=ring.standing.value + rng.uniform(0, 3) * THOU),
        )
        for ring in engine.rings
    )
    before, after = (
        {window.part: window for window in windows(each)[0]}
        for each in (engine, replace(engine, rings=higher))
    )
    low, raised = before["height-to-gasket"].low, after["height-to-gasket"].low
    assert low is not None
    assert raised is not None
    assert raised.allowed >= low.allowed
    high, lifted = before["bite"].high, after["bite"].high
    assert high is not None
    assert lifted is not None
    assert lifted.allowed >= high.allowed
    others = set(before) - {"height-to-gasket", "bite"}
    assert all(before[part] == after[part] for part in others)
