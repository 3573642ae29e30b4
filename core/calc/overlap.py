"""Where all windows overlap, or which two exclude each other and what would open one."""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

from core.calc import compression, valve_gear, vee
from core.calc.engine import Engine, Ring
from core.calc.windows import End, Side, Window, guarded_spread
from core.tables.practice import INTERFERENCE
from core.texts import text
from core.texts.length import Length
from core.texts.sentence import Sentence
from core.unit_types import CC, Millimetre
from core.verdict import TIE

NOTHING: Millimetre = 2.0 * TIE
"""A window that ends here or thinner allows no sheet at all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bound:
    """The end that limits an overlap on one side, and the part it belongs to."""

    part: str
    end: End


@dataclass(frozen=True, slots=True, kw_only=True)
class Overlap:
    """Thicknesses that every part allows.

    Parameters
    ----------
    low, high
        Ends under the rules in force; None where nothing limits that side.
    sure_low, sure_high
        Where a sheet is sure to fit every part; may have crossed over [mm].
    """

    low: Bound | None
    high: Bound | None
    sure_low: Millimetre | None
    sure_high: Millimetre | None


class ChangeKind(StrEnum):
    TAP_AGAIN = "tap-again"
    GROOVE_DEEPER = "groove-deeper"
    THINNER_WIRE = "thinner-wire"
    THICKER_WIRE = "thicker-wire"
    DECK_CUT = "deck-cut"
    PISTON_LOWER = "piston-lower"
    PISTON_HIGHER = "piston-higher"
    CHAMBER_LARGER = "chamber-larger"
    CHAMBER_SMALLER = "chamber-smaller"
    PUSHROD_LONGER = "pushrod-longer"
    PUSHROD_SHORTER = "pushrod-shorter"
    INTAKE_SPACER = "intake-spacer"


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """Smallest change of one kind that opens a window.

    Parameters
    ----------
    amount
        Greatest amount, in `unit`.
    rings
        Rings that must change, each with its amount [mm].
    """

    kind: ChangeKind
    amount: float
    unit: str
    rings: tuple[tuple[str, Millimetre], ...] = ()

    @property
    def sentence(self) -> Sentence:
        """The change in words."""
        values: dict[str, object] = {
            "much": Length(self.amount),
            "cc": self.amount / CC,
            "rings": ", ".join(name for name, _ in self.rings),
        }
        return Sentence(f"windows.change.{self.kind}", values)


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict:
    """Two parts that exclude each other.

    Parameters
    ----------
    thicker, thinner
        Part that asks for a thicker sheet, and part that asks for a thinner one; the first is
        None where no sheet at all is thin enough.
    by
        How far apart they are [mm].
    changes
        Smallest change of each kind that opens a window.
    """

    thicker: Bound | None
    thinner: Bound
    by: Millimetre
    changes: tuple[Change, ...]

    @property
    def sentence(self) -> Sentence:
        """What excludes what, in words."""
        values: dict[str, object] = {
            "thinner": text(f"windows.name.{self.thinner.part}"),
            "high": Length(self.thinner.end.allowed),
            "by": Length(self.by),
        }
        if self.thinner.part == "bite" and self.thinner.end.allowed <= NOTHING:
            return Sentence("windows.conflict.no_bite", {"ring": self.thinner.end.decided_by})
        if self.thicker is None:
            return Sentence("windows.conflict.no_sheet", values)
        values["thicker"] = text(f"windows.name.{self.thicker.part}")
        values["low"] = Length(self.thicker.end.allowed)
        return Sentence("windows.conflict.two", values)


def overlap(found: Sequence[Window]) -> Overlap | None:
    """Thicknesses that every window allows; None if there are none.

    Source
    ------
    *derived*: greatest lower end to least upper end.
    """
    low, high = _bound(found, Side.LOW), _bound(found, Side.HIGH)
    if high is not None and _gap(low, high) > TIE:
        return None
    ends = [end for window in found for end in window.ends]
    return Overlap(
        low=low,
        high=high,
        sure_low=max((end.sure for end in ends if end.side is Side.LOW), default=None),
        sure_high=min((end.sure for end in ends if end.side is Side.HIGH), default=None),
    )


def _bound(found: Iterable[Window], side: Side) -> Bound | None:
    bounds = [
        Bound(part=window.part, end=end)
        for window in found
        for end in window.ends
        if end.side is side
    ]
    return max(bounds, key=lambda bound: side.value * bound.end.allowed, default=None)


def _gap(low: Bound | None, high: Bound) -> Millimetre:
    """How far the upper end lies under the lower one; a sheet is thicker than nothing."""
    return max(NOTHING, low.end.allowed if low else NOTHING) - high.end.allowed


def conflict(engine: Engine, found: Sequence[Window]) -> Conflict | None:
    """The two parts that exclude each other, and what would open a window; None if one is open.

    Source
    ------
    *derived*.
    """
    low, high = _bound(found, Side.LOW), _bound(found, Side.HIGH)
    if high is None or _gap(low, high) <= TIE:
        return None
    if low is not None and low.end.allowed <= NOTHING:
        low = None
    return Conflict(
        thicker=low, thinner=high, by=_gap(low, high), changes=tuple(_changes(engine, found))
    )


def _changes(engine: Engine, found: Sequence[Window]) -> Iterator[Change]:
    yield from _lower_rings(engine, found)
    yield from _higher_rings(engine, found)
    yield from _spacer(engine, found)
    yield from _pushrods(engine, found)
    for kind, slopes, unit in _kinds(engine):
        amount = _smallest(found, slopes)
        if amount is not None and amount > 0.0:
            yield Change(kind=kind, amount=amount, unit=unit)


Slopes = dict[tuple[str, Side], float]
"""How far each end moves for a unit of change; an end that is not named stays."""


def _kinds(engine: Engine) -> Iterator[tuple[ChangeKind, Slopes, str]]:
    """Changes that move ends in proportion."""
    lower = _piston_slopes(engine)
    yield ChangeKind.DECK_CUT, _deck_slopes(engine), "mm"
    yield ChangeKind.PISTON_LOWER, lower, "mm"
    yield ChangeKind.PISTON_HIGHER, _negative(lower), "mm"
    if engine.ratio.cylinder is not None:
        larger = _both("ratio", -1.0 / compression.circle_area(engine.ratio.cylinder.gasket_bore))
        yield ChangeKind.CHAMBER_LARGER, larger, "mm³"
        yield ChangeKind.CHAMBER_SMALLER, _negative(larger), "mm³"


def _both(part: str, slope: float) -> Slopes:
    return {(part, side): slope for side in Side}


def _negative(slopes: Slopes) -> Slopes:
    return {end: -slope for end, slope in slopes.items()}


def _piston_slopes(engine: Engine) -> Slopes:
    """A lower piston, its valve pockets with it, lets the head come down as far."""
    low = dict.fromkeys(
        [(part, Side.LOW) for part in ("piston-to-head", "intake-valve", "exhaust-valve")], -1.0
    )
    return low | _both("ratio", -_bore_to_gasket(engine))


def _deck_slopes(engine: Engine) -> Slopes:
    """A cut deck brings the head down to the pistons; grooves are cut again to the same depth.

    Bolts come nearer to the bottom of their holes; the thread that they gain, the deck loses.
    """
    moved = [
        *_both("preload", 1.0),
        *_both("intake-faces", 1.0),
        *_both("cam-timing", 1.0),
        ("dowels", Side.HIGH),
        ("threads", Side.LOW),
    ]
    return dict.fromkeys(moved, 1.0) | _negative(_piston_slopes(engine))


def _bore_to_gasket(engine: Engine) -> float:
    cylinder = engine.ratio.cylinder
    if cylinder is None:
        return 0.0
    return compression.circle_area(cylinder.bore) / compression.circle_area(cylinder.gasket_bore)


def _smallest(found: Sequence[Window], slopes: Slopes) -> float | None:
    """Least change that brings every lower end under every upper one; None if none does."""
    lows, highs = _moving(found, Side.LOW, slopes), _moving(found, Side.HIGH, slopes)
    needed, most = 0.0, math.inf
    for low, low_slope in [(NOTHING, 0.0), *lows]:
        for high, high_slope in highs:
            gap, closing = low - high, high_slope - low_slope
            if gap > TIE and closing <= 0.0:
                return None
            if gap > TIE:
                needed = max(needed, gap / closing)
            elif closing < 0.0:
                most = min(most, (gap - TIE) / closing)
    return needed if needed <= most else None


def _moving(
    found: Sequence[Window], side: Side, slopes: Slopes
) -> list[tuple[Millimetre, float]]:
    return [
        (end.allowed, slopes.get((window.part, side), 0.0))
        for window in found
        for end in window.ends
        if end.side is side
    ]


def _others(found: Sequence[Window], parts: Sequence[str]) -> tuple[Millimetre, Millimetre]:
    """Range that is left by every part but these; crossed over if there is none."""
    rest = [window for window in found if window.part not in parts]
    low, high = _bound(rest, Side.LOW), _bound(rest, Side.HIGH)
    return (
        max(NOTHING, low.end.allowed) if low else NOTHING,
        high.end.allowed if high else math.inf,
    )


def _lower_rings(engine: Engine, found: Sequence[Window]) -> Iterator[Change]:
    """Lower wires on the thickest sheet that all the rest allows."""
    low, high = _others(found, ["height-to-gasket"])
    if not max(low, _thinnest_to_suit(engine)) <= high + TIE or math.isinf(high):
        return
    rings = _amounts(engine.rings, lambda ring: _too_high(engine, ring, high))
    if not rings:
        return
    if all(not ring.down for ring, _ in rings):
        yield _ring_change(ChangeKind.TAP_AGAIN, rings)
        return
    yield _ring_change(ChangeKind.GROOVE_DEEPER, rings)
    if all(_still_held(ring, amount) for ring, amount in rings):
        yield _ring_change(ChangeKind.THINNER_WIRE, rings)


def _higher_rings(engine: Engine, found: Sequence[Window]) -> Iterator[Change]:
    """Higher wires on the thinnest sheet that all the rest allows."""
    low, high = _others(found, ["bite"])
    sheet = max(low, _thinnest_to_suit(engine))
    if not sheet <= high + TIE:
        return
    rings = _amounts(engine.rings, lambda ring: _too_low(engine, ring, sheet))
    if rings:
        yield _ring_change(ChangeKind.THICKER_WIRE, rings)


def _thinnest_to_suit(engine: Engine) -> Millimetre:
    """Thinnest sheet on which a wire can both bite and stay within its share."""
    practice = engine.rule.practice
    share, bite = practice.largest_share, practice.bite_share
    guards = (
        guarded_spread(engine, ring, share) + guarded_spread(engine, ring, bite) + engine.receiver
        for ring in engine.rings
    )
    keeps_clear = max(guards, default=0.0)
    return max((practice.bite_height + keeps_clear) / share, keeps_clear / (share - bite))


def _too_high(engine: Engine, ring: Ring, sheet: Millimetre) -> Millimetre:
    share = engine.rule.practice.largest_share
    guard = guarded_spread(engine, ring, share)
    return ring.standing.value + guard - share * sheet


def _too_low(engine: Engine, ring: Ring, sheet: Millimetre) -> Millimetre:
    practice = engine.rule.practice
    guard = guarded_spread(engine, ring, practice.bite_share)
    least = max(practice.bite_share * sheet, practice.bite_height)
    return least + guard - (ring.standing.value - engine.receiver)


def _amounts(
    rings: Sequence[Ring], amount: Callable[[Ring], Millimetre]
) -> list[tuple[Ring, Millimetre]]:
    amounts = [(ring, amount(ring)) for ring in rings]
    return [(ring, each) for ring, each in amounts if each > TIE]


def _ring_change(kind: ChangeKind, rings: Sequence[tuple[Ring, Millimetre]]) -> Change:
    return Change(
        kind=kind,
        amount=max(amount for _, amount in rings),
        unit="mm",
        rings=tuple((ring.name, amount) for ring, amount in rings),
    )


def _still_held(ring: Ring, thinner: Millimetre) -> bool:
    if ring.interference is None:
        return True
    return ring.interference - thinner >= INTERFERENCE.holds_from - TIE


def _spacer(engine: Engine, found: Sequence[Window]) -> Iterator[Change]:
    """Spacers at the intake faces for the thinnest sheet that all the rest allows."""
    low, high = _others(found, ["intake-faces"])
    window = next((each for each in found if each.part == "intake-faces"), None)
    if window is None or window.high is None or not low <= high + TIE:
        return
    assert engine.intake
    assert engine.intake.vee
    assert engine.sheet_on
    rise = low - engine.sheet_on.thickness
    if low > window.high.allowed + TIE:
        amount = rise * vee.vee_factors(engine.intake.vee).side_spacer
        yield Change(kind=ChangeKind.INTAKE_SPACER, amount=amount, unit="mm")


def _pushrods(engine: Engine, found: Sequence[Window]) -> Iterator[Change]:
    """Pushrods for the nearest sheet that all the rest allows."""
    low, high = _others(found, ["preload"])
    window = next((each for each in found if each.part == "preload"), None)
    if window is None or not low <= high + TIE:
        return
    if window.high is not None and low > window.high.allowed + TIE:
        longer = _growth(engine, low) - _growth(engine, window.high.allowed)
        yield Change(kind=ChangeKind.PUSHROD_LONGER, amount=longer, unit="mm")
    if window.low is not None and window.low.allowed > high + TIE:
        shorter = _growth(engine, window.low.allowed) - _growth(engine, high)
        yield Change(kind=ChangeKind.PUSHROD_SHORTER, amount=shorter, unit="mm")


def _growth(engine: Engine, sheet: Millimetre) -> Millimetre:
    """How far lifter and rocker are apart, over the sheet on now."""
    assert engine.lifters
    assert engine.lifters.pushrod
    assert engine.sheet_on
    return valve_gear.pushrod_growth(engine.lifters.pushrod, sheet - engine.sheet_on.thickness)
