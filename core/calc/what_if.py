"""An engine with something moved: what a cut deck, another chamber or another height would do."""

import math
from dataclasses import dataclass, replace

from core.calc.engine import Engine, PistonDeck, RatioLimits, Ring, ValveReading
from core.calc.gasket import Sheet
from core.unit_types import CubicMillimetre, Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class Moves:
    """What is moved, each from where it stands now.

    Parameters
    ----------
    deck_cut
        Cut off the deck, grooves cut again to the same depth [mm].
    piston_lower
        Pistons with their valve pockets lower; negative is higher [mm].
    chamber_larger
        Chamber larger; negative is smaller [mm³].
    wire_higher
        Every wire higher; negative is lower [mm].
    """

    deck_cut: Millimetre = 0.0
    piston_lower: Millimetre = 0.0
    chamber_larger: CubicMillimetre = 0.0
    wire_higher: Millimetre = 0.0


def moved(engine: Engine, moves: Moves) -> Engine:
    """The engine with everything moved.

    What was measured at the sheet on now was measured at a head that stood as high over the cut
    deck as that sheet and the cut together.

    Source
    ------
    *derived*: sizes along the deck normal; bolts gain as much thread as the deck loses.
    """
    lowered = _with_pistons(engine, moves.piston_lower - moves.deck_cut)
    return replace(
        lowered,
        sheet_on=_over_cut_deck(engine.sheet_on, moves.deck_cut),
        rings=tuple(_higher(ring, moves.wire_higher) for ring in engine.rings),
        valves=replace(
            engine.valves,
            readings=tuple(_wider(each, moves.piston_lower) for each in engine.valves.readings),
        ),
        ratio=_with_chamber(lowered.ratio, moves.chamber_larger),
        dowels=replace(engine.dowels, proud=_more(engine.dowels.proud, moves.deck_cut)),
        threads=replace(engine.threads, engaged=_more(engine.threads.engaged, -moves.deck_cut)),
    )


def _more(size: Millimetre | None, much: Millimetre) -> Millimetre | None:
    return None if size is None else size + much


def _over_cut_deck(sheet: Sheet | None, cut: Millimetre) -> Sheet | None:
    return None if sheet is None else replace(sheet, thickness=sheet.thickness + cut)


def _higher(ring: Ring, much: Millimetre) -> Ring:
    return replace(ring, standing=replace(ring.standing, value=ring.standing.value + much))


def _wider(reading: ValveReading, lower: Millimetre) -> ValveReading:
    measured = reading.measured
    clearance = measured.clearance + lower * math.cos(measured.tilt)
    return replace(reading, measured=replace(measured, clearance=clearance))


def _with_pistons(engine: Engine, lower: Millimetre) -> Engine:
    cylinder = engine.ratio.cylinder
    return replace(
        engine,
        pistons=replace(
            engine.pistons, decks=tuple(_below(each, lower) for each in engine.pistons.decks)
        ),
        ratio=replace(
            engine.ratio,
            cylinder=None if cylinder is None else replace(cylinder, deck=cylinder.deck + lower),
        ),
    )


def _below(piston: PistonDeck, lower: Millimetre) -> PistonDeck:
    return replace(piston, deck=replace(piston.deck, value=piston.deck.value + lower))


def _with_chamber(limits: RatioLimits, larger: CubicMillimetre) -> RatioLimits:
    cylinder = limits.cylinder
    if cylinder is None:
        return limits
    return replace(limits, cylinder=replace(cylinder, chamber=cylinder.chamber + larger))
