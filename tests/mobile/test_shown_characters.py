"""Every character that the app shows has its sign in the font that the site ships."""

import pytest
from fontTools.ttLib import TTFont

from core.texts.en import TEXTS
from tests.app_without_page import AppWithoutPage, controls, drawn
from tests.served_site import built

FULL = (
    "/check?go=0.010in%2B0.0025in&no-go=0.013in&gasket=1mm&wire=0.041in&groove-width=0.040in"
    "&groove-depth=0.030in&head-face=printed:0.002in&share=24%25&leaves=0.1mm;0.2mm"
)
# Between a line's end and a space: nothing to draw.
UNDRAWN = {"\n"}


@pytest.fixture(scope="module")
def signs() -> set[str]:
    font = TTFont(built() / "assets" / "fonts" / "roboto.woff2")
    return {chr(code) for code in font.getBestCmap()}


def test_every_text_of_the_catalogue_can_be_drawn(signs: set[str]) -> None:
    lacking = {key: set(text) - signs - UNDRAWN for key, text in TEXTS.items()}
    assert {key: missing for key, missing in lacking.items() if missing} == {}


@pytest.mark.parametrize("screen", ["check", "gauges", "more", "shelf", "about"])
def test_every_number_and_unit_on_the_screens_can_be_drawn(signs: set[str], screen: str) -> None:
    phone = AppWithoutPage()
    phone.app.follow(FULL)
    phone.app.go_to(screen)
    shown = "".join(words(phone))
    assert any(each.isdigit() for each in shown) or screen == "more"
    assert set(shown) - signs - UNDRAWN == set()


def words(phone: AppWithoutPage) -> list[str]:
    """What stands on the screen, in texts and in pictures."""
    found = controls(drawn(phone.app))
    values = (getattr(each, "value", None) for each in found)
    return [value for value in values if isinstance(value, str)]


def test_an_arrow_would_be_found_out(signs: set[str]) -> None:
    assert "→" not in signs
