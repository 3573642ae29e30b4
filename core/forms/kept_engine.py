"""An engine as a job keeps it, ready for the choice of its sheet."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TypeVar

from core.calc.clearances import MeasuredValve
from core.calc.compression import CylinderVolumes
from core.calc.engine import (
    CamTiming,
    Dowels,
    Engine,
    IntakeFaces,
    Lifters,
    PistonDeck,
    Pistons,
    RatioLimits,
    Threads,
    Valve,
    ValveReading,
    Valves,
)
from core.calc.fit import Measured
from core.calc.gasket import Face, Sheet
from core.calc.valve_gear import CamDrive, Pushrod
from core.calc.vee import VeeGeometry
from core.errors import refuse
from core.forms.kept_heights import head_face, rings
from core.records.model import Amount, Cylinder, Job, Length, Limits, Shop
from core.records.view import live
from core.tables.clearance_practice import BlockMaterial, RodMaterial
from core.tables.copper_sheet import weighed_sheet
from core.tables.half_widths import ASSUMED_HALF_WIDTHS, HalfWidths
from core.texts import text

PUSHRODS = "pushrods"
OVERHEAD_CAM = "overhead cam"
Word = TypeVar("Word", bound=StrEnum)


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptChoice:
    """What the choice of a sheet starts from.

    Parameters
    ----------
    shelf
        Sheets of the shop.
    pairs
        Whether two sheets may be run as one.
    metric
        Whether the sheets were typed in mm, so that sentences are in mm.
    """

    engine: Engine
    shelf: tuple[Sheet, ...]
    pairs: bool
    metric: bool


def kept_choice(
    job: Job, shop: Shop | None, half_widths: HalfWidths = ASSUMED_HALF_WIDTHS
) -> KeptChoice:
    """Engine, shelf and whether two sheets may be one, from a job and its shop.

    Raises
    ------
    InputError
        If a word that was entered is none of its table, or leaves contradict each other.
    """
    limits = next(iter(live(job.limits)), Limits(id=""))
    shelf = [each.thickness for each in live(shop.shelf) if each.thickness] if shop else []
    typed = [limits.sheet_on, *shelf] if limits.sheet_on else shelf
    return KeptChoice(
        engine=_engine(job, shop, limits, half_widths),
        shelf=tuple(sheet_of(thickness, half_widths) for thickness in shelf),
        pairs=limits.two_as_one,
        metric=bool(typed) and typed[0].typed.endswith("mm"),
    )


def sheet_of(thickness: Length, half_widths: HalfWidths) -> Sheet:
    """A sheet with its limit of error: that of its weight in the table, or the assumed one."""
    weighed = weighed_sheet(thickness.mm)
    half_width = half_widths.sheet_nominal if weighed is None else weighed.tolerance
    return Sheet(thickness=thickness.mm, half_width=half_width)


def _engine(job: Job, shop: Shop | None, limits: Limits, half_widths: HalfWidths) -> Engine:
    cylinders = live(job.cylinders)
    face = head_face(job)
    instruments = {each.id: each for each in live(shop.instruments)} if shop else {}
    engine = engine_of(cylinders, limits, half_widths)
    return replace(
        engine,
        rings=tuple(
            ring for each in cylinders for ring in rings(each, face, instruments, half_widths)
        ),
        receiver=face.depth if face.face is Face.RECEIVER else 0.0,
    )


def engine_of(
    cylinders: Sequence[Cylinder], limits: Limits, half_widths: HalfWidths = ASSUMED_HALF_WIDTHS
) -> Engine:
    """Engine as far as it was entered, its wire heights left out.

    Raises
    ------
    InputError
        If a word that was entered is none of its table.
    """
    return Engine(
        sheet_on=None if limits.sheet_on is None else sheet_of(limits.sheet_on, half_widths),
        pistons=_pistons(cylinders, limits, half_widths),
        valves=_valves(cylinders, limits, half_widths),
        ratio=_ratio(cylinders, limits),
        lifters=_lifters(limits),
        intake=_intake(limits),
        cam=_cam(limits),
        dowels=Dowels(proud=_mm(limits.dowel_proud), least=_mm(limits.dowel_least)),
        threads=Threads(
            engaged=_mm(limits.thread_engaged),
            diameter=_mm(limits.thread_diameter),
            block=_word(BlockMaterial, limits.block_material, "block-material"),
            least=_mm(limits.thread_least),
            room=_mm(limits.thread_room),
        ),
    )


def _pistons(cylinders: Sequence[Cylinder], limits: Limits, half_widths: HalfWidths) -> Pistons:
    return Pistons(
        decks=tuple(
            PistonDeck(
                name=_name(each),
                deck=Measured(value=each.piston_deck.mm, half_width=half_widths.indicator),
            )
            for each in cylinders
            if each.piston_deck is not None
        ),
        rod=_word(RodMaterial, limits.rod, "rod"),
        least=_mm(limits.piston_least),
    )


def _valves(cylinders: Sequence[Cylinder], limits: Limits, half_widths: HalfWidths) -> Valves:
    measured = [
        (_name(each), valve, clearance)
        for each in cylinders
        for valve, clearance in (
            (Valve.INTAKE, each.intake_valve),
            (Valve.EXHAUST, each.exhaust_valve),
        )
        if clearance is not None
    ]
    return Valves(
        readings=tuple(
            ValveReading(
                name=name,
                valve=valve,
                measured=MeasuredValve(clearance=clearance.mm, tilt=_or_zero(limits.valve_tilt)),
                half_width=half_widths.caliper,
            )
            for name, valve, clearance in measured
        ),
        intake_least=_mm(limits.intake_least),
        exhaust_least=_mm(limits.exhaust_least),
    )


def _ratio(cylinders: Sequence[Cylinder], limits: Limits) -> RatioLimits:
    return RatioLimits(
        cylinder=_volumes(cylinders, limits),
        lowest=_value(limits.lowest_ratio),
        highest=_value(limits.highest_ratio),
    )


def _volumes(cylinders: Sequence[Cylinder], limits: Limits) -> CylinderVolumes | None:
    """The first cylinder that has a bore and a deck speaks for the engine."""
    first = next((each for each in cylinders if each.bore and each.piston_deck), None)
    stroke, chamber, hole = limits.stroke, limits.chamber, limits.gasket_bore
    if first is None or stroke is None or chamber is None or hole is None:
        return None
    assert first.bore
    assert first.piston_deck
    return CylinderVolumes(
        bore=first.bore.mm,
        stroke=stroke.mm,
        chamber=chamber.value,
        deck=first.piston_deck.mm,
        gasket_bore=hole.mm,
        dish=_or_zero(limits.dish),
        dome=_or_zero(limits.dome),
    )


def _lifters(limits: Limits) -> Lifters | None:
    if limits.valve_gear != PUSHRODS:
        return None
    length = limits.pushrod_length
    return Lifters(
        pushrod=None
        if length is None
        else Pushrod(length=length.mm, tilt=_or_zero(limits.pushrod_tilt)),
        preload=_mm(limits.preload),
        least=_mm(limits.preload_least),
        most=_mm(limits.preload_most),
    )


def _intake(limits: Limits) -> IntakeFaces | None:
    bank, face = limits.bank_angle, limits.face_angle
    if bank is None:
        return None
    vee = None if face is None else VeeGeometry(bank_angle=bank.value, face_angle=face.value)
    return IntakeFaces(
        vee=vee,
        largest_offset=_mm(limits.largest_offset),
        thickest_spacer=_mm(limits.thickest_spacer),
    )


def _cam(limits: Limits) -> CamTiming | None:
    if limits.valve_gear != OVERHEAD_CAM:
        return None
    return CamTiming(
        drive=_drive(limits),
        most_retard=_value(limits.most_retard),
        most_advance=_value(limits.most_advance),
    )


def _drive(limits: Limits) -> CamDrive | None:
    crank, cam = limits.crank_teeth, limits.cam_teeth
    pitch, centres = limits.chain_pitch, limits.cam_centres
    if crank is None or cam is None or pitch is None or centres is None:
        return None
    return CamDrive(
        crank_teeth=crank,
        cam_teeth=cam,
        pitch=pitch.mm,
        centres=centres.mm,
        lift_angle=_or_zero(limits.lift_angle),
        banks=1 if limits.banks_on_chain is None else limits.banks_on_chain,
    )


def _name(cylinder: Cylinder) -> str:
    return text("choose.cylinder", cylinder=cylinder.number)


def _mm(length: Length | None) -> float | None:
    return None if length is None else length.mm


def _value(amount: Amount | None) -> float | None:
    return None if amount is None else amount.value


def _or_zero(amount: Amount | None) -> float:
    return 0.0 if amount is None else amount.value


def _word(words: type[Word], typed: str, field: str) -> Word | None:
    if not typed:
        return None
    if typed not in set(words):
        raise refuse(field, "choose.word", words=", ".join(words))
    return words(typed)
