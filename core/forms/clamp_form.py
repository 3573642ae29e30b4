"""The form of the clamp: from texts to fasteners, tightening, pressure, wire and sheet."""

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from core.calc.bedding import Copper
from core.calc.clamp import Cylinder, Joint
from core.calc.engine_clamp import check_sizes
from core.calc.fastener_layout import counted
from core.calc.fasteners import (
    Fastener,
    Grip,
    own_fastener,
    proof_from_yield,
    read_thread,
    standard_fastener,
)
from core.calc.preload import (
    TYPED,
    ByAngle,
    ByStretch,
    ByTorque,
    Friction,
    PercentOfProof,
    Tightening,
    friction_of,
)
from core.calc.quick_check import FLAT_UNTIL_ASKED
from core.calc.separation import PeakPressure, entered_pressure, pressure_floor
from core.errors import refuse
from core.forms.check_form import (
    HEIGHT_FIELD,
    SHEET_FIELD,
    SPREAD_FIELD,
    WIRE_FIELD,
    read_head_face,
)
from core.forms.entries import Entries
from core.source import Source, Trust
from core.tables.copper_strength import Temper
from core.tables.friction import LUBRICANTS, Lubricant, find_lubricant
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.tables.tightening_scatter import Method
from core.texts import text
from core.uncertain import rectangular
from core.unit_types import Millimetre, Number
from core.units import Bare, Dimension, Field

FIELDS = (
    "thread",
    "grade",
    "proof-strength",
    "yield-strength",
    "preload",
    "by",
    "torque",
    "friction",
    "friction-tol",
    "lubricant",
    "angle",
    "stretch",
    "grip",
    "shank",
    "load-share",
    "fasteners",
    "ring",
    "pressure",
    "pressure-tol",
    "compression",
    "boost",
    "wire",
    "height",
    "u",
    "gasket",
    "copper",
    "hardness",
    "head-face",
    "seed",
)
STRENGTHS = ("grade", "proof-strength", "yield-strength")
MAKER = Source(Trust.PUBLISHED, "the fastener maker's data, as typed")
OWN_YIELD = Source(Trust.PUBLISHED, "85 % of yield, Shigley 9th ed., p. 442")


def _number(low: float, high: float) -> Field:
    return Field(name="", dimension=Dimension.RATIO, low=low, high=high, bare=Bare.NUMBER)


def _sized(dimension: Dimension, low: float, high: float, bare: Bare = Bare.REFUSE) -> Field:
    return Field(name="", dimension=dimension, low=low, high=high, bare=bare)


