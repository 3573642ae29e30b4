"""From an empty page to the app on it."""

from collections.abc import Callable
from typing import Any

import flet as ft

from core.errors import RecordError, StoreBusy
from core.records.notebook import Notebook
from core.texts import text
from mobile.app.model import App, Keep
from mobile.app.state.draft import from_json
from mobile.app.theme import DARK, LIGHT, theme
from mobile.app.views.root import root
from mobile.app.warm import warm
from mobile.opfs_storage import open_browser_home
from mobile.page_bridge import PageBridge, PageState, connect

DRAFT = "draft"


async def show(page: ft.Page) -> None:
    """Open the draft, follow the link, show the screens."""
    page.title = ""
    page.padding = 0
    page.theme, page.dark_theme = theme(LIGHT), theme(DARK)
    kept, keep = await _draft()
    bridge: list[PageBridge] = []
    app = App(
        keep=keep,
        address=_address(),
        use_new_version=lambda: bridge[0].use_new_version(),
        leave_last_answer=lambda **answer: bridge[0].leave_last_answer(**answer),
        link_taken=lambda: bridge[0].link_taken(),
    )
    bridge.append(connect(_state_taker(page, app)))
    _follow_window(page, app)
    app.take(from_json(kept))
    app.follow(page.route)
    page.render(root, app)
    page.run_task(warm)


async def _draft() -> tuple[Any, Keep]:
    """The draft, and how it is kept. A check works without: then every tap says why not."""
    try:
        home = await open_browser_home()
        notebook = Notebook(await home.open(DRAFT))
    except StoreBusy:
        return None, _refusing(text("draft.elsewhere"))
    except RecordError as error:
        return None, _refusing(str(error))
    return notebook.get(DRAFT), lambda draft: notebook.put(DRAFT, draft)


def _refusing(why: str) -> Keep:
    def keep(_draft: Any) -> None:
        raise RecordError(why)

    return keep


def _address() -> str:
    import js

    return str(js.self.location.href).rpartition("/")[0] + "/"


def _state_taker(page: ft.Page, app: App) -> Callable[[PageState], None]:
    """The page's messages arrive outside the app's own events: hand them over to one."""

    async def take(state: PageState) -> None:
        app.page_state = state

    return lambda state: page.run_task(take, state)


def _follow_window(page: ft.Page, app: App) -> None:
    def resized(_event: Any = None) -> None:
        app.width, app.height = page.width or app.width, page.height or app.height

    def brightness(_event: Any = None) -> None:
        app.dark = page.platform_brightness is ft.Brightness.DARK

    def route(_event: Any) -> None:
        app.follow(page.route)

    def key(event: ft.KeyboardEvent) -> None:
        app.strike(event.key)

    page.on_resize, page.on_platform_brightness_change = resized, brightness
    page.on_route_change, page.on_keyboard_event = route, key
    resized()
    brightness()
