"""Joints: never between bores, never two together, beside a bolt."""

import math
import random
from itertools import pairwise, product

import pytest

from core.calc.deck_layout import (
    Along,
    BankNumbers,
    Bore,
    DeckLayout,
    Hole,
    HoleKind,
    HoleRow,
    build,
)
from core.calc.joints import Datum, plan_joints
from core.errors import InputError
from core.tables.cut_practice import JOINT

FRONT = Datum(name="front of the engine")
PATTERNS = 500


def random_bank(seed: int) -> DeckLayout:
    """A bank with bolts scattered round each bore, some of them on the bridges."""
    rng = random.Random(seed)
    bores = tuple(
        Bore(name=str(k + 1), x=k * 112.0, y=0.0, diameter=98.0) for k in range(rng.randint(1, 6))
    )
    layout = DeckLayout(bank="any", bores=bores)
    for k in range(rng.randint(0, 8 * len(bores))):
        bore = rng.choice(bores)
        bearing, away = rng.uniform(0.0, math.tau), rng.uniform(58.0, 85.0)
        bolt = Hole(name=f"bolt {k}", kind=HoleKind.BOLT, diameter=11.0,
                    x=bore.x + away * math.cos(bearing), y=away * math.sin(bearing))
        try:
            layout = DeckLayout(bank="any", bores=bores, holes=(*layout.holes, bolt))
        except InputError:
            continue
    return layout


@pytest.mark.parametrize("seed", range(PATTERNS))
def test_joint_is_never_between_bores_and_never_next_to_another(seed: int) -> None:
    layout = random_bank(seed)
    plan = plan_joints(layout, 104.0, FRONT)
    joints = {joint.cylinder: joint for joint in plan.joints}
    assert {*joints, *plan.without} == {bore.name for bore in layout.bores}
    for bore in layout.bores:
        if bore.name not in joints:
            continue
        at = joints[bore.name].at
        assert math.isclose(math.dist(at, (bore.x, bore.y)), 52.0)
        sideways = math.atan2(abs(at[1] - bore.y), at[0] - bore.x)
        if bore.name != str(len(layout.bores)):
            assert sideways >= JOINT.clear_of_bridge - 1e-9
        if bore.name != "1":
            assert math.pi - sideways >= JOINT.clear_of_bridge - 1e-9
        nearest = min(math.dist((bore.x, bore.y), (b.x, b.y)) for b in layout.bolts)
        beside = next(b for b in layout.bolts if b.name == joints[bore.name].bolt)
        away = math.dist((bore.x, bore.y), (beside.x, beside.y))
        assert away <= JOINT.reach * nearest
        assert math.isclose(math.dist(at, (beside.x, beside.y)), away - 52.0)
        following = joints.get(str(int(bore.name) + 1))
        if following:
            assert following.bolt != joints[bore.name].bolt
            assert math.dist(following.at, at) >= 0.5 * 112.0


def places(layout: DeckLayout, bore: Bore) -> list[tuple[Hole, float, float]]:
    """Bolts a joint of one ring may be beside, and where that is, by plain trial."""
    found = []
    for bolt in layout.bolts:
        x, y = bolt.x - bore.x, bolt.y - bore.y
        bridges = [math.copysign(1.0, other.x - bore.x) for other in layout.neighbours(bore)]
        off = all(x * side / math.hypot(x, y) <= math.cos(math.radians(30.0)) for side in bridges)
        nearest = min(math.hypot(b.x - bore.x, b.y - bore.y) for b in layout.bolts)
        if off and math.hypot(x, y) <= 1.5 * nearest:
            scale = 52.0 / math.hypot(x, y)
            found.append((bolt, bore.x + x * scale, bore.y + y * scale))
    return found


def together(a: tuple[Hole, float, float] | None, b: tuple[Hole, float, float] | None) -> bool:
    if a is None or b is None:
        return False
    return a[0] is b[0] or math.dist(a[1:], b[1:]) < 56.0


@pytest.mark.parametrize("seed", range(60))
def test_no_other_plan_places_more_joints(seed: int) -> None:
    layout = random_bank(seed)
    if len(layout.bores) > 4:
        layout = DeckLayout(bank="any", bores=layout.bores[:4], holes=layout.holes)
    options = [[None, *places(layout, bore)] for bore in layout.in_order]
    most = max(
        sum(each is not None for each in combination)
        for combination in product(*options)
        if not any(together(a, b) for a, b in pairwise(combination))
    )
    assert len(plan_joints(layout, 104.0, FRONT).joints) == most


def shared(cylinders: int) -> DeckLayout:
    bolts = HoleRow(kind=HoleKind.BOLT, along=Along.BETWEEN, offset=60.0, diameter=12.0)
    names = tuple(str(k + 1) for k in range(cylinders))
    return build(BankNumbers(bank="l", cylinders=names, bore=100.0, spacing=112.0, rows=(bolts,)))


def test_every_ring_of_a_usual_bank_gets_a_joint() -> None:
    for cylinders in (1, 2, 3, 4, 6, 8):
        plan = plan_joints(shared(cylinders), 106.0, FRONT)
        assert plan.without == ()
        assert len(plan.joints) == cylinders


def test_bank_without_known_bolts_leaves_every_joint_to_the_stand() -> None:
    layout = DeckLayout(bank="l", bores=shared(3).bores)
    assert plan_joints(layout, 106.0, FRONT).without == ("1", "2", "3")


def test_angle_counts_from_the_named_datum_in_the_named_sense() -> None:
    up = math.pi / 2
    assert math.isclose(FRONT.angle(up), math.pi / 2)
    assert FRONT.clock(up) == 3
    assert FRONT.clock(math.pi) == 12
    against = Datum(name="rear", direction=0.0, clockwise=False)
    assert math.isclose(against.angle(up), math.pi / 2)
    assert math.isclose(against.angle(-up), 1.5 * math.pi)
    assert against.clock(-up) == 9


def test_end_cylinders_turn_their_joints_away_from_the_bridge() -> None:
    first, *_, last = plan_joints(shared(4), 106.0, FRONT).joints
    assert first.at[0] < 0.0
    assert last.at[0] > 3 * 112.0
    assert first.clear_of_bridge > math.pi / 2
