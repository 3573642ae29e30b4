"""Lines that a person reads about a cut: wire, centre diameter, lands, joints, a cut deck."""

import math

from core.calc.cut import AfterDeckCut, CutPlan, after_deck_cut
from core.calc.groove import PressedWire
from core.calc.joints import Datum, Joint, JointPlan
from core.calc.lands import CentreLimit, CentreWindow, Land
from core.calc.wire import Engine, from_piece, from_spool, mass, ring_length, wire_needed
from core.texts import text
from core.texts.length import Length
from core.unit_types import Millimetre


def after_cutting_the_deck(plan: CutPlan, removed: Millimetre) -> AfterDeckCut:
    """The planned groove once metal was taken off the deck.

    Parameters
    ----------
    removed
        Metal taken off [mm].
    """
    depth = plan.depth.target
    pressed = PressedWire(wire=plan.aim.wire.value, width=plan.width.target, depth=depth)
    return after_deck_cut(pressed, removed, plan.aim.sheet, depth)


def deck_cut_line(plan: CutPlan, removed: Millimetre) -> str:
    """What must be cut again after a deck cut.

    Parameters
    ----------
    removed
        Metal taken off [mm].
    """
    found = after_cutting_the_deck(plan, removed)
    off, deeper = Length(removed), Length(found.deeper)
    if found.depth_left is None or found.height is None:
        return text("cut.table.groove_gone", removed=off, deeper=deeper)
    return text("cut.table.deck_cut", removed=off, left=Length(found.depth_left),
                height=Length(found.height), share=found.share, deeper=deeper)


def wire_lines(
    engine: Engine, spool: Millimetre | None, piece: Millimetre | None
) -> tuple[str, ...]:
    """Wire of one ring and of the engine, and what a spool or a piece makes.

    Parameters
    ----------
    spool, piece
        Wire at hand [mm].
    """
    length, needed = ring_length(engine.rings[0]), wire_needed(engine)
    lines = [
        text("cut.table.ring", length=Length(length), cut=Length(engine.cut_lengths[0]),
             mass=mass(engine.wire, length, engine.density)),
        text("cut.table.engine", rings=len(engine.rings), cut=Length(needed.cut),
             mass=needed.mass),
    ]
    if spool is not None:
        made = from_spool(engine, spool)
        lines.append(text("cut.table.spool", rings=made.rings, engines=made.engines,
                          left=Length(made.left)))
    if piece is not None:
        rest = from_piece(engine, piece)
        lines.append(text("cut.table.piece", rings=len(rest.rings), left=Length(rest.left),
                          largest=Length(rest.largest)))
    return tuple(lines)


def window_line(window: CentreWindow) -> str:
    """Centre diameters with room, or what leaves none."""
    least = Length(window.least.diameter)
    if window.greatest is None:
        return text("cut.table.centre", suggested=Length(window.suggested or 0.0), least=least)
    greatest = Length(window.greatest.diameter)
    if window.suggested is None:
        return text("cut.table.no_centre", least=least, lower=limit_text(window.least),
                    greatest=greatest, upper=limit_text(window.greatest))
    return text("cut.table.centre_window", suggested=Length(window.suggested), least=least,
                greatest=greatest)


def limit_text(limit: CentreLimit) -> str:
    """What limits a centre diameter."""
    return text(f"cut.limit.{limit.kind}", cylinder=limit.cylinder, other=limit.other)


def land_line(land: Land) -> str:
    """One land with the least that practice leaves."""
    return text(f"deck.land.{land.kind}", cylinder=land.cylinder, other=land.other,
                width=Length(land.width), least=Length(land.least))


def front() -> Datum:
    """The front of the engine, from which angles run clockwise."""
    return Datum(name=text("cut.datum.front"))


def joint_line(joint: Joint, datum: Datum) -> str:
    """Where a joint goes, readable at the stand."""
    return text("deck.joint.line", cylinder=joint.cylinder, degrees=math.degrees(joint.angle),
                datum=datum.name, clock=joint.clock, bolt=joint.bolt)


def joint_lines(plan: JointPlan) -> tuple[str, ...]:
    """Every joint of a bank, and the rings that have no place for one."""
    return (
        *(joint_line(joint, plan.datum) for joint in plan.joints),
        *(text("deck.joint.without", cylinder=each) for each in plan.without),
    )
