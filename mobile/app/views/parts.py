"""Small parts that every screen is made of."""

import math
from collections.abc import Callable

import flet as ft

from mobile.app.views.look import Look

Tap = Callable[[], None]


def words(
    look: Look,
    value: str,
    size: float,
    *,
    colour: str | None = None,
    bold: bool = False,
    one_line: bool = False,
    align: ft.TextAlign = ft.TextAlign.START,
    expand: bool = False,
) -> ft.Text:
    """Plain text in our sizes and colours."""
    return ft.Text(
        value,
        size=size,
        color=colour or look.palette.ink,
        weight=ft.FontWeight.W_700 if bold else ft.FontWeight.W_400,
        no_wrap=one_line,
        overflow=ft.TextOverflow.FADE if one_line else ft.TextOverflow.CLIP,
        text_align=align,
        expand=expand,
    )


def said(identifier: str, phrase: str, content: ft.Control, *, live: bool = False) -> ft.Semantics:
    """Content that reads as one phrase and is found by its identifier."""
    return ft.Semantics(
        identifier=identifier,
        label=phrase,
        container=True,
        exclude_semantics=True,
        live_region=live,
        content=content,
    )


def button(
    look: Look,
    identifier: str,
    phrase: str,
    content: ft.Control,
    on_tap: Tap,
    *,
    height: float = 56.0,
    width: float | None = None,
    expand: bool | int = False,
    filled: bool = False,
    ring: bool = False,
    colour: str | None = None,
    selected: bool | None = None,
) -> ft.Semantics:
    """Something to tap, found by its identifier, read as one phrase."""
    palette = look.palette
    return ft.Semantics(
        identifier=identifier,
        label=phrase,
        button=True,
        container=True,
        selected=selected,
        exclude_semantics=True,
        on_tap=lambda _event: on_tap(),
        expand=expand,
        content=ft.Container(
            content=content,
            height=height,
            width=width,
            alignment=ft.Alignment.CENTER,
            padding=ft.Padding.symmetric(horizontal=1),
            bgcolor=colour or (palette.copper if filled else palette.key),
            border=ft.Border.all(3, palette.copper if ring else ft.Colors.TRANSPARENT),
            border_radius=10,
            ink=True,
            on_click=lambda _event: on_tap(),
        ),
    )


def in_rows(
    controls: list[ft.Control], look: Look, *, gap: float = 6.0, columns: int | None = None
) -> list[ft.Control]:
    """Controls of equal width, three in a row or two, as the screen allows."""
    columns = columns or (3 if look.roomy else 2)
    return [
        ft.Row(controls[i : i + columns], spacing=gap) for i in range(0, len(controls), columns)
    ]


def two_lines(look: Look, title: str, value: str, filled: bool) -> ft.Control:
    """A small title over its value, on a button."""
    palette = look.palette
    return ft.Column(
        [
            words(
                look,
                title,
                look.small_size,
                one_line=True,
                colour=palette.on_copper if filled else palette.quiet,
            ),
            words(
                look, value, look.body_size, bold=True, one_line=True, colour=on_fill(look, filled)
            ),
        ],
        spacing=0,
        tight=True,
        alignment=ft.MainAxisAlignment.CENTER,
        horizontal_alignment=ft.CrossAxisAlignment.CENTER,
    )


def field_height(look: Look) -> float:
    """Height of a button with two lines [px]."""
    return max(56.0, 2.9 * look.body_size * look.text_scale)


def on_fill(look: Look, filled: bool) -> str:
    """Text colour on a button."""
    return look.palette.on_copper if filled else look.palette.ink


def panel(look: Look, *controls: ft.Control, gap: float = 4.0) -> ft.Container:
    """A group set off from the ground, as wide as the screen."""
    return ft.Container(
        content=ft.Column(list(controls), spacing=gap, tight=True),
        width=math.inf,
        bgcolor=look.palette.panel,
        border_radius=12,
        padding=10,
    )
