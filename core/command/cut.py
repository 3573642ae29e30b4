"""`cut`: from the wire on hand and the sheet to be run to a groove, its wire and its place."""

import argparse
import math
from typing import Any

from core.calc.cut import Band, CutPlan, CutReading
from core.calc.joints import Joint, JointPlan, plan_joints
from core.calc.lands import CentreLimit, Land, Rings, lands, tight_spots
from core.calc.wire import from_piece, from_spool, mass, ring_length, wire_needed
from core.command.answer import Answer, add_fields, as_option, columns, new_command, typed_fields
from core.forms.cut_form import FIELDS, CutForm, read_cut
from core.forms.cut_words import (
    after_cutting_the_deck,
    deck_cut_line,
    front,
    joint_lines,
    land_line,
    limit_text,
    window_line,
    wire_lines,
)
from core.texts import text
from core.texts.length import Length
from core.verdict import Check


def add_to(commands: Any) -> None:
    """Declare the command."""
    parser = new_command(commands, "cut")
    add_fields(parser, {field: f"cut.option.{field}" for field in FIELDS})
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> Answer:
    """Answer the options of one command line."""
    form = read_cut(typed_fields(options, FIELDS), as_option)
    return Answer(data=as_data(form), table=_table(form))


def as_data(form: CutForm) -> dict[str, Any]:
    """The JSON object."""
    readings = form.answer.readings
    groove = _plan(readings[0].plan, form) if form.answer.decided else {
        "undecided": [{"reading": str(each.reading)} | _plan(each.plan, form) for each in readings]
    }
    return (
        groove
        | {"standpoints": [
            {"point": each.point, "verdict": each.verdict, "said": [str(s) for s in each.sentences]}
            for each in form.standpoints
        ]}
        | _wire(form)
        | _place(form)
        | {"caution": text("caution.main")}
    )


def _plan(plan: CutPlan, form: CutForm) -> dict[str, Any]:
    return _deck_cut_data(form, plan) | {
        "groove_width_mm": _band(plan.width),
        "groove_depth_mm": _band(plan.depth),
        "height_mm": _band(plan.height) | {"u": plan.spread.u},
        "share": _band(plan.share),
        "interference_mm": _band(plan.interference),
        "widest_point_below_deck_mm": _band(plan.widest_point),
        "deeper_for_every_end_mm": plan.deeper,
        "checks": [_check(check) for check in plan.checks],
        "notes": [str(note) for note in plan.notes],
    }


def _band(band: Band) -> dict[str, float]:
    return {"low": band.low, "target": band.target, "high": band.high}


def _check(check: Check) -> dict[str, Any]:
    return {
        "id": check.id,
        "verdict": check.verdict,
        "word": text(f"word.{check.word}"),
        "value": check.value,
        "limit": check.limit,
        "unit": check.unit,
        "probability": check.probability,
        "rule": check.rule,
        "source": str(check.source),
    }


def _wire(form: CutForm) -> dict[str, Any]:
    """Wire of one ring, of the engine, and what a spool or a piece makes."""
    engine = form.engine
    if engine is None:
        return {}
    length, needed = ring_length(engine.rings[0]), wire_needed(engine)
    told: dict[str, Any] = {
        "wire_length_mm": length,
        "wire_cut_length_mm": engine.cut_lengths[0],
        "wire_mass_g": mass(engine.wire, length, engine.density),
        "engine_wire": {
            "rings": len(engine.rings),
            "length_mm": needed.net,
            "cut_length_mm": needed.cut,
            "mass_g": needed.mass,
        },
    }
    if form.spool is not None:
        spool = from_spool(engine, form.spool)
        told["spool"] = {"rings": spool.rings, "engines": spool.engines, "left_mm": spool.left}
    if form.piece is not None:
        piece = from_piece(engine, form.piece)
        told["piece"] = {
            "rings": len(piece.rings),
            "left_mm": piece.left,
            "largest_centre_diameter_mm": piece.largest,
        }
    return told


