"""A groove for a wire and a sheet, with both ends of its tolerances."""

import math
from dataclasses import replace
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.calc.cut import CutAim, CutPlan, after_deck_cut, plan_cut, room_check
from core.calc.cut_rule import SheetMaterial, Situation, WireIn, standpoints
from core.calc.fit import Measured
from core.calc.gasket import Face, HeadFace, Sheet
from core.calc.groove import PressedWire, expected_height
from core.errors import InputError
from core.tables.cut_practice import CUT
from core.tables.lockwire import WireMaterial
from core.tables.practice import INTERFERENCE
from core.texts import text
from core.verdict import Verdict

INCH = 25.4
AIM = CutAim(
    wire=Measured(value=0.041 * INCH, half_width=0.0002 * INCH),
    sheet=Sheet(thickness=0.050 * INCH, half_width=0.0005 * INCH),
)


def plan(aim: CutAim) -> CutPlan:
    (reading,) = plan_cut(aim).readings
    return reading.plan


def word(found: CutPlan, name: str) -> str:
    return next(check.word for check in found.checks if check.id == name)


def notes(found: CutPlan) -> set[str]:
    assert all(str(note) for note in found.notes)
    return {note.key for note in found.notes}


@st.composite
def aims(draw: st.DrawFn) -> CutAim:
    wire = draw(st.floats(0.6, 1.6))
    return CutAim(
        wire=Measured(value=wire, half_width=draw(st.floats(0.0, 0.01))),
        sheet=Sheet(thickness=draw(st.floats(0.9, 2.0)) * wire,
                    half_width=draw(st.floats(0.0, 0.02))),
        practice=replace(CUT, depth_tolerance=draw(st.floats(0.0, 0.02)),
                         width_tolerance=draw(st.floats(0.0, 0.01))),
        interference=replace(INTERFERENCE, aim=draw(st.floats(0.0, 0.06))),
    )


@given(aims())
@settings(max_examples=80, deadline=None)
def test_the_planned_groove_gives_the_target_share(aim: CutAim) -> None:
    found = plan(aim)
    pressed = PressedWire(wire=aim.wire.value, width=found.width.target, depth=found.depth.target)
    assert math.isclose(expected_height(pressed).best, 0.24 * aim.sheet.thickness)
    assert math.isclose(found.share.target, 0.24)


@given(aims())
@settings(max_examples=40, deadline=None)
def test_no_corner_of_the_tolerances_is_outside_the_ends(aim: CutAim) -> None:
    found = plan(aim)
    wires = (aim.wire.value - aim.wire.half_width, aim.wire.value + aim.wire.half_width)
    sheets = (aim.sheet.thickness - aim.sheet.half_width,
              aim.sheet.thickness + aim.sheet.half_width)
    for wire, width, depth, sheet in product(
        wires, (found.width.low, found.width.high), (found.depth.low, found.depth.high), sheets
    ):
        height = expected_height(PressedWire(wire=wire, width=width, depth=depth)).best
        assert found.height.low - 1e-9 <= height <= found.height.high + 1e-9
        assert found.share.low - 1e-9 <= height / sheet <= found.share.high + 1e-9
        assert found.interference.low - 1e-9 <= wire - width <= found.interference.high + 1e-9
        assert found.widest_point.low - 1e-9 <= depth - wire / 2 <= found.widest_point.high + 1e-9


@given(aims())
@settings(max_examples=40, deadline=None)
def test_cut_as_much_deeper_as_told_every_end_is_within_the_limit(aim: CutAim) -> None:
    found = plan(aim)
    thinnest = aim.sheet.thickness - aim.sheet.half_width
    assert found.height.high - found.deeper <= 0.25 * thinnest + 2e-6
    assert (found.deeper > 0.0) == ("cut.note.far_end" in notes(found))


def test_usual_wire_and_sheet_pass_every_check_and_say_what_happens_at_the_ends() -> None:
    found = plan(AIM)
    assert all(check.verdict is Verdict.PASS for check in found.checks)
    assert notes(found) == {
        "cut.note.flat", "cut.note.far_end", "cut.note.test_groove", "cut.note.measure",
    }


def test_wire_from_the_label_may_be_loose_at_an_end() -> None:
    label = replace(AIM, wire=replace(AIM.wire, half_width=0.0008 * INCH))
    assert "cut.note.loose_end" in notes(plan(label))


def test_tight_aim_may_be_hard_to_press() -> None:
    tight = replace(AIM, interference=replace(INTERFERENCE, aim=0.003 * INCH))
    assert "cut.note.hard_end" in notes(plan(tight))


