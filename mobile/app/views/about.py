"""The usual cautions, what the limits rest on, and how the app stands on this device."""

import flet as ft

from core.texts import text
from mobile.app.model import App
from mobile.app.views.look import Look
from mobile.app.views.parts import button, panel, said, words

CAUTIONS = ("main", "sharp", "water", "torque", "machinery")


def about(app: App, look: Look) -> ft.Control:
    """Cautions first."""
    return ft.Column(
        [
            words(look, text("cautions.title"), look.title_size, bold=True),
            said(
                "cautions",
                " ".join(text(f"caution.{each}") for each in CAUTIONS),
                panel(
                    look,
                    *(words(look, text(f"caution.{each}"), look.body_size) for each in CAUTIONS),
                    gap=8,
                ),
            ),
            words(look, text("limits.title"), look.title_size, bold=True),
            panel(look, words(look, text("limits.told"), look.body_size)),
            words(look, text("device.title"), look.title_size, bold=True),
            _device(app, look),
        ],
        spacing=8,
    )


def _device(app: App, look: Look) -> ft.Control:
    state = app.page_state
    kept = {True: "yes", False: "no", None: "unknown"}[state.kept]
    lines = [
        text(f"device.offline.{state.offline}"),
        text(f"device.kept.{kept}"),
        text("device.home_screen"),
    ]
    parts: list[ft.Control] = [
        said("offline", lines[0], words(look, lines[0], look.body_size, bold=True)),
        *(words(look, line, look.body_size) for line in lines[1:]),
    ]
    if app.draft_trouble:
        parts.append(words(look, app.draft_trouble, look.body_size, colour=look.palette.failed))
    if state.new_version:
        parts.append(
            button(
                look,
                "use-new-version",
                text("device.new_version"),
                words(
                    look,
                    text("device.new_version"),
                    look.body_size,
                    bold=True,
                    colour=look.palette.on_copper,
                ),
                app.use_new_version,
                filled=True,
            )
        )
    return panel(look, *parts, gap=6)
