"""Jobs out and in, quick checks into jobs and out of them, other windows, and warnings."""

import asyncio

import pytest

from core.records import Backup, read_parcel
from core.records.codec import FORMAT, to_bytes
from core.records.lines import write_line
from mobile.app.jobs import passing
from mobile.app.jobs.picture import fitted
from mobile.app.jobs.state.passing import file_name
from mobile.app.jobs.state.room import Room, warnings
from mobile.app.jobs.state.when import DAY, when
from tests.homes import MemoryHome
from tests.jobs_without_page import START, JobsWithoutPage, OneWindow


@pytest.fixture
def phone() -> JobsWithoutPage:
    return JobsWithoutPage()


def test_a_quick_check_is_kept_in_a_new_job_and_opens_from_there_again(phone):
    app = phone.app
    phone.jobs.app.entry = app.entry
    app.open_pad("go")
    for key in ".010":
        app.press(key)
    app.close_pad()
    app.open_pad("no-go")
    for key in ".012":
        app.press(key)
    app.close_pad()
    passing.ask_where(phone.jobs)
    phone.tap("keep-in-new", "place-3")
    cylinder = phone.jobs.cylinder
    (reading,) = cylinder.readings
    assert (reading.measured.place, reading.measured.go.typed) == ("3", "0.010 in")
    before = app.entry
    app.begin_anew()
    phone.tap("as-check")
    assert app.screen == "check"
    assert app.entry.texts["go"] == before.texts["go"]


def test_the_check_before_can_be_brought_back(phone):
    phone.tap("demo")
    phone.app.open_pad("go")
    phone.app.press("9")
    phone.app.close_pad()
    phone.tap("cylinder-1", "as-check")
    assert phone.app.entry.texts["wire"] == "0.041 in"
    phone.app.bring_back()
    assert phone.app.entry.texts["go"] == "9 thou"


def test_a_backup_of_one_phone_brings_everything_to_another(phone):
    phone.tap("new-job", "begin", "cylinder-1", "walk", "leaf-0.0100", "stops-0.0110")
    data = asyncio.run(phone.jobs.book.export())
    other = JobsWithoutPage()
    asyncio.run(passing.show_incoming(other.jobs, "book.jsonl", read_parcel(data)))
    assert other.jobs.book.jobs() == ()
    other.tap("take-in")
    (line,) = other.jobs.book.jobs()
    assert line.readings == 1
    assert "new entries" in other.phrase("told")


def test_another_window_has_the_book_and_gives_it_when_asked():
    first = JobsWithoutPage()
    first.tap("new-job", "begin")
    second = JobsWithoutPage(first.home, OneWindow(START, first.jobs.give))
    assert "open in another window" in second.phrase("elsewhere")
    second.tap("ask-for-book")
    assert len(second.jobs.book.jobs()) == 1
    assert first.jobs.book is None
    assert "another window" in first.phrase("elsewhere")


def test_a_window_that_sleeps_is_named_by_when_it_took_the_book():
    first = JobsWithoutPage()
    second = JobsWithoutPage(first.home, OneWindow(START))
    second.tap("ask-for-book")
    assert "does not answer" in second.phrase("elsewhere")
    assert when(START, second.jobs.now()) in second.phrase("elsewhere")


def test_without_the_book_a_quick_check_still_answers_and_says_that_nothing_is_kept():
    first = JobsWithoutPage()
    asyncio.run(first.jobs.notes.open())
    second = JobsWithoutPage(first.home, OneWindow(START))
    asyncio.run(second.jobs.notes.open())
    second.app.keep = lambda draft: second.jobs.notes.put("draft", draft)
    second.app.open_pad("go")
    second.app.press("9")
    second.app.close_pad()
    assert second.app.told.answer is not None
    assert "another window" in second.app.draft_trouble


def test_a_book_of_a_newer_version_is_left_untouched_and_told():
    title = to_bytes({"standproud": "list", "format": FORMAT + 1, "of": ""})
    files = {"list": write_line(0, title)}
    phone = JobsWithoutPage(MemoryHome(dict(files)))
    assert phone.jobs.book is None
    assert "trouble" in phone.names()
    assert "open-again" in phone.names()
    assert phone.home.files["list"] == files["list"]


@pytest.mark.parametrize(
    ("room", "backup", "kept", "words"),
    [
        (Room(used=0, granted=20_000_000), Backup(at=START, jobs_since=0), True, "20 MB"),
        (None, Backup(at=None, jobs_since=1), False, "home screen"),
        (None, Backup(at=START - 20 * DAY, jobs_since=1), True, "20 days ago"),
        (None, Backup(at=None, jobs_since=3), True, "no backup yet"),
    ],
)
def test_trouble_is_told_before_it_comes(room, backup, kept, words):
    (line,) = warnings(room, backup, kept, START)
    assert words in line


def test_nothing_is_told_while_all_is_well():
    room = Room(used=0, granted=1_000_000_000)
    assert list(warnings(room, Backup(at=START, jobs_since=5), True, START)) == []


def test_a_file_is_named_by_what_it_holds_and_the_day():
    assert file_name("Four in line!", 0).startswith("standproud-four-in-line-19")
    assert file_name("…", 0).startswith("standproud-job-")


def test_a_picture_keeps_its_shape_and_a_small_one_its_size():
    assert fitted(4000, 3000) == (1600, 1200)
    assert fitted(300, 200) == (300, 200)
    assert fitted(1, 90_000) == (1, 1600)
