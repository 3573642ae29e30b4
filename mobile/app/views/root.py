"""The whole window: one screen and the way to the others."""

import flet as ft

from core.texts import text
from mobile.app.model import App
from mobile.app.theme import DARK, LIGHT
from mobile.app.views.about import about
from mobile.app.views.gauge_card import gauge_card_view
from mobile.app.views.look import Look
from mobile.app.views.parts import button, on_fill, words
from mobile.app.views.quick_check import quick_check
from mobile.app.views.shelf_editor import shelf_editor

SCREENS = {
    "check": ft.Icons.STRAIGHTEN,
    "gauges": ft.Icons.CHECKLIST,
    "shelf": ft.Icons.LAYERS_OUTLINED,
    "about": ft.Icons.INFO_OUTLINE,
}
OTHERS = {"gauges": gauge_card_view, "shelf": shelf_editor, "about": about}
PROBE_SIZE = 20.0
PROBE_LINE = 23.0
"""Height of a line of the bundled font at `PROBE_SIZE` and no scaling [px]."""


@ft.component
def root(app: App) -> ft.Control:
    """Screen above, ways to the others below."""
    look = Look(
        palette=DARK if app.dark else LIGHT,
        width=app.width,
        height=app.height,
        text_scale=app.text_scale,
    )
    return ft.Container(
        bgcolor=look.palette.ground,
        expand=True,
        content=ft.SafeArea(
            expand=True,
            content=ft.Column(
                [_probe(app), _screen(app, look), _ways(app, look)], expand=True, spacing=0
            ),
        ),
    )


def _screen(app: App, look: Look) -> ft.Control:
    if app.screen == "check":
        return quick_check(app, look)
    return ft.Container(
        expand=True,
        padding=12,
        content=ft.Column([OTHERS[app.screen](app, look)], scroll=ft.ScrollMode.AUTO, expand=True),
    )


def _probe(app: App) -> ft.Control:
    """A letter nobody sees: its height tells how much the system enlarges text."""
    letter = ft.Text(
        "M",
        size=PROBE_SIZE,
        opacity=0,
        top=0,
        on_size_change=lambda event: app.set_text_scale(event.height / PROBE_LINE),
    )
    return ft.Container(
        height=0,
        content=ft.Semantics(exclude_semantics=True, content=ft.Stack([letter])),
    )


def _ways(app: App, look: Look) -> ft.Control:
    return ft.Container(
        bgcolor=look.palette.panel,
        content=ft.Row([_way(app, screen, look) for screen in SCREENS], spacing=0),
    )


def _way(app: App, screen: str, look: Look) -> ft.Control:
    here = app.screen == screen
    tint = on_fill(look, here)
    content: list[ft.Control] = [ft.Icon(SCREENS[screen], color=tint, size=22)]
    content.append(
        words(look, text(f"way.{screen}"), look.small_size, colour=tint, one_line=True, bold=here)
    )
    return button(
        look,
        f"way-{screen}",
        text(f"way.{screen}"),
        ft.Column(
            content,
            spacing=0,
            tight=True,
            alignment=ft.MainAxisAlignment.CENTER,
            horizontal_alignment=ft.CrossAxisAlignment.CENTER,
        ),
        lambda: app.go_to(screen),
        height=max(52.0, 24 + 1.4 * look.small_size * look.text_scale + 6),
        expand=True,
        filled=here,
        colour=None if here else look.palette.panel,
        selected=here,
    )
