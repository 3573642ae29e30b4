"""What a job and a shop hold, as frozen values.

Each class that is an `Entry` is one kind of record: its attributes are the fields that events set,
except those that are `joined` from other records. A `Places` field has one value at each place,
each entered and replaced by itself.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Any, TypeAlias

from core.records.event import Event
from core.unit_types import Millimetre

JOINED = "joined"


def joined(default: Any = ()) -> Any:
    """Attribute that is put together from other records, never entered."""
    return field(default=default, metadata={JOINED: True})


@dataclass(frozen=True, slots=True, kw_only=True)
class Length:
    """A length as it was typed, and what that came to.

    Both are kept: a later version never reads the same entry differently.

    Parameters
    ----------
    typed
        What the person typed or tapped, unit included.
    mm
        Its value [mm].
    """

    typed: str
    mm: Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """A size other than a length, as it was typed, and what that came to.

    Parameters
    ----------
    typed
        What the person typed or tapped, unit included.
    value
        Its value in the base unit: mm³ for a volume, rad for an angle, 1 for a ratio.
    """

    typed: str
    value: float


Place: TypeAlias = str
"""Where on a ring or a head: a clock hour ``1`` to ``12``, or one of `NAMED_PLACES`."""
NAMED_PLACES = ("bridge", "joint before", "joint after")
CLOCK_PLACES = ("12", "3", "6", "9")
"""The four places at which a groove is measured before the wire goes in."""


class JobState(StrEnum):
    """How far a job has come."""

    PLANNED = "planned"
    AT_WORK = "at work"
    ASSEMBLED = "assembled"
    RUN = "run"
    TORN_DOWN = "torn down"
    DONE = "done"


class HeadFaceKind(StrEnum):
    """What the wire meets on the head."""

    FLAT = "flat"
    PRINTED = "printed"
    RECEIVER = "receiver"


class ReadingKind(StrEnum):
    """How a wire height was measured."""

    LEAVES = "leaves"
    GAUGED = "gauged"
    INDICATOR = "indicator"
    DEPTH_MICROMETER = "depth micrometer"
    CALIPER = "caliper"


class Tapped(StrEnum):
    """Before or after the wire was tapped down."""

    BEFORE = "before"
    AFTER = "after"


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadFace:
    """What the wire meets on the head, and how deep an old print or a receiver groove is."""

    kind: HeadFaceKind
    depth: Length | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """One measurement, kept and corrected as a whole.

    Parameters
    ----------
    cylinder
        Record of the cylinder.
    go, no_go
        Thickest leaf that went and thinnest that did not.
    values
        Values read, where the instrument gives some.
    instrument
        Record of the instrument or leaf set in the shop's list.
    rocks
        The straightedge rocks: this ring is high.
    """

    cylinder: str
    kind: ReadingKind
    place: Place
    tapped: Tapped
    go: Length | None = None
    no_go: Length | None = None
    values: tuple[Length, ...] = ()
    instrument: str = ""
    rocks: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """What every record has."""

    id: str
    deleted: bool = False
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading(Entry):
    """A measurement, who made it and when [ms since 1970, UTC]; `corrected` if not the first."""

    measured: Measured | None = None
    who: str = joined("")
    at: int = joined(0)
    corrected: bool = joined(False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence(Entry):
    """What one cylinder showed after running."""

    cylinder: str = ""
    print_depth: Mapping[Place, Length] = field(default_factory=dict)
    soot: Mapping[Place, str] = field(default_factory=dict)
    water: Mapping[Place, str] = field(default_factory=dict)
    wire_again: Mapping[Place, Length] = field(default_factory=dict)
    sheet_annealed: int | None = None
    pictures: Mapping[str, str] = field(default_factory=dict)
    who: str = joined("")
    at: int = joined(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cylinder(Entry):
    """One cylinder: its groove as measured before the wire went in, its wire, its readings.

    `piston_deck` is the piston below the deck at top dead centre, negative if it stands proud;
    `intake_valve` and `exhaust_valve` are clearances to the piston with the sheet on now.
    """

    bank: str = ""
    number: str = ""
    bore: Length | None = None
    groove_width: Mapping[Place, Length] = field(default_factory=dict)
    groove_depth: Mapping[Place, Length] = field(default_factory=dict)
    centre_diameter: Length | None = None
    wire: Length | None = None
    spool: str = ""
    joint: Place = ""
    piston_deck: Length | None = None
    intake_valve: Length | None = None
    exhaust_valve: Length | None = None
    readings: tuple[Reading, ...] = joined()
    evidence: tuple[Evidence, ...] = joined()


@dataclass(frozen=True, slots=True, kw_only=True)
class Bank(Entry):
    """One deck with its cylinders in order."""

    name: str = ""
    order: int = 0
    cylinders: tuple[Cylinder, ...] = joined()


@dataclass(frozen=True, slots=True, kw_only=True)
class StepTick(Entry):
    """A step of the job that was done or skipped, by whom and when."""

    done: bool = False
    who: str = joined("")
    at: int = joined(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Squeeze(Entry):
    """A scrap of sheet clamped on trial, and how deep the wire printed into it."""

    cylinder: str = ""
    sheet: Length | None = None
    print_depth: Mapping[Place, Length] = field(default_factory=dict)
    who: str = joined("")
    at: int = joined(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision(Entry):
    """What was decided and why, in the words of who decided."""

    about: str = ""
    chosen: str = ""
    sheet: Length | None = None
    reason: str = ""
    who: str = joined("")
    at: int = joined(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits(Entry):
    """What limits the sheet besides the wire, one record a job; clearances at `sheet_on`.

    `valve_gear` is ``pushrods`` or ``overhead cam``; `rod` and `block_material` are the words of
    the tables of practice. What is not entered stays out of the choice.
    """

    sheet_on: Length | None = None
    two_as_one: bool = False
    rod: str = ""
    piston_least: Length | None = None
    intake_least: Length | None = None
    exhaust_least: Length | None = None
    valve_tilt: Amount | None = None
    stroke: Length | None = None
    gasket_bore: Length | None = None
    chamber: Amount | None = None
    dish: Amount | None = None
    dome: Amount | None = None
    lowest_ratio: Amount | None = None
    highest_ratio: Amount | None = None
    valve_gear: str = ""
    pushrod_length: Length | None = None
    pushrod_tilt: Amount | None = None
    preload: Length | None = None
    preload_least: Length | None = None
    preload_most: Length | None = None
    crank_teeth: int | None = None
    cam_teeth: int | None = None
    chain_pitch: Length | None = None
    cam_centres: Length | None = None
    lift_angle: Amount | None = None
    banks_on_chain: int | None = None
    most_retard: Amount | None = None
    most_advance: Amount | None = None
    bank_angle: Amount | None = None
    face_angle: Amount | None = None
    largest_offset: Length | None = None
    thickest_spacer: Length | None = None
    dowel_proud: Length | None = None
    dowel_least: Length | None = None
    thread_engaged: Length | None = None
    thread_diameter: Length | None = None
    thread_least: Length | None = None
    thread_room: Length | None = None
    block_material: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Job(Entry):
    """One engine at one time.

    `unplaced` are readings whose cylinder has not arrived here yet, `unread` is what a newer
    version entered.
    """

    title: str = ""
    engine: str = ""
    owner: str = ""
    block: str = ""
    head: str = ""
    head_face: HeadFace | None = None
    state: JobState = JobState.PLANNED
    demo: bool = False
    copied_from: str = ""
    banks: tuple[Bank, ...] = joined()
    steps: tuple[StepTick, ...] = joined()
    squeezes: tuple[Squeeze, ...] = joined()
    decisions: tuple[Decision, ...] = joined()
    limits: tuple[Limits, ...] = joined()
    unplaced: tuple[Reading, ...] = joined()
    unread: tuple[Event, ...] = joined()

    @property
    def cylinders(self) -> tuple[Cylinder, ...]:
        """Every cylinder, bank by bank."""
        return tuple(cylinder for bank in self.banks for cylinder in bank.cylinders)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet(Entry):
    """A gasket sheet on the shelf."""

    thickness: Length | None = None
    material: str = ""
    count: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafSet(Entry):
    """A set of feeler leaves."""

    name: str = ""
    leaves: tuple[Length, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Instrument(Entry):
    """An instrument of the shop, how finely it reads and how far it may be off."""

    name: str = ""
    kind: ReadingKind | None = None
    resolution: Length | None = None
    tolerance: Length | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Spool(Entry):
    """A spool of wire, and what the micrometer said at three places of it."""

    name: str = ""
    nominal: Length | None = None
    miked: tuple[Length, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Cutter(Entry):
    """A groove cutter."""

    name: str = ""
    width: Length | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TestGroove(Entry):
    """A groove cut in scrap with a piece of one spool pressed in: what holds, and by how much."""

    spool: str = ""
    cutter: str = ""
    width: Length | None = None
    depth: Length | None = None
    interference: Length | None = None
    holds: bool | None = None
    who: str = joined("")
    at: int = joined(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class TemplateBank:
    """Name of a bank and numbers of its cylinders, in order."""

    name: str
    cylinders: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Template(Entry):
    """An engine the shop meets often, as the start of a job."""

    name: str = ""
    engine: str = ""
    head_face: HeadFace | None = None
    banks: tuple[TemplateBank, ...] = ()
    bore: Length | None = None
    centre_diameter: Length | None = None
    wire: Length | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Shop:
    """What all jobs share."""

    shelf: tuple[Sheet, ...] = ()
    leaf_sets: tuple[LeafSet, ...] = ()
    instruments: tuple[Instrument, ...] = ()
    spools: tuple[Spool, ...] = ()
    cutters: tuple[Cutter, ...] = ()
    test_grooves: tuple[TestGroove, ...] = ()
    templates: tuple[Template, ...] = ()
    unread: tuple[Event, ...] = ()


JOB_KINDS: Mapping[str, type[Entry]] = {
    "job": Job,
    "bank": Bank,
    "cylinder": Cylinder,
    "reading": Reading,
    "evidence": Evidence,
    "step": StepTick,
    "squeeze": Squeeze,
    "decision": Decision,
    "limits": Limits,
}
SHOP_KINDS: Mapping[str, type[Entry]] = {
    "sheet": Sheet,
    "leaf_set": LeafSet,
    "instrument": Instrument,
    "spool": Spool,
    "cutter": Cutter,
    "test_groove": TestGroove,
    "template": Template,
}
