"""Where the joint of each ring goes: beside a bolt, off the bridge, away from the next joint."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from core.calc.deck_layout import Bore, DeckLayout, Hole, Point, distance
from core.source import Source
from core.tables.cut_practice import JOINT, JOINT_SOURCE, JointPractice
from core.unit_types import Millimetre, Radian

SOURCE: Source = JOINT_SOURCE
TURN = 2.0 * math.pi
HOURS = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class Datum:
    """Direction that angles on a deck are counted from.

    Parameters
    ----------
    name
        What it is called, such as "front of the engine".
    direction
        Direction on the layout, from x towards y [rad].
    clockwise
        Whether angles grow clockwise, looking down on the deck.
    """

    name: str
    direction: Radian = math.pi
    clockwise: bool = True

    def angle(self, bearing: Radian) -> Radian:
        """Angle from the datum of a direction on the layout, 0 to a full turn [rad].

        Parameters
        ----------
        bearing
            Direction on the layout, from x towards y [rad].
        """
        turned = self.direction - bearing if self.clockwise else bearing - self.direction
        return turned % TURN

    def bearing(self, angle: Radian) -> Radian:
        """Direction on the layout of an angle from the datum [rad].

        Parameters
        ----------
        angle
            From the datum [rad].
        """
        return self.direction - angle if self.clockwise else self.direction + angle

    def clock(self, bearing: Radian) -> int:
        """Hour of a clock whose 12 is the datum, 1 to 12.

        Parameters
        ----------
        bearing
            Direction on the layout, from x towards y [rad].
        """
        return round(self.angle(bearing) / TURN * HOURS) % HOURS or HOURS


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """Place of one joint.

    Parameters
    ----------
    cylinder
        Which ring.
    bolt
        Bolt that it is beside.
    angle
        From the datum [rad].
    clock
        The same as an hour, 12 at the datum.
    at
        Place on the ring [mm].
    clear_of_bridge
        Angle to the nearest line to a neighbouring bore; half a turn for a single bore [rad].
    """

    cylinder: str
    bolt: str
    angle: Radian
    clock: int
    at: Point
    clear_of_bridge: Radian


@dataclass(frozen=True, slots=True, kw_only=True)
class JointPlan:
    """Joints of a bank.

    Parameters
    ----------
    joints
        One for each ring that has a place for it, from the front.
    without
        Cylinders for which no bolt is off the bridge and away from the next joint: to be decided
        at the stand.
    """

    datum: Datum
    joints: tuple[Joint, ...]
    without: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Choice:
    bolt: Hole
    bearing: Radian
    at: Point
    clear: Radian


def plan_joints(
    layout: DeckLayout, centre_diameter: Millimetre, datum: Datum,
    practice: JointPractice = JOINT,
) -> JointPlan:
    """A joint for each ring of a bank.

    As many rings as possible get one; of those plans, the one whose joints are farthest off the
    bridges, and on one side of the bank where that is equal.

    Parameters
    ----------
    centre_diameter
        Diameter of the grooves' centre line [mm].

    Source
    ------
    *common practice, no source*: beside a head bolt, where clamp load is highest, never between
    bores, joints of neighbours apart.
    """
    bores = layout.in_order
    choices = [_choices(layout, bore, 0.5 * centre_diameter, practice) for bore in bores]
    least = [practice.apart * distance(a, b) for a, b in pairwise(bores)]
    chosen = _best(choices, least)
    return JointPlan(
        datum=datum,
        joints=tuple(
            _joint(bore, choice, datum)
            for bore, choice in zip(bores, chosen, strict=True)
            if choice is not None
        ),
        without=tuple(
            bore.name for bore, choice in zip(bores, chosen, strict=True) if choice is None
        ),
    )


def _choices(
    layout: DeckLayout, bore: Bore, radius: Millimetre, practice: JointPractice
) -> list[_Choice]:
    """Places on one ring that are beside a bolt and off the bridge."""
    bridges = [_bearing(bore, other) for other in layout.neighbours(bore)]
    nearest = min((distance(bore, bolt) for bolt in layout.bolts), default=0.0)
    found = []
    for bolt in layout.bolts:
        bearing = _bearing(bore, bolt)
        clear = min((_between(bearing, bridge) for bridge in bridges), default=math.pi)
        if distance(bore, bolt) <= practice.reach * nearest and clear >= practice.clear_of_bridge:
            at = (bore.x + radius * math.cos(bearing), bore.y + radius * math.sin(bearing))
            found.append(_Choice(bolt, bearing, at, clear))
    return found


def _bearing(start: Bore, end: Bore | Hole) -> Radian:
    return math.atan2(end.y - start.y, end.x - start.x)


def _between(a: Radian, b: Radian) -> Radian:
    return abs((a - b + math.pi) % TURN - math.pi)


_Score = tuple[int, float, int]


def _best(
    choices: Sequence[Sequence[_Choice]], least: Sequence[Millimetre]
) -> list[_Choice | None]:
    """The best choice for each ring in turn, none where there is none.

    A ring without a joint parts its neighbours, so that each step needs the last ring only.
    """
    plans: dict[int | None, tuple[_Score, list[_Choice | None]]] = {None: ((0, 0.0, 0), [])}
    for ring, options in enumerate(choices):
        apart = least[ring - 1] if ring else 0.0
        plans = {
            key: max(
                (_extended(plan, option) for plan in plans.values() if _fits(plan, option, apart)),
                key=lambda plan: plan[0],
            )
            for key, option in ((None, None), *enumerate(options))
            if any(_fits(plan, option, apart) for plan in plans.values())
        }
    return max(plans.values(), key=lambda plan: plan[0])[1]


def _fits(
    plan: tuple[_Score, list[_Choice | None]], option: _Choice | None, apart: Millimetre
) -> bool:
    last = plan[1][-1] if plan[1] else None
    if option is None or last is None:
        return True
    return option.bolt is not last.bolt and math.dist(option.at, last.at) >= apart


def _extended(
    plan: tuple[_Score, list[_Choice | None]], option: _Choice | None
) -> tuple[_Score, list[_Choice | None]]:
    (placed, clear, same_side), chosen = plan
    if option is None:
        return plan[0], [*chosen, None]
    last = chosen[-1] if chosen else None
    alike = last is not None and (last.bolt.y > 0) == (option.bolt.y > 0)
    score = (placed + 1, round(clear + option.clear, 9), same_side + alike)
    return score, [*chosen, option]


def _joint(bore: Bore, choice: _Choice, datum: Datum) -> Joint:
    return Joint(
        cylinder=bore.name,
        bolt=choice.bolt.name,
        angle=datum.angle(choice.bearing),
        clock=datum.clock(choice.bearing),
        at=choice.at,
        clear_of_bridge=choice.clear,
    )
