"""What the readings of a job say: the worst decides, is named, and says where to tap."""

from dataclasses import replace

import pytest

from core.forms.kept_verdicts import judge_job, judging, worst
from core.records.model import (
    Bank,
    Cylinder,
    Decision,
    HeadFace,
    HeadFaceKind,
    Job,
    Length,
    Measured,
    Reading,
    ReadingKind,
    Tapped,
)
from core.verdict import Verdict
from mobile.app.jobs.state.told import deck_line, finding_phrase, hammer_words

INCH = 25.4


def inch(value: float) -> Length:
    return Length(typed=f"{value:.4f} in", mm=value * INCH)


def read(place, go, no_go, tapped=Tapped.BEFORE, at=0, **more):
    measured = Measured(
        cylinder="c1",
        kind=ReadingKind.LEAVES,
        place=place,
        tapped=tapped,
        go=inch(go) if go else None,
        no_go=inch(no_go) if no_go else None,
        **more,
    )
    return Reading(id=f"reading/{place}-{tapped}-{at}", measured=measured, at=at)


def cylinder(*readings, number="1", **more):
    sizes = {
        "wire": inch(0.041),
        "groove_width": {"12": inch(0.040)},
        "groove_depth": {"12": inch(0.031)},
    }
    return Cylinder(
        id=f"c{number}", bank="b", number=number, readings=readings, **{**sizes, **more}
    )


def job(*cylinders, sheet=0.050, face=None):
    decided = (Decision(id="d", sheet=inch(sheet)),) if sheet else ()
    return Job(
        id="job",
        banks=(Bank(id="b", name="Deck", cylinders=cylinders),),
        decisions=decided,
        head_face=face,
    )


EVEN = tuple(read(place, 0.010, 0.011) for place in ("12", "3", "6", "9"))


def ring(found):
    ((only,),) = (bank.rings for bank in judge_job(found, None))
    return only


def named(found):
    return {each.id: each for each in ring(found).findings}


def test_a_ring_that_is_down_even_and_takes_its_sheet_passes_everywhere():
    found = named(job(cylinder(*EVEN)))
    assert {each.verdict for each in found.values()} == {Verdict.PASS}
    assert set(found) == {
        "interference", "held", "seated", "even-ring", "height-to-gasket", "bite",
    }  # fmt: skip


def test_a_place_over_a_thousandth_proud_decides_and_is_the_one_to_tap():
    high = (*EVEN[:3], read("9", 0.012, 0.013))
    told = ring(job(cylinder(*high)))
    assert told.worst is not None
    assert (told.worst.cylinder, told.worst.place) == ("1", "9")
    assert told.worst.verdict is Verdict.FAIL
    assert "9" in told.tap_again
    assert [each.place for each in told.places if each.proud] == ["9"]


def test_a_straightedge_that_rocks_says_that_this_ring_is_high():
    told = ring(job(cylinder(*EVEN[:3], read("9", None, None, rocks=True))))
    assert told.worst is not None
    assert (told.worst.id, told.worst.place) == ("rocks", "9")
    assert "ROCKS" in finding_phrase(told.worst)


def test_the_last_reading_at_a_place_counts_and_a_deleted_one_never():
    before, after = read("9", 0.012, 0.013), read("9", 0.010, 0.011, Tapped.AFTER, at=5)
    assert ring(job(cylinder(*EVEN[:3], before, after))).tap_again == ()
    gone = replace(after, deleted=True)
    assert "9" in ring(job(cylinder(*EVEN[:3], before, gone))).tap_again


@pytest.mark.parametrize(
    ("after", "word", "said"),
    [((0.010, 0.011), "was-not-down", "lower"), ((0.012, 0.013), "was-down", "was down")],
)
def test_before_and_after_the_hammer_is_told_in_words(after, word, said):
    readings = read("9", 0.012, 0.013), read("9", *after, Tapped.AFTER, at=5)
    (found,) = ring(job(cylinder(*readings))).hammer
    assert found.word == word
    assert said in hammer_words(found)
    assert "9 o'clock" in hammer_words(found)


def test_the_highest_place_is_held_against_the_sheet_and_the_lowest_must_bite():
    readings = (*EVEN[:3], read("9", 0.012, 0.013))
    found = named(job(cylinder(*readings), sheet=0.040))
    assert found["height-to-gasket"].place == "9"
    assert found["height-to-gasket"].verdict is Verdict.FAIL
    assert found["bite"].place != "9"


def test_without_a_sheet_the_height_to_the_sheet_stays_open():
    assert "height-to-gasket" not in named(job(cylinder(*EVEN), sheet=None))


def test_with_a_receiver_in_the_head_nothing_is_decided_about_the_sheet():
    face = HeadFace(kind=HeadFaceKind.RECEIVER, depth=inch(0.010))
    found = named(job(cylinder(*EVEN), face=face))
    assert found["height-to-gasket"].verdict is Verdict.UNDECIDED
    assert found["bite"].verdict is Verdict.UNDECIDED


def test_one_leaf_alone_is_no_height_to_compare_round_the_ring():
    found = named(job(cylinder(read("12", 0.010, None), read("3", None, 0.011))))
    assert "even-ring" not in found


def test_leaves_that_contradict_each_other_are_told_and_the_other_places_still_judged():
    told = ring(job(cylinder(*EVEN, read("bridge", 0.012, 0.011))))
    (wrong,) = (each for each in told.places if each.place == "bridge")
    assert wrong.trouble
    assert {each.id for each in told.findings} >= {"even-ring", "seated"}


def test_rings_that_differ_along_the_bank_fail_together_and_the_worst_of_all_is_one():
    first = cylinder(*EVEN, number="1")
    raised = [read(place, 0.012, 0.013) for place in ("12", "3", "6", "9")]
    second = cylinder(*raised, number="2", wire=inch(0.043))
    (bank,) = judge_job(job(first, second, sheet=None), None)
    assert bank.across is not None
    assert bank.across.verdict is Verdict.FAIL
    decides = deck_line((bank,))
    assert decides is not None
    assert decides.verdict is Verdict.FAIL
    assert worst(bank.findings) == decides


def test_a_caliper_is_judged_with_its_own_limit_of_error():
    measured = Measured(
        cylinder="c1",
        kind=ReadingKind.CALIPER,
        place="12",
        tapped=Tapped.BEFORE,
        values=(inch(0.0105),),
    )
    told = ring(job(cylinder(Reading(id="reading/1", measured=measured))))
    by = judging(job(), None)
    assert told.places[0].height is not None
    assert told.places[0].height.u >= by.half_widths.caliper / 3**0.5
