"""What has been tapped in so far, and how a tap changes it."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from core.calc.leaves import MOST_LEAVES, Stack
from core.calc.say import marks, spoken
from core.forms.check_form import HEIGHT_FIELD
from core.forms.entries import read_sum
from mobile.app.state.keys import erased, pressed

READINGS = ("go", "no-go")
SIZES = ("gasket", "wire", "groove-width", "groove-depth")
KEPT_FOR_THE_NEXT = ("shelf", "own-leaves-in", "own-leaves-mm")
OWN_SHELF = "own-shelf"
"""Where the user's own shelf waits while a link's is shown."""
LASTING = (*KEPT_FOR_THE_NEXT, OWN_SHELF)
ON_SCREEN = (*READINGS, *SIZES, "face", "face-depth")
FACES_WITH_DEPTH = ("printed", "receiver")
START_TEXTS = {"shelf": "0.032 in; 0.040 in; 0.050 in; 0.0646 in"}
OTHER_SIDE = {"go": "no-go", "no-go": "go"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One quick check under way.

    Parameters
    ----------
    texts
        What stands in each field, as the command line would take it.
    metric
        Whether leaves and bare numbers are in mm.
    armed
        The side that a whole leaf sets, where one was picked.
    open_field
        The field the number pad types into.
    typing
        What has been typed there.
    drawn_mm
        Sheet that the section shows, where one was picked [mm].
    """

    texts: Mapping[str, str] = field(default_factory=lambda: dict(START_TEXTS))
    metric: bool = False
    armed: str | None = None
    open_field: str | None = None
    typing: str = ""
    drawn_mm: float | None = None

    def under_way(self) -> bool:
        """Whether something was entered that a new check would lose."""
        return any(text for field, text in self.texts.items() if field not in LASTING)

    def beside(self) -> tuple[str, ...]:
        """Fields that came by a link and have no place of their own on the screen."""
        return tuple(field for field in self.texts if field not in (*ON_SCREEN, *LASTING))


def set_text(entry: Entry, field: str, text: str) -> Entry:
    """Put a text into a field; an empty one clears it."""
    texts = {name: each for name, each in entry.texts.items() if name != field}
    return replace(entry, texts={**texts, field: text} if text else texts)


def tap_leaf(entry: Entry, side: str, stack: Stack) -> Entry:
    """A leaf that goes or does not; the same tap again takes it back.

    A leaf on the wrong side of the other one has made that one untrue, so that one is dropped.
    """
    text = " + ".join(marks(stack, entry.metric))
    if entry.texts.get(side) == text:
        return set_text(replace(entry, armed=None), side, "")
    tapped = set_text(replace(entry, armed=None), side, text)
    return _without_contradiction(tapped, side, stack)


def _without_contradiction(entry: Entry, side: str, stack: Stack) -> Entry:
    other = OTHER_SIDE[side]
    known = thickness_of(entry.texts.get(other))
    if known is None:
        return entry
    crossed = stack.marked >= known if side == "go" else stack.marked <= known
    return set_text(entry, other, "") if crossed else entry


def thickness_of(text: str | None) -> float | None:
    """Marked thickness of a leaf or stack as entered [mm]; none where none is."""
    if not text:
        return None
    return sum(leaf.value for leaf in read_sum(text, HEIGHT_FIELD, MOST_LEAVES))


def side_label(entry: Entry, side: str) -> str:
    """What stands on a side, as it is said."""
    thickness = thickness_of(entry.texts.get(side))
    if thickness is None:
        return entry.texts.get(side, "")
    return spoken(thickness, entry.metric)


def arm(entry: Entry, side: str) -> Entry:
    """The next leaf tapped, anywhere on it, counts for this side; again lets it go."""
    return replace(entry, armed=None if entry.armed == side else side, open_field=None)


def choose_face(entry: Entry, face: str) -> Entry:
    """What the wire meets in the head; a print or a receiver asks for its depth at once."""
    again = entry.texts.get("face") == face
    chosen = set_text(set_text(entry, "face-depth", ""), "face", "" if again else face)
    return open_pad(chosen, "face-depth") if face in FACES_WITH_DEPTH and not again else chosen


def open_pad(entry: Entry, field: str) -> Entry:
    """Type into a field by the number pad."""
    return replace(entry, open_field=field, typing=entry.texts.get(field, ""), armed=None)


def next_field(entry: Entry) -> str | None:
    """The size to type after this one: what is measured on the engine comes in one go."""
    if entry.open_field not in SIZES[:-1]:
        return None
    return SIZES[SIZES.index(entry.open_field) + 1]


def close_pad(entry: Entry) -> Entry:
    """Back to the leaves."""
    return replace(entry, open_field=None, typing="")


def press(entry: Entry, key: str) -> Entry:
    """A key of the number pad; the first one after opening starts anew."""
    assert entry.open_field is not None
    kept = entry.texts.get(entry.open_field, "")
    return replace(entry, typing=pressed(entry.typing, kept, key))


def erase(entry: Entry) -> Entry:
    """Take back the last key, or the whole text with its unit."""
    return replace(entry, typing=erased(entry.typing))


def clear_typing(entry: Entry) -> Entry:
    """Take back everything typed."""
    return replace(entry, typing="")


def draw_sheet(entry: Entry, thickness: float) -> Entry:
    """Show this sheet in the section; the same again shows the one to run."""
    return replace(entry, drawn_mm=None if entry.drawn_mm == thickness else thickness)


def from_link(entry: Entry, texts: Mapping[str, str]) -> Entry:
    """A check that came by a link; the user's own shelf and leaves come back with the next one."""
    kept = begin_anew(entry).texts
    own = {OWN_SHELF: kept["shelf"]} if "shelf" in texts and kept.get("shelf") else {}
    in_mm = any(texts.get(side, "").endswith("mm") for side in READINGS)
    return Entry(texts={**kept, **own, **texts}, metric=in_mm)


def switch_unit(entry: Entry) -> Entry:
    """Leaves and bare numbers in mm or in inch; what was entered stays as it is."""
    return replace(entry, metric=not entry.metric)


def begin_anew(entry: Entry) -> Entry:
    """A new check; the user's own shelf and leaves stay."""
    kept = {name: text for name, text in entry.texts.items() if name in KEPT_FOR_THE_NEXT}
    own = {"shelf": entry.texts[OWN_SHELF]} if OWN_SHELF in entry.texts else {}
    return Entry(texts={**kept, **own}, metric=entry.metric)