def test_thin_wire_under_a_thick_sheet_is_not_held() -> None:
    thin = replace(AIM, sheet=Sheet(thickness=0.093 * INCH, half_width=0.0))
    found = plan(thin)
    assert word(found, "held") == "above-deck"
    assert {"cut.note.above_deck", "cut.note.unusual_depth"} <= notes(found)


def test_low_target_may_not_bite() -> None:
    low = replace(AIM, practice=replace(CUT, target_share=0.13))
    assert word(plan(low), "bite") == "too-low"
    assert "cut.note.low_end" in notes(plan(low))


def test_groove_without_room_fails() -> None:
    assert room_check(PressedWire(wire=1.0, width=0.7, depth=0.75)).word == "no-room"


def test_printed_head_takes_the_print_off() -> None:
    printed = replace(AIM, face=HeadFace(face=Face.PRINTED, depth=0.002 * INCH, answered=True))
    found, flat = plan(printed), plan(AIM)
    assert math.isclose(found.height.target, flat.height.target + 0.002 * INCH)
    assert math.isclose(found.share.target, 0.24)
    assert "cut.note.flat" not in notes(found)


def test_receiver_gives_both_grooves_and_no_verdict_on_the_height() -> None:
    receiver = HeadFace(face=Face.RECEIVER, depth=0.003 * INCH, answered=True)
    answer = plan_cut(replace(AIM, face=receiver))
    full, past = (reading.plan for reading in answer.readings)
    assert not answer.decided
    assert math.isclose(full.depth.target - past.depth.target, 0.003 * INCH)
    for found in (full, past):
        assert word(found, "height-to-gasket") == word(found, "bite") == "undecided"
        assert word(found, "interference") == "holds"


def test_what_makes_no_groove_is_refused_by_field() -> None:
    with pytest.raises(InputError, match="wire: this wire is too thin"):
        plan_cut(replace(AIM, sheet=Sheet(thickness=0.25 * INCH, half_width=0.0)))
    wide = replace(INTERFERENCE, aim=0.05 * INCH)
    with pytest.raises(InputError, match=r"gasket: .*interference: "):
        plan_cut(replace(AIM, sheet=Sheet(thickness=0.1, half_width=0.2), interference=wide))


def test_deck_cut_raises_the_wire_by_as_much_until_the_groove_is_gone() -> None:
    pressed = PressedWire(wire=1.0414, width=1.0414, depth=0.762)
    for removed in (0.0, 0.1, 0.3):
        after = after_deck_cut(pressed, removed, AIM.sheet, 0.762)
        assert math.isclose(after.height, 1.0414 - 0.762 + removed)
        assert math.isclose(after.deeper, removed)
        assert after.held == (0.762 - removed >= 1.0414 / 2)
    gone = after_deck_cut(pressed, 0.8, AIM.sheet, 0.762)
    assert (gone.depth_left, gone.height, gone.deeper) == (None, None, 0.762)
    with pytest.raises(InputError, match="deck-cut: "):
        after_deck_cut(pressed, -0.1, AIM.sheet, 0.762)


def test_usual_job_has_no_standpoints_and_disagreements_have_two_readings() -> None:
    assert standpoints(Situation()) == ()
    job = Situation(wire=WireMaterial.COPPER, sheet=SheetMaterial.OTHER, face=Face.RECEIVER)
    for point in standpoints(job):
        assert point.verdict is Verdict.UNDECIDED
        assert len({str(each) for each in point.sentences}) == 2


@pytest.mark.parametrize(
    ("job", "point", "verdict"),
    [
        (Situation(loose=True), "loose", Verdict.FAIL),
        (Situation(wire_in=WireIn.BOTH), "both", Verdict.FAIL),
        (Situation(wire_in=WireIn.HEAD), "head", Verdict.PASS),
        (Situation(face=Face.PRINTED), "printed", Verdict.PASS),
        (Situation(wire=WireMaterial.STAINLESS_304_SPRING), "spring-wire", Verdict.UNDECIDED),
    ],
)
def test_each_unusual_point_is_told(job: Situation, point: str, verdict: Verdict) -> None:
    (told,) = standpoints(job)
    assert (told.point, told.verdict) == (point, verdict)
    assert all(str(each) for each in told.sentences)


def test_every_material_has_a_name() -> None:
    for material in WireMaterial:
        assert text(f"wire.material.{material}")
