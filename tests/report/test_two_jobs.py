"""Two jobs compared: what differs, what is the same, and the page of both."""

from core.report.account import Printed, account
from core.report.compared import compared
from core.report.page import comparison_page
from tests.eight_cylinders import eight_cylinders, finish, inches, new_book
from tests.report.hostile import hostile_job

PRINTED = Printed(at=1_790_000_000_000)


def told(book, job):
    return account(job, book.shop.shop, PRINTED)


def two_jobs():
    book = new_book()
    first = eight_cylinders(book)
    second = finish(book.duplicate(first.id, title="Third build"))
    second.add("decision", about="Sheet for the first start", sheet=inches("0.062"))
    return told(book, first), told(book, second)


def test_the_next_job_on_an_engine_shares_its_grooves_and_not_its_sheet():
    rows = {row.what: row for row in compared(*two_jobs())}
    assert rows["engine"].same
    assert rows["groove depth"].same
    assert rows["groove depth"].left == "0.0308 in – 0.0311 in"
    assert (rows["Sheet"].left, rows["Sheet"].right) == ("0.050 in", "0.062 in")
    assert (rows["title"].right, rows["title"].same) == ("Third build", False)
    # Readings are found anew: the first says 11.5 at six o'clock, the next nothing yet.
    assert rows["Highest"].right == ""


def test_a_job_is_the_same_as_itself():
    left, _ = two_jobs()
    assert all(row.same for row in compared(left, left))


def test_the_page_of_both_escapes_what_was_typed():
    left, _ = two_jobs()
    right = told(*hostile_job("<script>window.pwned=1</script>"))
    page = comparison_page(left, right)
    assert "<script" not in page
    assert "&lt;script&gt;" in page
    assert "Pulling engine, second build" in page
