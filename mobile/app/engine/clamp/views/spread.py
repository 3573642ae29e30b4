"""How far a load may be off, what that rests on, and ten thousand draws beside it."""

import flet as ft
import flet.canvas as cv

from core.calc.clamp import CylinderLoads
from core.calc.clamp_draws import DRAWS, QUANTITIES, Compared
from core.texts import text
from core.texts.force import Force
from core.texts.share import Share
from core.uncertain import Explained
from mobile.app.drawing.share_bar import draw_share_bar
from mobile.app.engine.clamp.draws import SEED, Draws
from mobile.app.engine.clamp.model import Clamp
from mobile.app.engine.clamp.told import shown_cylinder
from mobile.app.engine.clamp.views.answer import cylinder_row
from mobile.app.engine.clamp.views.picture_size import inner_width
from mobile.app.views.look import Look
from mobile.app.views.parts import button, field_height, in_rows, on_fill, panel, said, words
from mobile.app.views.section_view import drawn

BAR_HEIGHT = 14.0
COUNTS = 0.0005
"""Shares smaller than this are left out: they would read 0 %."""


def spread_part(clamp: Clamp, look: Look) -> list[ft.Control]:
    """Shares of one load of one cylinder, and the draws."""
    engine = clamp.told.engine
    assert engine is not None
    loads = shown_cylinder(clamp.entry, engine).loads
    quantity = clamp.entry.quantity
    buttons = [_quantity(clamp, each, each == quantity, look) for each in QUANTITIES]
    return [
        *cylinder_row(clamp, look),
        *in_rows(buttons, look, columns=2),
        _shares(_explained(loads, quantity), quantity, look),
        drawn_engines(clamp, clamp.draws, loads.cylinder.name, look),
    ]


def _explained(loads: CylinderLoads, quantity: str) -> Explained:
    return {
        "clamp": loads.clamp,
        "left": loads.left,
        "body-at-least": loads.body_at_least,
        "body-at-most": loads.body_at_most,
    }[quantity]


def _quantity(clamp: Clamp, quantity: str, here: bool, look: Look) -> ft.Control:
    title = text(f"clamp.quantity.{quantity}")
    return button(
        look,
        f"spread-{quantity}",
        title,
        words(
            look,
            title,
            look.body_size,
            bold=True,
            colour=on_fill(look, here),
            align=ft.TextAlign.CENTER,
        ),
        lambda: clamp.show_quantity(quantity),
        height=field_height(look),
        expand=True,
        filled=here,
        selected=here,
    )


def _shares(explained: Explained, quantity: str, look: Look) -> ft.Control:
    pairs = zip(explained.terms, explained.shares, strict=True)
    rows = sorted(
        ((term.name, share) for term, share in pairs if share > COUNTS), key=lambda row: -row[1]
    )
    value = text(
        "clamp.spread.value",
        quantity=text(f"clamp.quantity.{quantity}"),
        value=Force(explained.value),
        u=Force(explained.u),
    )
    told = [text("clamp.spread.row", share=Share(share), input=name) for name, share in rows]
    notes = (
        text("clamp.spread.formula", formula=explained.formula, source=explained.source),
        *(text("clamp.spread.assumes", what=each) for each in explained.assumptions),
    )
    return said(
        "spread-shares",
        f"{value}. {'. '.join(told)}.",
        panel(
            look,
            words(look, value, look.body_size, bold=True),
            *(_share(line, share, look) for line, (_, share) in zip(told, rows, strict=True)),
            *(words(look, each, look.small_size, colour=look.palette.quiet) for each in notes),
            gap=6,
        ),
    )


def _share(line: str, share: float, look: Look) -> ft.Control:
    width = inner_width(look) - 20.0
    shapes = draw_share_bar(share, width, BAR_HEIGHT)
    bar = cv.Canvas(
        width=width, height=BAR_HEIGHT, shapes=[drawn(each, look.palette) for each in shapes]
    )
    return ft.Column([words(look, line, look.body_size), bar], spacing=2, tight=True)


@ft.component
def drawn_engines(clamp: Clamp, draws: Draws, cylinder: str, look: Look) -> ft.Control:
    """The draws: a way to start them, how far they are, what came out."""
    title = words(look, text("clamp.draws.title"), look.row_size, bold=True)
    note = words(
        look,
        text("clamp.draws.note", draws=DRAWS, seed=SEED),
        look.small_size,
        colour=look.palette.quiet,
    )
    if draws.running:
        return panel(look, title, note, *_progress(clamp, draws, look), gap=6)
    rows = [_compared(row, look) for row in draws.compared if row.cylinder == cylinder]
    again = "clamp.draws.again" if rows else "clamp.draws.start"
    return panel(look, title, note, *rows, _wide(look, "draw", text(again), clamp.draw), gap=6)


def _wide(look: Look, identifier: str, line: str, on_tap) -> ft.Control:
    face = words(look, line, look.body_size, bold=True, colour=look.palette.on_copper)
    return ft.Row([button(look, identifier, line, face, on_tap, expand=True, filled=True)])


def _progress(clamp: Clamp, draws: Draws, look: Look) -> list[ft.Control]:
    line = text("clamp.draws.progress", done=draws.done, draws=DRAWS)
    bar = ft.ProgressBar(value=draws.done / DRAWS, color=look.palette.copper, bar_height=10)
    return [
        said("drawing", line, ft.Column([words(look, line, look.body_size), bar], spacing=4)),
        _wide(look, "stop-drawing", text("clamp.draws.stop"), clamp.stop),
    ]


def _compared(row: Compared, look: Look) -> ft.Control:
    line = text(
        f"clamp.draws.{'near' if row.near_linear else 'far'}",
        quantity=text(f"clamp.quantity.{row.quantity}"),
        drawn=Force(row.u),
        first=Force(row.first_order_u),
    )
    above = text(
        "clamp.draws.above",
        drawn=Share(row.above_zero),
        first=Share(row.first_order_above_zero),
    )
    lines = [words(look, line, look.body_size, bold=True), words(look, above, look.body_size)]
    return said(
        f"drawn-{row.quantity}", f"{line}. {above}", ft.Column(lines, spacing=0, tight=True)
    )
