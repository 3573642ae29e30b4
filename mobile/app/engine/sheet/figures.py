"""The figures behind the choice, topic by topic, in words."""

import math
from collections.abc import Callable, Iterator
from dataclasses import asdict, dataclass

from core.calc.compression import CylinderVolumes, compression, sheet_for_ratio
from core.calc.thermal import HeatChange, HeatedRing, growth, heated
from core.calc.valve_gear import cam_shift
from core.calc.vee import vee_shift
from core.errors import InputError
from core.forms.volume_form import CC
from core.tables.clearance_practice import BlockMaterial
from core.tables.expansion import Metal
from core.texts import text
from core.texts.length import THOU_MM, Length
from core.texts.share import Share
from core.units import read_quantity
from mobile.app.engine.sheet.entry import SheetEntry
from mobile.app.engine.sheet.fields import HEAT
from mobile.app.engine.sheet.found import Found
from mobile.app.engine.sheet.shown import named, size, small

METALS = {BlockMaterial.IRON: Metal.GREY_IRON, BlockMaterial.ALUMINIUM: Metal.ALUMINIUM_356}


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One line: what it is, and its value; a line without a name is a remark.

    Parameters
    ----------
    wrong
        Whether it says what cannot be.
    """

    what: str = ""
    value: str
    wrong: bool = False


Figures = Iterator[Figure]


def figures_of(entry: SheetEntry, found: Found) -> dict[str, tuple[Figure, ...]]:
    """Every topic of this engine, for the sheet looked at."""
    topics: dict[str, Callable[[], Figures]] = {
        "compression": lambda: _compression(found),
        "intake": lambda: _intake(found),
        "cam": lambda: _cam(found),
        "heat": lambda: _heat(entry, found),
    }
    return {topic: _tried(figures) for topic, figures in topics.items()}


def _tried(figures: Callable[[], Figures]) -> tuple[Figure, ...]:
    """Geometry that cannot be solved is named by its field; the other topics stand."""
    try:
        return tuple(figures())
    except InputError as error:
        return tuple(Figure(value=named(each), wrong=True) for each in error.faults)


def _compression(found: Found) -> Figures:
    cylinder = found.as_moved.ratio.cylinder
    if cylinder is None or found.row is None:
        yield Figure(value=text("sheet.figure.needs_volumes"))
        return
    sheet, metric = found.row.candidate.sheet.thickness, found.basis.metric
    got = compression(cylinder, sheet)
    step = 0.1 if metric else THOU_MM
    shares = zip(got.ratio.terms, got.ratio.shares, strict=True)
    term, share = max(shares, key=lambda each: each[1])
    yield Figure(
        what=text("sheet.figure.ratio", sheet=size(sheet, metric)),
        value=f"{got.ratio.value:.2f} ± {2.0 * got.ratio.u:.2f}",
    )
    yield Figure(
        what=text(f"sheet.figure.step_{'mm' if metric else 'in'}"), value=f"{got.slope * step:+.3f}"
    )
    yield Figure(what=text("ratio.row.swept"), value=f"{got.swept / CC:.1f} cc")
    yield Figure(what=text("ratio.row.clearance"), value=f"{got.clearance / CC:.2f} cc")
    yield Figure(what=text("ratio.row.gasket"), value=f"{got.gasket / CC:.2f} cc")
    yield from _for_ratio(found, cylinder)
    term_name = text(f"sheet.term.{term.name}")
    yield Figure(value=text("sheet.figure.decides", term=term_name, share=Share(share)))
    yield Figure(value=text("ratio.left_out", parts="; ".join(got.left_out)))


def _for_ratio(found: Found, cylinder: CylinderVolumes) -> Figures:
    limits = found.as_moved.ratio
    for limit in (limits.lowest, limits.highest):
        if limit is not None:
            sheet = sheet_for_ratio(cylinder, limit)
            value = (
                size(sheet, found.basis.metric)
                if sheet > 0.0
                else text("sheet.figure.no_sheet_for_ratio")
            )
            yield Figure(what=text("sheet.figure.for_ratio", ratio=limit), value=value)


def _rise(found: Found) -> float | None:
    return None if found.row is None or found.row.card is None else found.row.card.rise


def _intake(found: Found) -> Figures:
    intake, rise = found.as_moved.intake, _rise(found)
    if intake is None or intake.vee is None:
        yield Figure(value=text("sheet.figure.needs_vee"))
    elif rise is None:
        yield Figure(value=text("sheet.swap.needs_on_now"))
    else:
        for part, much in asdict(vee_shift(intake.vee, rise)).items():
            yield Figure(what=text(f"vee.row.{part}"), value=small(much, found.basis.metric))


def _cam(found: Found) -> Figures:
    cam, rise = found.as_moved.cam, _rise(found)
    if cam is None or cam.drive is None:
        yield Figure(value=text("sheet.figure.needs_cam"))
    elif rise is None:
        yield Figure(value=text("sheet.swap.needs_on_now"))
    else:
        shift = cam_shift(cam.drive, rise)
        yield Figure(
            what=text("sheet.figure.retard_crank"), value=f"{math.degrees(shift.crank):+.2f}°"
        )
        yield Figure(
            what=text("sheet.figure.retard_cam"), value=f"{math.degrees(shift.cam):+.2f}°"
        )


def _heat(entry: SheetEntry, found: Found) -> Figures:
    needs = _lacks_for_heat(entry, found)
    if needs:
        names = ", ".join(text(f"field.{name}") for name in needs)
        yield Figure(value=text("sheet.figure.needs_heat", names=names))
        return
    ring = _heated_ring(entry, found)
    hot, metric = heated(ring), found.basis.metric
    changes = {"interference": hot.interference, "height": hot.height, "joint": hot.joint_gap}
    if found.row is not None:
        sheet = found.row.candidate.sheet.thickness
        changes["sheet"] = growth(sheet, Metal.COPPER, ring.warmer)
    for name, change in changes.items():
        yield Figure(what=text(f"sheet.heat.{name}"), value=_hot(change, metric))
    if hot.butted_stress > 0.0:
        yield Figure(value=text("sheet.heat.butted", stress=hot.butted_stress))
    yield Figure(value=text("sheet.heat.assumed"))


def _lacks_for_heat(entry: SheetEntry, found: Found) -> list[str]:
    basis, texts = found.basis, entry.form.texts
    measured = {
        "wire": basis.wire,
        "groove-width": basis.groove_width,
        "groove-depth": basis.groove_depth,
    }
    typed = ("centre-diameter", "warmer", "block-material")
    return [name for name, value in measured.items() if value is None] + [
        name for name in typed if not texts.get(name)
    ]


def _heated_ring(entry: SheetEntry, found: Found) -> HeatedRing:
    basis, texts = found.basis, entry.form.texts
    assert basis.wire
    assert basis.groove_width
    assert basis.groove_depth
    ring, warmer = (read_quantity(texts[name], HEAT[name]).value for name in HEAT)
    return HeatedRing(
        wire=basis.wire.value,
        groove_width=basis.groove_width.value,
        groove_depth=basis.groove_depth.value,
        ring=ring,
        warmer=warmer,
        block=METALS[BlockMaterial(texts["block-material"])],
    )


def _hot(change: HeatChange, metric: bool) -> str:
    if not change.matters:
        return text("sheet.heat.ignore")
    return small(Length(change.change), metric)
