"""A deck picture in the colours of the palette: like shapes become one path."""

import flet as ft
import flet.canvas as cv

from mobile.app.drawing.deck_map import Circles, Drawn, Strokes
from mobile.app.drawing.shapes import Label, Polygon
from mobile.app.theme import Palette

BOLD = ft.FontWeight.W_700


def painted(shape: Drawn, palette: Palette) -> cv.Shape:
    """One shape."""
    if isinstance(shape, Circles):
        return _circles(shape, palette)
    if isinstance(shape, Strokes):
        return _strokes(shape, palette)
    if isinstance(shape, Polygon):
        return _polygon(shape, palette)
    return _label(shape, palette)


def _circles(shape: Circles, palette: Palette) -> cv.Path:
    ovals = [cv.Path.Oval(x - r, y - r, 2.0 * r, 2.0 * r) for x, y, r in shape.circles]
    colour = getattr(palette, shape.role)
    if not shape.width:
        return cv.Path(ovals, ft.Paint(color=colour))
    return cv.Path(ovals, _stroke(colour, shape.width, shape.dashed))


def _strokes(shape: Strokes, palette: Palette) -> cv.Path:
    elements = [
        each
        for x1, y1, x2, y2 in shape.lines
        for each in (cv.Path.MoveTo(x1, y1), cv.Path.LineTo(x2, y2))
    ]
    return cv.Path(elements, _stroke(getattr(palette, shape.role), shape.width, False))


def _stroke(colour: str, width: float, dashed: bool) -> ft.Paint:
    return ft.Paint(
        color=colour,
        stroke_width=width,
        style=ft.PaintingStyle.STROKE,
        stroke_dash_pattern=[7, 5] if dashed else None,
    )


def _polygon(shape: Polygon, palette: Palette) -> cv.Path:
    first, *rest = shape.points
    lines = [cv.Path.LineTo(*point) for point in rest]
    colour = getattr(palette, shape.role)
    return cv.Path([cv.Path.MoveTo(*first), *lines, cv.Path.Close()], ft.Paint(color=colour))


def _label(shape: Label, palette: Palette) -> cv.Text:
    return cv.Text(
        x=shape.x,
        y=shape.y,
        value=shape.text,
        alignment=ft.Alignment(2.0 * shape.anchor - 1.0, -1.0),
        style=ft.TextStyle(size=shape.size, color=getattr(palette, shape.role), weight=BOLD),
    )
