"""The quick check without a page: no order of taps breaks it, and every tap is kept."""

import json
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.errors import RecordError
from core.texts import text
from mobile.app.model import App
from mobile.app.state.draft import as_json, from_json
from mobile.app.state.entry import Entry, thickness_of
from mobile.app.state.told import tell
from tests.app_without_page import AppWithoutPage

FIELDS = ("go", "no-go", "gasket", "wire", "groove-width", "groove-depth", "face-depth")
LINKS = (
    "/check?go=0.011in&no-go=0.013in&gasket=0.040in",
    "/check?no-go=0.30mm&shelf=1mm%3B1.2mm&leaves=0.1mm%3B0.2mm%3B0.25mm",
    "/check?caliper=0.512in&caliper-zero=0.5in&head-face=receiver:0.010in",
    "/check?go=0.013in&no-go=0.011in",
    "/check?bore=4in",
    "/",
)
SCREENS = ("check", "gauges", "more", "shelf", "about")
KEYS = ("Enter", "Backspace", "Delete", "5", "Numpad 5", ",", "Numpad Decimal", "+", "F5", "a")


sides = st.sampled_from(("go", "no-go"))
taps = st.one_of(
    st.tuples(st.just("leaf"), sides, st.floats(1, 40)),
    st.tuples(st.just("arm"), sides),
    st.tuples(st.just("open_pad"), st.sampled_from((*FIELDS, "new-sheet", "new-leaf"))),
    st.tuples(st.just("press"), st.sampled_from((*"0123456789.", " + "))),
    st.tuples(st.just("strike"), st.sampled_from(KEYS)),
    st.tuples(st.just("choose_face"), st.sampled_from(("flat", "printed", "receiver"))),
    st.tuples(st.just("draw_sheet"), st.floats(0.5, 2)),
    st.tuples(st.just("follow"), st.sampled_from(LINKS)),
    st.tuples(st.just("go_to"), st.sampled_from(SCREENS)),
    st.tuples(
        st.sampled_from(
            (
                "erase",
                "clear_field",
                "close_pad",
                "switch_unit",
                "begin_anew",
                "bring_back",
                "use_link",
                "drop_link",
                "drop_first_sheet",
                "drop_first_leaf",
            )
        )
    ),
)
NEEDS_PAD = {"press", "erase", "clear_field", "close_pad"}


def has_button(app: App, name: str) -> bool:
    if name in NEEDS_PAD:
        return bool(app.entry.open_field)
    return name != "use_link" or app.preview is not None


def do(phone: AppWithoutPage, tap: tuple[Any, ...]) -> None:
    """A tap, where the screen has the button for it."""
    app, (name, *given_) = phone.app, tap
    if name == "leaf":
        phone.tap_leaf(*given_)
    elif name == "drop_first_sheet":
        app.drop_size("shelf", app.shown("shelf").split("; ")[0])
    elif name == "drop_first_leaf":
        field = "own-leaves-mm" if app.entry.metric else "own-leaves-in"
        app.drop_size(field, app.own_leaf_texts()[0])
    elif has_button(app, name):
        getattr(app, name)(*given_)


@settings(max_examples=150, deadline=None)
@given(st.lists(taps, max_size=25))
def test_no_order_of_taps_raises_and_every_tap_is_on_the_disk(steps: list[tuple[Any, ...]]) -> None:
    phone = AppWithoutPage()
    for step in steps:
        do(phone, step)
        app = phone.app
        assert app.draft_trouble == ""
        assert app.told == tell(app.entry)
        if phone.kept:
            assert from_json(phone.kept[-1]) == app.entry
        if app.entry.open_field:
            assert app.keys().title


@settings(max_examples=100, deadline=None)
@given(st.lists(st.tuples(sides, st.floats(1, 40)), min_size=1, max_size=12))
def test_tapped_leaves_never_cross(tapped: list[tuple[str, float]]) -> None:
    phone = AppWithoutPage()
    for side, thou in tapped:
        phone.tap_leaf(side, thou)
        go, no_go = (thickness_of(phone.app.shown(each)) for each in ("go", "no-go"))
        assert go is None or no_go is None or go < no_go
        assert phone.app.told.faults == ()


def test_the_main_job_by_taps() -> None:
    phone = AppWithoutPage()
    phone.tap_leaf("go", 11)
    phone.tap_leaf("no-go", 13)
    answer = phone.app.told.answer
    assert answer is not None
    assert answer.suggestion.run is not None
    assert answer.suggestion.run.thickness == pytest.approx(0.050 * 25.4)
    assert [row.word for row in answer.shelf] == ["too-high", "borderline", "run-close", "run"]
    assert phone.answers[-1]["suggestion"] == "Run the 0.050 in"


