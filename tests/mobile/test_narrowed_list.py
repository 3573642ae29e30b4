"""Which jobs are shown: by engine, date, verdict and person."""


import pytest

from core.records.demo import DEMO_JOB
from core.texts.en import TEXTS
from mobile.app.overview.narrowed import (
    DAY,
    OPEN,
    Narrowed,
    engines,
    facts_of,
    lacking,
    narrow,
    people,
)
from tests.eight_cylinders import eight_cylinders, finish, new_book

NOW = 1_790_000_000_000 + 40 * DAY


@pytest.fixture(scope="module")
def shop():
    """Three jobs: one of this summer, the demo of last January, one not begun."""
    book = new_book(name="Stand")
    whole = eight_cylinders(book)
    finish(book.add_demo())
    empty = finish(book.new_job(title="Empty", engine="Four in line"))
    lines = book.jobs()
    facts = {
        line.id: facts_of(line.stamp, finish(book.events_of(line.id)), None) for line in lines
    }
    return book, lines, facts, {"whole": whole.id, "demo": DEMO_JOB, "empty": empty.id}


def chosen(shop, **choice):
    _, lines, facts, names = shop
    by_id = {key: name for name, key in names.items()}
    return {by_id[each.id] for each in narrow(lines, Narrowed(**choice), facts, NOW)}


def test_nothing_chosen_shows_everything(shop):
    assert chosen(shop) == {"whole", "demo", "empty"}


def test_each_choice_narrows_and_two_narrow_more(shop):
    assert chosen(shop, engine="Eight cylinders in vee, alcohol") == {"whole"}
    assert chosen(shop, verdict="fail") == {"whole"}
    assert chosen(shop, verdict=OPEN) == {"empty"}
    assert chosen(shop, person="Stand") == {"whole", "demo", "empty"}
    assert chosen(shop, person="Demo") == {"demo"}
    assert chosen(shop, person="Demo", verdict="fail") == set()


def test_a_date_narrows_by_when_a_job_was_last_changed(shop):
    assert chosen(shop, age="7") == set()
    assert chosen(shop, age="365") == {"whole", "demo", "empty"}


def test_a_job_that_was_not_read_yet_is_not_chosen_by_its_verdict(shop):
    _, lines, facts, _ = shop
    assert narrow(lines, Narrowed(verdict="fail"), {}, NOW) == ()
    assert lacking(lines, facts) == ()
    assert lacking(lines, {}) == lines


def test_what_there_is_to_choose_from(shop):
    _, lines, facts, _ = shop
    assert "Four in line" in engines(lines)
    assert people(facts.values())[0] == "Stand"


def test_what_is_chosen_is_said(shop):
    said = Narrowed(engine="Four in line", age="30", verdict="fail", person="Sam").words
    assert said == "Four in line, within 30 days, something fails, Sam"
    assert not Narrowed().words
    assert {f"narrow.verdict.{each}" for each in ("pass", "undecided", "fail", OPEN)} <= set(TEXTS)
