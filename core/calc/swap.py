"""From the sheet on now to another: everything that moves with the head."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from core.calc import clearances, compression, valve_gear, vee
from core.calc.engine import Engine, Ring, Valve
from core.calc.gasket import Sheet, bite, height_to_gasket
from core.calc.valve_gear import CamShift
from core.calc.vee import VeeShift
from core.calc.windows import LeftOut, least_piston_gap, least_thread
from core.errors import InputError
from core.texts import text
from core.texts.length import Length
from core.texts.sentence import Sentence
from core.unit_types import Millimetre, Number
from core.verdict import TIE, Check, Verdict


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """The ring that a sheet suits least, and how.

    Parameters
    ----------
    share
        Its height as a share of the sheet [1].
    probability
        Probability that the height, or the bite where that decides, is within its limit [1].
    """

    ring: str
    share: Number
    verdict: Verdict
    word: str
    probability: Number | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """A size that moves with the head.

    Parameters
    ----------
    now, then
        With the sheet on now, and with the other.
    least
        The least that is allowed, where it is known.
    where
        Cylinder where it is smallest; empty for the whole engine.
    """

    now: float
    then: float
    least: float | None = None
    where: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapCard:
    """What changes from the sheet on now to another.

    Parameters
    ----------
    now, then
        The two sheets.
    rise
        How far the head goes up; negative is down [mm].
    fit_now, fit
        Ring that each sheet suits least; None without wire heights.
    piston_to_head, intake_valve, exhaust_valve, preload, dowel, thread
        In mm, as far as measured.
    ratio
        Compression ratio, as far as entered.
    pushrod
        How much longer the pushrods must be for the same preload [mm].
    intake
        Intake side of a V engine.
    cam
        Retard of an overhead cam.
    left_out
        What cannot be told, and why.
    """

    now: Sheet
    then: Sheet
    rise: Millimetre
    fit_now: Fit | None
    fit: Fit | None
    piston_to_head: Moved | None
    intake_valve: Moved | None
    exhaust_valve: Moved | None
    ratio: Moved | None
    pushrod: Millimetre | None
    preload: Moved | None
    intake: VeeShift | None
    cam: CamShift | None
    dowel: Moved | None
    thread: Moved | None
    left_out: tuple[LeftOut, ...]

    @property
    def head(self) -> Sentence:
        """Which way the head moves, and the caution that goes with it."""
        return head_moves(self.rise)


def head_moves(rise: Millimetre) -> Sentence:
    """Which way the head moves, and the caution that goes with it.

    Parameters
    ----------
    rise
        How far the head goes up; negative is down [mm].
    """
    if abs(rise) <= TIE:
        return Sentence("swap.same")
    return Sentence("suggest.up" if rise > 0.0 else "suggest.down", {"move": Length(abs(rise))})


def worst_fit(engine: Engine, sheet: Sheet) -> Fit | None:
    """The ring that a sheet suits least; None without wire heights.

    A receiver in the head leaves every verdict open: the trade does not agree which height counts.

    Source
    ------
    As `core.calc.gasket`: *common practice, no source* and *from memory*.
    """
    fits = [_fit(engine, ring, sheet) for ring in engine.rings]
    return max(fits, key=_badness, default=None)


ORDER = {Verdict.FAIL: 2, Verdict.UNDECIDED: 1, Verdict.PASS: 0}


def _badness(fit: Fit) -> tuple[int, float]:
    return ORDER[fit.verdict], -1.0 if fit.probability is None else 1.0 - fit.probability


def _fit(engine: Engine, ring: Ring, sheet: Sheet) -> Fit:
    check = _deciding(engine, ring, sheet)
    is_open = engine.receiver > 0.0
    return Fit(
        ring=ring.name,
        share=ring.standing.value / sheet.thickness,
        verdict=Verdict.UNDECIDED if is_open else check.verdict,
        word="undecided" if is_open else check.word,
        probability=None if is_open else check.probability,
    )


def _deciding(engine: Engine, ring: Ring, sheet: Sheet) -> Check:
    bites = bite(ring.standing, sheet, engine.rule)
    if bites.verdict is Verdict.FAIL:
        return bites
    return height_to_gasket(ring.standing, sheet, engine.rule)


def swap_card(engine: Engine, now: Sheet, then: Sheet) -> SwapCard:
    """Everything that changes from one sheet to another; what is not known is left out.

    Parameters
    ----------
    now
        Sheet on the engine, at which its clearances were measured.
    then
        Sheet to change to.

    Source
    ------
    As each part says; *derived* from the rise of the head.
    """
    return card_between(engine, now, then, (worst_fit(engine, now), worst_fit(engine, then)))


def card_between(
    engine: Engine, now: Sheet, then: Sheet, fits: tuple[Fit | None, Fit | None]
) -> SwapCard:
    """The card of `swap_card`, for whoever knows already how both sheets fit.

    Source
    ------
    As `swap_card`.
    """
    rise = then.thickness - now.thickness
    left_out: list[LeftOut] = []
    return SwapCard(
        now=now,
        then=then,
        rise=rise,
        fit_now=fits[0],
        fit=fits[1],
        piston_to_head=_piston(engine, now, then),
        intake_valve=_valve(engine, Valve.INTAKE, rise),
        exhaust_valve=_valve(engine, Valve.EXHAUST, rise),
        ratio=_ratio(engine, now, then, left_out),
        pushrod=_pushrod(engine, rise, left_out),
        preload=_preload(engine, rise),
        intake=_intake(engine, rise, left_out),
        cam=_cam(engine, rise, left_out),
        dowel=_dowel(engine, now, then),
        thread=_thread(engine, rise),
        left_out=tuple(left_out),
    )


def _refused(part: str, error: InputError, left_out: list[LeftOut]) -> None:
    left_out.append(LeftOut(part=part, because=str(error), faults=error.faults))


def _piston(engine: Engine, now: Sheet, then: Sheet) -> Moved | None:
    if not engine.pistons.decks:
        return None
    closest = min(engine.pistons.decks, key=lambda each: each.deck.value)
    return Moved(
        now=clearances.piston_to_head(closest.deck.value, now.thickness),
        then=clearances.piston_to_head(closest.deck.value, then.thickness),
        least=least_piston_gap(engine),
        where=closest.name,
    )


def _valve(engine: Engine, valve: Valve, rise: Millimetre) -> Moved | None:
    least = engine.valves.intake_least if valve is Valve.INTAKE else engine.valves.exhaust_least
    moved = (
        Moved(
            now=each.measured.clearance,
            then=clearances.valve_to_piston(each.measured, rise),
            least=least,
            where=each.name,
        )
        for each in engine.valves.readings
        if each.valve is valve
    )
    return _smallest(moved)


def _smallest(moved: Iterable[Moved]) -> Moved | None:
    return min(moved, key=lambda each: each.then, default=None)


def _ratio(engine: Engine, now: Sheet, then: Sheet, left_out: list[LeftOut]) -> Moved | None:
    cylinder = engine.ratio.cylinder
    if cylinder is None:
        return None
    try:
        before = compression.ratio(cylinder, now.thickness)
        return Moved(now=before, then=compression.ratio(cylinder, then.thickness))
    except InputError as error:
        _refused("ratio", error, left_out)
        return None


def _pushrod(engine: Engine, rise: Millimetre, left_out: list[LeftOut]) -> Millimetre | None:
    if engine.lifters is None or engine.lifters.pushrod is None:
        return None
    try:
        return valve_gear.pushrod_growth(engine.lifters.pushrod, rise)
    except InputError as error:
        _refused("preload", error, left_out)
        return None


def _preload(engine: Engine, rise: Millimetre) -> Moved | None:
    growth = _pushrod(engine, rise, [])
    if growth is None or engine.lifters is None or engine.lifters.preload is None:
        return None
    preload = engine.lifters.preload
    return Moved(now=preload, then=preload - growth, least=engine.lifters.least)


def _intake(engine: Engine, rise: Millimetre, left_out: list[LeftOut]) -> VeeShift | None:
    if engine.intake is None or engine.intake.vee is None:
        return None
    try:
        return vee.vee_shift(engine.intake.vee, rise)
    except InputError as error:
        _refused("intake-faces", error, left_out)
        return None


def _cam(engine: Engine, rise: Millimetre, left_out: list[LeftOut]) -> CamShift | None:
    if engine.cam is None or engine.cam.drive is None:
        return None
    try:
        return valve_gear.cam_shift(engine.cam.drive, rise)
    except InputError as error:
        _refused("cam-timing", error, left_out)
        return None


def _dowel(engine: Engine, now: Sheet, then: Sheet) -> Moved | None:
    dowels = engine.dowels
    if dowels.proud is None:
        return None
    return Moved(
        now=dowels.proud - now.thickness, then=dowels.proud - then.thickness, least=dowels.least
    )


def _thread(engine: Engine, rise: Millimetre) -> Moved | None:
    engaged = engine.threads.engaged
    if engaged is None:
        return None
    return Moved(now=engaged, then=engaged - rise, least=least_thread(engine))


def card_lines(card: SwapCard) -> tuple[Sentence, ...]:
    """The card as sentences, in the order a person needs them."""
    return (card.head, *_fit_lines(card), *_size_lines(card), *_intake_lines(card))


def _fit_lines(card: SwapCard) -> Iterator[Sentence]:
    if card.fit is not None and card.fit_now is not None:
        values: dict[str, object] = {
            "now": card.fit_now.share,
            "now_word": text(f"word.{card.fit_now.word}"),
            "then": card.fit.share,
            "word": text(f"word.{card.fit.word}"),
            "ring": card.fit.ring,
        }
        yield Sentence("swap.fit", values)


def _size_lines(card: SwapCard) -> Iterator[Sentence]:
    for part in ("piston_to_head", "intake_valve", "exhaust_valve", "preload", "dowel", "thread"):
        moved: Moved | None = getattr(card, part)
        if moved is not None:
            lengths = {"now": Length(moved.now), "then": Length(moved.then)}
            yield Sentence("swap.moved", {"what": text(f"swap.{part}"), **lengths})
    if card.ratio is not None:
        yield Sentence("swap.ratio", {"now": card.ratio.now, "then": card.ratio.then})
    if card.pushrod is not None:
        yield Sentence("swap.pushrod", {"much": Length(card.pushrod)})


def _intake_lines(card: SwapCard) -> Iterator[Sentence]:
    if card.intake is not None:
        values: dict[str, object] = {
            "spacer": Length(card.intake.side_spacer),
            "rail": Length(card.intake.rail_gap),
            "offset": Length(card.intake.riding_offset),
        }
        yield Sentence("swap.intake", values)
    if card.cam is not None:
        yield Sentence("swap.cam", {"retard": math.degrees(card.cam.crank)})
    for each in card.left_out:
        yield Sentence("swap.left_out", {"because": each.because})
