"""Forms of a job: what is typed goes to the disk when it is done, and bad input changes nothing."""

import pytest

from core.records.model import JobState
from mobile.app.jobs import filing
from mobile.app.jobs.state.desk import Desk, Layout, as_json, from_json
from tests.jobs_without_page import JobsWithoutPage


@pytest.fixture
def phone() -> JobsWithoutPage:
    started = JobsWithoutPage()
    started.tap("new-job", "begin")
    return started


def first(phone: JobsWithoutPage):
    return phone.jobs.the_job.cylinders[0]


def size(phone: JobsWithoutPage, name: str, typed: str) -> None:
    phone.tap(f"in-{name}")
    phone.keys(typed)
    phone.tap("key-done")


def test_a_size_goes_to_its_own_field_with_the_unit_that_was_understood(phone):
    phone.tap("cylinder-1", "sizes")
    size(phone, "job-bore", "4.125")
    size(phone, "job-width-3", ".040")
    size(phone, "job-depth-3", "31")
    cylinder = first(phone)
    assert cylinder.bore.typed == "4.125 in"
    assert cylinder.groove_width["3"].mm == pytest.approx(0.040 * 25.4)
    assert cylinder.groove_depth["3"].typed == "31 thou"


def test_an_absurd_size_is_told_with_what_to_type_and_changes_nothing(phone):
    phone.tap("cylinder-1", "sizes")
    size(phone, "job-bore", "4.125")
    phone.tap("in-job-bore")
    phone.keys("999")
    phone.tap("key-done")
    assert "Bore" in phone.phrase("trouble")
    assert first(phone).bore.typed == "4.125 in"
    phone.tap("key-clear")
    phone.keys("4")
    phone.tap("key-done")
    assert first(phone).bore.typed == "4 in"


def test_a_cleared_size_is_taken_out_and_its_history_stays(phone):
    phone.tap("cylinder-1", "sizes")
    size(phone, "job-wire-size", "41")
    phone.tap("in-job-wire-size", "key-clear", "key-done")
    assert first(phone).wire is None
    phone.tap("history")
    told = [each.label for name, each in phone.names().items() if name.startswith("change-")]
    assert any("wire: 41 thou" in each for each in told)


def test_a_form_half_typed_is_there_after_a_kill(phone):
    phone.tap("cylinder-1", "sizes", "in-job-bore")
    phone.keys("4.1")
    again = phone.after_a_kill()
    again.tap("key-done")
    assert first(again).bore.typed == "4.1 in"


def test_words_half_typed_are_there_after_a_kill(phone):
    phone.tap("identity", "words-engine")
    phone.type("words", "Four in line")
    again = phone.after_a_kill()
    again.tap("keep-words")
    assert again.jobs.the_job.engine == "Four in line"
    assert again.jobs.screen() == "identity"


def test_undo_and_redo_go_both_ways(phone):
    phone.tap("state-run", "undo")
    assert phone.jobs.the_job.state is JobState.PLANNED
    phone.tap("redo")
    assert phone.jobs.the_job.state is JobState.RUN


def test_bore_and_wire_go_to_every_cylinder_as_one_action(phone):
    phone.tap("cylinder-1", "sizes")
    size(phone, "job-bore", "4.125")
    phone.tap("same-for-all")
    assert {each.bore.typed for each in phone.jobs.the_job.cylinders} == {"4.125 in"}
    phone.tap("undo")
    assert [each.bore is None for each in phone.jobs.the_job.cylinders] == [False, True, True, True]


def test_the_wire_of_a_spool_is_the_mean_of_its_mikings(phone):
    phone.tap("back", "shop", "new-spool")
    for number, typed in enumerate(("41", "41.2", "41.1"), 1):
        size(phone, f"job-miked-{number}", typed)
    (spool,) = phone.jobs.book.shop.shop.spools
    assert filing.spool_size(spool).mm == pytest.approx(41.1 * 0.0254)
    phone.tap("back", "back")
    phone.tap(next(name for name in phone.names() if name.startswith("job-")))
    phone.tap("cylinder-1", "sizes", "spool-1")
    assert first(phone).wire.mm == pytest.approx(41.1 * 0.0254)
    assert first(phone).spool == spool.id


def test_this_spool_with_this_cutter_holds_is_told_in_one_line(phone):
    phone.tap("back", "shop", "new-cutter", "words-name")
    phone.type("words", "Cutter B")
    phone.tap("keep-words", "back", "new-test-groove", "cutter-1", "holds-yes")
    size(phone, "job-test-interference", ".0008")
    phone.tap("back")
    assert "Cutter B: holds, 0.0008 in" in phone.phrase("test-groove-1")


def test_a_step_is_ticked_with_who_and_when_and_the_tick_taken_off_again(phone):
    phone.tap("steps", "step-groove_cut")
    (tick,) = phone.jobs.the_job.steps
    assert tick.done
    assert tick.at
    assert phone.names()["step-groove_cut"].label.startswith("Done:")
    assert "Eye protection" in phone.names()["step-groove_cut"].label
    phone.tap("step-groove_cut")
    assert not phone.jobs.the_job.steps[0].done


