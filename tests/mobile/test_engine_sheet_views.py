"""The choice of a sheet as a tree of controls: names, targets and phrases, at every size."""

from dataclasses import replace
from itertools import product

import pytest

from mobile.app.engine.sheet.entry import PARTS, SheetEntry, change
from mobile.app.engine.start import begin
from mobile.app.model import App
from mobile.app.state.sizes_form import SizesForm, open_field
from mobile.page_bridge import PageState
from tests.app_without_page import AppWithoutPage, named

WINDOWS = {
    "phone": (390.0, 844.0, 1.0),
    "small phone": (320.0, 568.0, 1.0),
    "small phone, doubled text": (320.0, 568.0, 2.0),
    "phone on its side": (844.0, 390.0, 1.0),
    "wide": (1280.0, 800.0, 1.0),
}
LEAST_TARGET = 48.0
LINK = (
    "/check?go=0.011in&no-go=0.013in&gasket=0.040in&wire=0.041in&groove-width=0.040in"
    "&groove-depth=0.030in&shelf=0.032in,0.040in,0.050in,0.0646in"
)
TEXTS = {
    "sheet-on": "0.040 in",
    "two-as-one": "yes",
    "rod": "steel",
    "bore": "4.125 in",
    "stroke": "3.75 in",
    "gasket-bore": "4.2 in",
    "chamber": "64 cc",
    "dish": "5 cc",
    "highest-ratio": "11.5",
    "valve-gear": "pushrods",
    "pushrod-length": "8 in",
    "preload": "30 thou",
    "preload-least": "10 thou",
    "bank-angle": "90 °",
    "face-angle": "80 °",
    "largest-offset": "20 thou",
    "dowel-proud": "280 thou",
    "dowel-least": "200 thou",
}
FULL = SheetEntry(
    form=SizesForm(texts={**TEXTS, "piston-deck": "5 thou", "intake-valve": "95 thou"}),
    cylinders={
        str(number): {"piston-deck": f"{number} thou", "intake-valve": "95 thou"}
        for number in range(1, 9)
    },
)
THIN = {name: each for name, each in TEXTS.items() if name != "highest-ratio"}
CLASHING = replace(FULL, form=replace(FULL.form, texts={**THIN, "lowest-ratio": "12"}))
ENTRIES = {
    "empty": SheetEntry(),
    "full": FULL,
    "clashing": CLASHING,
    "moved": replace(FULL, moves={"deck-cut": 0.1, "chamber-larger": -2000.0}, picked=1.3),
    "refused": change(FULL, lambda form: replace(form, texts={**form.texts, "face-angle": "45 °"})),
    "typing": change(FULL, lambda form: open_field(form, "piston-deck")),
}


def shown(
    entry: SheetEntry, part: str = "choice", window: str = "phone", *, dark: bool = False
) -> App:
    phone = AppWithoutPage().app
    phone.engine = begin(phone, lambda _key: None, lambda _key, _value: None, lambda _task: None)
    phone.follow(LINK)
    phone.engine.sheet.restore(replace(entry, part=part))
    phone.screen, phone.dark = "engine", dark
    phone.width, phone.height, scale = WINDOWS[window]
    phone.page_state = PageState(text_scale=scale)
    return phone


@pytest.mark.parametrize(("entry", "window"), list(product(ENTRIES, WINDOWS)))
def test_everything_tapped_is_large_enough_and_everything_read_says_something(
    entry: str, window: str
) -> None:
    for part, dark in product(PARTS, (False, True)):
        for name, each in named(shown(ENTRIES[entry], part, window, dark=dark)).items():
            assert each.label or name == "typed", f"{name} says nothing"
            if each.button:
                assert each.content.height >= LEAST_TARGET, name


def test_the_swap_card_stands_before_the_picture_and_the_sheets_after_it() -> None:
    names = list(named(shown(FULL)))
    order = ["swap-head", "windows-chart", "less-sheet", "sheet-0.0320"]
    assert [name for name in names if name in order] == order


def test_what_cannot_be_is_said_with_its_change_and_what_lacks_a_number_leads_to_it() -> None:
    app = shown(CLASHING)
    names = named(app)
    assert "apart." in names["conflict"].label
    assert any(name.startswith("change-") for name in names)
    app = shown(SheetEntry())
    names = named(app)
    names["lacks-ratio"].on_tap(None)
    assert app.engine.sheet.entry.part == "numbers"
    assert "in-stroke" in named(app)


def test_a_thinner_sheet_brings_its_caution() -> None:
    app = shown(replace(FULL, picked=0.032 * 25.4))
    assert "may touch" in named(app)["sheet-caution"].label
    roomy = {**TEXTS, "piston-deck": "80 thou"}
    deep = replace(FULL, form=replace(FULL.form, texts=roomy), cylinders={"1": roomy})
    app = shown(replace(deep, picked=0.032 * 25.4))
    assert "The head comes down" in named(app)["sheet-caution"].label
    assert "sheet-caution" not in named(shown(replace(deep, picked=0.050 * 25.4)))


def test_the_check_offers_the_engine_once_a_height_is_read() -> None:
    phone = AppWithoutPage().app
    assert "open-engine" not in named(phone)
    phone.follow(LINK)
    named(phone)["open-engine"].on_tap(None)
    assert phone.screen == "engine"
