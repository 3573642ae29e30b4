"""What is chosen rather than typed, and what each choice then asks for."""

from collections.abc import Mapping
from dataclasses import dataclass

from core.calc.fasteners import read_thread
from core.forms.clamp_engine_form import ROW_FIELDS
from core.tables.copper_strength import Temper
from core.tables.friction import LUBRICANTS, find_lubricant
from core.tables.property_classes import grade_names
from core.tables.threads import INCH_THREADS, METRIC_PITCHES
from core.tables.tightening_scatter import SCATTER, Method
from core.texts import text
from core.texts.share import Share

Choices = Mapping[str, str]
OWN_STRENGTHS = ("proof-strength", "yield-strength")
OWN_FRICTION = "own"
TIGHTENED = ("torque", "preload", "angle", "stretch")
WITH_FRICTION = ("torque", "angle")
TORQUE_METHODS = (Method.TORQUE_ESTIMATED, Method.TORQUE_TESTED, Method.IMPACT)
PEAKS = ("pressure", "compression")
AROUND = ("fasteners", "pattern")
FACES = ("flat", "printed", "receiver")
FOLLOWERS = {"size": ("thread", "strength"), "tightened": ("by",)}
"""Choices that another choice makes void."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One answer to a choice, and what its button says."""

    value: str
    label: str
    detail: str = ""


def options(choices: Choices, name: str, metric: bool) -> tuple[Option, ...]:
    """Every answer to one choice, as far as the earlier ones allow."""
    match name:
        case "size":
            return _sizes(metric)
        case "thread":
            return tuple(Option(value=each, label=each) for each in _threads(choices["size"]))
        case "strength":
            return _strengths(choices["thread"])
        case "lubricant":
            return _lubricants()
        case "by":
            return _methods(choices["tightened"])
    return tuple(Option(value=each, label=text(f"clamp.{name}.{each}")) for each in VALUES[name])


VALUES: dict[str, tuple[str, ...]] = {
    "tightened": TIGHTENED,
    "around": AROUND,
    "peak": PEAKS,
    "copper": tuple(Temper),
    "face": FACES,
}


def _sizes(metric: bool) -> tuple[Option, ...]:
    inch = [Option(value=each, label=f"{each} in") for each in INCH_THREADS]
    millimetre = [Option(value=f"M{each:g}", label=f"M{each:g}") for each in METRIC_PITCHES]
    return (*millimetre, *inch) if metric else (*inch, *millimetre)


def _threads(size: str) -> tuple[str, ...]:
    if size in INCH_THREADS:
        return tuple(f"{size}-{per_inch}" for per_inch in INCH_THREADS[size])
    pitches = METRIC_PITCHES[float(size.removeprefix("M"))]
    return tuple(f"{size}x{pitch:g}" for pitch in pitches)


def _strengths(thread: str) -> tuple[Option, ...]:
    form = read_thread(thread, "thread").form
    grades = [
        Option(value=each, label=text(f"clamp.grade.{form}", grade=each))
        for each in grade_names(form)
    ]
    own = [Option(value=each, label=text(f"clamp.strength.{each}")) for each in OWN_STRENGTHS]
    return (*grades, *own)


def _lubricants() -> tuple[Option, ...]:
    printed = [
        Option(
            value=each.name,
            label=text(f"clamp.lubricant.{each.name}"),
            detail=f"{each.low:.2f}"
            if each.low == each.high
            else f"{each.low:.2f}–{each.high:.2f}",
        )
        for each in LUBRICANTS
    ]
    return (*printed, Option(value=OWN_FRICTION, label=text("clamp.lubricant.own"), detail="K"))


def _methods(tightened: str) -> tuple[Option, ...]:
    methods = TORQUE_METHODS if tightened == "torque" else tuple(Method)
    return tuple(
        Option(
            value=each,
            label=text(f"clamp.by.{each}"),
            detail=f"±{Share(SCATTER[each].band)}",
        )
        for each in methods
    )


def has_range(lubricant: str) -> bool:
    """Whether sources print more than one friction for it."""
    found = find_lubricant(lubricant)
    return found is not None and found.low < found.high


def asked(choices: Choices) -> tuple[str, ...]:
    """Choices that must be made, in their order."""
    friction = ("lubricant",) if choices.get("tightened") in WITH_FRICTION else ()
    return ("size", "thread", "strength", "tightened", *friction, "around", "peak")


def offered(choices: Choices) -> tuple[str, ...]:
    """Choices that may be made besides, each with a usual answer."""
    by = ("by",) if choices.get("tightened") in ("torque", "preload") else ()
    return (*by, "copper", "face")


def in_order(choices: Choices) -> tuple[str, ...]:
    """Every choice and field without which nothing is computed, in the order of the screen."""
    faces = (each for each in offered(choices) if each in choices)
    found = [
        each for name in (*asked(choices), *faces) for each in (name, *wanted(choices, name).must)
    ]
    return tuple(dict.fromkeys((*found, *ALWAYS.must)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """Fields that the choices ask for: without `must` nothing is computed."""

    must: tuple[str, ...]
    may: tuple[str, ...] = ()


NOTHING = Wanted(must=())
AFTER: dict[tuple[str, str], Wanted] = {
    ("strength", "proof-strength"): Wanted(must=("proof-strength",)),
    ("strength", "yield-strength"): Wanted(must=("yield-strength",)),
    ("tightened", "preload"): Wanted(must=("preload",), may=("load-share",)),
    ("tightened", "torque"): Wanted(must=("torque",), may=("load-share",)),
    ("tightened", "angle"): Wanted(must=("torque", "angle", "grip", "load-share"), may=("shank",)),
    ("tightened", "stretch"): Wanted(must=("stretch", "grip"), may=("shank", "load-share")),
    ("lubricant", OWN_FRICTION): Wanted(must=("friction",), may=("friction-tol",)),
    ("around", "fasteners"): Wanted(must=("fasteners",), may=("cylinders", "banks")),
    ("around", "pattern"): Wanted(must=("cylinders", "spacing"), may=("banks", *ROW_FIELDS)),
    ("peak", "pressure"): Wanted(must=("pressure",), may=("pressure-tol",)),
    ("peak", "compression"): Wanted(must=("compression",), may=("boost",)),
    ("face", "printed"): Wanted(must=("face-depth",)),
    ("face", "receiver"): Wanted(must=("face-depth",)),
}
"""Fields of each choice."""
ALWAYS = Wanted(must=("ring", "wire", "height"), may=("u", "gasket", "hardness"))
"""Fields whatever was chosen."""


def wanted(choices: Choices, name: str) -> Wanted:
    """Fields that follow one choice as it was made."""
    return AFTER.get((name, choices.get(name, "")), NOTHING)


def fields(choices: Choices) -> Wanted:
    """Every field that the choices ask for, in the order of the screen."""
    groups = [wanted(choices, name) for name in (*asked(choices), *offered(choices))]
    groups.append(ALWAYS)
    return Wanted(
        must=tuple(dict.fromkeys(field for group in groups for field in group.must)),
        may=tuple(dict.fromkeys(field for group in groups for field in group.may)),
    )
