"""The report in a real browser: on both papers, from a file, from the app."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, Playwright

from core.handover.parts import split
from core.report.account import Printed, account
from core.report.page import report_page
from tests.chromium import FLAGS, find
from tests.eight_cylinders import add_shelf, eight_cylinders, new_book
from tests.phone import NewPhone
from tests.report.hostile import HOSTILE, hostile_job
from tests.scrolling import reach

PRINTED = Printed(at=1_790_000_000_000, device="Shop desk")
# Width and height in points (ANSI Y14.1 and ISO 216), and the room between the margins in CSS px.
PAPERS = {"Letter": (612.0, 792.0, 725), "A4": (595.3, 841.9, 703)}
MOST_PAGES = 20


@pytest.fixture(scope="module")
def browser(playwright: Playwright):
    with playwright.chromium.launch(executable_path=find(), args=list(FLAGS)) as running:
        yield running


@pytest.fixture(scope="module")
def report(tmp_path_factory) -> Path:
    """The report of a whole job as a file."""
    book = new_book()
    job = eight_cylinders(book)
    add_shelf(book)
    path = tmp_path_factory.mktemp("report") / "report.html"
    path.write_text(report_page(account(job, book.shop.shop, PRINTED)), encoding="utf-8")
    return path


def opened(browser: Browser, path: Path) -> Page:
    """A page of a browser without a network, and what went wrong on it."""
    page = browser.new_page()
    page.context.set_offline(True)
    page.troubles = []
    page.on("console", lambda message: page.troubles.append(message.text))
    page.on("pageerror", lambda error: page.troubles.append(str(error)))
    page.on("dialog", lambda dialog: page.troubles.append(dialog.message))
    page.goto(path.as_uri())
    return page


@pytest.mark.parametrize("paper", PAPERS)
def test_it_prints_on_both_papers_and_nothing_runs_off_the_side(
    browser: Browser, report: Path, paper: str
) -> None:
    width, height, room = PAPERS[paper]
    page = opened(browser, report)
    printed = page.pdf(format=paper)
    boxes = re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", printed)
    assert 3 < len(boxes) <= MOST_PAGES
    for box in boxes:
        assert [float(each) for each in box] == pytest.approx([width, height], abs=1.0)
    page.emulate_media(media="print")
    page.set_viewport_size({"width": room, "height": 900})
    assert page.evaluate("document.documentElement.scrollWidth") <= room
    assert page.evaluate(OUTSIDE, room) == []
    assert page.troubles == []
    page.close()


def test_it_is_dark_ink_on_white_even_on_a_dark_device(browser: Browser, report: Path) -> None:
    page = opened(browser, report)
    page.emulate_media(media="print", color_scheme="dark")
    look = page.evaluate("""() => {
      const {color, backgroundColor} = getComputedStyle(document.documentElement);
      return [color, backgroundColor];
    }""")
    assert look == ["rgb(17, 17, 17)", "rgb(255, 255, 255)"]
    page.close()


def test_on_a_phone_only_the_wide_tables_scroll_sideways(browser: Browser, report: Path) -> None:
    page = opened(browser, report)
    page.set_viewport_size({"width": 390, "height": 844})
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    page.close()


def test_nothing_that_was_typed_runs_or_asks_the_network(browser: Browser, tmp_path: Path) -> None:
    for number, typed in enumerate(HOSTILE):
        _, job = hostile_job(typed)
        path = tmp_path / f"{number}.html"
        path.write_text(report_page(account(job, None, PRINTED)), encoding="utf-8")
        page = opened(browser, path)
        asked: list[str] = []
        page.on("request", lambda request, asked=asked: asked.append(request.url))
        assert page.evaluate("window.pwned") is None, typed
        assert page.locator("script, iframe, a, form, object, img, link").count() == 0, typed
        assert (asked, page.troubles) == ([], []), typed
        page.close()


def test_the_app_opens_it_in_a_page_of_its_own_without_a_network(new_phone: NewPhone) -> None:
    job = eight_cylinders(new_book(name="Shop"))
    (whole,) = split({f"job-{job.id}": list(job.fold)})
    phone = new_phone()
    phone.open(f"#/take?{whole}")
    phone.wait_until_ready_for_offline()
    phone.context.set_offline(True)
    phone.read_aloud()
    phone.phrase("incoming")
    reach(phone, "take-in")
    phone.phrase("told", holding="Taken in")
    reach(phone, "job-" + job.id)
    phone.phrase("cylinder-1")
    reach(phone, "give")
    phone.phrase("job-sentence", holding="rings read")
    with phone.context.expect_page() as opening:
        reach(phone, "open-report")
    page = opening.value
    page.wait_for_selector("h1")
    assert page.url.startswith("blob:")
    assert page.inner_text("h1") == "Pulling engine, second build"
    assert page.locator("figure.ring").count() == 8
    with phone.page.expect_download() as saving:
        reach(phone, "save-table")
    assert saving.value.suggested_filename.startswith("pulling-engine-second-build-")
    assert "height [mm]" in Path(saving.value.path()).read_text(encoding="utf-8-sig")


OUTSIDE = """(room) => [...document.querySelectorAll("body *")]
  .filter((each) => each.getBoundingClientRect().right > room + 1)
  .map((each) => each.tagName + " " + each.textContent.slice(0, 40))"""
