"""The chart of windows on the screen; it follows the sliders by itself."""

from collections.abc import Iterable, Iterator
from itertools import groupby
from typing import Any

import flet as ft
import flet.canvas as cv

from core.calc.choice import Choice, choose
from core.texts import text
from mobile.app.drawing.shapes import Label, Line, Polygon, Shape
from mobile.app.drawing.window_chart import draw_windows
from mobile.app.engine.sheet import sliders
from mobile.app.engine.sheet.chart import chart_of, phrase
from mobile.app.engine.sheet.found import Found, with_moves
from mobile.app.engine.sheet.model import WhatIf
from mobile.app.engine.sheet.sliders import SHEET
from mobile.app.theme import Palette
from mobile.app.views.look import Look
from mobile.app.views.parts import said, words
from mobile.app.views.section_view import drawn

INSET = 8.0
WIDEST_LETTER = 0.75
LINES, LINE = 2, 1.6
Stroke = tuple[str, float, float]
"""Colour role, strength and width [px]."""


@ft.component
def chart_view(what_if: WhatIf, found: Found, look: Look, width: float) -> ft.Control:
    """Windows, sheets and overlap as the sliders stand now.

    Parameters
    ----------
    width
        Of the whole, frame included [px].
    """
    choice, picked = _as_slid(what_if, found)
    inner = width - 2 * INSET
    size = look.small_size * look.text_scale
    picture = draw_windows(chart_of(found, choice, picked), inner, size)
    shapes = list(painted(picture.shapes, look.palette))
    told = [] if picture.told is None else [_words(picture.told, look)]
    layers = [
        cv.Canvas(width=inner, height=picture.height, shapes=shapes),
        labels_view(picture.labels, look, inner, picture.height),
        *told,
    ]
    framed = ft.Container(
        content=ft.Stack(layers, width=inner, height=picture.height),
        padding=INSET,
        border_radius=12,
        bgcolor=look.palette.panel,
    )
    # What is read aloud waits for the finger to be off: nobody hears thirty sentences a second.
    chart = said("windows-chart", phrase(found.choice, found.basis.metric), framed)
    return ft.Column([chart, _moved(what_if, found, look, width)], spacing=4, tight=True)


@ft.memo
@ft.component
def labels_view(
    labels: tuple[Label, ...], look: Look, width: float, height: float
) -> ft.Control:
    """Words that stay while bars move; they are laid out once."""
    return ft.Stack([_words(each, look) for each in labels], width=width, height=height)


def _words(label: Label, look: Look) -> ft.Control:
    """Words in the picture, centred where they are anchored in the middle."""
    line = words(
        look,
        label.text,
        label.size / look.text_scale,
        colour=getattr(look.palette, label.role),
        bold=True,
        one_line=True,
        align=ft.TextAlign.CENTER if label.anchor else ft.TextAlign.START,
    )
    wide = WIDEST_LETTER * label.size * (len(label.text) + 1)
    return ft.Container(
        line,
        left=label.x - label.anchor * wide,
        top=label.y,
        width=wide,
        height=LINE * label.size,
    )


def _as_slid(what_if: WhatIf, found: Found) -> tuple[Choice, float | None]:
    """Nothing is computed again where the sliders stand as they were left."""
    moves = {name: much for name, much in what_if.values.items() if name != SHEET and much}
    engine = with_moves(found.as_it_is, moves)
    same = engine == found.as_moved
    choice = found.choice if same else choose(engine, found.basis.shelf, pairs=found.pairs)
    return choice, what_if.values.get(SHEET)


def _moved(what_if: WhatIf, found: Found, look: Look, width: float) -> ft.Control:
    """What is moved, in a place of one size, so that nothing below it starts."""
    metric = found.basis.metric
    lines = [
        sliders.told(each, what_if.values[each.name], metric)
        for each in sliders.sliders(found)
        if each.name != SHEET and what_if.values.get(each.name)
    ]
    line = text("sheet.what_if", moved=", ".join(lines)) if lines else text("sheet.as_measured")
    tint = look.palette.undecided if lines else look.palette.quiet
    face = words(look, line, look.small_size, bold=True, colour=tint)
    tall = LINES * LINE * look.small_size * look.text_scale
    return ft.Container(said("what-if", line, face), width=width, height=tall)


def painted(shapes: Iterable[Shape], palette: Palette) -> Iterator[cv.Shape]:
    """The shapes in colour; boxes and lines that are alike and follow each other as one stroke.

    Each shape costs the same to hand to the screen whatever it holds, and a stroke is quick to
    paint where a path of many corners is not.
    """
    for stroke, alike in groupby(shapes, key=_stroke):
        if stroke is None:
            yield from (drawn(shape, palette) for shape in alike)
        else:
            yield _strokes(stroke, alike, palette)


def _stroke(shape: Shape) -> Stroke | None:
    """What strokes must share to be one: colour, strength and width."""
    if isinstance(shape, Line) and not shape.dashed:
        return shape.role, 1.0, shape.width
    if isinstance(shape, Polygon):
        (_, top), _, (_, bottom), _ = shape.points
        return shape.role, shape.strength, round(bottom - top, 3)
    return None


def _strokes(stroke: Stroke, shapes: Iterable[Shape], palette: Palette) -> cv.Points:
    role, strength, width = stroke
    paint = ft.Paint(
        color=f"#{round(255 * strength):02X}{getattr(palette, role)[-6:]}",
        stroke_width=width,
        style=ft.PaintingStyle.STROKE,
    )
    # A tuple goes over as a whole where it differs; a list would go point by point.
    ends: Any = tuple(end for shape in shapes for end in _ends(shape))
    return cv.Points(points=ends, point_mode=cv.PointMode.LINES, paint=paint)


def _ends(shape: Shape) -> tuple[tuple[float, float], tuple[float, float]]:
    """A line as it is; a box from side to side through its middle."""
    if isinstance(shape, Line):
        return (shape.x1, shape.y1), (shape.x2, shape.y2)
    (left, top), _, (right, bottom), _ = shape.points
    middle = 0.5 * (top + bottom)
    return (left, middle), (right, middle)
