"""What has been typed and chosen for a deck, and how a tap changes it."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from core.errors import InputError
from core.forms.deck_form import TURN_ABOUT
from core.texts import text
from core.units import read_quantity
from mobile.app.engine.deck.fields import PADS, base_of, label, unit_of
from mobile.app.state.keys import SIGN, erased, pressed

PARTS = ("numbers", "map", "heights", "face", "cut")
VALUES: dict[str, tuple[str, ...]] = {
    "numbering": (TURN_ABOUT, "in-turn"),
    "layer": ("height", "print"),
    "face": ("flat", "printed", "receiver"),
    "material": ("stainless-304", "stainless-304-spring", "copper"),
    "wire-in": ("block", "head", "both"),
    "sheet": ("soft-copper", "other"),
    "finish": ("Ra", "Rz"),
    "part": ("1/4", "1/2", "3/4"),
    "with": ("leaves", "caliper", "indicator"),
}
"""What is chosen rather than typed; the first of each holds until another one is tapped."""
USUAL = {"part": "1/2"}
MOST_ZOOM = 4
ZOOM = 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class DeckEntry:
    """One deck under way.

    Parameters
    ----------
    texts
        What stands in each field, with its unit; a field of a place or a hole has it after a
        colon, such as `height:3/12`.
    choices
        What was chosen, by choice.
    pairs
        Readings on one wire or across two, each in the form of a file of readings.
    on
        Wires that the next reading is on.
    grid
        Readings of a face: `x`, `y` and `z` of each, as typed.
    open_field, typing, untouched
        The field the number pad types into, what was typed, and whether no key was pressed yet.
    picked
        Ring that is read, and bore or hole whose centre is edited.
    bank
        The one bank that the map shows; all of them without.
    zoom
        Steps by which the map was enlarged.
    """

    part: str = "numbers"
    texts: Mapping[str, str] = field(default_factory=dict)
    choices: Mapping[str, str] = field(default_factory=dict)
    pairs: tuple[Mapping[str, object], ...] = ()
    on: tuple[str, ...] = ()
    grid: tuple[Mapping[str, str], ...] = ()
    open_field: str | None = None
    typing: str = ""
    untouched: bool = True
    picked: str | None = None
    moving: str | None = None
    bank: str | None = None
    zoom: int = 0


def chosen(entry: DeckEntry, name: str) -> str:
    """The answer in force to a choice."""
    return entry.choices.get(name) or USUAL.get(name) or VALUES[name][0]


def of(entry: DeckEntry, base: str) -> dict[str, str]:
    """Texts of one kind of field, by what they are of."""
    start = f"{base}:"
    return {
        name.removeprefix(start): value
        for name, value in entry.texts.items()
        if name.startswith(start)
    }


def with_text(entry: DeckEntry, name: str, value: str) -> DeckEntry:
    """The entry with one text changed; an empty one is taken out."""
    others = {each: kept for each, kept in entry.texts.items() if each != name}
    return replace(entry, texts={**others, name: value} if value else others)


def show_part(entry: DeckEntry, part: str) -> DeckEntry:
    """Another part of the screen."""
    return replace(_away(entry), part=part)


def choose(entry: DeckEntry, name: str, value: str) -> DeckEntry:
    """Take an answer to a choice."""
    return replace(entry, choices={**entry.choices, name: value})


# ---- the number pad ----


def open_pad(entry: DeckEntry, name: str) -> DeckEntry:
    """Type into a field; the same one again puts the pad away."""
    if entry.open_field == name:
        return _away(entry)
    return replace(entry, open_field=name, typing=entry.texts.get(name, ""), untouched=True)


def _away(entry: DeckEntry) -> DeckEntry:
    return replace(entry, open_field=None, typing="", untouched=True)


def press(entry: DeckEntry, key: str, metric: bool) -> DeckEntry:
    """A key of the number pad; the first one over a filled field starts anew."""
    kept = "" if entry.untouched and key != SIGN else entry.typing
    return _typed(entry, pressed(kept, "", key), metric)


def erase(entry: DeckEntry, metric: bool) -> DeckEntry:
    """Take the last key back, or the whole text as it was found."""
    return _typed(entry, "" if entry.untouched else erased(entry.typing), metric)


def clear(entry: DeckEntry, metric: bool) -> DeckEntry:
    """Take everything typed back."""
    return _typed(entry, "", metric)


def _typed(entry: DeckEntry, typing: str, metric: bool) -> DeckEntry:
    """What reads goes into its field; what does not reads as empty there."""
    typed = replace(entry, typing=typing, untouched=False)
    return with_text(typed, entry.open_field or "", understood(typed, metric))


def understood(entry: DeckEntry, metric: bool) -> str:
    """What is typed, with its unit; empty while it does not read."""
    try:
        return _read(entry, metric)
    except InputError:
        return ""


def told(entry: DeckEntry, metric: bool) -> str:
    """How what is typed is understood, or what to type."""
    if not entry.typing:
        unit = unit_of(entry.open_field or "", metric)
        return text("deck.pad.unit", unit=unit) if unit else text("deck.pad.number")
    try:
        return text("pad.read", read=_read(entry, metric))
    except InputError as error:
        return str(error)


def _read(entry: DeckEntry, metric: bool) -> str:
    name = entry.open_field or ""
    pad = PADS[base_of(name)]
    unit = pad.metric if metric else pad.inch
    bare = entry.typing[-1:].isdigit() or entry.typing.endswith(".")
    typed = f"{entry.typing} {unit}" if bare and unit else entry.typing
    return read_quantity(typed, replace(pad.kind, name=label(name))).echo if typed else ""


def done(entry: DeckEntry) -> DeckEntry:
    """Put the pad away; round a ring it goes on to the next place."""
    name = entry.open_field or ""
    following = next_place(name) if entry.texts.get(name) else None
    return open_pad(_away(entry), following) if following else _away(entry)


PLACES = tuple(str(hour) for hour in (12, 3, 6, 9))
MORE_PLACES = tuple(str(hour) for hour in (12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11))


def next_place(name: str) -> str | None:
    """The next of the four clock places of a ring; none after the last or elsewhere."""
    base, _, of_what = name.partition(":")
    cylinder, _, hour = of_what.rpartition("/")
    if base not in ("height", "print") or hour not in PLACES[:-1]:
        return None
    return f"{base}:{cylinder}/{PLACES[PLACES.index(hour) + 1]}"


# ---- the map ----


def pick(entry: DeckEntry, cylinder: str | None) -> DeckEntry:
    """Read one ring; the same one again puts it away."""
    return replace(_away(entry), picked=None if entry.picked == cylinder else cylinder)


def show_bank(entry: DeckEntry, bank: str | None) -> DeckEntry:
    """One bank on the whole picture, or all."""
    return replace(entry, bank=bank, zoom=0)


def enlarge(entry: DeckEntry, by: int) -> DeckEntry:
    """A larger or a smaller map."""
    return replace(entry, zoom=min(max(entry.zoom + by, 0), MOST_ZOOM))


def move(entry: DeckEntry, thing: str | None, x: str = "", y: str = "") -> DeckEntry:
    """Edit the centre of a bore or hole, which starts where it stands."""
    if thing is None or entry.moving == thing:
        return replace(_away(entry), moving=None)
    known = f"x:{thing}" in entry.texts
    placed = entry if known else with_text(with_text(entry, f"x:{thing}", x), f"y:{thing}", y)
    return replace(_away(placed), moving=thing)


def put_back(entry: DeckEntry, thing: str) -> DeckEntry:
    """The centre goes back to where the few numbers put it."""
    return replace(with_text(with_text(entry, f"x:{thing}", ""), f"y:{thing}", ""), moving=None)


# ---- readings across two wires ----


def tap_wire(entry: DeckEntry, wire: str) -> DeckEntry:
    """A wire for the next reading; at most two, the same one again takes it back."""
    if wire in entry.on:
        return replace(entry, on=tuple(each for each in entry.on if each != wire))
    return replace(entry, on=(*entry.on, wire)[-2:])


def add_pair(entry: DeckEntry) -> DeckEntry:
    """Keep the reading as it stands and begin the next one."""
    reading = _reading(entry)
    cleared = entry
    for name in ("pair-go", "pair-no-go", "pair-height"):
        cleared = with_text(cleared, name, "")
    return replace(_away(cleared), pairs=(*entry.pairs, reading), on=())


def _reading(entry: DeckEntry) -> dict[str, object]:
    place: dict[str, object] = (
        {"across": list(entry.on), "part": chosen(entry, "part")}
        if len(entry.on) > 1
        else {"wire": entry.on[0]}
    )
    if chosen(entry, "with") != "leaves":
        height = entry.texts.get("pair-height", "")
        return {**place, "height": height, "with": chosen(entry, "with")}
    sides = (("go", "pair-go"), ("no_go", "pair-no-go"))
    return place | {key: entry.texts[name] for key, name in sides if name in entry.texts}


def pair_is_ready(entry: DeckEntry) -> bool:
    """Whether the next reading can be kept."""
    names = ("pair-go", "pair-no-go") if chosen(entry, "with") == "leaves" else ("pair-height",)
    return bool(entry.on) and all(entry.texts.get(name) for name in names)


def add_rocking(entry: DeckEntry) -> DeckEntry:
    """The straightedge across both wires rocks."""
    reading: dict[str, object] = {"across": list(entry.on), "rocks": True}
    return replace(_away(entry), pairs=(*entry.pairs, reading), on=())


def drop_pair(entry: DeckEntry, place: int) -> DeckEntry:
    """Take one reading away."""
    return replace(entry, pairs=entry.pairs[:place] + entry.pairs[place + 1 :])


# ---- the face ----


def add_point(entry: DeckEntry) -> DeckEntry:
    """Keep a reading of the face; the reading alone is cleared, the next one is near by."""
    point = {axis: entry.texts.get(f"grid-{axis}", "") for axis in "xyz"}
    return replace(_away(with_text(entry, "grid-z", "")), grid=(*entry.grid, point))


def point_is_ready(entry: DeckEntry) -> bool:
    """Whether the next reading of the face can be kept."""
    return all(entry.texts.get(f"grid-{axis}") for axis in "xyz")


def drop_point(entry: DeckEntry, place: int) -> DeckEntry:
    """Take one reading of the face away."""
    return replace(entry, grid=entry.grid[:place] + entry.grid[place + 1 :])


def with_places(entry: DeckEntry, base: str, values: Mapping[str, float]) -> DeckEntry:
    """Heights or prints that a job keeps, in place of those typed here [mm]."""
    others = {name: each for name, each in entry.texts.items() if base_of(name) != base}
    placed = {f"{base}:{place}": f"{value:.6g} mm" for place, value in values.items()}
    return replace(entry, texts={**others, **placed})
