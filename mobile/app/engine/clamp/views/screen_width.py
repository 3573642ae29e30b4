"""How wide a picture may be."""

from mobile.app.views.look import Look

SIDES = 12.0


def inner_width(look: Look) -> float:
    """Width of the pane that holds answers, its margins left out [px]."""
    pane = look.width - look.pane - 1.0 if look.wide else look.width
    return pane - 2.0 * SIDES
