"""The Engine way: one large button a sub-screen, and the one that is shown."""

from collections.abc import Callable

import flet as ft

from core.texts import text
from mobile.app.engine.clamp.views.screen import clamp_screen
from mobile.app.engine.deck.views.screen import deck_screen
from mobile.app.engine.model import Engine
from mobile.app.engine.sheet.views.screen import sheet_screen
from mobile.app.views.look import Look
from mobile.app.views.parts import button, on_fill, words

Above = list[ft.Control]
SubScreen = Callable[[Engine, Look, Above], ft.Control]
"""Draws a sub-screen as high as the window; the buttons above scroll with what it scrolls."""

SUB_SCREENS: dict[str, tuple[ft.IconData, SubScreen]] = {
    "sheet": (
        ft.Icons.LAYERS_OUTLINED,
        lambda engine, look, above: sheet_screen(engine.sheet, look, above),
    ),
    "deck": (
        ft.Icons.BLUR_ON,
        lambda engine, look, above: deck_screen(engine.deck, look, above),
    ),
    "clamp": (
        ft.Icons.COMPRESS,
        lambda engine, look, above: clamp_screen(engine.clamp, look, above),
    ),
}
"""Sub-screens in the order of their buttons; a new one is one line here."""


@ft.component
def engine_screens(engine: Engine, look: Look, metric: bool) -> ft.Control:
    """The sub-screen that is shown, drawn again when the unit in force changes."""
    del metric
    above: Above = [ft.Row([_way(engine, name, look) for name in SUB_SCREENS], spacing=6)]
    return SUB_SCREENS[engine.shown][1](engine, look, above)


def _way(engine: Engine, name: str, look: Look) -> ft.Control:
    here = engine.shown == name
    tint = on_fill(look, here)
    label = text(f"way.engine.{name}")
    line = words(look, label, look.body_size, bold=True, one_line=True, colour=tint)
    icon = [ft.Icon(SUB_SCREENS[name][0], color=tint, size=24)] if look.roomy else []
    face = ft.Row(
        [*icon, line],
        spacing=6,
        alignment=ft.MainAxisAlignment.CENTER,
    )
    return button(
        look,
        f"engine-{name}",
        label,
        face,
        lambda: engine.show(name),
        expand=True,
        filled=here,
        selected=here,
    )
