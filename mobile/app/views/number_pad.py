"""Typing a size without the system's keyboard."""

import flet as ft

from core.texts import text
from mobile.app.state.keys import Keys
from mobile.app.views.look import Look
from mobile.app.views.parts import Tap, button, on_fill, words

ROWS = (("7", "8", "9"), ("4", "5", "6"), ("1", "2", "3"), ("point", "0", "back"))
KEY_HEIGHT = 52.0
GAP = 4.0


def number_pad(keys: Keys, look: Look) -> ft.Control:
    """What is typed, the keys, and the way out."""
    return ft.Container(
        padding=ft.Padding.symmetric(horizontal=6),
        content=ft.Column(
            [
                _typed(keys, look),
                ft.Row([_digits(keys, look), _side(keys, look)], spacing=GAP, tight=True),
            ],
            spacing=GAP,
            tight=True,
        ),
    )


def _typed(keys: Keys, look: Look) -> ft.Control:
    line = text("pad.typed", field=keys.title, typed=keys.typed or "…")
    return ft.Semantics(
        identifier="typed",
        container=True,
        live_region=True,
        content=ft.Column(
            [
                words(look, line, look.body_size, bold=True, one_line=True),
                words(look, keys.told, look.small_size, colour=look.palette.quiet),
            ],
            spacing=0,
            tight=True,
        ),
    )


def _digits(keys: Keys, look: Look) -> ft.Control:
    return ft.Column(
        [ft.Row([_key(keys, key, look) for key in row], spacing=GAP) for row in ROWS],
        spacing=GAP,
        tight=True,
        expand=3,
    )


def _key(keys: Keys, key: str, look: Look) -> ft.Control:
    if key == "back":
        icon = ft.Icon(ft.Icons.BACKSPACE_OUTLINED, color=look.palette.ink)
        return _button(look, key, text("key.back"), icon, keys.erase)
    sign = "." if key == "point" else key
    phrase = text("key.point") if key == "point" else key
    content = words(look, sign, look.title_size, bold=True)
    return _button(look, key, phrase, content, lambda: keys.press(sign))


def _side(keys: Keys, look: Look) -> ft.Control:
    small = [_word(look, "clear", keys.clear)]
    if keys.stacks:
        small.insert(0, _word(look, "plus", lambda: keys.press(" + "), sign="+"))
    left = len(ROWS) - len(small)
    tall = left * KEY_HEIGHT + (left - 1) * GAP
    done = _word(look, "done", keys.done, filled=True, height=tall)
    return ft.Column([*small, done], spacing=GAP, tight=True, expand=1)


def _word(
    look: Look,
    key: str,
    on_tap: Tap,
    *,
    sign: str = "",
    filled: bool = False,
    height: float = KEY_HEIGHT,
) -> ft.Control:
    label = sign or text(f"key.{key}")
    content = words(
        look, label, look.body_size, bold=True, one_line=True, colour=on_fill(look, filled)
    )
    return ft.Row(
        [_button(look, key, text(f"key.{key}"), content, on_tap, filled=filled, height=height)]
    )


def _button(
    look: Look,
    key: str,
    phrase: str,
    content: ft.Control,
    on_tap: Tap,
    *,
    filled: bool = False,
    height: float = KEY_HEIGHT,
) -> ft.Control:
    return button(
        look, f"key-{key}", phrase, content, on_tap, height=height, expand=True, filled=filled
    )
