"""The clamp screen as a tree of controls: names, targets and the caution, at every size."""

from dataclasses import replace
from itertools import product

import flet as ft
import pytest

from core.texts import text
from mobile.app.engine.clamp.choices import asked, offered
from mobile.app.engine.clamp.entry import PARTS, ClampEntry, open_choice, open_pad
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
LEAST_TARGET = 48.0
WEAK = ClampEntry(
    choices={
        "size": "3/8",
        "thread": "3/8-16",
        "strength": "5",
        "tightened": "torque",
        "lubricant": "oil",
        "around": "pattern",
        "peak": "pressure",
    },
    texts={
        "torque": "30 lbf·ft",
        "cylinders": "4",
        "banks": "2",
        "spacing": "4.4 in",
        "between-above": "2.5 in",
        "between-below": "2.5 in",
        "pressure": "1500 psi",
        "ring": "4.3 in",
        "wire": "41 thou",
        "height": "10.5 thou",
        "gasket": "40 thou",
    },
)
ENTRIES = {
    "empty": ClampEntry(),
    "answered": WEAK,
    "refused": replace(WEAK, texts={**WEAK.texts, "wire": "8 thou"}),
    "choosing": open_choice(WEAK, "lubricant"),
    "typing": open_pad(WEAK, "ring"),
    "another cylinder": replace(WEAK, cylinder="6"),
}


def shown(
    entry: ClampEntry, part: str = "entry", window: str = "phone", *, dark: bool = False
) -> App:
    app = AppWithoutPage().app
    app.engine.clamp.restore(replace(entry, part=part))
    app.width, app.height, scale = WINDOWS[window]
    state = {name: getattr(app.page_state, name) for name in PageState.__dataclass_fields__}
    app.page_state = PageState(**{**state, "text_scale": scale})
    app.screen, app.engine.shown, app.dark = "engine", "clamp", dark
    return app


@pytest.mark.parametrize("window", WINDOWS)
@pytest.mark.parametrize("entry", ENTRIES)
def test_every_part_is_drawn_with_the_caution_and_targets_for_a_thumb(
    entry: str, window: str
) -> None:
    for part, dark in product(PARTS, (False, True)):
        names = named(shown(ENTRIES[entry], part, window, dark=dark))
        assert names["clamp-caution"].label == text("clamp.caution")
        for name, control in names.items():
            assert control.label or name == "typed", f"{name} says nothing"
            assert not control.button or control.content.height >= LEAST_TARGET, name


def test_the_caution_does_not_scroll_away() -> None:
    for part in PARTS:
        for column in scrolled(shown(WEAK, part)):
            assert "clamp-caution" not in {
                each.identifier for each in controls(column.controls) if is_named(each)
            }


def scrolled(app: App) -> list[ft.Column]:
    return [e for e in controls(drawn(app)) if isinstance(e, ft.Column) and e.scroll is not None]


def is_named(control: ft.BaseControl) -> bool:
    return isinstance(control, ft.Semantics) and bool(control.identifier)


def test_every_choice_and_field_has_its_button() -> None:
    names = set(named(shown(WEAK)))
    choices = {*asked(WEAK.choices), *offered(WEAK.choices)} - {"by"}
    assert {f"choose-{each}" for each in choices} <= names
    assert {f"in-clamp-{each}" for each in WEAK.texts} <= names
    assert "choose-by" not in names, "a printed range stands for the method's scatter"


def test_before_a_lubricant_is_chosen_no_figure_is_shown_in_any_part() -> None:
    choices = {name: each for name, each in WEAK.choices.items() if name != "lubricant"}
    entry = replace(WEAK, choices=choices)
    for part in PARTS:
        names = named(shown(entry, part))
        assert names["clamp-answer"].label == "Still needed: Lubricant. Tap to go on."
        assert not [n for n in names if n.startswith(("bar-", "verdict-", "spread-", "turn"))]
    assert any("Sources disagree" in each for each in texts_in(shown(entry)))


def texts_in(app: App) -> list[str]:
    return [each.value for each in controls(drawn(app)) if isinstance(each, ft.Text)]


def test_every_lubricant_shows_the_range_that_is_printed_for_it() -> None:
    names = named(shown(open_choice(WEAK, "lubricant")))
    assert names["pick-lubricant-zinc"].label == "Zinc 0.17–0.35"
    assert names["pick-lubricant-anti-seize"].label == "Anti-seize 0.12"
    assert names["pick-lubricant-oil"].selected
    assert not any(
        each.selected
        for name, each in named(shown(open_choice(ClampEntry(), "size"))).items()
        if name.startswith("pick-")
    )


def test_every_cylinder_has_its_bar_and_the_weakest_is_named() -> None:
    names = named(shown(WEAK, "loads"))
    bars = {name: each.label for name, each in names.items() if name.startswith("bar-")}
    assert list(bars) == [f"bar-{1 + i}" for i in range(8)]
    weakest = [name for name, label in bars.items() if "the weakest" in label]
    assert weakest == ["bar-2"], "the first of those with fewest fasteners"
    assert all("Clamp " in label and "gas " in label for label in bars.values())


def test_every_verdict_tells_rule_reason_and_what_would_settle_or_change_it() -> None:
    names = named(shown(WEAK, "loads"))
    for name in ("clamp-to-proof", "fastener-at-peak", "separation", "beds"):
        label = names[f"verdict-{name}"].label
        assert "rule" in label
        if ": undecided" in label:
            assert "To settle it: " in label
        if ": fail" in label:
            assert "To change: " in label


def test_a_picked_cylinder_is_the_one_that_is_told() -> None:
    app = shown(WEAK, "loads")
    named(app)["bar-4"].on_tap(None)
    assert app.engine.clamp.entry.cylinder == "4"
    assert named(app)["bar-4"].selected
    assert not named(app)["bar-2"].selected


def test_shares_of_the_spread_are_told_largest_first() -> None:
    label = named(shown(WEAK, "spread"))["spread-shares"].label
    assert label.index("from friction") < label.index("from scatter from fastener to fastener")


def test_steps_carry_their_torque_and_retorque_is_cold_one_at_a_time() -> None:
    names = named(shown(WEAK, "tighten"))
    # a third, two thirds and the whole of 30 lbf·ft; 1 lbf·ft is 1.3558 N·m
    for step in ("10 lbf·ft · 14 N·m", "20 lbf·ft · 27 N·m", "30 lbf·ft · 41 N·m"):
        assert step in names["steps"].label
    assert "cold" in names["retorque"].label
    assert "one fastener at a time" in names["retorque"].label.lower()
    assert names["turn"].label.startswith("Fastener 1 of 10. Step 1")
    app = shown(replace(WEAK, turns=13), "tighten")
    assert named(app)["turn"].label.startswith("Fastener 4 of 10. Step 2")
    over = named(shown(replace(WEAK, turns=30), "tighten"))["turn"].label
    assert over.startswith("Every fastener is at its final value")
