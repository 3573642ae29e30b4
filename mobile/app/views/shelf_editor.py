"""The sheets on the shelf, and the leaves at hand: add one, take one away."""

import flet as ft

from core.texts import text
from mobile.app.model import App
from mobile.app.state.own_leaves import leaves_field
from mobile.app.state.sizes_list import parts_of
from mobile.app.views.look import Look
from mobile.app.views.number_pad import number_pad
from mobile.app.views.parts import button, in_rows, panel, words

CHIP = 120.0
"""Width of a size, with room for its number at usual text size [px]."""


def shelf_editor(app: App, look: Look) -> ft.Control:
    """Both lists, and the number pad while something is added."""
    leaves = leaves_field(app.entry.metric)
    return ft.Column(
        [
            words(look, text("shelf.title"), look.title_size, bold=True),
            _list(app, "shelf", parts_of(app.entry.texts.get("shelf", "")), "new-sheet", look),
            words(look, text("leaves.title"), look.title_size, bold=True),
            _list(app, leaves, app.own_leaf_texts(), "new-leaf", look),
            words(look, text("leaves.unit"), look.small_size, colour=look.palette.quiet),
        ],
        spacing=8,
    )


def _list(app: App, field: str, sizes: tuple[str, ...], adds: str, look: Look) -> ft.Control:
    add = button(
        look,
        f"add-{adds}",
        text(f"add.{adds}"),
        ft.Row(
            [
                ft.Icon(ft.Icons.ADD, color=look.palette.on_copper),
                words(
                    look,
                    text(f"add.{adds}"),
                    look.body_size,
                    bold=True,
                    one_line=True,
                    colour=look.palette.on_copper,
                ),
            ],
            alignment=ft.MainAxisAlignment.CENTER,
        ),
        lambda: app.open_pad(adds),
        filled=True,
        expand=True,
    )
    chips = [_size(app, field, size, look) for size in sizes]
    adding = [number_pad(app.keys(), look)] if app.entry.open_field == adds else []
    back = _bring_back(app, field, look)
    columns = max(2, int(look.width // (CHIP * look.text_scale)))
    free = [ft.Container(expand=True) for _ in range(-len(chips) % columns)]
    rows = in_rows([*chips, *free], look, columns=columns)
    return panel(look, *rows, *back, ft.Row([add]), *adding, gap=6)


def _bring_back(app: App, field: str, look: Look) -> list[ft.Control]:
    """What was taken away last, while it can come back."""
    of, size = app.dropped_size or ("", "")
    if of != field:
        return []
    line = text("shelf.bring_back", size=size)
    face = words(look, line, look.body_size, bold=True, one_line=True)
    return [ft.Row([button(look, "bring-size-back", line, face, app.bring_size_back, expand=True)])]


def _size(app: App, field: str, size: str, look: Look) -> ft.Control:
    return button(
        look,
        f"drop-{field}-{size.replace(' ', '')}",
        text("shelf.drop", size=size),
        ft.Row(
            [
                words(look, size, look.body_size, bold=True, one_line=True),
                ft.Icon(ft.Icons.CLOSE, color=look.palette.ink, size=18),
            ],
            spacing=6,
            alignment=ft.MainAxisAlignment.CENTER,
        ),
        lambda: app.drop_size(field, size),
        expand=True,
    )
