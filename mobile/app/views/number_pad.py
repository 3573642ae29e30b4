"""Typing a size without the system's keyboard."""

import flet as ft

from core.texts import text
from mobile.app.model import App
from mobile.app.views.look import Look
from mobile.app.views.parts import button, on_fill, words

ROWS = (("7", "8", "9"), ("4", "5", "6"), ("1", "2", "3"), ("point", "0", "back"))
KEY_HEIGHT = 52.0
SIGNS = {"point": ".", "plus": "+"}


def number_pad(app: App, look: Look) -> ft.Control:
    """What is typed, the keys, and the way out."""
    return ft.Container(
        padding=ft.Padding.symmetric(horizontal=8),
        content=ft.Column(
            [
                _typed(app, look),
                ft.Row([_keys(app, look), _side(app, look)], spacing=4, tight=True),
            ],
            spacing=4,
            tight=True,
        ),
    )


def _typed(app: App, look: Look) -> ft.Control:
    field = app.entry.open_field or ""
    line = text("pad.typed", field=text(f"field.{field}"), typed=app.entry.typing or "…")
    told = app.typing_told()
    return ft.Column(
        [
            words(look, line, look.body_size, bold=True, one_line=True),
            words(look, told, look.small_size, colour=look.palette.quiet),
        ],
        spacing=0,
        tight=True,
    )


def _keys(app: App, look: Look) -> ft.Control:
    return ft.Column(
        [ft.Row([_key(app, key, look) for key in row], spacing=4) for row in ROWS],
        spacing=4,
        tight=True,
        expand=3,
    )


def _key(app: App, key: str, look: Look) -> ft.Control:
    content: ft.Control = words(look, SIGNS.get(key, key), look.title_size, bold=True)
    if key == "back":
        content = ft.Icon(ft.Icons.BACKSPACE_OUTLINED, color=look.palette.ink)
    return button(
        look,
        f"key-{key}",
        text(f"key.{key}") if key in ("point", "back") else key,
        content,
        app.erase if key == "back" else lambda: app.press(SIGNS.get(key, key)),
        height=KEY_HEIGHT,
        expand=True,
    )


def _side(app: App, look: Look) -> ft.Control:
    unit = text("unit.mm" if app.entry.metric else "unit.in")
    return ft.Column(
        [
            _word(look, "unit", text("screen.unit_phrase"), unit, app.switch_unit),
            _word(look, "key-plus", text("key.plus"), "+", lambda: app.press(" + ")),
            _word(look, "key-clear", text("key.clear"), text("key.clear"), app.clear_field),
            _word(look, "key-done", text("key.done"), text("key.done"), app.close_pad, filled=True),
        ],
        spacing=4,
        tight=True,
        expand=1,
    )


def _word(
    look: Look, identifier: str, phrase: str, label: str, on_tap, filled: bool = False
) -> ft.Control:
    content = words(
        look, label, look.body_size, bold=True, one_line=True, colour=on_fill(look, filled)
    )
    return ft.Row(
        [
            button(
                look,
                identifier,
                phrase,
                content,
                on_tap,
                height=KEY_HEIGHT,
                expand=True,
                filled=filled,
            )
        ]
    )