def test_a_decision_is_kept_with_its_reason(phone):
    phone.tap("sheet", "run-0.050-in", "decision-1")
    phone.type("words", "The thinnest that takes eleven.")
    phone.tap("keep-words")
    (decision,) = phone.jobs.the_job.decisions
    assert decision.sheet.typed == "0.050 in"
    assert decision.reason == "The thinnest that takes eleven."


def test_a_job_is_deleted_found_among_the_deleted_and_brought_back(phone):
    name = f"job-{phone.jobs.desk.job}"
    phone.tap("delete-job")
    assert name not in phone.names()
    phone.tap("deleted-jobs", name, "restore-job", "back", "deleted-jobs")
    assert name in phone.names()


def test_the_next_job_takes_over_the_block_and_finds_the_rest_anew(phone):
    phone.tap("cylinder-1", "sizes")
    size(phone, "job-wire-size", "41")
    phone.tap("back", "walk", "leaf-0.0100", "stops-0.0110", "back", "back", "next-job")
    job = phone.jobs.the_job
    assert job.cylinders[0].wire.typed == "41 thou"
    assert job.cylinders[0].readings == ()
    assert job.copied_from


def test_a_template_of_the_shop_lays_out_a_new_job(phone):
    phone.tap("keep-template", "back", "new-job", "template-1")
    assert [each.number for each in phone.jobs.the_job.cylinders] == ["1", "2", "3", "4"]


def test_the_demo_is_marked_and_one_tap_away(phone):
    phone.tap("back", "demo")
    assert "made up" in phone.phrase("demo-mark")
    assert phone.jobs.the_job.demo


def test_the_name_of_the_device_is_asked_once_and_goes_with_every_entry():
    phone = JobsWithoutPage()
    phone.tap("name-device")
    phone.type("words", "Stand phone")
    phone.tap("keep-words")
    assert "name-device" not in phone.names()
    phone.tap("new-job", "begin", "cylinder-1", "walk", "leaf-0.0100", "stops-0.0110")
    assert first(phone).readings[0].who == "Stand phone"
    again = phone.after_a_kill()
    again.tap("back", "readings")
    assert "Stand phone" in again.phrase("reading-1")


def test_after_running_words_sizes_and_annealing_are_kept(phone):
    phone.tap("cylinder-1", "evidence")
    size(phone, "job-print-12", "8")
    phone.tap("annealed-more", "water-3")
    phone.type("words", "A trace.")
    phone.tap("keep-words")
    (evidence,) = first(phone).evidence
    assert evidence.print_depth["12"].typed == "8 thou"
    assert evidence.sheet_annealed == 1
    assert evidence.water["3"] == "A trace."


def test_a_trial_squeeze_tells_whether_the_print_is_even(phone):
    phone.tap("squeeze", "squeezed-2")
    for place, typed in (("12", "8"), ("3", "8"), ("6", "10.5")):
        size(phone, f"job-print-{place}", typed)
    assert "PROUD" in phone.phrase("print-even-ring")
    (squeeze,) = phone.jobs.the_job.squeezes
    assert squeeze.cylinder == phone.jobs.the_job.cylinders[1].id


@pytest.mark.parametrize(
    ("layout", "numbers"),
    [
        (Layout(), (("1", "2", "3", "4"),)),
        (Layout(banks=2, cylinders=2), (("1", "2"), ("3", "4"))),
        (Layout(banks=2, cylinders=2, odd_even=True), (("1", "3"), ("2", "4"))),
    ],
)
def test_an_engine_is_laid_out_as_it_is_numbered(layout, numbers):
    assert layout.numbers() == numbers


def test_a_desk_of_another_format_is_the_list():
    assert from_json({"format": 99, "screen": "walk"}) == Desk()
    assert from_json(as_json(Desk(screen="new"))) == Desk(screen="new")


def test_a_cylinder_is_added_deleted_and_brought_back(phone):
    phone.tap("add-cylinder")
    assert [each.number for each in phone.jobs.live_cylinders()] == ["1", "2", "3", "4", "5"]
    phone.tap("cylinder-5", "sizes", "delete", "back")
    assert "cylinder-5" not in phone.names()
    phone.tap("restore-cylinder-5")
    assert "cylinder-5" in phone.names()


def test_an_evidence_has_its_own_history_and_can_be_deleted(phone):
    phone.tap("cylinder-1", "evidence")
    size(phone, "job-again-12", "9.5")
    phone.tap("history")
    assert "9.5 thou" in phone.phrase("change-1")
    phone.tap("back", "delete")
    assert phone.jobs.screen() == "cylinder"
    assert first(phone).evidence[0].deleted
    phone.tap("undo")
    assert not first(phone).evidence[0].deleted


def test_a_spool_has_its_own_history(phone):
    phone.tap("back", "shop", "new-spool")
    size(phone, "job-nominal", "41")
    phone.tap("history")
    assert "41 thou" in phone.phrase("change-1")
    phone.tap("back")
    assert phone.jobs.screen() == "thing"


def test_a_file_that_was_lost_hold_of_is_told_and_works_again_after(phone):
    phone.tap("steps")
    phone.jobs.job.close()
    phone.tap("step-run")
    assert "trouble" in phone.names()
    assert phone.jobs.the_job.steps == ()
    phone.tap("open-anew", "step-run")
    assert phone.jobs.the_job.steps[0].done
