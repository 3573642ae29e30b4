"""Tightening in steps, in the order of the bolt pattern, and what is to do when it is cold."""

import flet as ft
import flet.canvas as cv

from core.calc.fastener_layout import HeadPattern
from core.calc.preload import ByTorque
from core.calc.tightening import STEPS, Step, reminders, sequence, steps
from core.texts import text
from core.units import in_unit
from mobile.app.drawing.fastener_order import draw_order
from mobile.app.engine.clamp.model import Clamp
from mobile.app.engine.clamp.views.picture_size import inner_width, picture_text
from mobile.app.engine.clamp.views.wording import sentence
from mobile.app.views.look import Look
from mobile.app.views.parts import button, panel, said, words
from mobile.app.views.section_view import drawn


def tighten_part(clamp: Clamp, look: Look) -> list[ft.Control]:
    """The picture and the turn at hand, every step, the reminders."""
    form = clamp.told.form
    assert form is not None
    return [
        *(_at_hand(clamp, form.pattern, look) if form.pattern else [_no_pattern(look)]),
        _steps(clamp, look),
        _retorque(look),
    ]


def _no_pattern(look: Look) -> ft.Control:
    line = text("clamp.tighten.no_pattern")
    return said("no-pattern", line, words(look, line, look.body_size))


def _at_hand(clamp: Clamp, pattern: HeadPattern, look: Look) -> list[ft.Control]:
    order = sequence(pattern.fasteners)
    finished, done = divmod(clamp.entry.turns, len(order))
    over = finished == STEPS
    shown = len(order) if over else done
    width = inner_width(look)
    picture = draw_order(pattern, order, shown, width, picture_text(look))
    line = (
        text("clamp.tighten.over")
        if over
        else text(
            "clamp.tighten.now",
            number=done + 1,
            count=len(order),
            step=_step_line(clamp, steps()[finished]),
        )
    )
    canvas = cv.Canvas(
        width=width,
        height=picture.height,
        shapes=[drawn(each, look.palette) for each in picture.shapes],
    )
    return [
        said("turn", line, words(look, line, look.row_size, bold=True), live=True),
        said("fastener-order", text("clamp.tighten.picture", count=len(order)), canvas),
        ft.Row(
            [
                _turn(clamp, "turn-back", -1, False, look),
                _turn(clamp, "turn-next", 1, True, look),
            ],
            spacing=6,
        ),
        words(look, text("clamp.tighten.maker"), look.small_size, colour=look.palette.quiet),
    ]


def _turn(clamp: Clamp, identifier: str, by: int, filled: bool, look: Look) -> ft.Control:
    line = text(f"clamp.tighten.{identifier}")
    tint = look.palette.on_copper if filled else look.palette.ink
    face = words(look, line, look.body_size, bold=True, colour=tint, one_line=True)
    return button(
        look,
        identifier,
        line,
        face,
        lambda: clamp.turn(by),
        height=64,
        expand=2 if filled else 1,
        filled=filled,
    )


def _steps(clamp: Clamp, look: Look) -> ft.Control:
    lines = [_step_line(clamp, step) for step in steps()]
    head = words(look, text("clamp.tighten.steps"), look.row_size, bold=True)
    return said(
        "steps",
        ". ".join(lines),
        panel(look, head, *(words(look, line, look.body_size) for line in lines), gap=4),
    )


def _step_line(clamp: Clamp, step: Step) -> str:
    """A step with its torque, where the fasteners are tightened by torque."""
    form = clamp.told.form
    assert form is not None
    way = form.joint.tightening
    if not isinstance(way, ByTorque):
        return sentence(step.say)
    torque = step.share * way.torque
    return text(
        "clamp.tighten.step",
        step=sentence(step.say),
        foot=f"{in_unit(torque, 'lbf·ft'):.0f}",
        metre=f"{in_unit(torque, 'N·m'):.0f}",
    )


def _retorque(look: Look) -> ft.Control:
    lines = [sentence(each) for each in reminders()]
    head = words(look, text("clamp.tighten.cold"), look.row_size, bold=True)
    rows = [
        ft.Row(
            [
                ft.Icon(ft.Icons.ALARM, color=look.palette.copper, size=20 * look.text_scale),
                words(look, line, look.body_size, expand=True),
            ],
            spacing=8,
        )
        for line in lines
    ]
    return said("retorque", ". ".join(lines), panel(look, head, *rows, gap=4))
