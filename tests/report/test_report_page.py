"""The page of a job: complete, self-contained, and made of text whatever somebody typed."""

import re
from html.parser import HTMLParser

import pytest

from core.records.demo import DEMO_JOB
from core.records.model import HeadFace, HeadFaceKind, Length, Measured, ReadingKind, Tapped
from core.records.pictures import name_of
from core.report.account import Printed, account
from core.report.page import report_page
from core.texts import text
from tests.eight_cylinders import add_shelf, eight_cylinders, finish, inches, new_book
from tests.report.hostile import HOSTILE, hostile_job

PRINTED = Printed(at=1_790_000_000_000, device="Shop desk")
TAGS = {
    "html", "head", "meta", "title", "style", "body", "header", "section", "h1", "h2", "h3", "p",
    "dl", "dt", "dd", "table", "thead", "tbody", "tr", "th", "td", "ul", "ol", "li", "div",
    "figure", "figcaption", "img", "svg", "circle", "path", "rect", "text", "span", "strong", "br",
}  # fmt: skip
JPEG = b"\xff\xd8\xff\xe0 a small picture"


class Read(HTMLParser):
    """Tags, attributes and text of a page."""

    def __init__(self, page):
        super().__init__()
        self.tags, self.attributes, self.words = set(), [], []
        self.feed(page)

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        self.attributes += attrs

    def handle_data(self, data):
        self.words.append(data)

    @property
    def text(self):
        return " ".join(" ".join(self.words).split())


def page_of(book, job, pictures=None):
    return report_page(account(job, book.shop.shop, PRINTED, pictures))


@pytest.fixture(scope="module")
def whole():
    book = new_book()
    job = eight_cylinders(book)
    add_shelf(book)
    return page_of(book, job)


def test_every_part_that_a_customer_asks_for_is_on_the_page(whole):
    told = Read(whole).text
    titles = ("rings", "verdicts", "choice", "gauges", "readings", "grooves", "evidence", "steps")
    for title in (*titles, "cautions", "sources", "history"):
        assert text(f"report.title.{title}") in told
    for words in (
        "Pulling engine, second build",
        "Team Copper",
        "WIRE .041 DEPTH .0308-.0311 SHEET .050 IN 2026-09-21",
        "All rings bite and the highest is under the limit",
        "none outside the print",
        "plain rule",
        "common practice, no source",
        "limit kept:",
        text("caution.water"),
        "Shop desk",
    ):
        assert words in told, words


def test_a_ring_is_drawn_with_every_reading_that_counts(whole):
    assert whole.count('<figure class="ring">') == 8
    # Five places a ring: four hours and the bridge.
    assert whole.count('font-size="10.5"') == 8 * 5


def test_the_page_needs_nothing_from_elsewhere(whole):
    read = Read(whole)
    assert read.tags <= TAGS
    assert [value for name, value in read.attributes if name in ("href", "srcset", "action")] == []
    assert re.findall(r"url\(|@import|https?://", whole) == []
    assert "default-src 'none'" in whole


@pytest.mark.parametrize("typed", HOSTILE, ids=range(len(HOSTILE)))
def test_nothing_that_somebody_typed_becomes_markup(typed):
    page = page_of(*hostile_job(typed))
    read = Read(page)
    assert read.tags <= TAGS
    events = [name for name, _ in read.attributes if name.startswith("on")]
    sources = [value for name, value in read.attributes if name == "src"]
    assert (events, sources) == ([], [])
    assert page.count("<style>") == 1
    page.encode("utf-8")


def test_a_typed_text_is_shown_as_it_was_typed():
    typed = '<b>5/8" & {{ more }}</b>'
    assert Read(page_of(*hostile_job(typed))).text.count(typed) > 10


def test_a_picture_is_inside_the_page_and_only_pictures_are():
    book = new_book()
    job = eight_cylinders(book)
    evidence = job.job.cylinders[0].evidence[0].id
    drawing = b"<svg xmlns='http://www.w3.org/2000/svg' onload='window.pwned=1'/>"
    kept = {name_of(data): data for data in (JPEG, drawing)}
    job.enter_all([(evidence, f"pictures@{name}", "head") for name in kept])
    page = page_of(book, job, kept)
    sources = [value for name, value in Read(page).attributes if name == "src"]
    assert [each.partition(";")[0] for each in sources] == ["data:image/jpeg"]
    assert text("report.none.picture") in page


def test_a_job_without_anything_is_a_page_too():
    book = new_book()
    job = finish(book.new_job())
    told = Read(page_of(book, job)).text
    for none in ("rings", "verdicts", "decision", "gauges", "evidence"):
        assert text(f"report.none.{none}") in told


def test_entries_that_disagree_are_both_told():
    here, there = new_book(1, "Stand"), new_book(2, "Track")
    job = eight_cylinders(here)
    finish(there.merge(f"job-{job.id}", list(job.fold)))
    theirs = finish(there.open_job(job.id))
    job.enter("job", owner="North")
    theirs.enter("job", owner="South")
    job.merge(theirs.fold)
    told = Read(page_of(here, job)).text
    assert "Job, owner" in told
    assert "North (Stand)" in told
    assert "South (Track)" in told


def test_a_ring_that_rocks_and_a_crossed_reading_are_told():
    book = new_book()
    job = finish(book.new_job(head_face=HeadFace(kind=HeadFaceKind.FLAT)))
    job.add_bank("one", ("1",))
    cylinder = job.job.cylinders[0].id
    kinds = {"cylinder": cylinder, "kind": ReadingKind.LEAVES, "tapped": Tapped.BEFORE}
    job.add_reading(Measured(place="3", rocks=True, **kinds))
    job.add_reading(Measured(place="6", go=inches("0.012"), no_go=inches("0.010"), **kinds))
    told = Read(page_of(book, job)).text
    assert text("kept.read.rocks") in told
    assert text("height.crossed") in told


def test_whoever_works_in_mm_is_told_mm():
    book = new_book()
    job = eight_cylinders(book)
    job.enter("limits", sheet_on=Length(typed="1.1 mm", mm=1.1))
    told = Read(page_of(book, job)).text
    assert text("report.rings.how_metric") in told
    assert re.search(r"\d thou", told) is None


def test_the_demo_says_that_it_is_one():
    book = new_book()
    finish(book.add_demo())
    job = finish(book.open_job(DEMO_JOB))
    assert text("report.demo") in Read(page_of(book, job)).text
