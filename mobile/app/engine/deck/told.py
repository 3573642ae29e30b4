"""What a deck entry amounts to: every bank, its rings judged, the cut, the face, the heights."""

import json
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TypeVar

from core.calc.cut_rule import SheetMaterial, Situation, Standpoint, WireIn, standpoints
from core.calc.deck_layout import DeckLayout
from core.calc.finish import Roughness, finish_check
from core.calc.flatness import (
    Flatness,
    LineFlatness,
    flatness_check,
    least_squares,
    line_flatness,
    minimum_zone,
    worst_stretch,
)
from core.calc.gasket import Face, HeightRule, Sheet, Standing, bite, height_to_gasket
from core.calc.height import Bound
from core.calc.joints import JointPlan, plan_joints
from core.calc.lands import CentreWindow, Land, Rings, centre_window, tight_spots
from core.calc.pair_heights import Heights, heights
from core.calc.passed_over import Crossing, crossings
from core.calc.ring_map import BankMap, PlaceReading, RingSummary, map_bank
from core.errors import InputError
from core.forms.cut_form import FIELDS as CUT_FIELDS
from core.forms.cut_form import CutForm, read_cut
from core.forms.cut_words import front
from core.forms.deck_form import FIELDS, NEEDED, Moved, of_bank, read_deck, read_places
from core.forms.face_form import GridText, read_finish, read_grid, read_lines
from core.forms.readings_file import ReadingsFile, read_readings
from core.tables.cut_practice import DECK, LAND
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.tables.lockwire import WireMaterial
from core.texts import text
from core.uncertain import rectangular
from core.unit_types import Millimetre
from core.units import read_quantity
from core.verdict import Check, Verdict
from mobile.app.engine.deck.entry import DeckEntry, chosen, of
from mobile.app.engine.deck.fields import PADS, label

