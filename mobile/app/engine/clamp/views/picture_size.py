"""How wide a picture may be, and how large the words in it."""

from mobile.app.views.look import Look

SIDES = 12.0
LEAST_TEXT = 12.0
MOST_SCALE = 1.5
"""Words in a picture grow with the system's text no further than they find room."""


def inner_width(look: Look) -> float:
    """Width of the pane that holds answers, its margins left out [px]."""
    pane = look.width - look.pane - 1.0 if look.wide else look.width
    return pane - 2.0 * SIDES


def picture_text(look: Look) -> float:
    """Text size in a picture, which the system does not scale by itself."""
    return max(look.small_size, LEAST_TEXT) * min(look.text_scale, MOST_SCALE)
