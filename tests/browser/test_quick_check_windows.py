"""What must be in sight is in sight, in every window."""

from collections.abc import Iterator
from itertools import combinations

import pytest
from playwright.sync_api import Playwright

from tests.phone import Phone
from tests.windows import WINDOWS, show_in

FULL = (
    "#/check?go=0.011in&no-go=0.013in&gasket=0.040in&wire=0.041in&groove-width=0.040in"
    "&groove-depth=0.030in&shelf=0.032in,0.040in,0.050in,0.0646in"
)
ANSWER = ("height", "strip", "suggestion", "next-leaf")
LEAVES = ("pick-go", "pick-no-go", "leaf-0.0110", "stops-0.0130", "leaves-thinner")
KEYS = tuple(f"key-{key}" for key in (*"0123456789", "point", "back", "clear", "done"))
WAYS = ("way-check", "way-jobs", "way-engine", "way-gauges", "way-more", "unit")


@pytest.mark.parametrize("name", WINDOWS)
def test_answer_and_pad_are_in_sight_and_nothing_lies_over_another(
    running: Phone, name: str
) -> None:
    window = WINDOWS[name]
    show_in(running, window)
    for pad in (LEAVES, KEYS):
        if pad is KEYS:
            open_pad(running)
        boxes = {each: running.box(each) for each in (*ANSWER, *pad, *WAYS)}
        for each, box in boxes.items():
            assert box["left"] >= -1, each
            assert box["top"] >= -1, each
            assert box["right"] <= window.width + 1, each
            assert box["bottom"] <= window.height + 1, each
        for (one, a), (other, b) in combinations(boxes.items(), 2):
            assert not overlap(a, b), f"{one} lies over {other}"
    running.tap("key-done")
    running.box("leaf-0.0110")


def open_pad(phone: Phone) -> None:
    """On small screens the fields are scrolled to; the state opens the pad as their tap does."""
    phone.python(f"{THE_APP}\napp.open_pad('wire')")
    phone.box("key-done")


THE_APP = """
import gc
from mobile.app.model import App
app = next(each for each in gc.get_objects() if isinstance(each, App))
"""


def overlap(a: dict[str, float], b: dict[str, float], slack: float = 1.0) -> bool:
    across = min(a["right"], b["right"]) - max(a["left"], b["left"])
    down = min(a["bottom"], b["bottom"]) - max(a["top"], b["top"])
    return across > slack and down > slack


@pytest.fixture(scope="module")
def running(
    playwright: Playwright, address: str, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[Phone]:
    """One phone with a whole check on it, looked at in one window after the other."""
    phone = Phone(playwright, tmp_path_factory.mktemp("profile"), address)
    phone.open(FULL)
    phone.read_aloud()
    phone.phrase("height", holding="0.0120")
    yield phone
    phone.close()
    assert phone.troubles() == []
