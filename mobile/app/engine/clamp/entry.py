"""What has been chosen and typed for the clamp, and how a tap changes it."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from core.errors import InputError
from core.forms.clamp_engine_form import ROW_FIELDS
from core.texts import text
from core.units import Bare, read_quantity
from mobile.app.engine.clamp.choices import (
    FOLLOWERS,
    OWN_FRICTION,
    OWN_STRENGTHS,
    asked,
    fields,
    has_range,
    in_order,
    offered,
)
from mobile.app.engine.clamp.fields import AREA, OWN_HEIGHT, PADS
from mobile.app.state.keys import erased, pressed

PARTS = ("entry", "loads", "curve", "spread", "tighten")


@dataclass(frozen=True, slots=True, kw_only=True)
class ClampEntry:
    """One engine's clamp under way.

    Parameters
    ----------
    choices
        What was chosen, by choice.
    texts
        What stands in each field, with its unit.
    heights
        Text of each cylinder whose wire has a height of its own.
    open_choice, open_field
        The choice whose answers are shown, and the field the number pad types into.
    typing
        What has been typed there.
    untouched
        Whether no key was pressed since the field was opened: the first one starts anew.
    part
        Which part of the screen is shown.
    cylinder
        Cylinder whose verdicts, curve and spread are shown; the weakest until one is picked.
    quantity
        Which load's spread is shown.
    turns
        Fasteners tightened so far, over all steps.
    """

    choices: Mapping[str, str] = field(default_factory=dict)
    texts: Mapping[str, str] = field(default_factory=dict)
    heights: Mapping[str, str] = field(default_factory=dict)
    open_choice: str | None = None
    open_field: str | None = None
    typing: str = ""
    untouched: bool = True
    part: str = "entry"
    cylinder: str | None = None
    quantity: str = "clamp"
    turns: int = 0


def with_text(texts: Mapping[str, str], name: str, value: str) -> dict[str, str]:
    """The texts with one changed; an empty one is taken out."""
    others = {each: kept for each, kept in texts.items() if each != name}
    return {**others, name: value} if value else others


# ---- choices ----


def open_choice(entry: ClampEntry, name: str) -> ClampEntry:
    """Show the answers to a choice; the same one again puts them away."""
    shown = None if entry.open_choice == name else name
    return replace(entry, open_choice=shown, open_field=None, typing="")


def choose(entry: ClampEntry, name: str, value: str) -> ClampEntry:
    """Take an answer and go on to what is still needed; the same answer again takes it back."""
    again = entry.choices.get(name) == value
    choices = with_text(entry.choices, name, "" if again else value)
    if not again:
        choices = {each: kept for each, kept in choices.items() if each not in _void(name)}
    chosen = replace(entry, choices=choices, open_choice=None, turns=0)
    return chosen if again else go_on(chosen)


def _void(name: str) -> tuple[str, ...]:
    return FOLLOWERS.get(name, ())


# ---- what is still needed ----


def needs(entry: ClampEntry) -> tuple[str, ...]:
    """Choices and fields without which nothing is computed, in the order of the screen."""
    choices = entry.choices
    order = list(in_order(choices))
    if choices.get("around") == "pattern" and not any(map(entry.texts.get, ROW_FIELDS)):
        order.insert(1 + order.index("spacing"), ROW_FIELDS[0])
    return tuple(name for name in order if name not in choices and name not in entry.texts)


def go_on(entry: ClampEntry) -> ClampEntry:
    """Open the first thing that is still needed."""
    first = next(iter(needs(entry)), None)
    if first is None:
        return replace(entry, open_choice=None, open_field=None, typing="")
    return open_choice(entry, first) if first not in PADS else open_pad(entry, first)


# ---- the number pad ----


def open_pad(entry: ClampEntry, name: str) -> ClampEntry:
    """Type into a field; the same one again puts the pad away."""
    if entry.open_field == name:
        return replace(entry, open_field=None, typing="")
    kept = text_of(entry, name)
    return replace(entry, open_field=name, open_choice=None, typing=kept, untouched=True)


def text_of(entry: ClampEntry, name: str) -> str:
    """What stands in a field."""
    if name == OWN_HEIGHT:
        return entry.heights.get(entry.cylinder or "", "")
    return entry.texts.get(name, "")


def press(entry: ClampEntry, key: str, metric: bool) -> ClampEntry:
    """A key of the number pad."""
    kept = "" if entry.untouched else entry.typing
    return _typed(entry, pressed(kept, "", key), metric)


def erase(entry: ClampEntry, metric: bool) -> ClampEntry:
    """Take the last key back, or the whole text as it was found."""
    return _typed(entry, "" if entry.untouched else erased(entry.typing), metric)


def clear(entry: ClampEntry, metric: bool) -> ClampEntry:
    """Take everything typed back."""
    return _typed(entry, "", metric)


def done(entry: ClampEntry) -> ClampEntry:
    """Put the pad away; from a field that was filled, on to what is still needed."""
    filled = bool(text_of(entry, entry.open_field or ""))
    away = replace(entry, open_field=None, typing="")
    return go_on(away) if filled else away


def _typed(entry: ClampEntry, typing: str, metric: bool) -> ClampEntry:
    """What reads goes into its field; what does not reads as empty there."""
    name = entry.open_field or ""
    typed = replace(entry, typing=typing, untouched=False, turns=0)
    value = understood(typed, metric) or ""
    if name == OWN_HEIGHT:
        return replace(typed, heights=with_text(entry.heights, entry.cylinder or "", value))
    return replace(typed, texts=with_text(entry.texts, name, value))


def understood(entry: ClampEntry, metric: bool) -> str | None:
    """What is typed, with its unit; none while it does not read."""
    try:
        return _read(entry, metric)
    except InputError:
        return None


def told(entry: ClampEntry, metric: bool) -> str:
    """How what is typed is understood, or what to type."""
    if not entry.typing:
        unit = unit_of(entry.open_field or "", metric)
        return text("clamp.pad.unit", unit=unit) if unit else text("clamp.pad.number")
    try:
        return text("pad.read", read=_read(entry, metric))
    except InputError as error:
        return str(error)


def unit_of(name: str, metric: bool) -> str:
    """Unit of a bare number in a field; empty where it has none."""
    pad = PADS[name]
    if pad.kind.bare is Bare.THOU_OR_INCH and not metric:
        return text("clamp.pad.thou")
    if pad.kind.bare is Bare.DEGREE:
        return "°"
    unit = pad.metric if metric else pad.inch
    return text("unit.in") if unit == "in" else unit


def _read(entry: ClampEntry, metric: bool) -> str:
    name = entry.open_field or ""
    pad = PADS[name]
    unit = pad.metric if metric else pad.inch
    bare = entry.typing[-1:].isdigit() or entry.typing.endswith(".")
    typed = f"{entry.typing} {unit}" if bare and unit else entry.typing
    kind = replace(pad.kind, name=label(entry, name))
    return read_quantity(typed, kind).echo if entry.typing else ""


def label(entry: ClampEntry, name: str) -> str:
    """What a choice or field is called."""
    snug = name == "torque" and entry.choices.get("tightened") == "angle"
    return text(f"field.{AREA}{'snug' if snug else name}")


# ---- what is shown ----


def show_part(entry: ClampEntry, part: str) -> ClampEntry:
    """Another part of the screen."""
    return replace(entry, part=part, open_choice=None, open_field=None, typing="")


def show_cylinder(entry: ClampEntry, cylinder: str) -> ClampEntry:
    """Verdicts, curve and spread of another cylinder."""
    return replace(entry, cylinder=cylinder, open_field=None, typing="")


def show_quantity(entry: ClampEntry, quantity: str) -> ClampEntry:
    """The spread of another load."""
    return replace(entry, quantity=quantity)


def turn(entry: ClampEntry, by: int, most: int) -> ClampEntry:
    """One fastener more is tightened, or one fewer."""
    return replace(entry, turns=min(max(entry.turns + by, 0), most))


def fill(entry: ClampEntry, texts: Mapping[str, str]) -> ClampEntry:
    """Take over texts that stand elsewhere already."""
    return replace(entry, texts={**entry.texts, **texts}, turns=0)


# ---- to the form ----


def form_texts(entry: ClampEntry) -> dict[str, list[str]]:
    """The fields of `core.forms.clamp_engine_form`, with what these choices ask for alone."""
    choices, asks = entry.choices, fields(entry.choices)
    found = {name: entry.texts[name] for name in (*asks.must, *asks.may) if name in entry.texts}
    found |= {f"height-{cylinder}": each for cylinder, each in entry.heights.items()}
    found["thread"] = choices["thread"]
    if choices["strength"] not in OWN_STRENGTHS:
        found["grade"] = choices["strength"]
    if "lubricant" in asked(choices) and choices["lubricant"] != OWN_FRICTION:
        found["lubricant"] = choices["lubricant"]
    if "by" in choices and "by" in offered(choices) and scatter_is_asked(entry):
        found["by"] = choices["by"]
    if "copper" in choices:
        found["copper"] = choices["copper"]
    if "face" in choices:
        depth = found.pop("face-depth", "")
        found["head-face"] = f"{choices['face']}:{depth}" if depth else choices["face"]
    return {name: [each] for name, each in found.items()}


def scatter_is_asked(entry: ClampEntry) -> bool:
    """Whether the scatter of the method stands for the friction's own range."""
    lubricant = entry.choices.get("lubricant", "")
    own_range = "friction-tol" in entry.texts and lubricant == OWN_FRICTION
    ranged = own_range or has_range(lubricant)
    return entry.choices.get("tightened") == "preload" or not ranged
