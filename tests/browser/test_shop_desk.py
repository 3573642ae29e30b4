"""The shop's wide screen: list and job side by side, by keyboard alone, narrowed and compared."""

import pytest

from core.handover.parts import split
from tests.eight_cylinders import eight_cylinders, new_book
from tests.phone import NewPhone, Phone
from tests.scrolling import reach

MOST_TABS = 60
REST = 300
"""Time for a mark to fade in or out [ms]."""


@pytest.fixture
def desk(new_phone: NewPhone) -> Phone:
    """A wide screen with a whole job and the demo."""
    job = eight_cylinders(new_book(name="Sam"))
    (whole,) = split({f"job-{job.id}": list(job.fold)})
    desk = new_phone(viewport={"width": 1280, "height": 800})
    desk.open(f"#/take?{whole}")
    desk.read_aloud()
    desk.phrase("incoming")
    desk.tap("take-in")
    desk.phrase("told", holding="Taken in")
    reach(desk, "demo")
    desk.phrase("demo-mark")
    return desk


def press(desk: Phone, key: str) -> None:
    desk.page.keyboard.press(key)


def focus(desk: Phone, identifier: str) -> None:
    """Tab until a key wears the mark of the focus."""
    box = desk.box(identifier)
    place = {name: box[name] for name in ("x", "y", "width", "height")}
    desk.page.mouse.move(1, 1)
    desk.page.wait_for_timeout(REST)
    plain = desk.page.screenshot(clip=place)
    for _ in range(MOST_TABS):
        press(desk, "Tab")
        desk.page.wait_for_timeout(REST)
        if desk.page.screenshot(clip=place) != plain:
            return
    raise AssertionError(f"{identifier} cannot be reached with the tab key")


def test_arrows_go_through_the_list_and_escape_leads_back(desk: Phone) -> None:
    press(desk, "Escape")
    desk.phrase("title", holding="Jobs")
    press(desk, "ArrowDown")
    desk.page.wait_for_function("() => window.nodeOf('demo-mark')")
    assert desk.phrase("search") is not None
    press(desk, "ArrowDown")
    desk.phrase("cylinder-8")
    press(desk, "ArrowUp")
    desk.phrase("demo-mark")
    press(desk, "Escape")
    desk.page.wait_for_function("() => !window.nodeOf('demo-mark')")


def test_a_job_is_opened_by_tab_and_enter(desk: Phone) -> None:
    press(desk, "Escape")
    desk.page.wait_for_function("() => !window.nodeOf('demo-mark')")
    focus(desk, "job-demo")
    press(desk, "Enter")
    desk.phrase("demo-mark")


def test_the_list_is_narrowed_and_two_jobs_are_compared(desk: Phone) -> None:
    reach(desk, "compare")
    other = desk.page.locator('[flt-semantics-identifier^="compare-"]').first
    other.wait_for(state="attached")
    reach(desk, other.get_attribute("flt-semantics-identifier"))
    assert "Pulling engine, second build" in desk.phrase("compared", holding="differences")
    desk.phrase("compare-row-1", holding="against")
    with desk.context.expect_page() as opening:
        reach(desk, "open-comparison")
    page = opening.value
    page.wait_for_selector("tbody tr")
    assert "Pulling engine, second build" in page.inner_text("thead")
    page.close()
    press(desk, "Escape")
    press(desk, "Escape")
    desk.page.wait_for_function("() => !window.nodeOf('demo-mark')")
    reach(desk, "narrow")
    assert "2 of 2 jobs" in desk.phrase("narrow-left")
    reach(desk, "narrow-person-Sam")
    assert "1 of 2 jobs" in desk.phrase("narrow-left", holding="1 of")
    reach(desk, "narrow-verdict-pass")
    assert "0 of 2 jobs" in desk.phrase("narrow-left", holding="0 of")
