"""The way round the rings: which place comes next, and what has been read there so far."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from core.records.model import (
    NAMED_PLACES,
    Cylinder,
    Job,
    Length,
    Measured,
    Place,
    Reading,
    ReadingKind,
    Tapped,
)
from core.records.view import live
from mobile.app.jobs.state.quick import leaf_length
from mobile.app.state.entry import Entry

CLOCK = ("12", "3", "6", "9")
BRIDGE, JOINT_BEFORE, JOINT_AFTER = NAMED_PLACES
HOURS = 12
BESIDE_JOINT = 0.5
"""How far before and after the joint is read [h]."""
BY_LEAVES = ReadingKind.LEAVES
SIDES = (Tapped.BEFORE, Tapped.AFTER)
Stop = tuple[str, Place]
"""A cylinder's record and a place on its ring."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Walk:
    """One walk round the rings under way.

    Parameters
    ----------
    cylinder, place
        Where the app leads to now; no place when everything is read.
    kind
        What is read with: leaves, or an instrument that gives a value.
    instrument
        Record of the instrument in the shop's list, where one was chosen.
    entry
        Leaves tapped at this place, and what is known of it.
    typing
        Value typed, or sent by the instrument, at this place.
    reading
        Record of the reading that this place has already.
    """

    cylinder: str
    place: Place = ""
    tapped: Tapped = Tapped.BEFORE
    kind: ReadingKind = BY_LEAVES
    instrument: str = ""
    entry: Entry = field(default_factory=Entry)
    typing: str = ""
    reading: str = ""

    @property
    def by_leaves(self) -> bool:
        """Whether leaves are tapped rather than a value typed."""
        return self.kind is BY_LEAVES

    @property
    def at(self) -> Stop:
        """Cylinder and place."""
        return self.cylinder, self.place


def hour(place: Place, joint: Place) -> float | None:
    """Where a place is on the clock; none for a bridge, or beside a joint nobody entered."""
    if place.isdecimal():
        return float(int(place) % HOURS)
    if place == BRIDGE or not joint.isdecimal():
        return None
    beside = -BESIDE_JOINT if place == JOINT_BEFORE else BESIDE_JOINT
    return (int(joint) % HOURS + beside) % HOURS


def places_of(cylinder: Cylinder) -> tuple[Place, ...]:
    """Places to read round a ring, as the hand goes; those without a clock place come last."""
    every = (*CLOCK, JOINT_BEFORE, JOINT_AFTER, BRIDGE)
    hours = {place: hour(place, cylinder.joint) for place in every}
    known = [place for place in every if hours[place] is not None]
    return (
        *sorted(known, key=lambda place: hours[place] or 0.0),
        *(place for place in every if hours[place] is None),
    )


def stops(job: Job) -> tuple[Stop, ...]:
    """Every place of every ring, bank by bank."""
    return tuple(
        (cylinder.id, place)
        for bank in live(job.banks)
        for cylinder in live(bank.cylinders)
        for place in places_of(cylinder)
    )


def read_stops(job: Job, tapped: Tapped) -> frozenset[Stop]:
    """Places that have a reading on this side of the hammer."""
    return frozenset(
        (each.measured.cylinder, each.measured.place)
        for cylinder in live(job.cylinders)
        for each in live(cylinder.readings)
        if each.measured and each.measured.tapped is tapped
    )


def next_stop(order: Sequence[Stop], at: Stop, read: Iterable[Stop]) -> Stop | None:
    """First place without a reading after this one, then from the start; none when all are read."""
    done = set(read)
    here = order.index(at) + 1 if at in order else 0
    return next((stop for stop in (*order[here:], *order[:here]) if stop not in done), None)


def stop_before(order: Sequence[Stop], at: Stop) -> Stop | None:
    """The place before; none at the first."""
    if at not in order:
        return order[-1] if order else None
    here = order.index(at)
    return order[here - 1] if here else None


def first_stop(order: Sequence[Stop], cylinder: str, read: Iterable[Stop]) -> Stop | None:
    """First place of a cylinder without a reading, or its first place where all are read."""
    own = [stop for stop in order if stop[0] == cylinder]
    done = set(read)
    return next((stop for stop in own if stop not in done), own[0] if own else None)


def reading_at(cylinder: Cylinder, place: Place, tapped: Tapped) -> Reading | None:
    """Last reading at a place on one side of the hammer."""
    made = [
        each
        for each in live(cylinder.readings)
        if each.measured and each.measured.place == place and each.measured.tapped is tapped
    ]
    return max(made, key=lambda each: (each.at, each.id), default=None)


def leaves_measured(walk: Walk) -> Measured | None:
    """The reading that the tapped leaves make; none before any was tapped."""
    go, no_go = (leaf_length(walk.entry.texts.get(side)) for side in ("go", "no-go"))
    if go is None and no_go is None:
        return None
    return Measured(
        cylinder=walk.cylinder,
        kind=BY_LEAVES,
        place=walk.place,
        tapped=walk.tapped,
        go=go,
        no_go=no_go,
        instrument=walk.instrument,
    )


def both_sides(walk: Walk) -> bool:
    """Whether one leaf goes and one does not."""
    return all(walk.entry.texts.get(side) for side in ("go", "no-go"))


def value_measured(walk: Walk, value: Length) -> Measured:
    """The reading that a value makes."""
    return Measured(
        cylinder=walk.cylinder,
        kind=walk.kind,
        place=walk.place,
        tapped=walk.tapped,
        values=(value,),
        instrument=walk.instrument,
    )


def rocking(walk: Walk) -> Measured:
    """The straightedge rocks: that ring is high here."""
    return Measured(
        cylinder=walk.cylinder,
        kind=BY_LEAVES,
        place=walk.place,
        tapped=walk.tapped,
        rocks=True,
    )
