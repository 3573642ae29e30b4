"""Which sheet thicknesses each part of an engine allows.

A window has one end or two. An end is where the best values put it; the rule in force decides how
far inside it a sheet must stay, and its fade runs from where a sheet is sure at the confidence of
the rule to where it is out at the same.
"""

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import Enum
from functools import cache

from core.calc import clearances, compression, valve_gear, vee
from core.calc.engine import Engine, Ring, Valve, ValveReading
from core.calc.gasket import Sheet
from core.calc.height import Bound
from core.errors import Fault, InputError, refuse
from core.source import Source
from core.tables.clearance_practice import CLEARANCE_SOURCE
from core.tables.practice import BITE_SOURCE, HEIGHT_SOURCE
from core.texts import text
from core.texts.length import Length
from core.texts.sentence import Sentence
from core.uncertain import NORMAL_FROM, coverage_factor, effective_dof, rectangular
from core.unit_types import Millimetre, Number
from core.verdict import PLAIN, Acceptance, Rule, Verdict, judge, probability


class Side(Enum):
    """Which end of a window: a sheet must not be thinner than LOW nor thicker than HIGH."""

    LOW = 1
    HIGH = -1


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """One end of a window.

    Parameters
    ----------
    at
        Thickness where the best values put it [mm].
    spread
        Standard uncertainty of `at`, the sheet's own left out [mm].
    dof
        Effective degrees of freedom of `spread`.
    allowed
        Thickness from which the rule in force allows a sheet [mm].
    sure, out
        Where a sheet is sure to fit, and sure not to, at the confidence of the rule [mm].
    decided_by
        Ring or cylinder that decides; empty for the whole engine.
    """

    side: Side
    at: Millimetre
    spread: Millimetre
    dof: float
    allowed: Millimetre
    sure: Millimetre
    out: Millimetre
    decided_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """Thicknesses that one part of the engine allows.

    Parameters
    ----------
    part
        Which part of the engine.
    low, high
        Ends; None where that side is open.
    borderline
        Thinnest sheet that is only borderline; for the height alone [mm].
    """

    part: str
    low: End | None
    high: End | None
    acceptance: Acceptance
    source: Source
    borderline: Millimetre | None = None

    @property
    def ends(self) -> tuple[End, ...]:
        return tuple(end for end in (self.low, self.high) if end is not None)

    @property
    def sentence(self) -> Sentence:
        """The window in words."""
        return _said(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut:
    """A part that cannot be calculated, and the numbers it lacks or why it is refused.

    Parameters
    ----------
    faults
        What cannot be, each by its field; empty where a number is missing.
    """

    part: str
    because: str
    faults: tuple[Fault, ...] = ()


Found = Window | LeftOut


def windows(engine: Engine) -> tuple[tuple[Window, ...], tuple[LeftOut, ...]]:
    """Window of every part that can be calculated, and what each other part lacks.

    Source
    ------
    Ends: *derived* from each part's own formula. Limits: as each part says.
    """
    found = [_tried(part, find, engine) for part, find in PARTS.items() if _is_on(part, engine)]
    return (
        tuple(each for each in found if isinstance(each, Window)),
        tuple(each for each in found if isinstance(each, LeftOut)),
    )


def _is_on(part: str, engine: Engine) -> bool:
    """Whether the engine has this part at all."""
    groups = {"preload": engine.lifters, "intake-faces": engine.intake, "cam-timing": engine.cam}
    return part not in groups or groups[part] is not None


def _tried(part: str, find: Callable[[Engine], Found], engine: Engine) -> Found:
    """Geometry that cannot be solved leaves its part out and the rest working."""
    try:
        return find(engine)
    except InputError as error:
        return LeftOut(part=part, because=str(error), faults=error.faults)


def _lacks(part: str, **needs: object) -> LeftOut | None:
    """What a part lacks; None when nothing is missing."""
    missing = [text(f"windows.need.{name}") for name, value in needs.items() if not _given(value)]
    if not missing:
        return None
    what = text(f"windows.name.{part}")
    return LeftOut(part=part, because=text("windows.needs", what=what, needs=", ".join(missing)))


def _given(value: object) -> bool:
    return value is not None and value != ()


def height_window(engine: Engine) -> Found:
    """No wire higher than its share of the sheet.

    Source
    ------
    *common practice, no source*: largest share of thickness; the highest wire decides.
    """
    open_above = [ring for ring in engine.rings if ring.standing.bound is Bound.LOWER]
    if lacking := _lacks_side("height-to-gasket", engine.rings, open_above, "no_go"):
        return lacking
    practice = engine.rule.practice
    low = _hardest(_share_end(engine, ring) for ring in engine.rings)
    highest = max(ring.standing.value for ring in engine.rings)
    return Window(
        part="height-to-gasket",
        low=low,
        high=None,
        acceptance=engine.rule.acceptance,
        source=HEIGHT_SOURCE,
        borderline=highest / practice.borderline_share,
    )


def _share_end(engine: Engine, ring: Ring) -> End:
    share = engine.rule.practice.largest_share
    wire = ring.standing
    return _end(
        engine, Side.LOW, wire.value / share, wire.u / share, engine.rule.acceptance,
        decided_by=ring.name, dof=wire.dof,
    )


def bite_window(engine: Engine) -> Found:
    """No wire lower than bites.

    Source
    ------
    *from memory*: share of thickness, and never under a least height; the lowest wire decides. A
    wire under the least height bites on no sheet: its window ends at zero.
    """
    open_below = [ring for ring in engine.rings if ring.standing.bound is Bound.UPPER]
    if lacking := _lacks_side("bite", engine.rings, open_below, "go"):
        return lacking
    return Window(
        part="bite",
        low=None,
        high=_hardest(_bite_end(engine, ring) for ring in engine.rings),
        acceptance=engine.rule.acceptance,
        source=BITE_SOURCE,
    )


def _bite_end(engine: Engine, ring: Ring) -> End:
    practice, acceptance = engine.rule.practice, engine.rule.acceptance
    wire = ring.standing
    height = wire.value - engine.receiver
    margin = height - practice.bite_height
    enough = judge(margin, probability(margin, wire.u, wire.dof), acceptance) is Verdict.PASS
    at, spread = height / practice.bite_share, wire.u / practice.bite_share
    if not enough:
        at, spread = 0.0, 0.0
    return _end(
        engine, Side.HIGH, at, spread, acceptance, decided_by=ring.name, dof=wire.dof,
        sheet=enough,
    )


def _lacks_side(
    part: str, rings: tuple[Ring, ...], open_rings: list[Ring], leaf: str
) -> LeftOut | None:
    if lacking := _lacks(part, height=rings):
        return lacking
    if not open_rings:
        return None
    what, names = text(f"windows.name.{part}"), ", ".join(ring.name for ring in open_rings)
    need = text(f"windows.need.{leaf}", rings=names)
    return LeftOut(part=part, because=text("windows.needs", what=what, needs=need))


def piston_window(engine: Engine) -> Found:
    """Piston to head not less than its least.

    Source
    ------
    *common practice, no source*, upper end of its range once the material of the rods is chosen;
    or the user's own figure.
    """
    pistons = engine.pistons
    least = least_piston_gap(engine)
    if lacking := _lacks("piston-to-head", decks=pistons.decks, rod=least):
        return lacking
    assert least is not None
    ends = (
        _end(engine, Side.LOW, least - each.deck.value, each.deck.u, engine.safety, each.name)
        for each in pistons.decks
    )
    return Window(
        part="piston-to-head",
        low=_hardest(ends),
        high=None,
        acceptance=engine.safety,
        source=CLEARANCE_SOURCE,
    )


def least_piston_gap(engine: Engine) -> Millimetre | None:
    """Least piston to head in force; none until it is given or the rods are chosen [mm].

    Source
    ------
    The user's, or *common practice, no source*.
    """
    pistons = engine.pistons
    if pistons.least is not None:
        return pistons.least
    return None if pistons.rod is None else clearances.least_piston_to_head(pistons.rod)


def intake_valve_window(engine: Engine) -> Found:
    """Intake valves clear of the pistons.

    Source
    ------
    *derived*; the least is the user's.
    """
    return _valve_window(engine, Valve.INTAKE, engine.valves.intake_least)


def exhaust_valve_window(engine: Engine) -> Found:
    """Exhaust valves clear of the pistons.

    Source
    ------
    *derived*; the least is the user's.
    """
    return _valve_window(engine, Valve.EXHAUST, engine.valves.exhaust_least)


def _valve_window(engine: Engine, valve: Valve, least: Millimetre | None) -> Found:
    part = f"{valve}-valve"
    readings = tuple(each for each in engine.valves.readings if each.valve is valve)
    if lacking := _lacks(part, sheet_on=engine.sheet_on, valve=readings, valve_least=least):
        return lacking
    assert least is not None
    return Window(
        part=part,
        low=_hardest(_valve_end(engine, each, least) for each in readings),
        high=None,
        acceptance=engine.safety,
        source=clearances.SOURCE,
    )


def _valve_end(engine: Engine, reading: ValveReading, least: Millimetre) -> End:
    assert engine.sheet_on is not None
    along = math.cos(reading.measured.tilt)
    at = engine.sheet_on.thickness + (least - reading.measured.clearance) / along
    spread = math.hypot(rectangular(reading.half_width) / along, _on_spread(engine))
    return _end(engine, Side.LOW, at, spread, engine.safety, reading.name)


def ratio_window(engine: Engine) -> Found:
    """Compression ratio within what is wanted and what the fuel stands.

    Source
    ------
    *derived*; the limits are the user's.
    """
    limits = engine.ratio
    limit = limits.lowest if limits.highest is None else limits.highest
    if lacking := _lacks("ratio", volumes=limits.cylinder, ratio_limit=limit):
        return lacking
    _refuse_crossed("lowest-ratio", limits.lowest, limits.highest)
    return Window(
        part="ratio",
        low=_ratio_end(engine, Side.LOW, limits.highest),
        high=_ratio_end(engine, Side.HIGH, limits.lowest),
        acceptance=PLAIN,
        source=compression.SOURCE,
    )


def _refuse_crossed(field: str, least: float | None, most: float | None) -> None:
    """A range whose least is over its most allows nothing: a slip of who typed it."""
    if least is not None and most is not None and least > most:
        raise refuse(field, "windows.crossed")


def _ratio_end(engine: Engine, side: Side, limit: Number | None) -> End | None:
    cylinder = engine.ratio.cylinder
    if limit is None or cylinder is None:
        return None
    spread = compression.sheet_spread(cylinder, engine.ratio.half_widths)
    return _end(engine, side, compression.sheet_for_ratio(cylinder, limit), spread, PLAIN)


def preload_window(engine: Engine) -> Found:
    """Lifter preload, or travel of the adjuster, within its range.

    Source
    ------
    *derived*; the range is the user's or the lifter maker's.
    """
    lifters = engine.lifters
    assert lifters is not None
    limit = lifters.most if lifters.least is None else lifters.least
    if lacking := _lacks(
        "preload", sheet_on=engine.sheet_on, pushrod=lifters.pushrod, preload=lifters.preload,
        preload_limit=limit,
    ):
        return lacking
    _refuse_crossed("preload-least", lifters.least, lifters.most)
    return Window(
        part="preload",
        low=_preload_end(engine, Side.LOW, lifters.most),
        high=_preload_end(engine, Side.HIGH, lifters.least),
        acceptance=PLAIN,
        source=valve_gear.PUSHROD_SOURCE,
    )


def _preload_end(engine: Engine, side: Side, limit: Millimetre | None) -> End | None:
    lifters = engine.lifters
    assert lifters is not None
    assert lifters.pushrod is not None
    assert lifters.preload is not None
    if limit is None:
        return None
    return _moved(
        engine, side, valve_gear.rise_for_growth(lifters.pushrod, lifters.preload - limit)
    )


def intake_window(engine: Engine) -> Found:
    """Intake ports in line, or near enough; spacers count where there are some.

    Source
    ------
    *derived*; the limits are the user's.
    """
    intake = engine.intake
    assert intake is not None
    if lacking := _lacks(
        "intake-faces", sheet_on=engine.sheet_on, vee=intake.vee, offset=intake.largest_offset
    ):
        return lacking
    assert intake.vee is not None
    assert intake.largest_offset is not None
    factors = vee.vee_factors(intake.vee)
    riding = intake.largest_offset / factors.riding_offset
    spaced = (intake.thickest_spacer or 0.0) / factors.side_spacer
    return Window(
        part="intake-faces",
        low=_moved(engine, Side.LOW, -riding),
        high=_moved(engine, Side.HIGH, max(riding, spaced)),
        acceptance=PLAIN,
        source=vee.SOURCE,
    )


def cam_window(engine: Engine) -> Found:
    """Overhead cam not later and not earlier than allowed.

    Source
    ------
    *derived*; the limits are the user's.
    """
    cam = engine.cam
    assert cam is not None
    limit = cam.most_advance if cam.most_retard is None else cam.most_retard
    if lacking := _lacks(
        "cam-timing", sheet_on=engine.sheet_on, cam_drive=cam.drive, cam_limit=limit
    ):
        return lacking
    early = None if cam.most_advance is None else -cam.most_advance
    return Window(
        part="cam-timing",
        low=_cam_end(engine, Side.LOW, early),
        high=_cam_end(engine, Side.HIGH, cam.most_retard),
        acceptance=PLAIN,
        source=valve_gear.CHAIN_SOURCE,
    )


def _cam_end(engine: Engine, side: Side, retard: float | None) -> End | None:
    assert engine.cam is not None
    assert engine.cam.drive is not None
    if retard is None:
        return None
    return _moved(engine, side, valve_gear.rise_for_retard(engine.cam.drive, retard))


def dowel_window(engine: Engine) -> Found:
    """Dowels deep enough in the head: a sheet shortens them one for one.

    Source
    ------
    *derived*; the least is the user's.
    """
    dowels = engine.dowels
    if lacking := _lacks("dowels", dowel=dowels.proud, dowel_least=dowels.least):
        return lacking
    assert dowels.proud is not None
    assert dowels.least is not None
    return Window(
        part="dowels",
        low=None,
        high=_end(engine, Side.HIGH, dowels.proud - dowels.least, 0.0, PLAIN),
        acceptance=PLAIN,
        source=clearances.SOURCE,
    )


def thread_window(engine: Engine) -> Found:
    """Head bolts deep enough in the block, and not on the bottom of their holes.

    Source
    ------
    *common practice, no source*, upper end of its range once the material of the block is chosen;
    or the user's own figure.
    """
    threads = engine.threads
    least = least_thread(engine)
    if lacking := _lacks(
        "threads", sheet_on=engine.sheet_on, engaged=threads.engaged, thread_least=least
    ):
        return lacking
    assert threads.engaged is not None
    assert least is not None
    return Window(
        part="threads",
        low=None if threads.room is None else _moved(engine, Side.LOW, -threads.room),
        high=_moved(engine, Side.HIGH, threads.engaged - least),
        acceptance=PLAIN,
        source=CLEARANCE_SOURCE,
    )


def least_thread(engine: Engine) -> Millimetre | None:
    """Least engaged thread in force; none until it is given or the block is chosen [mm].

    Source
    ------
    The user's, or *common practice, no source*.
    """
    threads = engine.threads
    if threads.least is not None:
        return threads.least
    if threads.block is None or threads.diameter is None:
        return None
    return clearances.least_engagement(threads.block, threads.diameter)


PARTS: dict[str, Callable[[Engine], Found]] = {
    "height-to-gasket": height_window,
    "bite": bite_window,
    "piston-to-head": piston_window,
    "intake-valve": intake_valve_window,
    "exhaust-valve": exhaust_valve_window,
    "ratio": ratio_window,
    "preload": preload_window,
    "intake-faces": intake_window,
    "cam-timing": cam_window,
    "dowels": dowel_window,
    "threads": thread_window,
}


def _moved(engine: Engine, side: Side, rise: Millimetre) -> End:
    """End at a rise of the head from the sheet on now."""
    assert engine.sheet_on is not None
    at = engine.sheet_on.thickness + rise
    return _end(engine, side, at, _on_spread(engine), PLAIN)


def _on_spread(engine: Engine) -> Millimetre:
    return 0.0 if engine.sheet_on is None else rectangular(engine.sheet_on.half_width)


def _end(
    engine: Engine,
    side: Side,
    at: Millimetre,
    spread: Millimetre,
    acceptance: Acceptance,
    decided_by: str = "",
    dof: float = math.inf,
    sheet: bool = True,
) -> End:
    u_sheet = rectangular(engine.sheet_half_width) if sheet else 0.0
    guard = side.value * _one_sided_spread((spread, u_sheet), dof, acceptance)
    return End(
        side=side,
        at=at,
        spread=spread,
        dof=dof,
        allowed=at + guard if acceptance.rule is Rule.GUARDED else at,
        sure=at + guard,
        out=at - guard,
        decided_by=decided_by,
    )


def guarded_spread(engine: Engine, ring: Ring, share: Number) -> Millimetre:
    """Height that a guarded rule keeps clear of a share of the sheet; 0 for a plain one [mm].

    Parameters
    ----------
    share
        Share of thickness that limits the height [1].

    Source
    ------
    JCGM 106:2012, 8.3; the margin of `core.calc.gasket.height_to_gasket`.
    """
    acceptance, wire = engine.rule.acceptance, ring.standing
    if acceptance.rule is Rule.PLAIN:
        return 0.0
    u_sheet = share * rectangular(engine.sheet_half_width)
    return _one_sided_spread((wire.u, u_sheet), wire.dof, acceptance)


def _one_sided_spread(
    parts: tuple[Millimetre, Millimetre], dof: float, acceptance: Acceptance
) -> Millimetre:
    """One side of the confidence of a rule, over a part with `dof` and the sheet's own."""
    effective = effective_dof(parts, (dof, math.inf))
    whole = math.inf if effective >= NORMAL_FROM else max(1.0, math.floor(effective + 1e-9))
    return _one_sided(acceptance.confidence, whole) * math.hypot(*parts)


@cache
def _one_sided(confidence: Number, dof: float) -> Number:
    return coverage_factor(2.0 * confidence - 1.0, dof)


def _hardest(ends: Iterable[End]) -> End:
    """The end that leaves least room."""
    return max(ends, key=lambda end: end.side.value * end.allowed)


def sheet_probability(end: End, sheet: Sheet) -> Number:
    """Probability that a sheet is on the good side of an end [1].

    Source
    ------
    JCGM 106:2012, clause 7.
    """
    margin = end.side.value * (sheet.thickness - end.at)
    parts = (end.spread, rectangular(sheet.half_width))
    return probability(margin, math.hypot(*parts), effective_dof(parts, (end.dof, math.inf)))


def _said(window: Window) -> Sentence:
    values: dict[str, object] = {"what": text(f"windows.name.{window.part}")}
    for name, end in (("low", window.low), ("high", window.high)):
        if end is not None and end.allowed > 0.0:
            values |= {name: Length(end.allowed), f"{name}_by": _by(end)}
    kinds = {(True, True): "between", (True, False): "from", (False, True): "up_to"}
    kind = kinds.get(("low" in values, "high" in values))
    if kind is None:
        kind = "any" if window.high is None else "none"
    return Sentence(f"windows.{kind}", values)


def _by(end: End) -> str:
    return text("windows.decided_by", name=end.decided_by) if end.decided_by else ""
