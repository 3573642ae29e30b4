"""Scrolls a screen of the app until something on it can be tapped."""

from tests.phone import Phone

BAR = 52.0
"""Height of the ways at the bottom [px]; nothing under them is on the screen."""
WHEEL = 240
MOST_TURNS = 60


def reach(phone: Phone, identifier: str) -> None:
    """Scroll until a key is on the screen, then tap it."""
    size = phone.page.viewport_size
    assert size is not None
    phone.page.mouse.move(size["width"] - 100, size["height"] / 2)
    for turn in range(MOST_TURNS):
        node = phone.page.locator(f'[flt-semantics-identifier="{identifier}"]')
        box = node.first.bounding_box() if node.count() else None
        if box and box["y"] > BAR and box["y"] + box["height"] <= size["height"] - BAR:
            return phone.tap(identifier)
        phone.page.mouse.wheel(0, WHEEL if turn < MOST_TURNS // 3 else -WHEEL)
        phone.page.wait_for_timeout(120)
    raise AssertionError(f"{identifier} is nowhere on the screen")
