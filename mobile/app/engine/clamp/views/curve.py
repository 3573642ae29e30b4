"""Height against load of one cylinder."""

import flet as ft
import flet.canvas as cv

from core.calc.load_curve import LoadCurve, load_curve
from core.texts import text
from core.texts.length import Length
from mobile.app.drawing.height_load import CurveLabels, draw_height_load
from mobile.app.engine.clamp.model import Clamp
from mobile.app.engine.clamp.told import shown_cylinder
from mobile.app.engine.clamp.views.answer import cylinder_row
from mobile.app.engine.clamp.views.picture_size import inner_width, picture_text
from mobile.app.views.look import Look
from mobile.app.views.parts import panel, said, words
from mobile.app.views.section_view import drawn

SHARE = 0.72
TALLEST = 380.0


def curve_part(clamp: Clamp, look: Look) -> list[ft.Control]:
    """The picture, what it says in words, and what it rests on."""
    engine, form = clamp.told.engine, clamp.told.form
    assert engine is not None
    assert form is not None
    loads = shown_cylinder(clamp.entry, engine).loads
    curve = load_curve(form.joint, loads, form.sheet)
    lines = _lines(curve, clamp.metric())
    return [
        *cylinder_row(clamp, look),
        said("height-load", " ".join(lines), _picture(curve, clamp.metric(), look)),
        panel(look, *(words(look, line, look.body_size) for line in lines), gap=6),
        words(look, text("clamp.curve.key"), look.small_size, colour=look.palette.quiet),
    ]


def _picture(curve: LoadCurve, metric: bool, look: Look) -> ft.Control:
    width = inner_width(look)
    height = min(SHARE * width, TALLEST)
    picture = draw_height_load(curve, _labels(curve, metric, look), width, height)
    return ft.Container(
        content=cv.Canvas(
            width=width,
            height=height,
            shapes=[drawn(each, look.palette) for each in picture.shapes],
        ),
        width=width,
        height=height,
        border_radius=12,
        clip_behavior=ft.ClipBehavior.HARD_EDGE,
        bgcolor=look.palette.panel,
    )


def _labels(curve: LoadCurve, metric: bool, look: Look) -> CurveLabels:
    today = Length(curve.today).shown(metric=metric)
    quarter = Length(curve.quarter or 0.0).shown(metric=metric)
    return CurveLabels(
        today=text("clamp.curve.today", height=today),
        quarter=text("clamp.curve.quarter", height=quarter),
        slack=text("clamp.curve.slack"),
        wire=text("clamp.bar.wire"),
        body=text("clamp.bar.body"),
        clamp=text("clamp.curve.clamp"),
        low=text("clamp.curve.low"),
        slack_low=text("clamp.curve.slack_low"),
        size=picture_text(look),
    )


def _lines(curve: LoadCurve, metric: bool) -> list[str]:
    """What the picture says, in words."""

    def shown(height: float | None) -> str:
        if height is None:
            return text("clamp.any_height")
        return f"{Length(height).shown(metric=metric):size}"

    hardest, softest = curve.slack_height
    lines = [text("clamp.curve.line.today", height=shown(curve.today))]
    lines.append(text("clamp.curve.line.slack", hardest=shown(hardest), softest=shown(softest)))
    lines.append(text("clamp.curve.line.low", height=shown(curve.slack_at_low_clamp)))
    if curve.quarter is None:
        lines.append(text("clamp.curve.line.no_sheet"))
    else:
        lines.append(text("clamp.curve.line.quarter", height=shown(curve.quarter)))
    return lines
