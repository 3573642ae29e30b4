"""Every screen as a tree of controls, without a page: sizes, states, names, targets, characters."""

from itertools import product
from typing import Any

import flet as ft
import pytest

from core.errors import RecordError
from mobile.app.model import App
from mobile.page_bridge import PageState
from tests.app_without_page import AppWithoutPage, controls, drawn, named

WINDOWS = {
    "phone": (390.0, 844.0, 1.0),
    "small phone": (320.0, 568.0, 1.0),
    "small phone, doubled text": (320.0, 568.0, 2.0),
    "phone on its side": (844.0, 390.0, 1.0),
    "wide": (1280.0, 800.0, 1.0),
}
OWN_SCREENS = ("check", "gauges", "more", "shelf", "about")
LEAST_TARGET = 48.0
FULL = (
    "/check?go=0.011in&no-go=0.013in&gasket=0.040in&wire=0.041in&groove-width=0.040in"
    "&groove-depth=0.030in&shelf=0.032in,0.040in,0.050in,0.0646in"
)
VERDICTS = ("height-to-gasket", "bite", "interference", "held", "seated")
ANSWER = ("height", "strip", "suggestion", "next-leaf", "say")
INPUTS = ("go", "no-go", "gasket", "wire", "groove-width", "groove-depth", "shelf")


def empty(phone: AppWithoutPage) -> None:
    """Nothing tapped."""


def one_sided(phone: AppWithoutPage) -> None:
    phone.tap_leaf("go", 11)


def full(phone: AppWithoutPage) -> None:
    phone.app.follow(FULL)


def typing(phone: AppWithoutPage) -> None:
    full(phone)
    phone.app.open_pad("go")


def adding(phone: AppWithoutPage) -> None:
    phone.app.open_pad("new-sheet")


def metric(phone: AppWithoutPage) -> None:
    full(phone)
    phone.app.switch_unit()


def without_shelf(phone: AppWithoutPage) -> None:
    for sheet in phone.app.shown("shelf").split("; "):
        phone.app.drop_size("shelf", sheet)
    one_sided(phone)


def contradicting(phone: AppWithoutPage) -> None:
    phone.type("go", "13")
    phone.type("no-go", "11")


def lacking_depth(phone: AppWithoutPage) -> None:
    one_sided(phone)
    phone.app.choose_face("receiver")


def armed(phone: AppWithoutPage) -> None:
    phone.app.arm("no-go")


def previewing(phone: AppWithoutPage) -> None:
    one_sided(phone)
    phone.app.follow(FULL + "&share=20%25")
    phone.app.page_state = PageState(offline="ready", new_version=True, kept=False)


def used_odd_link(phone: AppWithoutPage) -> None:
    phone.app.follow("/check?caliper=0.512in&caliper-zero=0.5in&head-face=receiver:0.010in")


def bad_link(phone: AppWithoutPage) -> None:
    phone.app.follow("/check?bore=4in")


def refused(phone: AppWithoutPage) -> None:
    phone.app.keep = refuse
    one_sided(phone)


def refuse(draft: object) -> None:
    raise RecordError("The disk is full.")


STATES = (
    empty,
    one_sided,
    full,
    typing,
    adding,
    metric,
    without_shelf,
    contradicting,
    lacking_depth,
    armed,
    previewing,
    used_odd_link,
    bad_link,
    refused,
)


def shown_in(
    state: Any, window: str = "phone", screen: str = "check", *, dark: bool = False
) -> App:
    phone = AppWithoutPage()
    state(phone)
    app = phone.app
    app.width, app.height, scale = WINDOWS[window]
    app.page_state = PageState(**{**_fields(app.page_state), "text_scale": scale})
    app.screen, app.dark = screen, dark
    return app


def _fields(state: PageState) -> dict[str, Any]:
    return {name: getattr(state, name) for name in PageState.__dataclass_fields__}


@pytest.mark.parametrize("window", WINDOWS)
@pytest.mark.parametrize("state", STATES, ids=lambda state: state.__name__)
def test_every_screen_is_drawn_in_every_state_and_window(state: Any, window: str) -> None:
    for screen, dark in product(OWN_SCREENS, (False, True)):
        for name, control in named(shown_in(state, window, screen, dark=dark)).items():
            assert control.label or texts_in(control), f"{name} says nothing"


def texts_in(control: ft.Control) -> list[str]:
    return [each.value for each in controls(control) if isinstance(each, ft.Text)]


@pytest.mark.parametrize("window", WINDOWS)
@pytest.mark.parametrize("state", STATES, ids=lambda state: state.__name__)
def test_what_is_tapped_is_large_enough_for_a_thumb(state: Any, window: str) -> None:
    for screen in OWN_SCREENS:
        for name, control in named(shown_in(state, window, screen)).items():
            if control.button and not (name.startswith("shelf-") and scaled(window)):
                assert control.content.height >= LEAST_TARGET, name


def scaled(window: str) -> bool:
    """With doubled text on the smallest phone four sheets of full height leave no room."""
    return WINDOWS[window][2] > 1.0


@pytest.mark.parametrize("window", WINDOWS)
def test_a_leaf_is_larger_still(window: str) -> None:
    leaves = [
        control.content
        for name, control in named(shown_in(one_sided, window)).items()
        if name.startswith(("leaf-", "stops-"))
    ]
    assert len(leaves) >= 2 * 3
    assert all(leaf.height >= 64 for leaf in leaves)


def test_every_answer_and_every_entry_has_its_name_and_its_phrase() -> None:
    names = named(shown_in(full))
    wanted = {
        *ANSWER,
        *(f"verdict-{each}" for each in VERDICTS),
        *(f"in-{each}" for each in INPUTS),
        *("leaf-0.0110", "stops-0.0130", "pick-go", "pick-no-go", "unit"),
        *("shelf-0.0320", "shelf-0.0400", "shelf-0.0500", "shelf-0.0646"),
    }
    assert wanted <= set(names)
    keys = named(shown_in(typing))
    assert {f"key-{key}" for key in (*"0123456789", "point", "back")} <= set(keys)


@pytest.mark.parametrize("name", VERDICTS)
def test_a_verdict_says_result_word_value_and_limit(name: str) -> None:
    phrase = named(shown_in(full))[f"verdict-{name}"].label
    assert any(f": {result}, " in phrase for result in ("pass", "fail", "undecided"))
    assert " against limit " in phrase
    assert "%" in phrase or " mm)" in phrase


def test_what_a_verdict_lacks_is_named_in_its_place() -> None:
    names = named(shown_in(one_sided))
    assert names["verdict-bite"].label == "Bite needs: Sheet on now"
    assert names["verdict-seated"].label == "On the floor needs: Wire, Groove width, Groove depth"


def test_a_print_without_a_depth_says_so_beside_the_face() -> None:
    assert "lacks-face-depth" in named(shown_in(lacking_depth))
    assert "lacks-face-depth" not in named(shown_in(full))


def test_a_tapped_sheet_is_drawn_in_the_section() -> None:
    app = shown_in(full)
    named(app)["shelf-0.0646"].on_tap(None)
    assert "sheet 0.0646 inch" in named(app)["section"].label
    assert named(app)["shelf-0.0646"].selected
    named(app)["shelf-0.0646"].on_tap(None)
    assert "sheet 0.0500 inch" in named(app)["section"].label


def test_the_draft_of_another_window_is_told_above_the_check() -> None:
    assert "The disk is full." in texts_in(drawn(shown_in(refused)))
    assert named(shown_in(refused))["height"].label.startswith("Height over 0.0110 inch")