def _place(form: CutForm) -> dict[str, Any]:
    """Where the groove goes on the deck."""
    if form.window is None:
        return {}
    told: dict[str, Any] = {"centre_diameter_mm": {
        "suggested": form.window.suggested,
        "least": _limit(form.window.least),
        "greatest": _limit(form.window.greatest) if form.window.greatest else None,
    }}
    if form.rings is not None:
        told["lands"] = [_land(land) for land in lands(form.rings)]
        plan = _joints(form.rings)
        told["joints"] = [_joint(joint) for joint in plan.joints]
        told["without_joint"] = list(plan.without)
    return told


def _limit(limit: CentreLimit) -> dict[str, Any]:
    return {"value": limit.diameter, "by": limit_text(limit)}


def _land(land: Land) -> dict[str, Any]:
    return {
        "kind": land.kind,
        "cylinder": land.cylinder,
        "other": land.other,
        "width_mm": land.width,
        "least_mm": land.least,
        "tight": land.tight,
        "from_mm": land.start,
        "to_mm": land.end,
    }


def _joint(joint: Joint) -> dict[str, Any]:
    return {
        "cylinder": joint.cylinder,
        "bolt": joint.bolt,
        "angle_deg": math.degrees(joint.angle),
        "clock": joint.clock,
        "at_mm": joint.at,
    }


def _deck_cut_data(form: CutForm, plan: CutPlan) -> dict[str, Any]:
    if form.deck_cut is None:
        return {}
    found = after_cutting_the_deck(plan, form.deck_cut)
    return {"after_deck_cut": {
        "depth_left_mm": found.depth_left,
        "deeper_mm": found.deeper,
        "height_mm": found.height,
        "share": found.share,
        "held": found.held,
    }}


def _table(form: CutForm) -> str:
    parts = [text("table.read", read=", ".join(f"{k} {v}" for k, v in form.echoes.items()))]
    if not form.answer.decided:
        parts.append(text("cut.table.undecided"))
    for reading in form.answer.readings:
        parts += [*_reading_lines(reading), *_deck_cut_lines(form, reading.plan)]
    parts += ["\n".join(str(s) for s in each.sentences) for each in form.standpoints]
    parts += [*_wire_lines(form), *_place_lines(form)]
    parts += [text("caution.sharp"), text("caution.main")]
    return "\n\n".join(parts)


def _reading_lines(reading: CutReading) -> list[str]:
    plan = reading.plan
    head = tuple(text(f"cut.table.head.{each}") for each in ("size", "low", "target", "high"))
    sizes = (
        ("width", plan.width), ("depth", plan.depth), ("interference", plan.interference),
        ("height", plan.height), ("widest", plan.widest_point),
    )
    rows = [(text(f"cut.table.{key}"), *map(_both, _ends(band))) for key, band in sizes]
    rows.append((text("cut.table.share"), *(f"{each:.1%}" for each in _ends(plan.share))))
    checks = [
        (text(f"check.{check.id}"), text(f"verdict.{check.verdict}"), text(f"word.{check.word}"))
        for check in plan.checks
    ]
    return [f"{reading.reading}\n{columns([head, *rows])}", columns(checks),
            "\n".join(str(note) for note in plan.notes)]


def _ends(band: Band) -> tuple[float, float, float]:
    return band.low, band.target, band.high


def _both(value: float) -> str:
    return text("cut.table.length", value=Length(value))


def _deck_cut_lines(form: CutForm, plan: CutPlan) -> list[str]:
    return [] if form.deck_cut is None else [deck_cut_line(plan, form.deck_cut)]


def _wire_lines(form: CutForm) -> list[str]:
    if form.engine is None:
        return []
    return ["\n".join(wire_lines(form.engine, form.spool, form.piece))]


def _place_lines(form: CutForm) -> list[str]:
    if form.window is None:
        return []
    lines = [window_line(form.window)]
    if form.rings is not None:
        lines += [text("cut.table.tight", land=land_line(land))
                  for land in tight_spots(form.rings)]
        lines += joint_lines(_joints(form.rings))
    return ["\n".join(lines)]


def _joints(rings: Rings) -> JointPlan:
    return plan_joints(rings.layout, rings.centre_diameter, front())
