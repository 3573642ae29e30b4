"""The choice of a sheet from a job: readings and sizes come in, changes go to its records."""

import pytest

from core.records.model import Length, Measured, ReadingKind, Tapped
from core.records.view import live
from mobile.app.engine.sheet.found import find
from mobile.app.engine.sheet.model import SheetChoice
from mobile.app.engine.sheet.of_job import entry_of, written
from mobile.app.engine.start import begin
from mobile.app.jobs.engine_way import open_sheet
from mobile.app.jobs.model import Jobs
from mobile.app.state.sizes_form import SizesForm, open_field
from tests.jobs_without_page import JobsWithoutPage

THOU = 0.0254


def inch(thou: float) -> Length:
    return Length(typed=f"{thou:g} thou", mm=thou * THOU)


@pytest.fixture
def phone() -> JobsWithoutPage:
    """A phone with a job of two rings: 12 thou on one, 10 on the other."""
    phone = JobsWithoutPage()
    phone.tap("new-job", "begin")
    app, jobs = phone.jobs.app, phone.jobs
    app.engine = begin(app, lambda _key: None, lambda _key, _value: None, lambda _task: None)
    first, second = live(jobs.the_job.cylinders)[:2]
    for cylinder, height in ((first, 12.0), (second, 10.0)):
        jobs.job.add_reading(
            Measured(
                cylinder=cylinder.id, kind=ReadingKind.INDICATOR, place="12",
                tapped=Tapped.AFTER, values=(inch(height),),
            )
        )  # fmt: skip
    return phone


def sheet_of(jobs: Jobs) -> SheetChoice:
    open_sheet(jobs)
    return jobs.app.engine.sheet


def type_into(sheet: SheetChoice, name: str, keys: str) -> None:
    def opened(form: SizesForm) -> SizesForm:
        return open_field(form, name)

    sheet.change(opened)
    for key in keys:
        sheet.keys().press("±" if key == "-" else key)
    sheet.keys().done()


def test_the_highest_and_the_lowest_ring_of_the_job_decide(phone: JobsWithoutPage) -> None:
    """12 / 0.25 = 48 and 10 / 0.15 = 66.7."""
    jobs = phone.jobs
    sheet = sheet_of(jobs)
    assert jobs.app.screen == "engine"
    overlap = find(sheet.entry, sheet.basis).choice.overlap
    assert overlap
    assert overlap.low
    assert overlap.high
    assert overlap.low.end.allowed / THOU == pytest.approx(48.0)
    assert overlap.high.end.allowed / THOU == pytest.approx(66.667, abs=0.001)
    assert overlap.low.end.decided_by == "cylinder 1 at 12"
    assert overlap.high.end.decided_by == "cylinder 2 at 12"


def test_what_is_typed_goes_into_the_jobs_own_records(phone: JobsWithoutPage) -> None:
    jobs = phone.jobs
    sheet = sheet_of(jobs)
    type_into(sheet, "chamber", "64")
    type_into(sheet, "piston-deck", "-12")
    sheet.choose_word("rod", "steel")
    (limits,) = live(jobs.the_job.limits)
    assert limits.chamber
    assert (limits.chamber.typed, limits.rod) == ("64 cc", "steel")
    first = live(jobs.the_job.cylinders)[0]
    assert first.piston_deck == Length(typed="-12 thou", mm=-0.3048)
    assert written(jobs.the_job, sheet.entry, limits.id) == []
    assert entry_of(jobs.the_job).form.texts["chamber"] == "64 cc"


def test_a_number_is_one_action_that_can_be_undone(phone: JobsWithoutPage) -> None:
    jobs = phone.jobs
    type_into(sheet_of(jobs), "chamber", "64.5")
    before = [each.chamber for each in live(jobs.the_job.limits)]
    assert [each.typed for each in before if each] == ["64.5 cc"]
    jobs.undo()
    assert not [each for each in live(jobs.the_job.limits) if each.chamber]


def test_every_cylinder_takes_its_own_clearances_and_all_take_the_bore(
    phone: JobsWithoutPage,
) -> None:
    jobs = phone.jobs
    sheet = sheet_of(jobs)
    type_into(sheet, "bore", "4.125")
    sheet.show_cylinder("2")
    type_into(sheet, "intake-valve", "95")
    cylinders = live(jobs.the_job.cylinders)
    assert {each.bore.typed for each in cylinders if each.bore} == {"4.125 in"}
    assert all(each.bore for each in cylinders)
    assert [each.number for each in cylinders if each.intake_valve] == ["2"]


def test_a_cleared_number_is_cleared_in_the_job(phone: JobsWithoutPage) -> None:
    jobs = phone.jobs
    sheet = sheet_of(jobs)
    type_into(sheet, "chamber", "64")
    sheet.change(lambda form: open_field(form, "chamber"))
    sheet.keys().clear()
    sheet.keys().done()
    assert not [each for each in live(jobs.the_job.limits) if each.chamber]


def test_a_job_that_was_closed_takes_nothing_more_and_says_so(phone: JobsWithoutPage) -> None:
    jobs = phone.jobs
    sheet = sheet_of(jobs)
    jobs.leave_job()
    type_into(sheet, "chamber", "64")
    assert "the job is closed" in sheet.trouble


def test_the_way_back_leads_to_the_job_and_the_check_keeps_its_own(phone: JobsWithoutPage) -> None:
    jobs = phone.jobs
    sheet = sheet_of(jobs)
    type_into(sheet, "chamber", "64")
    sheet.leave()
    assert jobs.app.screen == "jobs"
    jobs.app.open_engine()
    assert "chamber" not in sheet.entry.form.texts
    assert not sheet.source.of_a_job
