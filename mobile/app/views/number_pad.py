"""Typing a size without the system's keyboard."""

import flet as ft

from core.texts import text
from mobile.app.state.keys import SIGN, Keys
from mobile.app.views.look import Look
from mobile.app.views.parts import Tap, button, on_fill, words

ROWS = (("7", "8", "9"), ("4", "5", "6"), ("1", "2", "3"), ("point", "0", "back"))
LOW_ROWS = (("1", "2", "3", "4", "5"), ("6", "7", "8", "9", "0"))
KEY_HEIGHT = 52.0
LOW_KEY_HEIGHT = 48.0
ICONS = {
    "back": ft.Icons.BACKSPACE_OUTLINED,
    "clear": ft.Icons.DELETE_OUTLINE,
    "next": ft.Icons.CHEVRON_RIGHT,
    "done": ft.Icons.CHECK,
}
LETTERS = {"plus": "+", "sign": SIGN}
GAP = 4.0


def number_pad(keys: Keys, look: Look) -> ft.Control:
    """What is typed, the keys, and the way out."""
    return ft.Container(
        padding=ft.Padding.symmetric(horizontal=6),
        content=ft.Column(
            [
                _typed(keys, look),
                *(_low(keys, look) if look.low else [_tall(keys, look)]),
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


def _tall(keys: Keys, look: Look) -> ft.Control:
    return ft.Row([_digits(keys, look), _side(keys, look)], spacing=GAP, tight=True)


def _low(keys: Keys, look: Look) -> list[ft.Control]:
    """Three rows instead of four, with signs in place of words."""
    last = [
        _key(keys, "point", look),
        *_signs(keys, look),
        _key(keys, "back", look),
        _sign(look, "clear", keys.clear),
        *([_sign(look, "next", keys.next)] if keys.next else []),
        _sign(look, "done", keys.done, filled=True),
    ]
    digits = [[_key(keys, key, look) for key in row] for row in LOW_ROWS]
    return [ft.Row(row, spacing=GAP) for row in (*digits, last)]


def _digits(keys: Keys, look: Look) -> ft.Control:
    return ft.Column(
        [ft.Row([_key(keys, key, look) for key in row], spacing=GAP) for row in ROWS],
        spacing=GAP,
        tight=True,
        expand=3,
    )


def _key(keys: Keys, key: str, look: Look) -> ft.Control:
    if key == "back":
        return _sign(look, key, keys.erase)
    sign = "." if key == "point" else key
    phrase = text("key.point") if key == "point" else key
    content = words(look, sign, look.title_size, bold=True)
    return _button(look, key, phrase, content, lambda: keys.press(sign))


def _signs(keys: Keys, look: Look) -> list[ft.Control]:
    """Keys that only some fields have."""
    plus = _sign(look, "plus", lambda: keys.press(" + "))
    minus = _sign(look, "sign", lambda: keys.press(SIGN))
    return [*([plus] if keys.stacks else []), *([minus] if keys.signed else [])]


def _sign(look: Look, key: str, on_tap: Tap, *, filled: bool = False) -> ft.Control:
    """A key with a picture, a plus or a sign."""
    tint = on_fill(look, filled)
    face = (
        ft.Icon(ICONS[key], color=tint)
        if key in ICONS
        else words(look, LETTERS[key], look.title_size, bold=True)
    )
    return _button(look, key, text(f"key.{key}"), face, on_tap, filled=filled)


def _side(keys: Keys, look: Look) -> ft.Control:
    signs = [ft.Row([sign]) for sign in _signs(keys, look)]
    small = [*signs, ft.Row([_word(look, "clear", keys.clear)])]
    if keys.next:
        small.append(ft.Row([_word(look, "next", keys.next)]))
    left = len(ROWS) - len(small)
    tall = left * KEY_HEIGHT + (left - 1) * GAP
    done = ft.Row([_word(look, "done", keys.done, filled=True, height=tall)])
    return ft.Column([*small, done], spacing=GAP, tight=True, expand=1)


def _word(
    look: Look, key: str, on_tap: Tap, *, filled: bool = False, height: float | None = None
) -> ft.Control:
    content = words(
        look,
        text(f"key.{key}"),
        look.body_size,
        bold=True,
        one_line=True,
        colour=on_fill(look, filled),
    )
    return _button(look, key, text(f"key.{key}"), content, on_tap, filled=filled, height=height)


def _button(
    look: Look,
    key: str,
    phrase: str,
    content: ft.Control,
    on_tap: Tap,
    *,
    filled: bool = False,
    height: float | None = None,
) -> ft.Control:
    usual = LOW_KEY_HEIGHT if look.low else KEY_HEIGHT
    return button(
        look,
        f"key-{key}",
        phrase,
        content,
        on_tap,
        height=height or usual,
        expand=True,
        filled=filled,
    )
