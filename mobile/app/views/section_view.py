"""The cross-section on the screen."""

import flet as ft
import flet.canvas as cv

from core.calc.gasket import largest_height, least_height
from core.calc.quick_check import Answer
from core.tables.practice import HEIGHT
from core.texts import text
from core.texts.length import Length
from core.texts.share import Share
from mobile.app.drawing.section import Labels, Section, draw_section
from mobile.app.drawing.shapes import Bars, Disc, Label, Line, Polygon, Shape
from mobile.app.model import App
from mobile.app.theme import Palette
from mobile.app.views.look import Look
from mobile.app.views.parts import said

LABEL_SHARE = 0.1
"""Most of the picture's height that a line of words may take."""


UNREAD = Section(height=0.3, low=0.3, high=0.3)
"""What is drawn before any reading, marked as such: what height means [mm]."""


def section_view(app: App, look: Look, width: float, height: float) -> ft.Control:
    """Groove, wire, deck and one sheet, to scale; before any reading the height that is wanted."""
    answer = app.told.answer
    section = section_of(answer, app.entry.drawn_mm) if answer else UNREAD
    size = min(look.small_size * look.text_scale, LABEL_SHARE * height)
    picture = draw_section(section, _labels(section, answer, size), width, height)
    canvas = cv.Canvas(
        width=width,
        height=height,
        shapes=[drawn(shape, look.palette) for shape in picture.shapes],
    )
    framed = ft.Container(
        content=canvas,
        width=width,
        height=height,
        border_radius=12,
        clip_behavior=ft.ClipBehavior.HARD_EDGE,
        bgcolor=look.palette.panel,
    )
    return said("section", _phrase(section), framed)


def _phrase(section: Section) -> str:
    if section is UNREAD:
        return text("section.phrase.unread")
    if section.sheet is None or section.limit is None:
        return text("section.phrase.bare", height=Length(section.height))
    return text(
        "section.phrase",
        height=Length(section.height),
        sheet=Length(section.sheet),
        limit=Length(section.limit),
    )


def section_of(answer: Answer, drawn_mm: float | None) -> Section:
    """What is drawn; the sheet is the one picked, else the one to run, else the one on now."""
    asked = answer.asked
    height, sheet = asked.height, _sheet(answer, drawn_mm)
    practice = asked.rule.practice
    return Section(
        height=height.value,
        low=height.low if height.low is not None else 0.0,
        high=height.high if height.high is not None else height.value,
        wire=asked.wire.value if asked.wire else None,
        groove_width=asked.groove_width.value if asked.groove_width else None,
        groove_depth=asked.groove_depth.value if asked.groove_depth else None,
        sheet=sheet.thickness if sheet else None,
        limit=largest_height(sheet, practice) if sheet else None,
        bite=least_height(sheet, practice) if sheet else None,
    )


def _sheet(answer: Answer, drawn_mm: float | None):
    rows = [row.sheet for row in answer.shelf]
    picked = [sheet for sheet in rows if sheet.thickness == drawn_mm]
    run = answer.suggestion.run if answer.suggestion else None
    return next(iter(picked), None) or run or answer.asked.gasket or next(iter(rows), None)


def _labels(section: Section, answer: Answer | None, size: float) -> Labels:
    practice = answer.asked.rule.practice if answer else HEIGHT
    unread = section is UNREAD
    return Labels(
        limit=text("section.limit", share=Share(practice.largest_share)),
        bite=text("section.bite", share=Share(practice.bite_share)),
        sheet=text("section.sheet", sheet=Length(section.sheet or 0.0)),
        wire=text(
            "section.wire.unread" if unread else "section.wire", height=Length(section.height)
        ),
        deck=text("section.deck"),
        size=size,
    )


def drawn(shape: Shape, palette: Palette) -> cv.Shape:
    """A shape in the colours of the palette."""
    if isinstance(shape, Polygon):
        return _polygon(shape, palette)
    if isinstance(shape, Disc):
        return _disc(shape, palette)
    if isinstance(shape, Bars):
        return _bars(shape, palette)
    if isinstance(shape, Line):
        return _line(shape, palette)
    return _label(shape, palette)


def _polygon(shape: Polygon, palette: Palette) -> cv.Path:
    first, *rest = shape.points
    elements = [
        cv.Path.MoveTo(*first),
        *(cv.Path.LineTo(*point) for point in rest),
        cv.Path.Close(),
    ]
    return cv.Path(elements, ft.Paint(color=getattr(palette, shape.role)))


def _disc(shape: Disc, palette: Palette) -> cv.Circle:
    if not shape.open:
        return cv.Circle(
            shape.x, shape.y, shape.radius, ft.Paint(color=getattr(palette, shape.role))
        )
    outline = ft.Paint(
        color=palette.ink,
        style=ft.PaintingStyle.STROKE,
        stroke_width=2,
        stroke_dash_pattern=[6, 4],
    )
    return cv.Circle(shape.x, shape.y, shape.radius, outline)


def _bars(shape: Bars, palette: Palette) -> cv.Points:
    ends = [point for x1, x2, y in shape.bars for point in ((x1, y), (x2, y))]
    paint = ft.Paint(
        color=getattr(palette, shape.role),
        stroke_width=shape.width,
        anti_alias=False,
        style=ft.PaintingStyle.STROKE,
    )
    return cv.Points(ends, cv.PointMode.LINES, paint)


LINES = {"deck": "ink", "limit": "failed", "bite": "ink", "edge": "ink"}
LABELS = {
    "on-block": "on_block",
    "on-wire": "on_wire",
    "on-sheet": "on_sheet",
    "on-groove": "ink",
}


def _line(shape: Line, palette: Palette) -> cv.Line:
    paint = ft.Paint(
        color=getattr(palette, LINES.get(shape.role, shape.role)),
        stroke_width=shape.width,
        stroke_dash_pattern=[8, 5] if shape.dashed else None,
        style=ft.PaintingStyle.STROKE,
    )
    return cv.Line(shape.x1, shape.y1, shape.x2, shape.y2, paint)


def _label(shape: Label, palette: Palette) -> cv.Text:
    return cv.Text(
        x=shape.x,
        y=shape.y,
        value=shape.text,
        alignment=ft.Alignment(2.0 * shape.anchor - 1.0, -1.0),
        style=ft.TextStyle(
            size=shape.size,
            color=getattr(palette, LABELS.get(shape.role, shape.role)),
            weight=ft.FontWeight.W_700,
        ),
    )
