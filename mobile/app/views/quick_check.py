"""The quick check: the answer, the picture, the words; the leaves under the thumb."""

import flet as ft

from core.texts import text
from mobile.app.model import App
from mobile.app.views.answer_panel import answer_panel
from mobile.app.views.banner import banners
from mobile.app.views.fields import fields
from mobile.app.views.leaf_pad import leaf_pad
from mobile.app.views.look import Look
from mobile.app.views.number_pad import number_pad
from mobile.app.views.parts import button, words
from mobile.app.views.read_back import read_back
from mobile.app.views.section_view import section_view
from mobile.app.views.verdict_list import verdict_list

SECTION_SHARE = 0.42
LARGEST_SECTION = 340.0


def quick_check(app: App, look: Look) -> ft.Control:
    """Answer and pad stay; what lies between scrolls. On a wide screen they stand side by side."""
    head = ft.Column([*banners(app, look), answer_panel(app, look)], spacing=4, tight=True)
    details = ft.Column(_details(app, look), scroll=ft.ScrollMode.AUTO, expand=True, spacing=10)
    inner = ft.Container(content=details, padding=ft.Padding.symmetric(horizontal=12), expand=True)
    pad = number_pad(app.keys(), look) if app.entry.open_field else leaf_pad(app, look)
    foot = ft.Container(content=pad, padding=ft.Padding.only(top=4, bottom=4))
    if look.wide:
        left = ft.Column([head, ft.Container(expand=True), foot], width=look.pane)
        return ft.Row([left, ft.VerticalDivider(width=1), inner], expand=True, spacing=0)
    return ft.Column([head, inner, foot], expand=True, spacing=0)


def _details(app: App, look: Look) -> list[ft.Control]:
    width = (look.width - look.pane if look.wide else look.width) - 24
    picture = (
        [section_view(app, look, width, min(width * SECTION_SHARE, LARGEST_SECTION))]
        if app.told.answer
        else []
    )
    return [
        *picture,
        fields(app, look),
        verdict_list(app.told, app.entered(), look),
        read_back(app, look),
        words(look, text("caution.main"), look.small_size, colour=look.palette.quiet),
        _anew(app, look),
    ]


def _anew(app: App, look: Look) -> ft.Control:
    restore = app.dropped is not None
    key = "screen.bring_back" if restore else "screen.anew"
    return ft.Row(
        [
            button(
                look,
                "bring-back" if restore else "new-check",
                text(key),
                words(look, text(key), look.body_size, bold=True, one_line=True),
                app.bring_back if restore else app.begin_anew,
                expand=True,
            )
        ]
    )
