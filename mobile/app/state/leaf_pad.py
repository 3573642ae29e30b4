"""Which leaves lie on the pad, and what each of them shows."""

from collections.abc import Sequence
from dataclasses import dataclass

from core.calc.leaves import Stack, stacks
from core.calc.say import spoken
from core.texts.length import Length
from mobile.app.state.entry import Entry, thickness_of
from mobile.app.state.own_leaves import leaf_set
from mobile.app.state.told import Told

SIDES = ("go", "no-go")
USUAL_HEIGHT = 0.254
"""Where the pad opens before anything was tapped [mm]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PadLeaf:
    """One leaf on the pad.

    Parameters
    ----------
    label
        What is large on it: thou, or mm.
    identifier
        Stable name of its whole face.
    goes, stops
        Whether it is the leaf that goes, or that does not.
    decides
        Whether it is the one to try.
    within
        Whether the height still lies on both sides of it.
    """

    stack: Stack
    label: str
    identifier: str
    goes: bool
    stops: bool
    decides: bool
    within: bool


def pad_leaves(entry: Entry, told: Told) -> tuple[PadLeaf, ...]:
    """Every leaf of the set, and the stacks that are picked or to be tried, thinnest first."""
    deciding = told.answer.next_leaf.stack if told.answer and told.answer.next_leaf else None
    go, no_go = (thickness_of(entry.texts.get(side)) for side in SIDES)
    chosen = {_key(stack.marked): stack for stack in _singles_and(entry, deciding, go, no_go)}
    return tuple(
        _pad_leaf(chosen[key], entry.metric, deciding, go, no_go) for key in sorted(chosen)
    )


def _singles_and(
    entry: Entry, deciding: Stack | None, go: float | None, no_go: float | None
) -> list[Stack]:
    wanted = {_key(each) for each in (go, no_go) if each is not None}
    if deciding:
        wanted.add(_key(deciding.marked))
    made = [
        each
        for each in stacks(leaf_set(entry))
        if len(each.leaves) == 1 or _key(each.marked) in wanted
    ]
    missing = wanted - {_key(each.marked) for each in made}
    return made + [Stack((key / 1e5,)) for key in missing]


def _pad_leaf(
    stack: Stack, metric: bool, deciding: Stack | None, go: float | None, no_go: float | None
) -> PadLeaf:
    key = _key(stack.marked)
    low, high = _key(go or 0.0), _key(no_go) if no_go is not None else 10**9
    return PadLeaf(
        stack=stack,
        label=spoken(stack.marked, metric),
        identifier=_identifier(stack, metric),
        goes=go is not None and key == low,
        stops=no_go is not None and key == high,
        decides=deciding is not None and key == _key(deciding.marked),
        within=low < key < high,
    )


def _identifier(stack: Stack, metric: bool) -> str:
    return f"leaf-{Length(stack.marked):mm}mm" if metric else f"leaf-{Length(stack.marked):in}"


def _key(thickness_mm: float) -> int:
    """Whole hundredths of a micrometre: two ways of writing one leaf meet."""
    return round(thickness_mm * 1e5)


def to_have_in_sight(leaves: Sequence[PadLeaf]) -> tuple[int, int]:
    """First and last position worth seeing: the leaf to try, or the neighbours of a picked one."""
    goes = next((i for i, leaf in enumerate(leaves) if leaf.goes), None)
    stops = next((i for i, leaf in enumerate(leaves) if leaf.stops), None)
    decides = next((i for i, leaf in enumerate(leaves) if leaf.decides), None)
    last = len(leaves) - 1
    if goes is not None and stops is not None:
        return (goes, stops) if decides is None else (max(0, decides - 1), min(last, decides + 1))
    if goes is not None:
        return goes, min(last, goes + 2)
    if stops is not None:
        return max(0, stops - 2), stops
    usual = next((i for i, leaf in enumerate(leaves) if leaf.stack.marked >= USUAL_HEIGHT), 0)
    return max(0, usual - 1), min(last, usual + 1)


@dataclass(frozen=True, slots=True, kw_only=True)
class PadWindow:
    """Which part of the pad is in sight.

    Parameters
    ----------
    first_mm
        Thickness of the first leaf in sight; none before anything was tapped [mm].
    paged
        Whether the user moved there, so that it stays until the next tap on a leaf.
    """

    first_mm: float | None = None
    paged: bool = False


def start_of(leaves: Sequence[PadLeaf], window: PadWindow, count: int) -> int:
    """Position of the first leaf in sight: where it was, unless a leaf that matters is hidden."""
    most = max(0, len(leaves) - count)
    before = _position(leaves, window.first_mm)
    first, last = to_have_in_sight(leaves)
    if before is not None and (window.paged or (before <= first and last < before + count)):
        return min(before, most)
    return max(0, min(most, (first + last + 1 - count) // 2))


def _position(leaves: Sequence[PadLeaf], first_mm: float | None) -> int | None:
    if first_mm is None:
        return None
    return next((i for i, leaf in enumerate(leaves) if leaf.stack.marked >= first_mm - 1e-9), None)
