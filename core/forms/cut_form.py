"""The form of a cut: from texts to a groove, the wire for it, and its place on the deck."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from core.calc.cut import CutAim, CutAnswer, plan_cut
from core.calc.cut_rule import Situation, Standpoint, standpoints
from core.calc.deck_layout import Along, BankNumbers, DeckLayout, HoleKind, HoleRow, build
from core.calc.fit import Measured
from core.calc.gasket import HeadFace, HeightRule, Sheet
from core.calc.lands import CentreWindow, Rings, centre_window
from core.calc.wire import Engine
from core.errors import refuse
from core.forms.check_form import (
    SHARE_FIELD,
    SHEET_FIELD,
    SPREAD_FIELD,
    WIRE_FIELD,
    read_head_face,
)
from core.forms.entries import Entries
from core.tables.cut_practice import CUT, WIRE
from core.tables.half_widths import ASSUMED_HALF_WIDTHS, HalfWidths
from core.tables.lockwire import DENSITIES, WireMaterial
from core.tables.practice import HEIGHT, INTERFERENCE
from core.unit_types import INCH, Millimetre
from core.units import Bare, Dimension, Field

FOOT = 12 * INCH
MOST_CYLINDERS = 24


def _length(low: float, high: float) -> Field:
    return Field(name="", dimension=Dimension.LENGTH, low=low, high=high)


SMALL_FIELD = replace(SPREAD_FIELD, high=0.02 * INCH)
TARGET_FIELD = Field(name="", dimension=Dimension.RATIO, low=0.05, high=0.9, bare=Bare.NUMBER)
COUNT_FIELD = Field(
    name="", dimension=Dimension.RATIO, low=1.0, high=MOST_CYLINDERS, bare=Bare.NUMBER
)
DECK_CUT_FIELD = replace(SPREAD_FIELD, high=0.25 * INCH)
DECK_FIELD = _length(0.5 * INCH, 24.0 * INCH)
HOLE_FIELD = _length(0.1 * INCH, 3.0 * INCH)
TRIMMING_FIELD = _length(0.0, 4.0 * INCH)
WIRE_LENGTH_FIELD = _length(0.5 * INCH, 5000.0 * FOOT)

FIELDS = (
    "wire",
    "wire-tol",
    "gasket",
    "gasket-tol",
    "head-face",
    "target-share",
    "share",
    "interference",
    "depth-tol",
    "width-tol",
    "ring",
    "cylinders",
    "bank",
    "trimming",
    "material",
    "spool",
    "piece",
    "deck-cut",
    "bore",
    "spacing",
    "flange",
    "gasket-bore",
    "bolt-offset",
    "bolt-hole",
)
EXAMPLES = {"wire": "0.041in", "gasket": "0.050in"}


@dataclass(frozen=True, slots=True, kw_only=True)
class CutForm:
    """A cut as read, and its groove.

    Parameters
    ----------
    answer
        The groove, or both grooves where the trade does not agree.
    standpoints
        Where the job leaves the usual one.
    engine
        Wire and rings; none while no centre diameter is known.
    spool, piece
        Wire at hand [mm].
    deck_cut
        Metal taken off the deck [mm].
    window
        Centre diameters with room; none without a bore.
    rings
        Grooves on their bank; none without a bore or without a centre diameter.
    echoes
        How each typed size was understood, by field.
    """

    answer: CutAnswer
    standpoints: tuple[Standpoint, ...]
    engine: Engine | None
    spool: Millimetre | None
    piece: Millimetre | None
    deck_cut: Millimetre | None
    window: CentreWindow | None
    rings: Rings | None
    echoes: dict[str, str]


def read_cut(
    texts: Mapping[str, Sequence[str]],
    name: Callable[[str], str],
    half_widths: HalfWidths = ASSUMED_HALF_WIDTHS,
) -> CutForm:
    """Read the whole form.

    Parameters
    ----------
    texts
        What was typed, by field of `FIELDS`.
    name
        How a sentence names a field.

    Raises
    ------
    InputError
        With every fault of the form, each naming its field.
    """
    entries = Entries(texts, name)
    aim = _aim(entries, half_widths)
    material = entries.read("material", _material) or WireMaterial.STAINLESS_304
    cylinders = _count(entries, "cylinders") or 1
    layout = _layout(entries, cylinders)
    sizes = {
        field: entries.value(field, kind)
        for field, kind in (
            ("ring", DECK_FIELD), ("gasket-bore", DECK_FIELD), ("trimming", TRIMMING_FIELD),
            ("spool", WIRE_LENGTH_FIELD), ("piece", WIRE_LENGTH_FIELD),
            ("deck-cut", DECK_CUT_FIELD),
        )
    }
    _refuse_alone(entries)
    answer = entries.attempt(lambda: plan_cut(aim)) if aim else None
    entries.finish()
    assert aim is not None
    assert answer is not None
    width = answer.readings[0].plan.width.target
    window = centre_window(layout, width, sizes["gasket-bore"]) if layout else None
    ring = sizes["ring"] or (window.suggested if window else None)
    return CutForm(
        answer=answer,
        standpoints=standpoints(Situation(wire=material, face=aim.face.face)),
        engine=_engine(aim, ring, cylinders, sizes["trimming"], material),
        spool=sizes["spool"],
        piece=sizes["piece"],
        deck_cut=sizes["deck-cut"],
        window=window,
        rings=_rings(layout, ring, width, sizes["gasket-bore"]),
        echoes=entries.echoes,
    )


def _aim(entries: Entries, half_widths: HalfWidths) -> CutAim | None:
    wire, sheet = (_needed(entries, field, WIRE_FIELD if field == "wire" else SHEET_FIELD)
                   for field in EXAMPLES)
    wire_error = entries.value("wire-tol", SMALL_FIELD)
    sheet_error = entries.value("gasket-tol", SMALL_FIELD)
    share = entries.value("share", SHARE_FIELD) or HEIGHT.largest_share
    aimed = entries.value("interference", SMALL_FIELD)
    practice = replace(
        CUT,
        target_share=entries.value("target-share", TARGET_FIELD) or CUT.target_share,
        depth_tolerance=_or(entries.value("depth-tol", SMALL_FIELD), CUT.depth_tolerance),
        width_tolerance=_or(entries.value("width-tol", SMALL_FIELD), CUT.width_tolerance),
    )
    face = entries.read("head-face", read_head_face) or HeadFace()
    if wire is None or sheet is None:
        return None
    borderline = max(HEIGHT.borderline_share, share)
    return CutAim(
        wire=Measured(value=wire, half_width=_or(wire_error, half_widths.wire_measured)),
        sheet=Sheet(thickness=sheet, half_width=_or(sheet_error, half_widths.sheet_measured)),
        face=face,
        practice=practice,
        interference=replace(INTERFERENCE, aim=_or(aimed, INTERFERENCE.aim)),
        rule=HeightRule(
            practice=replace(HEIGHT, largest_share=share, borderline_share=borderline)
        ),
    )


def _or(value: float | None, otherwise: float) -> float:
    return otherwise if value is None else value


def _needed(entries: Entries, field: str, kind: Field) -> float | None:
    if not entries.typed(field):
        entries.add_fault(field, "cut.missing", example=EXAMPLES[field])
    return entries.value(field, kind)


def _count(entries: Entries, field: str) -> int | None:
    value = entries.value(field, COUNT_FIELD)
    if value is None:
        return None
    if value != int(value):
        entries.add_fault(field, "cut.whole")
    return int(value)


def _material(typed: str, name: str) -> WireMaterial:
    if typed.lower() not in set(WireMaterial):
        raise refuse(name, "cut.material")
    return WireMaterial(typed.lower())


_TOGETHER = (("bolt-offset", "bolt-hole"), ("bolt-hole", "bolt-offset"), ("bolt-offset", "bore"),
             ("spacing", "bore"), ("flange", "bore"), ("gasket-bore", "bore"), ("bank", "bore"))


def _refuse_alone(entries: Entries) -> None:
    for field, other in _TOGETHER:
        if entries.typed(field) and not entries.typed(other):
            entries.add_fault(field, "cut.needs", other=entries.name_of(other))


def _layout(entries: Entries, cylinders: int) -> DeckLayout | None:
    bore, spacing, flange = (entries.value(field, DECK_FIELD)
                             for field in ("bore", "spacing", "flange"))
    offset = entries.value("bolt-offset", DECK_FIELD)
    hole = entries.value("bolt-hole", HOLE_FIELD)
    bank = _count(entries, "bank") or cylinders
    if bank > cylinders:
        entries.add_fault("bank", "cut.bank", cylinders=cylinders)
    if bore is None:
        return None
    if spacing is None and bank > 1:
        entries.add_fault("bore", "cut.needs", other=entries.name_of("spacing"))
        return None
    rows = (
        (HoleRow(kind=HoleKind.BOLT, along=Along.BETWEEN, offset=offset, diameter=hole),)
        if offset and hole
        else ()
    )
    numbers = BankNumbers(
        bank="bank",
        cylinders=tuple(str(place + 1) for place in range(bank)),
        bore=bore,
        spacing=spacing or bore,
        rows=rows,
        flange=flange,
    )
    return entries.attempt(lambda: build(numbers))


def _engine(
    aim: CutAim, ring: Millimetre | None, cylinders: int, trimming: Millimetre | None,
    material: WireMaterial,
) -> Engine | None:
    if ring is None:
        return None
    return Engine(
        wire=aim.wire.value,
        rings=(ring,) * cylinders,
        trimming=_or(trimming, WIRE.trimming),
        density=DENSITIES[material].value,
    )


def _rings(
    layout: DeckLayout | None, ring: Millimetre | None, width: Millimetre,
    gasket_bore: Millimetre | None,
) -> Rings | None:
    if layout is None or ring is None:
        return None
    return Rings(layout=layout, centre_diameter=ring, width=width, gasket_bore=gasket_bore)