def test_a_leaf_tapped_again_is_taken_back() -> None:
    phone = AppWithoutPage()
    phone.tap_leaf("go", 11)
    phone.tap_leaf("go", 11)
    assert phone.app.shown("go") == ""
    assert phone.app.told.answer is None


@pytest.mark.parametrize(
    ("keys", "metric", "kept"),
    [
        ("41", False, "41 thou"),
        (".041", False, ".041 in"),
        ("1.04", True, "1.04 mm"),
        ("4", False, ""),
        ("...", False, ""),
    ],
)
def test_what_the_number_pad_reads_goes_into_the_field(keys: str, metric: bool, kept: str) -> None:
    phone = AppWithoutPage()
    if metric:
        phone.app.switch_unit()
    phone.type("wire", keys)
    assert phone.app.shown("wire").lstrip("0") == kept


def test_a_stack_of_leaves_is_typed_with_the_plus_key() -> None:
    phone = AppWithoutPage()
    phone.app.open_pad("go")
    for key in ("1", "0", " + ", "2", ".", "5"):
        phone.app.press(key)
    assert thickness_of(phone.app.shown("go")) == pytest.approx(0.0125 * 25.4)


def test_a_real_keyboard_types_into_the_open_field_only() -> None:
    phone = AppWithoutPage()
    phone.app.strike("4")
    assert not phone.app.entry.under_way()
    phone.app.open_pad("wire")
    for label in ("4", "Numpad 1", ",", "Numpad 5", "+", "Q"):
        phone.app.strike(label)
    assert phone.app.shown("wire") == "41.5 thou"
    phone.app.strike("Backspace")
    phone.app.strike("Enter")
    assert phone.app.entry.open_field is None


def test_sizes_are_typed_one_after_the_other_by_the_next_key() -> None:
    phone = AppWithoutPage()
    phone.app.open_pad("gasket")
    for field, keys in {"gasket": "40", "wire": "41", "groove-width": "40"}.items():
        assert phone.app.entry.open_field == field
        for key in keys:
            phone.app.press(key)
        phone.app.keys().next()
    assert phone.app.entry.open_field == "groove-depth"
    assert phone.app.keys().next is None
    assert [phone.app.shown(each) for each in ("gasket", "wire")] == ["40 thou", "41 thou"]


def test_a_sheet_is_added_and_taken_away() -> None:
    phone = AppWithoutPage()
    phone.type("new-sheet", "62")
    assert "62 thou" in phone.app.shown("shelf")
    phone.app.drop_size("shelf", "62 thou")
    assert "62 thou" not in phone.app.shown("shelf")
    phone.app.bring_size_back()
    assert "62 thou" in phone.app.shown("shelf")


def test_the_last_leaf_of_the_set_stays() -> None:
    phone = AppWithoutPage()
    for leaf in phone.app.own_leaf_texts():
        phone.app.drop_size("own-leaves-in", leaf)
    assert len(phone.app.own_leaf_texts()) == 1


def test_a_new_check_keeps_the_shelf_and_can_be_taken_back() -> None:
    phone = AppWithoutPage()
    phone.tap_leaf("go", 11)
    before = phone.app.entry
    phone.app.begin_anew()
    assert not phone.app.entry.under_way()
    assert phone.app.shown("shelf") == before.texts["shelf"]
    phone.app.bring_back()
    assert phone.app.entry == before


def test_a_face_that_waits_for_its_depth_says_so_and_computes_nothing() -> None:
    phone = AppWithoutPage()
    phone.tap_leaf("go", 11)
    phone.app.choose_face("printed")
    assert phone.app.entry.open_field == "face-depth"
    assert phone.app.told.answer is None
    assert phone.app.told.faults[0].field == text("field.face-depth")
    for key in "2":
        phone.app.press(key)
    assert phone.app.told.answer is not None


def test_a_disk_that_refuses_is_told_with_every_tap_and_the_check_goes_on() -> None:
    def refuse(draft: object) -> None:
        raise RecordError("The disk is full.")

    phone = AppWithoutPage(keep=refuse)
    for side, thou in (("go", 11), ("no-go", 13)):
        phone.tap_leaf(side, thou)
        assert phone.app.draft_trouble == "The disk is full."
    assert phone.app.told.answer is not None


@pytest.mark.parametrize("kept", [None, "half a draft", {}, {"format": 0}, {"format": "1"}])
def test_a_draft_of_another_format_begins_anew(kept: Any) -> None:
    assert from_json(kept) == Entry()


def test_a_draft_comes_back_as_it_was() -> None:
    phone = AppWithoutPage()
    phone.tap_leaf("go", 11)
    phone.app.choose_face("receiver")
    phone.app.press("1")
    assert from_json(json.loads(json.dumps(as_json(phone.app.entry)))) == phone.app.entry
