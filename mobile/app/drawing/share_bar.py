"""A share as a bar."""

from core.unit_types import Number
from mobile.app.drawing.load_bar import box
from mobile.app.drawing.shapes import Polygon


def draw_share_bar(share: Number, width: float, height: float) -> tuple[Polygon, Polygon]:
    """The whole, and the part of it that a share [1] is, in `width` × `height` [px]."""
    return box("key", 0.0, 0.0, width, height), box("copper", 0.0, 0.0, share * width, height)
