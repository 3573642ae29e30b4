"""The windows that screens are looked at in, and when a picture stands still."""

import json
from dataclasses import dataclass

from tests.phone import Phone

MOST_PICTURES = 40
USUAL_FONT_SIZE = 16


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """A screen of some size [px], with what its system sets."""

    width: int
    height: int
    text_scale: float = 1.0
    dark: bool = False


WINDOWS = {
    "phone": Window(width=390, height=844),
    "small": Window(width=320, height=568),
    "doubled": Window(width=320, height=568, text_scale=2.0),
    "dark": Window(width=390, height=844, dark=True),
    "side": Window(width=844, height=390),
    "wide": Window(width=1280, height=800),
}


def show_in(phone: Phone, window: Window) -> bytes:
    """Give the running app another window; its picture, once the app has laid itself out for it."""
    page = phone.page
    page.set_viewport_size({"width": window.width, "height": window.height})
    page.emulate_media(color_scheme="dark" if window.dark else "light")
    size = f"{USUAL_FONT_SIZE * window.text_scale}px"
    page.evaluate("(size) => { document.documentElement.style.fontSize = size }", size)
    wanted = (window.width, window.height, window.text_scale, window.dark)
    while seen_by_app(phone) != wanted:
        page.wait_for_timeout(20)
    phone.box("way-check")
    return still_picture(phone)


def seen_by_app(phone: Phone) -> tuple[float, float, float, bool]:
    """The window as the app knows it; what it draws for it follows with the next frame."""
    width, height, scale, dark = json.loads(phone.python(SEEN))
    return round(width), round(height), scale, dark


SEEN = """
import gc, json
from mobile.app.model import App
if "seen" not in globals():
    seen = next(each for each in gc.get_objects() if isinstance(each, App))
json.dumps([seen.width, seen.height, seen.page_state.text_scale, seen.dark])
"""


def still_picture(phone: Phone) -> bytes:
    """The screen as a PNG, once two in a row are the same."""
    before = b""
    for _ in range(MOST_PICTURES):
        now = phone.page.screenshot()
        if now == before:
            return now
        before = now
    raise TimeoutError("the screen does not come to rest")
