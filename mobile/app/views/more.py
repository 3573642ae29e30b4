"""Where everything lies that is not needed with a leaf in the hand."""

import flet as ft

from core.texts import text
from mobile.app.model import App
from mobile.app.views.look import Look
from mobile.app.views.parts import button, said, words

SCREENS = {"shelf": ft.Icons.LAYERS_OUTLINED, "about": ft.Icons.INFO_OUTLINE}


def more(app: App, look: Look) -> ft.Control:
    """One large button a screen."""
    return ft.Column(
        [*(_way(app, screen, look) for screen in SCREENS), _offline(app, look)], spacing=8
    )


def _offline(app: App, look: Look) -> ft.Control:
    line = text(f"device.offline.{app.page_state.offline}")
    return said("offline", line, words(look, line, look.body_size, colour=look.palette.quiet))


def _way(app: App, screen: str, look: Look) -> ft.Control:
    label = text(f"way.{screen}")
    face = ft.Row(
        [
            ft.Icon(SCREENS[screen], color=look.palette.ink, size=28),
            words(look, label, look.row_size, bold=True, expand=True),
        ],
        spacing=12,
    )
    way = button(
        look, f"way-{screen}", label, face, lambda: app.go_to(screen), height=72, expand=True
    )
    return ft.Row([way])
