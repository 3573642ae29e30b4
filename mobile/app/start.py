"""From an empty page to the app on it."""

from collections.abc import Callable
from functools import partial
from typing import Any

import flet as ft

from mobile.app.engine import start as engine
from mobile.app.handover import desk as hand_over
from mobile.app.jobs import start as jobs
from mobile.app.jobs.model import Jobs
from mobile.app.model import App
from mobile.app.notes import Notes
from mobile.app.state.draft import DRAFT, from_json
from mobile.app.theme import DARK, LIGHT, theme
from mobile.app.views.root import root
from mobile.app.warm import warm
from mobile.opfs_storage import open_browser_home
from mobile.page_bridge import PageBridge, PageState, connect


async def show(page: ft.Page) -> None:
    """Open the draft, follow the link, show the screens."""
    page.title = ""
    page.padding = 0
    page.theme, page.dark_theme = theme(LIGHT), theme(DARK)
    notes = Notes(open_browser_home)
    await notes.open()
    bridge: list[PageBridge] = []
    app = App(
        keep=partial(notes.put, DRAFT),
        address=_address(),
        use_new_version=lambda: bridge[0].use_new_version(),
        leave_last_answer=lambda **answer: bridge[0].leave_last_answer(**answer),
        link_taken=lambda: bridge[0].link_taken(),
    )
    bridge.append(connect(_state_taker(page, app)))
    _follow_window(page, app)
    app.take(from_json(notes.get(DRAFT)))
    app.engine = engine.begin(app, notes.get, notes.put, page.run_task)
    app.follow(page.route)
    app_jobs = jobs.begin(page, app, notes)
    _follow_keys(page, app, app_jobs)
    _follow_links(page, app, app_jobs)
    page.render(root, app, app_jobs)
    page.run_task(warm)


def _address() -> str:
    import js

    return str(js.self.location.href).rpartition("/")[0] + "/"


def _state_taker(page: ft.Page, app: App) -> Callable[[PageState], None]:
    """The page's messages arrive outside the app's own events: hand them over to one."""

    async def take(state: PageState) -> None:
        app.page_state = state

    return lambda state: page.run_task(take, state)


def _follow_keys(page: ft.Page, app: App, app_jobs: Jobs) -> None:
    def key(event: ft.KeyboardEvent) -> None:
        jobs.strike(app, app_jobs, event)

    page.on_keyboard_event = key


def _follow_links(page: ft.Page, app: App, app_jobs: Jobs) -> None:
    def route(_event: Any) -> None:
        app.follow(page.route)
        page.run_task(hand_over.follow, app_jobs, page.route)

    page.on_route_change = route


def _follow_window(page: ft.Page, app: App) -> None:
    def resized(_event: Any = None) -> None:
        app.width, app.height = page.width or app.width, page.height or app.height

    def brightness(_event: Any = None) -> None:
        app.dark = page.platform_brightness is ft.Brightness.DARK

    page.on_resize, page.on_platform_brightness_change = resized, brightness
    resized()
    brightness()
