"""The deck sub-screen: its parts, one of them shown, the number pad under the thumb."""

import flet as ft

from core.texts import text
from mobile.app.engine.deck import entry as entries
from mobile.app.engine.deck.entry import PARTS
from mobile.app.engine.deck.model import Deck
from mobile.app.engine.deck.views.controls import SIDES, change
from mobile.app.engine.deck.views.cut import cut_part
from mobile.app.engine.deck.views.face import face_part
from mobile.app.engine.deck.views.map import map_part
from mobile.app.engine.deck.views.numbers import numbers_part
from mobile.app.engine.deck.views.pairs import pairs_part
from mobile.app.views.look import Look
from mobile.app.views.number_pad import number_pad
from mobile.app.views.parts import button, on_fill, words

ICONS = {
    "numbers": ft.Icons.EDIT_OUTLINED,
    "map": ft.Icons.BLUR_ON,
    "heights": ft.Icons.STRAIGHTEN,
    "face": ft.Icons.LAYERS_OUTLINED,
    "cut": ft.Icons.BUILD_OUTLINED,
}
SHOWN = {
    "numbers": numbers_part,
    "map": map_part,
    "heights": pairs_part,
    "face": face_part,
    "cut": cut_part,
}


@ft.component
def deck_screen(deck: Deck, look: Look, above: list[ft.Control]) -> ft.Control:
    """The whole sub-screen.

    Parameters
    ----------
    above
        What leads to the other sub-screens; it scrolls with the rest.
    """
    if look.wide:
        return _two_panes(deck, look, above)
    part = SHOWN[deck.entry.part](deck, look)
    typing = deck.entry.open_field is not None
    return ft.Column(
        [
            *([] if typing else [_padded(_parts(deck, look))]),
            _scrolling([*([] if typing else above), *_caution(deck, look), *part]),
            *_foot(deck, look),
        ],
        expand=True,
        spacing=0,
    )


def _two_panes(deck: Deck, look: Look, above: list[ft.Control]) -> ft.Control:
    """What is typed at the left, the map at the right."""
    part = deck.entry.part if deck.entry.part != "map" else "numbers"
    left = ft.Column(
        [
            _padded(_parts(deck, look)),
            _scrolling([*above, *_caution(deck, look), *SHOWN[part](deck, look)]),
            *_foot(deck, look),
        ],
        width=look.pane,
        spacing=0,
    )
    right = _scrolling(map_part(deck, look))
    return ft.Row([left, ft.VerticalDivider(width=1), right], expand=True, spacing=0)


def _caution(deck: Deck, look: Look) -> list[ft.Control]:
    lines = [deck.trouble] if deck.trouble else []
    troubles = [words(look, each, look.body_size, colour=look.palette.failed) for each in lines]
    main = words(look, text("caution.main"), look.small_size, colour=look.palette.quiet)
    return [*troubles, main]


def _foot(deck: Deck, look: Look) -> list[ft.Control]:
    if deck.entry.open_field is None:
        return []
    pad = number_pad(deck.keys(), look)
    return [ft.Container(pad, padding=ft.Padding.only(top=4, bottom=4))]


def _padded(content: ft.Control) -> ft.Control:
    return ft.Container(
        content, padding=ft.Padding.only(left=SIDES, right=SIDES, top=6, bottom=6)
    )


def _scrolling(controls: list[ft.Control]) -> ft.Control:
    column = ft.Column(controls, scroll=ft.ScrollMode.AUTO, expand=True, spacing=10)
    return ft.Container(column, padding=ft.Padding.symmetric(horizontal=SIDES), expand=True)


def _parts(deck: Deck, look: Look) -> ft.Control:
    parts = [part for part in PARTS if part != "map"] if look.wide else PARTS
    return ft.Row([_to_part(deck, part, look) for part in parts], spacing=4)


def _to_part(deck: Deck, part: str, look: Look) -> ft.Control:
    here = deck.entry.part == part
    tint = on_fill(look, here)
    called = text(f"deck.part.{part}")
    face: list[ft.Control] = [ft.Icon(ICONS[part], color=tint, size=22)]
    if look.roomy:
        face.append(words(look, called, look.small_size, colour=tint, one_line=True, bold=here))
    content = ft.Column(
        face,
        spacing=0,
        tight=True,
        alignment=ft.MainAxisAlignment.CENTER,
        horizontal_alignment=ft.CrossAxisAlignment.CENTER,
    )
    return button(
        look,
        f"deck-{part}",
        called,
        content,
        change(deck, entries.show_part, part),
        height=52,
        expand=True,
        filled=here,
        selected=here,
    )