T = TypeVar("T")
USUAL_WIDTH = 1.016
"""Groove width that a map is drawn with while none is planned [mm]."""
WORST_FIRST = (Verdict.FAIL, Verdict.UNDECIDED, Verdict.PASS)
Faults = tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BankTold:
    """One bank.

    Parameters
    ----------
    window
        Centre diameters with room.
    rings
        Its grooves; none where no centre diameter has room and none was typed.
    map
        Heights, or prints, round its rings.
    """

    layout: DeckLayout
    window: CentreWindow
    rings: Rings | None
    map: BankMap | None
    joints: JointPlan | None
    tight: tuple[Land, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FaceTold:
    """What is known of the face; none where nothing was entered."""

    lines: LineFlatness | None = None
    zone: Flatness | None = None
    zone_check: Check | None = None
    squares: Flatness | None = None
    stretch: Flatness | None = None
    stretch_check: Check | None = None
    roughness: Roughness | None = None
    finish: Check | None = None
    faults: Faults = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class HeightsTold:
    """Heights from the readings kept so far."""

    file: ReadingsFile | None = None
    found: Heights | None = None
    crossings: tuple[Crossing, ...] = ()
    faults: Faults = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class DeckTold:
    """The answer to an entry.

    Parameters
    ----------
    lacks
        Numbers without which there is no deck.
    cut
        The groove as planned; none while wire or sheet is lacking.
    """

    lacks: tuple[str, ...] = NEEDED
    faults: Faults = ()
    banks: tuple[BankTold, ...] = ()
    cut: CutForm | None = None
    cut_faults: Faults = ()
    standpoints: tuple[Standpoint, ...] = ()
    face: FaceTold = FaceTold()
    heights: HeightsTold = HeightsTold()

    def bank_of(self, cylinder: str) -> BankTold | None:
        """The bank that a cylinder stands in."""
        return next(
            (each for each in self.banks if any(b.name == cylinder for b in each.layout.bores)),
            None,
        )


def tell(entry: DeckEntry) -> DeckTold:
    """Answer an entry."""
    lacks = tuple(field for field in NEEDED if field not in entry.texts)
    cut, cut_faults = read_the_cut(entry, None)
    banks, faults = ((), ()) if lacks else _or_faults(lambda: _banks(entry, cut), ())
    ring = banks[0].rings.centre_diameter if banks and banks[0].rings else None
    if cut is not None and cut.engine is None and ring is not None:
        cut, cut_faults = read_the_cut(entry, ring)
    return DeckTold(
        lacks=lacks,
        faults=faults,
        banks=banks,
        cut=cut,
        cut_faults=cut_faults,
        standpoints=standpoints(_situation(entry, cut)),
        face=tell_face(entry),
        heights=tell_heights(entry),
    )


def _or_faults(make: Callable[[], T], otherwise: T) -> tuple[T, Faults]:
    try:
        return make(), ()
    except InputError as error:
        return otherwise, tuple(each.sentence for each in error.faults)


# ---- the cut ----


def read_the_cut(entry: DeckEntry, ring: Millimetre | None) -> tuple[CutForm | None, Faults]:
    """The groove and its wire; nothing while wire or sheet is not typed."""
    if not {"wire", "gasket"} <= set(entry.texts):
        return None, ()
    shared = set(CUT_FIELDS) - set(FIELDS) - {"gasket-bore"} | {"cylinders"}
    texts = {name: [each] for name, each in entry.texts.items() if name in shared}
    face, depth = chosen(entry, "face"), entry.texts.get("face-depth", "")
    if face != Face.FLAT and not depth:
        return None, (text("face.lacks_depth"),)
    texts["head-face"] = [face if face == Face.FLAT else f"{face}:{depth}"]
    texts["material"] = [chosen(entry, "material")]
    if ring is not None and "ring" not in texts:
        texts["ring"] = [f"{ring:.9f} mm"]
    return _or_faults(lambda: read_cut(texts, label), None)


def _situation(entry: DeckEntry, cut: CutForm | None) -> Situation:
    plan = cut.answer.readings[0].plan if cut else None
    return Situation(
        wire=WireMaterial(chosen(entry, "material")),
        sheet=SheetMaterial(chosen(entry, "sheet")),
        face=Face(chosen(entry, "face")),
        wire_in=WireIn(chosen(entry, "wire-in")),
        loose=plan is not None and plan.interference.target <= 0.0,
    )


# ---- the deck ----


def _banks(entry: DeckEntry, cut: CutForm | None) -> tuple[BankTold, ...]:
    layouts = read_deck(entry.texts, chosen(entry, "numbering"), moves(entry), label)
    width = cut.answer.readings[0].plan.width.target if cut else USUAL_WIDTH
    gasket_bore = _length(entry, "gasket-bore")
    windows = [centre_window(layout, width, gasket_bore) for layout in layouts]
    suggested = [each.suggested for each in windows if each.suggested is not None]
    ring = _length(entry, "ring") or (min(suggested) if len(suggested) == len(windows) else None)
    layer = chosen(entry, "layer")
    places = read_places(of(entry, layer), lambda place: label(f"{layer}:{place}"))
    return tuple(
        _bank(layout, window, ring, width, gasket_bore, of_bank(places, layout))
        for layout, window in zip(layouts, windows, strict=True)
    )


def _bank(
    layout: DeckLayout,
    window: CentreWindow,
    ring: Millimetre | None,
    width: Millimetre,
    gasket_bore: Millimetre | None,
    places: tuple[PlaceReading, ...],
) -> BankTold:
    datum = front()
    bore = max(each.diameter for each in layout.bores)
    drawn = ring or bore + 2.0 * LAND.bore + width
    rings = (
        Rings(layout=layout, centre_diameter=ring, width=width, gasket_bore=gasket_bore)
        if ring
        else None
    )
    return BankTold(
        layout=layout,
        window=window,
        rings=rings,
        map=map_bank(layout, drawn, places, datum) if places else None,
        joints=plan_joints(layout, drawn, datum) if layout.bolts else None,
        tight=tight_spots(rings) if rings else (),
    )


def moves(entry: DeckEntry) -> tuple[Moved, ...]:
    """Bores and holes whose centre was typed."""
    xs, ys = of(entry, "x"), of(entry, "y")
    return tuple(
        Moved(bank=thing.partition("/")[0], name=thing.partition("/")[2], x=xs[thing], y=ys[thing])
        for thing in xs
        if thing in ys
    )


def _length(entry: DeckEntry, name: str) -> Millimetre | None:
    typed = entry.texts.get(name)
    if not typed:
        return None
    return read_quantity(typed, replace(PADS[name].kind, name=label(name))).value


# ---- rings ----


def ring_checks(ring: RingSummary, entry: DeckEntry) -> tuple[Check, ...]:
    """Even round the ring; with a sheet also its highest place against it, and its lowest."""
    sheet = _length(entry, "gasket")
    if sheet is None or chosen(entry, "layer") == "print" or chosen(entry, "face") != Face.FLAT:
        return (ring.check,)
    values = [place.reading.value for place in ring.places]
    high, low = (_standing(value) for value in (max(values), min(values)))
    copper = Sheet(thickness=sheet, half_width=ASSUMED_HALF_WIDTHS.sheet_measured)
    against = height_to_gasket(high, copper, HeightRule()), bite(low, copper, HeightRule())
    return (ring.check, *against)


def _standing(value: Millimetre) -> Standing:
    u = rectangular(ASSUMED_HALF_WIDTHS.indicator)
    return Standing(bound=Bound.BOTH, value=value, u=u, dof=float("inf"))


def worst(checks: tuple[Check, ...]) -> Check:
    """The check that decides how a ring is drawn."""
    return min(checks, key=lambda check: WORST_FIRST.index(check.verdict))


# ---- heights from readings across two wires ----


def tell_heights(entry: DeckEntry) -> HeightsTold:
    """Heights as far as the readings determine them."""
    if not entry.pairs:
        return HeightsTold()
    file, faults = _or_faults(lambda: read_readings(readings_text(entry)), None)
    if file is None:
        return HeightsTold(faults=faults)
    found, faults = _or_faults(lambda: heights(file.wires, file.readings, file.leaf_u), None)
    if found is None:
        return HeightsTold(file=file, faults=faults)
    return HeightsTold(
        file=file, found=found, crossings=crossings(found, file.laid, file.places)
    )


def readings_text(entry: DeckEntry) -> str:
    """The readings in the form of a file of readings."""
    wires = [{"wire": name, **_crossed_at(name, entry)} for name in wire_names(entry)]
    return json.dumps({"wires": wires, "readings": list(entry.pairs)})


def _crossed_at(name: str, entry: DeckEntry) -> dict[str, str]:
    spacing, names = _length(entry, "spacing"), wire_names(entry)
    if spacing is None or len(names) != len(set(names)):
        return {}
    layouts, _ = _or_faults(
        lambda: read_deck(entry.texts, chosen(entry, "numbering"), (), label), ()
    )
    bores = [bore for layout in layouts[:1] for bore in layout.bores if bore.name == name]
    return {"at": f"{bores[0].x:.6f} mm"} if bores else {}


def wire_names(entry: DeckEntry) -> tuple[str, ...]:
    """Every ring that can be read, by its cylinder."""
    number = entry.texts.get("cylinders", "4")
    count = int(float(number)) if number.replace(".", "").isdigit() else 4
    return tuple(str(each) for each in range(1, count + 1))


# ---- the face ----


def tell_face(entry: DeckEntry) -> FaceTold:
    """Flatness and finish of the face."""
    faults: list[str] = []

    def kept(make: Callable[[], T]) -> T | None:
        found, wrong = _or_faults(make, None)
        faults.extend(wrong)
        return found

    goes, stops = of(entry, "goes"), of(entry, "stops")
    lines = kept(lambda: line_flatness(read_lines(goes, stops, _line))) if goes or stops else None
    grid = [GridText(**point) for point in entry.grid]
    points = kept(lambda: read_grid(grid, label)) if grid else None
    zone = kept(lambda: minimum_zone(points)) if points else None
    stretch = worst_stretch(points, DECK.local_span) if points and zone else None
    roughness = kept(
        lambda: read_finish(entry.texts["finish"], chosen(entry, "finish"), label)
    ) if "finish" in entry.texts else None
    return FaceTold(
        lines=lines,
        zone=zone,
        zone_check=flatness_check(zone) if zone else None,
        squares=least_squares(points) if points and zone else None,
        stretch=stretch,
        stretch_check=flatness_check(stretch, DECK.local_flatness) if stretch else None,
        roughness=roughness,
        finish=kept(lambda: finish_check(roughness)) if roughness else None,
        faults=tuple(faults),
    )


def _line(line: str) -> str:
    return text(f"flatness.line.{line}")