STRENGTH_FIELD = _sized(Dimension.PRESSURE, 200.0, 2500.0)
PRELOAD_FIELD = _number(0.05, 1.2)
TORQUE_FIELD = _sized(Dimension.TORQUE, 1e3, 2e6)
FRICTION_FIELD = _number(0.03, 0.6)
FRICTION_TOL_FIELD = _number(0.001, 0.5)
ANGLE_FIELD = _sized(Dimension.ANGLE, 0.01, 4.0 * math.pi, Bare.DEGREE)
STRETCH_FIELD = _sized(Dimension.LENGTH, 0.05, 3.0, Bare.THOU_OR_INCH)
GRIP_FIELD = _sized(Dimension.LENGTH, 10.0, 500.0)
SHANK_FIELD = _sized(Dimension.LENGTH, 0.0, 500.0)
LOAD_SHARE_FIELD = _number(0.0, 0.99)
COUNT_FIELD = _number(0.5, 20.0)
RING_FIELD = _sized(Dimension.LENGTH, 20.0, 500.0)
PRESSURE_FIELD = _sized(Dimension.PRESSURE, 0.5, 100.0)
PRESSURE_TOL_FIELD = _sized(Dimension.PRESSURE, 0.0, 50.0)
RATIO_FIELD = _number(3.0, 30.0)
BOOST_FIELD = _sized(Dimension.PRESSURE, 0.0, 2.0)
HARDNESS_FIELD = _number(30.0, 200.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class ClampForm:
    """The clamp of one cylinder as read.

    Parameters
    ----------
    sheet
        Sheet thickness; none if not typed [mm].
    seed
        Start of the draws; none if no cross-check was asked for.
    echoes
        How each typed size was understood, by field.
    """

    joint: Joint
    cylinder: Cylinder
    sheet: Millimetre | None
    seed: int | None
    echoes: dict[str, str]


def read_clamp(texts: Mapping[str, Sequence[str]], name: Callable[[str], str]) -> ClampForm:
    """Read the whole form.

    Parameters
    ----------
    texts
        What was typed, by field of `FIELDS`.
    name
        How a sentence names a field.

    Raises
    ------
    InputError
        With every fault of the form, each naming its field.
    """
    entries = Entries(texts, name)
    joint, cylinder = read_joint(entries), _cylinder(entries)
    sheet = entries.value("gasket", SHEET_FIELD)
    seed = entries.read("seed", _whole)
    if joint is None or cylinder is None:
        entries.finish()
    assert joint is not None
    assert cylinder is not None
    entries.attempt(lambda: check_sizes(joint, [cylinder]))
    entries.finish()
    return ClampForm(joint=joint, cylinder=cylinder, sheet=sheet, seed=seed, echoes=entries.echoes)


def read_joint(entries: Entries) -> Joint | None:
    """What all cylinders share; none where a fault stands in the way."""
    fastener = _fastener(entries)
    load_share = entries.value("load-share", LOAD_SHARE_FIELD)
    tightening = _tightening(entries, load_share)
    copper = Copper(
        temper=Temper(_choice(entries, "copper", Temper) or Temper.ANNEALED),
        hardness=entries.value("hardness", HARDNESS_FIELD),
    )
    face = entries.read("head-face", read_head_face) or FLAT_UNTIL_ASKED
    if fastener is None or tightening is None:
        return None
    return Joint(
        fastener=fastener, tightening=tightening, copper=copper, face=face, load_share=load_share
    )


def required(entries: Entries, field: str, kind: Field) -> float | None:
    """Size of a field that cannot be left out."""
    if not entries.typed(field):
        entries.add_fault(field, f"clamp.missing.{field}")
    return entries.value(field, kind)


def _only_one(entries: Entries, fields: Sequence[str], missing: str) -> str | None:
    """The one field of these that was typed; a fault where none or several were."""
    typed = [field for field in fields if entries.typed(field)]
    if len(typed) > 1:
        entries.add_fault(typed[1], "clamp.one_only", fields=_named(entries, fields))
    elif not typed:
        entries.add_fault(missing, f"clamp.missing.{missing}")
    return typed[0] if len(typed) == 1 else None


def _named(entries: Entries, fields: Sequence[str]) -> str:
    return text("clamp.or").join(entries.name_of(field) for field in fields)


def _goes_with(entries: Entries, field: str, others: Sequence[str]) -> None:
    if entries.typed(field) and not any(map(entries.typed, others)):
        entries.add_fault(field, "clamp.needless", other=_named(entries, others))


def _choice(entries: Entries, field: str, choices: Iterable[str]) -> str | None:
    return entries.read(field, lambda typed, name: _chosen(typed, name, tuple(choices)))


def _chosen(typed: str, name: str, choices: Sequence[str]) -> str:
    found = next((each for each in choices if each == typed.lower()), None)
    if found is None:
        raise refuse(name, "clamp.choice", typed=typed, choices=", ".join(choices))
    return found


def _whole(typed: str, name: str) -> int:
    if not typed.isdecimal():
        raise refuse(name, "clamp.seed")
    return int(typed)


def _fastener(entries: Entries) -> Fastener | None:
    if not entries.typed("thread"):
        entries.add_fault("thread", "clamp.missing.thread")
    thread = entries.read("thread", read_thread)
    given = _only_one(entries, STRENGTHS, "grade")
    proof, yielding = (entries.value(each, STRENGTH_FIELD) for each in STRENGTHS[1:])
    if thread is None:
        return None
    if given == "grade":
        return entries.read(given, lambda typed, name: standard_fastener(thread, typed, name))
    if proof is not None:
        return own_fastener(thread, proof, MAKER)
    return None if yielding is None else own_fastener(thread, proof_from_yield(yielding), OWN_YIELD)


def _tightening(entries: Entries, load_share: Number | None) -> Tightening | None:
    for field in ("friction", "lubricant"):
        _goes_with(entries, field, ("torque", "angle"))
    _goes_with(entries, "friction-tol", ("friction",))
    _goes_with(entries, "by", ("preload", "torque"))
    _goes_with(entries, "shank", ("grip",))
    aims = (
        ("preload", "angle", "stretch")
        if entries.typed("angle")
        else ("preload", "torque", "stretch")
    )
    match _only_one(entries, aims, "preload"):
        case "preload":
            return _percent(entries)
        case "torque":
            return _by_torque(entries)
        case "angle":
            return _by_angle(entries, load_share)
        case "stretch":
            return _by_stretch(entries)
    return None


def _percent(entries: Entries) -> Tightening | None:
    share = entries.value("preload", PRELOAD_FIELD)
    method = Method(_choice(entries, "by", Method) or Method.NOT_TOLD)
    return None if share is None else PercentOfProof(share=share, method=method)


def _by_torque(entries: Entries) -> Tightening | None:
    torque = entries.value("torque", TORQUE_FIELD)
    friction = _friction(entries)
    method = Method(_choice(entries, "by", Method) or Method.TORQUE_ESTIMATED)
    if torque is None or friction is None:
        return None
    return ByTorque(torque=torque, friction=friction, method=method)


def _friction(entries: Entries) -> Friction | None:
    given = _only_one(entries, ("friction", "lubricant"), "friction")
    value = entries.value("friction", FRICTION_FIELD)
    half_width = entries.value("friction-tol", FRICTION_TOL_FIELD)
    if given == "lubricant":
        lubricant = entries.read(given, _lubricant)
        return None if lubricant is None else friction_of(lubricant)
    if value is None:
        return None
    if half_width is not None and half_width >= value:
        entries.add_fault("friction-tol", "clamp.friction_tol")
    return Friction(value=value, half_width=half_width, source=TYPED)


def _lubricant(typed: str, name: str) -> Lubricant:
    found = find_lubricant(typed.lower())
    if found is None:
        choices = ", ".join(each.name for each in LUBRICANTS)
        raise refuse(name, "clamp.choice", typed=typed, choices=choices)
    return found


def _by_angle(entries: Entries, load_share: Number | None) -> Tightening | None:
    snug = required(entries, "torque", TORQUE_FIELD)
    angle = entries.value("angle", ANGLE_FIELD)
    friction, grip = _friction(entries), _grip(entries)
    if not load_share:
        entries.add_fault("load-share", "clamp.missing.load-share")
    if snug is None or angle is None or friction is None or grip is None or not load_share:
        return None
    return ByAngle(
        snug_torque=snug, friction=friction, angle=angle, grip=grip, load_share=load_share
    )


def _by_stretch(entries: Entries) -> Tightening | None:
    stretch, grip = entries.value("stretch", STRETCH_FIELD), _grip(entries)
    if stretch is None or grip is None:
        return None
    return ByStretch(stretch=stretch, grip=grip)


def _grip(entries: Entries) -> Grip | None:
    length = required(entries, "grip", GRIP_FIELD)
    shank = entries.value("shank", SHANK_FIELD) or 0.0
    if length is not None and shank > length:
        entries.add_fault("shank", "clamp.shank")
    return None if length is None else Grip(length=length, shank=shank)


def _cylinder(entries: Entries) -> Cylinder | None:
    count = required(entries, "fasteners", COUNT_FIELD)
    ring = required(entries, "ring", RING_FIELD)
    wire = required(entries, "wire", WIRE_FIELD)
    height = required(entries, "height", HEIGHT_FIELD)
    u = height_spread(entries)
    pressure = read_pressure(entries)
    if count is None or ring is None or wire is None or height is None or pressure is None:
        return None
    return Cylinder(
        name="1",
        ring_diameter=ring,
        wire_diameter=wire,
        height=height,
        height_u=u,
        fasteners=counted(count),
        pressure=pressure,
    )


def height_spread(entries: Entries) -> Millimetre:
    """Standard uncertainty of the height as typed; a snug leaf's where none was [mm]."""
    u = entries.value("u", SPREAD_FIELD)
    return rectangular(ASSUMED_HALF_WIDTHS.snug) if u is None else u


def read_pressure(entries: Entries) -> PeakPressure | None:
    """Peak pressure as typed, or its floor from compression and boost."""
    _goes_with(entries, "pressure-tol", ("pressure",))
    _goes_with(entries, "boost", ("compression",))
    given = _only_one(entries, ("pressure", "compression"), "pressure")
    peak = entries.value("pressure", PRESSURE_FIELD)
    half_width = entries.value("pressure-tol", PRESSURE_TOL_FIELD)
    ratio = entries.value("compression", RATIO_FIELD)
    boost = entries.value("boost", BOOST_FIELD)
    if given == "compression":
        return None if ratio is None else pressure_floor(ratio, boost or 0.0)
    return None if peak is None else entered_pressure(peak, half_width)
