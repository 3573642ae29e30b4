"""Table, message, sentence and name of a file: text that no other program takes for more."""

import csv
import io

import pytest

from core.records.model import Measured, ReadingKind, Tapped
from core.report.account import Printed, account
from core.report.plain import file_name
from core.report.readings_table import COLUMNS, readings_table
from core.report.say import sentence, stamp_line, summary
from tests.eight_cylinders import add_shelf, eight_cylinders, finish, inches, new_book
from tests.report.hostile import HOSTILE, hostile_job

PRINTED = Printed(at=1_790_000_000_000)
STARTS = ("=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r", "\n")


def told(book, job):
    return account(job, book.shop.shop, PRINTED)


def table_of(book, job):
    written = readings_table(told(book, job), book.shop.shop).decode("utf-8-sig")
    return list(csv.reader(io.StringIO(written, newline="")))


def small_job():
    """Two rings: 10.5 at three o'clock of the first, 9.5 of the second."""
    book = new_book()
    job = finish(book.new_job(title="Small"))
    job.add_bank("one", ("1", "2"), {"wire": inches("0.041")})
    for cylinder, go in zip(job.job.cylinders, (10, 9), strict=True):
        job.enter_all([(cylinder.id, "groove_depth@12", inches("0.0310"))])
        job.add_reading(
            Measured(
                cylinder=cylinder.id,
                kind=ReadingKind.LEAVES,
                place="3",
                tapped=Tapped.BEFORE,
                go=inches(f"0.{go:03}"),
                no_go=inches(f"0.{go + 1:03}"),
            )
        )
    return book, job


def test_the_table_has_its_units_in_the_head_and_a_row_a_reading():
    head, *rows = table_of(*small_job())
    assert len(head) == len(COLUMNS)
    assert "height [mm]" in head
    assert "goes [in]" in head
    first = dict(zip(head, rows[0], strict=True))
    assert len(rows) == 2
    assert (first["cylinder"], first["place"]) == ("1", "3")
    # (10 + 11) / 2 thou = 10.5 thou = 0.2667 mm.
    assert first["height [in]"] == "0.0105"
    assert first["height [mm]"] == "0.267"
    assert first["goes [mm]"] == "0.254"
    assert first["counts"] == "yes"


@pytest.mark.parametrize("typed", HOSTILE, ids=range(len(HOSTILE)))
def test_no_cell_begins_as_a_formula(typed):
    head, *rows = table_of(*hostile_job(typed))
    assert len(rows) == 1
    assert len(rows[0]) == len(head)
    assert [each for each in rows[0] if each.startswith(STARTS)] == []


@pytest.mark.parametrize("typed", HOSTILE, ids=range(len(HOSTILE)))
def test_a_message_stays_a_line_a_fact(typed):
    found = told(*hostile_job(typed))
    lines = summary(found).splitlines()
    assert len(lines) == 11
    assert not [c for c in summary(found) if ord(c) < 32 and c != "\n"]
    assert "\n" not in sentence(found)


@pytest.mark.parametrize("typed", ["", *HOSTILE])
def test_no_title_names_a_file_elsewhere(typed):
    name = file_name(typed, "2026-01-05", "html")
    stem = name.removesuffix("-2026-01-05.html")
    assert stem
    assert set(stem) <= set("abcdefghijklmnopqrstuvwxyz0123456789-")
    assert stem.split("-")[0] not in ("con", "nul", "prn", "aux") or "-" in stem
    assert len(name) < 80


def test_the_sentence_names_the_highest_and_the_lowest():
    book, job = small_job()
    said = sentence(told(book, job))
    assert said.startswith(
        "2 rings read. Highest number 1 at 3 o'clock, 10.5. Lowest number 2 at 3 o'clock, 9.5."
    )
    job.add("decision", about="sheet", sheet=inches("0.050"))
    # 10.5 / 50 = 21 % and 9.5 is over 7.5: it runs and bites.
    assert sentence(told(book, job)).endswith("On the 50: run. That is for a flat head face.")


def test_a_low_ring_on_a_thick_sheet_is_said_before_anything_else_of_the_sheet():
    book, job = small_job()
    job.add("decision", about="sheet", sheet=inches("0.080"))
    # 9.5 thou are under 15 % of 80 thou, which is 12.
    assert "On the 80: too low." in sentence(told(book, job))


def test_the_line_to_stamp_holds_wire_depth_sheet_and_date():
    book, job = small_job()
    assert stamp_line(told(book, job)) == "WIRE .041 DEPTH .031 IN 2026-09-21"
    job.add("decision", about="sheet", sheet=inches("0.050"))
    assert stamp_line(told(book, job)) == "WIRE .041 DEPTH .031 SHEET .050 IN 2026-09-21"


def test_a_message_tells_the_whole_of_a_large_job():
    book = new_book()
    job = eight_cylinders(book)
    add_shelf(book)
    message = summary(told(book, job))
    assert all(f"Number {number}: " in message for number in "12345678")
    assert "Sheet for the first start: 0.050 in." in message
    assert message.endswith("data win where they differ.")
    assert len(message) < 2000
