"""Every screen in every window on one sheet, to be looked at: `.build/contact-sheet`."""

from base64 import b64encode
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Playwright

from tests.chromium import FLAGS, find
from tests.phone import Phone
from tests.served_site import ROOT
from tests.windows import WINDOWS, show_in, still_picture

SHEET = ROOT / ".build" / "contact-sheet"
LEAST_BYTES = 4_000
"""A picture with anything on it is larger."""
FULL = (
    "/check?go=0.011in&no-go=0.013in&gasket=0.040in&wire=0.041in&groove-width=0.040in"
    "&groove-depth=0.030in&shelf=0.032in,0.040in,0.050in,0.0646in"
)
VERDICTS = {"width": 390, "height": 1700}


def go(*ways: str) -> Callable[[Phone], None]:
    def tap_each(phone: Phone) -> None:
        for way in ways:
            phone.tap(way)

    return tap_each


def follow(link: str) -> Callable[[Phone], None]:
    return lambda phone: phone.page.evaluate("(link) => { location.hash = link }", f"#{link}")


def open_pad(phone: Phone) -> None:
    """On small screens the fields are scrolled to: a tap in a tall window opens the pad."""
    phone.page.set_viewport_size(VERDICTS)
    phone.tap("in-wire")
    phone.box("key-done")


SCREENS: dict[str, Callable[[Phone], None]] = {
    "1 nothing yet": go(),
    "2 one side": go("leaf-0.0110"),
    "3 link over an entry": follow(FULL),
    "4 whole check": go("use-link"),
    "5 number pad": open_pad,
    "6 gauge card": go("key-done", "way-gauges"),
    "7 more": go("way-more"),
    "8 shelf": go("way-shelf"),
    "9 cautions": go("way-more", "way-about"),
    "10 bad link": follow("/check?bore=4in"),
}


def test_a_contact_sheet_of_every_screen_is_made(playwright: Playwright, phone: Phone) -> None:
    SHEET.mkdir(parents=True, exist_ok=True)
    phone.open()
    phone.read_aloud()
    phone.phrase("way-check")
    for screen, reach in SCREENS.items():
        show_in(phone, WINDOWS["phone"])
        reach(phone)
        for name, window in WINDOWS.items():
            picture = show_in(phone, window)
            assert len(picture) > LEAST_BYTES, f"{screen}, {name}"
            (SHEET / f"{screen}, {name}.png").write_bytes(picture)
    phone.tap("close-link")
    phone.page.set_viewport_size(VERDICTS)
    phone.box("bring-back")
    (SHEET / "whole check, all of it.png").write_bytes(still_picture(phone))
    join(playwright)


def join(playwright: Playwright) -> None:
    """A row of pictures for each screen, as one picture a screen."""
    browser = playwright.chromium.launch(executable_path=find(), args=list(FLAGS))
    page = browser.new_page(viewport={"width": 3700, "height": 860})
    for screen in SCREENS:
        figures = "".join(figure(SHEET / f"{screen}, {name}.png") for name in WINDOWS)
        page.set_content(f"<body style='margin:8px;background:#888'>{figures}</body>")
        page.screenshot(path=SHEET / f"sheet {screen}.png")
    browser.close()


def figure(picture: Path) -> str:
    packed = b64encode(picture.read_bytes()).decode()
    return f'<img alt="" src="data:image/png;base64,{packed}">'
