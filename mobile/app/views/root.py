"""The whole window: one screen and the way to the others."""

import flet as ft

from core.texts import text
from mobile.app.engine.screens import engine_screens
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.views.root import jobs_window
from mobile.app.model import App
from mobile.app.theme import DARK, LIGHT
from mobile.app.views.about import about
from mobile.app.views.gauge_card import gauge_card_view
from mobile.app.views.look import RAIL, Look, look_at
from mobile.app.views.more import more
from mobile.app.views.parts import button, on_fill, words
from mobile.app.views.quick_check import quick_check
from mobile.app.views.shelf_editor import shelf_editor

SCREENS = {
    "check": ft.Icons.STRAIGHTEN,
    "jobs": ft.Icons.WORK_OUTLINE,
    "engine": ft.Icons.COMPRESS,
    "gauges": ft.Icons.CHECKLIST,
    "more": ft.Icons.MORE_HORIZ,
}
OTHERS = {
    "gauges": gauge_card_view,
    "more": more,
    "shelf": shelf_editor,
    "about": about,
}
WAY_OF = {"shelf": "more", "about": "more"}
"""The way that leads to a screen without a way of its own."""
WAYS_HEIGHT = 52.0
RAIL_HEIGHT = 72.0
"""Most height of a way beside a wide screen [px]."""


@ft.component
def root(app: App, jobs: Jobs) -> ft.Control:
    """Screen above, ways to the others below."""
    palette = DARK if app.dark else LIGHT
    look = look_at(palette, app.width, app.height, app.page_state.text_scale)
    return ft.Container(
        bgcolor=look.palette.ground,
        expand=True,
        content=ft.SafeArea(
            expand=True,
            content=_placed(_screen(app, jobs, look), app, jobs, look),
        ),
    )


def _placed(screen: ft.Control, app: App, jobs: Jobs, look: Look) -> ft.Control:
    """The ways stand under the thumb, or beside a wide screen."""
    if look.wide:
        return ft.Row([_rail(app, jobs, look), screen], expand=True, spacing=0)
    return ft.Column([screen, _ways(app, jobs, look)], expand=True, spacing=0)


def _rail(app: App, jobs: Jobs, look: Look) -> ft.Control:
    ways = [*(_way(app, jobs, screen, look) for screen in SCREENS), _unit(app, look)]
    return ft.Container(
        bgcolor=look.palette.panel,
        width=RAIL,
        content=ft.Column([ft.Row([way]) for way in ways], spacing=0),
    )


def _screen(app: App, jobs: Jobs, look: Look) -> ft.Control:
    if app.screen == "check":
        return quick_check(app, look)
    if app.screen == "jobs":
        return ft.Container(jobs_window(jobs, app, look), expand=True)
    if app.screen == "engine":
        return ft.Container(engine_screens(app.engine, look, app.entry.metric), expand=True)
    return ft.Container(
        expand=True,
        padding=12,
        content=ft.Column([OTHERS[app.screen](app, look)], scroll=ft.ScrollMode.AUTO, expand=True),
    )


def _ways(app: App, jobs: Jobs, look: Look) -> ft.Control:
    return ft.Container(
        bgcolor=look.palette.panel,
        content=ft.Row(
            [*(_way(app, jobs, screen, look) for screen in SCREENS), _unit(app, look)], spacing=0
        ),
    )


def _way_height(look: Look) -> float:
    ways = len(SCREENS) + 1
    return min(RAIL_HEIGHT, look.height / ways) if look.wide else WAYS_HEIGHT


def _way(app: App, jobs: Jobs, screen: str, look: Look) -> ft.Control:
    here = WAY_OF.get(app.screen, app.screen) == screen
    tint = on_fill(look, here)
    label = text(f"way.{screen}")
    content: list[ft.Control] = [ft.Icon(SCREENS[screen], color=tint, size=24)]
    if look.roomy:
        content.append(words(look, label, look.small_size, colour=tint, one_line=True, bold=here))
    return button(
        look,
        f"way-{screen}",
        label,
        ft.Column(
            content,
            spacing=0,
            tight=True,
            alignment=ft.MainAxisAlignment.CENTER,
            horizontal_alignment=ft.CrossAxisAlignment.CENTER,
        ),
        lambda: _go(app, jobs, screen),
        height=_way_height(look),
        expand=True,
        filled=here,
        colour=None if here else look.palette.panel,
        selected=here,
    )


def _go(app: App, jobs: Jobs, screen: str) -> None:
    app.go_to(screen)
    jobs.shown(screen == "jobs")


def _unit(app: App, look: Look) -> ft.Control:
    unit = text("unit.mm" if app.entry.metric else "unit.in")
    mark = unit if look.roomy else text("unit.short.mm" if app.entry.metric else "unit.short.in")
    return button(
        look,
        "unit",
        f"{unit}. {text('screen.unit_phrase')}",
        words(look, mark, look.body_size, bold=True, one_line=True, colour=look.palette.copper),
        app.switch_unit,
        height=_way_height(look),
        expand=True,
        colour=look.palette.panel,
    )
