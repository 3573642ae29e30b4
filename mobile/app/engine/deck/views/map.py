"""The deck map: picture, the ring that was tapped, and a table of the same."""

import flet as ft
import flet.canvas as cv

from core.forms.cut_words import land_line
from core.texts import text
from mobile.app.engine.deck import entry as entries
from mobile.app.engine.deck.entry import MORE_PLACES, chosen
from mobile.app.engine.deck.model import Deck
from mobile.app.engine.deck.paint import painted
from mobile.app.engine.deck.picture import (
    bank_line,
    picture,
    picture_phrase,
    place_lines,
    ring_line,
    shown_banks,
)
from mobile.app.engine.deck.views.controls import (
    answer,
    answers,
    change,
    choice,
    fields,
    inner_width,
    note,
    small_button,
    title,
)
from mobile.app.engine.deck.views.numbers import bank_chips
from mobile.app.views.look import Look
from mobile.app.views.parts import panel, said

SHARE_OF_WINDOW = 0.62
"""Most of the window's height that the picture takes."""
LEAST_HEIGHT = 300.0
LABEL = 12.0
"""Least size of a word in the picture [px]."""


def map_part(deck: Deck, look: Look) -> list[ft.Control]:
    """Nothing before the bank has its numbers."""
    if not deck.told.banks:
        return [note(look, text("deck.cut.no_deck"))]
    return [
        panel(
            look,
            *choice(deck, "layer", look),
            *bank_chips(deck, look, everything=True),
            _picture(deck, look),
            _zoom(deck, look),
            note(look, text("deck.map.how")),
            gap=6,
        ),
        *_ring(deck, look),
        _table(deck, look),
    ]


def _picture(deck: Deck, look: Look) -> ft.Control:
    width = inner_width(look)
    height = max(LEAST_HEIGHT, SHARE_OF_WINDOW * look.height)
    size = max(LABEL, 0.8 * look.small_size * look.text_scale)
    drawn = picture(deck.entry, deck.told, width, height, size, deck.metric())

    def tapped(event: ft.TapEvent) -> None:
        found = drawn.ring_at(event.local_position.x, event.local_position.y)
        deck.change(lambda entry: entries.pick(entry, found))

    canvas = cv.Canvas(
        width=drawn.width,
        height=drawn.height,
        shapes=[painted(shape, look.palette) for shape in drawn.shapes],
    )
    viewer = ft.InteractiveViewer(
        content=ft.GestureDetector(content=canvas, on_tap_up=tapped),
        constrained=False,
        min_scale=0.5,
        max_scale=6.0,
        trackpad_scroll_causes_scale=False,
        boundary_margin=ft.Margin.all(40),
    )
    framed = ft.Container(
        viewer,
        width=width,
        height=height,
        border_radius=10,
        clip_behavior=ft.ClipBehavior.HARD_EDGE,
        bgcolor=look.palette.ground,
    )
    return said("deck-picture", picture_phrase(deck.entry, deck.told), framed)


def _zoom(deck: Deck, look: Look) -> ft.Control:
    return ft.Row(
        [
            small_button(
                look,
                f"deck-{name}",
                text(f"deck.map.{name}"),
                change(deck, entries.enlarge, by),
            )
            for name, by in (("smaller", -1), ("larger", 1))
        ],
        spacing=6,
    )


def _ring(deck: Deck, look: Look) -> list[ft.Control]:
    """The ring that was tapped: its places, and where they are typed."""
    cylinder, layer = deck.entry.picked, chosen(deck.entry, "layer")
    if cylinder is None or deck.told.bank_of(cylinder) is None:
        return []
    names = [f"{layer}:{cylinder}/{hour}" for hour in MORE_PLACES]
    return [
        panel(
            look,
            title(look, "deck.ring.read", cylinder=cylinder),
            answer(look, "deck-picked", ring_line(cylinder, deck.entry, deck.told), bold=True),
            *answers(look, "deck-place", place_lines(cylinder, deck.told)),
            *fields(deck, names, look),
            gap=6,
        )
    ]


def _table(deck: Deck, look: Look) -> ft.Control:
    """Every ring and every tight land, in words; a tap on a ring reads it."""
    rows: list[ft.Control] = []
    for bank in shown_banks(deck.entry, deck.told):
        line = bank_line(bank)
        rows.append(answer(look, f"deck-bank-line-{bank.layout.bank}", line, bold=True))
        rows += [_ring_row(deck, bore.name, look) for bore in bank.layout.in_order]
        tight = [text("deck.cut.tight", land=land_line(land)) for land in bank.tight]
        rows += answers(look, f"deck-tight-{bank.layout.bank}", tight)
    return panel(look, *rows, gap=6)


def _ring_row(deck: Deck, cylinder: str, look: Look) -> ft.Control:
    line = ring_line(cylinder, deck.entry, deck.told)
    tap = change(deck, entries.pick, cylinder)
    here = deck.entry.picked == cylinder
    return ft.Row([small_button(look, f"deck-ring-{cylinder}", line, tap, filled=here)])

