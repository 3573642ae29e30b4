"""The chart of windows on the screen; it follows the sliders by itself."""

from collections.abc import Iterable, Iterator

import flet as ft
import flet.canvas as cv

from core.calc.choice import Choice, choose
from core.texts import text
from mobile.app.drawing.shapes import Polygon, Shape
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
    picture = draw_windows(
        chart_of(found, choice, picked), inner, look.small_size * look.text_scale
    )
    canvas = cv.Canvas(
        width=inner,
        height=picture.height,
        shapes=list(painted(picture.shapes, look.palette)),
    )
    framed = ft.Container(
        content=canvas,
        padding=INSET,
        border_radius=12,
        clip_behavior=ft.ClipBehavior.HARD_EDGE,
        bgcolor=look.palette.panel,
    )
    chart = said("windows-chart", phrase(choice, found.basis.metric), framed)
    return ft.Column([chart, *_moved(what_if, found, look)], spacing=4, tight=True)


def _as_slid(what_if: WhatIf, found: Found) -> tuple[Choice, float | None]:
    """Nothing is computed again where the sliders stand as they were left."""
    moves = {name: much for name, much in what_if.values.items() if name != SHEET and much}
    engine = with_moves(found.as_it_is, moves)
    same = engine == found.as_moved
    choice = found.choice if same else choose(engine, found.basis.shelf, pairs=found.pairs)
    return choice, what_if.values.get(SHEET)


def _moved(what_if: WhatIf, found: Found, look: Look) -> list[ft.Control]:
    metric = found.basis.metric
    lines = [
        sliders.told(each, what_if.values[each.name], metric)
        for each in sliders.sliders(found)
        if each.name != SHEET and what_if.values.get(each.name)
    ]
    if not lines:
        return []
    line = text("sheet.what_if", moved=", ".join(lines))
    tint = look.palette.undecided
    return [said("what-if", line, words(look, line, look.body_size, bold=True, colour=tint))]


def painted(shapes: Iterable[Shape], palette: Palette) -> Iterator[cv.Shape]:
    """The shapes in colour; neighbouring polygons of one colour become one path."""
    waiting: list[Polygon] = []
    for shape in shapes:
        is_more = isinstance(shape, Polygon)
        if waiting and not (is_more and _paint(shape) == _paint(waiting[0])):
            yield _path(waiting, palette)
            waiting = []
        if is_more:
            waiting.append(shape)
        else:
            yield drawn(shape, palette)
    if waiting:
        yield _path(waiting, palette)


def _paint(polygon: Polygon) -> tuple[str, float]:
    return polygon.role, polygon.strength


def _path(polygons: list[Polygon], palette: Palette) -> cv.Path:
    role, strength = _paint(polygons[0])
    elements = [element for each in polygons for element in _outline(each)]
    colour = f"#{round(255 * strength):02X}{getattr(palette, role)[-6:]}"
    return cv.Path(elements, ft.Paint(color=colour))


def _outline(polygon: Polygon) -> Iterator[cv.Path.PathElement]:
    first, *rest = polygon.points
    yield cv.Path.MoveTo(*first)
    yield from (cv.Path.LineTo(*point) for point in rest)
    yield cv.Path.Close()
