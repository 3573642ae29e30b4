"""Planning the cut: from the wire on hand and the sheet to be run to a groove."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace

from core.calc.fit import Measured, held_check, interference_check
from core.calc.gasket import Face, HeadFace, HeightRule, Sheet, Standing, bite, height_to_gasket
from core.calc.groove import (
    FLANK_FORMULA,
    FLANK_MODEL,
    SEATED_ASSUMPTIONS,
    PressedWire,
    expected_height,
    room,
)
from core.calc.height import Bound
from core.errors import InputError, fault, refuse
from core.source import ASSUMED, Source, derived
from core.tables.cut_practice import CUT, CutPractice
from core.tables.practice import INTERFERENCE, InterferencePractice
from core.texts import text
from core.texts.length import Length
from core.texts.sentence import Sentence
from core.uncertain import Explained, Term, explain
from core.unit_types import Millimetre, Number
from core.verdict import PLAIN, TIE, Check, Verdict

ROOM: Source = derived("wire below deck level against groove width times depth")


@dataclass(frozen=True, slots=True, kw_only=True)
class CutAim:
    """What a groove is planned for.

    Parameters
    ----------
    wire
        Wire on hand.
    sheet
        Sheet to be run.
    face
        Head face over the wire.
    practice
        Target and what a machinist can hold.
    interference
        Wire less groove, what is aimed for and its limits.
    rule
        Limits of height to sheet.
    """

    wire: Measured
    sheet: Sheet
    face: HeadFace = field(default_factory=HeadFace)
    practice: CutPractice = CUT
    interference: InterferencePractice = INTERFERENCE
    rule: HeightRule = field(default_factory=HeightRule)


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """What is aimed for, and both ends when everything is at the end of its tolerance."""

    low: float
    target: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPlan:
    """A groove for one wire and one sheet.

    Parameters
    ----------
    width, depth
        To be cut [mm].
    interference
        Wire less groove width [mm].
    height
        Over the deck, wire on the floor [mm].
    share
        Of the sheet, by what the sheet feels [1].
    widest_point
        Of the wire, below the deck [mm].
    spread
        Height with its standard uncertainty and what brings it.
    checks
        Interference, held, room, height to sheet, bite.
    deeper
        How much deeper keeps every end within the limit of the sheet; zero where all are [mm].
    notes
        What else to know before the cut.
    """

    aim: CutAim
    width: Band
    depth: Band
    interference: Band
    height: Band
    share: Band
    widest_point: Band
    spread: Explained
    checks: tuple[Check, ...]
    deeper: Millimetre
    notes: tuple[Sentence, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CutReading:
    """One way the trade reads the rule, and the groove it gives."""

    reading: Sentence
    plan: CutPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class CutAnswer:
    """The groove, or both grooves where the trade does not agree which height counts."""

    readings: tuple[CutReading, ...]

    @property
    def decided(self) -> bool:
        return len(self.readings) == 1


def plan_cut(aim: CutAim) -> CutAnswer:
    """Groove for a wire and a sheet.

    On a flat face the height over the deck is what the sheet feels; on a printed face the print
    is taken off. With a receiver the trade does not agree, so both grooves are told.

    Parameters
    ----------
    aim
        Wire, sheet and tolerances.

    Raises
    ------
    InputError
        If wire and sheet make no groove; each field is named.

    Source
    ------
    Target share and tolerances: *common practice, no source*. Height: *derived*, flank model.
    """
    lost = _lost(aim.face)
    _refuse_unusable(aim, max(lost.values()))
    plans = {key: _plan(aim, each) for key, each in lost.items()}
    return CutAnswer(
        readings=tuple(
            CutReading(reading=Sentence(key), plan=plan if len(plans) == 1 else _undecided(plan))
            for key, plan in plans.items()
        )
    )


def _lost(face: HeadFace) -> dict[str, Millimetre]:
    """Part of the height that the sheet does not feel, by each way the trade reads the rule."""
    if face.face is Face.RECEIVER:
        return {"cut.reading.full": 0.0, "cut.reading.past": face.depth}
    return {f"cut.reading.{face.face}": face.depth if face.face is Face.PRINTED else 0.0}


def _refuse_unusable(aim: CutAim, lost: Millimetre) -> None:
    faults = []
    if not aim.wire.value > 0.0:
        faults.append(fault("wire", "wire.no_size"))
    if not aim.sheet.thickness > aim.sheet.half_width:
        faults.append(fault("gasket", "cut.no_sheet"))
    if aim.interference.aim >= aim.wire.value:
        faults.append(fault("interference", "cut.no_width"))
    if not faults and target_depth(aim, lost) <= aim.practice.depth_tolerance:
        faults.append(fault("wire", "cut.no_depth"))
    if faults:
        raise InputError(faults)


def target_depth(aim: CutAim, lost: Millimetre) -> Millimetre:
    """Depth at which the best estimate of the height is the target share of the sheet [mm].

    Parameters
    ----------
    lost
        Part of the height that the sheet does not feel [mm].

    Source
    ------
    *derived*: height of a wire on the floor, solved for the depth.
    """
    height = aim.practice.target_share * aim.sheet.thickness + lost
    wire = aim.wire.value
    on_deck = PressedWire(wire=wire, width=wire - aim.interference.aim, depth=wire)
    return wire + expected_height(on_deck).best - height


def _plan(aim: CutAim, lost: Millimetre) -> CutPlan:
    practice, wire = aim.practice, aim.wire
    width = _around(wire.value - aim.interference.aim, practice.width_tolerance)
    depth = _around(target_depth(aim, lost), practice.depth_tolerance)
    height = Band(
        low=_best(wire.value - wire.half_width, width.high, depth.high),
        target=_best(wire.value, width.target, depth.target),
        high=_best(wire.value + wire.half_width, width.low, depth.low),
    )
    spread = _spread(aim, width.target, depth.target)
    plan = CutPlan(
        aim=aim,
        width=width,
        depth=depth,
        interference=_around(aim.interference.aim, practice.width_tolerance + wire.half_width),
        height=height,
        share=_share(height, aim.sheet, lost),
        widest_point=_around(
            depth.target - 0.5 * wire.value, practice.depth_tolerance + 0.5 * wire.half_width
        ),
        spread=spread,
        checks=_checks(aim, width.target, depth.target, height.target - lost, spread.u),
        deeper=_deeper(aim, height.high - lost),
        notes=(),
    )
    return replace(plan, notes=_notes(plan))


def _around(target: float, tolerance: float) -> Band:
    return Band(low=target - tolerance, target=target, high=target + tolerance)


def _best(wire: Millimetre, width: Millimetre, depth: Millimetre) -> Millimetre:
    return expected_height(PressedWire(wire=wire, width=width, depth=depth)).best


def _share(height: Band, sheet: Sheet, lost: Millimetre) -> Band:
    """Share of the sheet, a low wire on a thick sheet to a high wire on a thin one."""
    return Band(
        low=(height.low - lost) / (sheet.thickness + sheet.half_width),
        target=(height.target - lost) / sheet.thickness,
        high=(height.high - lost) / (sheet.thickness - sheet.half_width),
    )


def _deeper(aim: CutAim, height: Millimetre) -> Millimetre:
    thinnest = aim.sheet.thickness - aim.sheet.half_width
    over = height - aim.rule.practice.largest_share * thinnest
    return over if over > TIE else 0.0


def _spread(aim: CutAim, width: Millimetre, depth: Millimetre) -> Explained:
    practice = aim.practice
    sizes = (
        ("cut.term.wire", aim.wire),
        ("cut.term.width", Measured(value=width, half_width=practice.width_tolerance)),
        ("cut.term.depth", Measured(value=depth, half_width=practice.depth_tolerance)),
    )
    return explain(
        _best,
        [
            Term(name=text(key), value=size.value, u=size.u, unit="mm", source=ASSUMED)
            for key, size in sizes
        ],
        unit="mm",
        formula=FLANK_FORMULA,
        source=FLANK_MODEL,
        assumptions=[text(key) for key in SEATED_ASSUMPTIONS],
    )


def _checks(
    aim: CutAim, width: Millimetre, depth: Millimetre, felt: Millimetre, u: Millimetre
) -> tuple[Check, ...]:
    practice = aim.practice
    wide = Measured(value=width, half_width=practice.width_tolerance)
    deep = Measured(value=depth, half_width=practice.depth_tolerance)
    stands = Standing(bound=Bound.BOTH, value=felt, u=u, dof=float("inf"))
    return (
        interference_check(aim.wire, wide, aim.interference, aim.rule.acceptance),
        held_check(aim.wire, deep, aim.rule.acceptance),
        room_check(PressedWire(wire=aim.wire.value, width=width, depth=depth)),
        height_to_gasket(stands, aim.sheet, aim.rule),
        bite(stands, aim.sheet, aim.rule),
    )


def room_check(pressed: PressedWire) -> Check:
    """Whether the wire below the deck finds room in the groove.

    Source
    ------
    *derived*: areas of the cross-section.
    """
    found = room(pressed)
    return Check(
        id="groove-room",
        verdict=Verdict.PASS if found.enough else Verdict.FAIL,
        word="fits" if found.enough else "no-room",
        value=found.wire_below_deck,
        limit=found.groove,
        unit="mm²",
        probability=None,
        rule=PLAIN.rule,
        source=ROOM,
    )


def _loose_at_an_end(plan: CutPlan) -> bool:
    return plan.interference.low < plan.aim.interference.holds_from - TIE


def _hard_at_an_end(plan: CutPlan) -> bool:
    return plan.interference.high > plan.aim.interference.hard_above + TIE


def _may_not_bite_at_an_end(plan: CutPlan) -> bool:
    practice, sheet = plan.aim.rule.practice, plan.aim.sheet
    felt = plan.share.low * (sheet.thickness + sheet.half_width)
    return plan.share.low < practice.bite_share or felt < practice.bite_height - TIE


def _above_deck_at_an_end(plan: CutPlan) -> bool:
    return plan.widest_point.low < -TIE


def _unusually_deep_or_shallow(plan: CutPlan) -> bool:
    practice, share = plan.aim.practice, plan.depth.target / plan.aim.wire.value
    return not practice.least_depth_share <= share <= practice.most_depth_share


_NOTES: tuple[tuple[str, Callable[[CutPlan], bool]], ...] = (
    ("cut.note.flat", lambda plan: not plan.aim.face.answered),
    ("cut.note.loose_end", _loose_at_an_end),
    ("cut.note.hard_end", _hard_at_an_end),
    ("cut.note.far_end", lambda plan: plan.deeper > 0.0),
    ("cut.note.low_end", _may_not_bite_at_an_end),
    ("cut.note.above_deck", _above_deck_at_an_end),
    ("cut.note.unusual_depth", _unusually_deep_or_shallow),
    ("cut.note.test_groove", lambda _: True),
    ("cut.note.measure", lambda _: True),
)


def _notes(plan: CutPlan) -> tuple[Sentence, ...]:
    values: dict[str, object] = {
        "low": Length(plan.interference.low),
        "high": Length(plan.interference.high),
        "share": plan.share.high,
        "low_share": plan.share.low,
        "limit": plan.aim.rule.practice.largest_share,
        "deeper": Length(plan.deeper),
        "depth_share": plan.depth.target / plan.aim.wire.value,
        "least": plan.aim.practice.least_depth_share,
        "most": plan.aim.practice.most_depth_share,
    }
    return tuple(Sentence(key, values) for key, holds in _NOTES if holds(plan))


def _undecided(plan: CutPlan) -> CutPlan:
    """The plan with the checks of the height left open."""
    open_checks = tuple(
        replace(check, verdict=Verdict.UNDECIDED, word="undecided", probability=None)
        if check.id in {"height-to-gasket", "bite"}
        else check
        for check in plan.checks
    )
    return replace(plan, checks=open_checks)


@dataclass(frozen=True, slots=True, kw_only=True)
class AfterDeckCut:
    """A groove after metal was taken off its deck.

    Parameters
    ----------
    depth_left
        Groove that is left; none where the cut took it all [mm].
    deeper
        To be cut to have the depth that is wanted [mm].
    height
        Where the wire would stand if the groove were left; none without a groove [mm].
    share
        Of the sheet, if the groove were left [1].
    held
        Whether the walls would still hold the wire down.
    """

    depth_left: Millimetre | None
    deeper: Millimetre
    height: Millimetre | None
    share: Number | None
    held: bool


def after_deck_cut(
    pressed: PressedWire, removed: Millimetre, sheet: Sheet, wanted: Millimetre
) -> AfterDeckCut:
    """What must be cut again after the deck was cut: depth goes one for one.

    Parameters
    ----------
    pressed
        Wire, and the groove before the deck was cut.
    removed
        Metal taken off the deck [mm].
    wanted
        Groove depth that is wanted [mm].

    Raises
    ------
    InputError
        If less than nothing was taken off.

    Source
    ------
    *derived*: the floor of the groove stays where it is.
    """
    if removed < 0.0:
        raise refuse("deck-cut", "cut.deck_cut")
    left = pressed.depth - removed
    if left <= TIE:
        return AfterDeckCut(depth_left=None, deeper=wanted, height=None, share=None, held=False)
    rest = replace(pressed, depth=left)
    height = expected_height(rest).best
    return AfterDeckCut(
        depth_left=left,
        deeper=max(0.0, wanted - left),
        height=height,
        share=height / sheet.thickness,
        held=rest.widest_point_below_deck >= -TIE,
    )
