"""What stays out of the choice for want of a number, each with a way to enter it."""

from functools import partial

import flet as ft

from core.calc.windows import LeftOut
from core.texts import text
from mobile.app.engine.sheet.fields import GROUP_OF_PART
from mobile.app.engine.sheet.found import Found
from mobile.app.engine.sheet.model import SheetChoice
from mobile.app.engine.sheet.shown import left_out
from mobile.app.views.look import Look
from mobile.app.views.parts import button, words

LETTERS_A_LINE = 46.0


def lacking(sheet: SheetChoice, found: Found, look: Look) -> list[ft.Control]:
    """One line a part; a tap leads to its numbers, or to the check for the wire."""
    missing = found.choice.left_out
    if not missing:
        return []
    title = words(look, text("sheet.left_out"), look.small_size, colour=look.palette.quiet)
    return [title, *(_line(sheet, each, look) for each in missing)]


def _line(sheet: SheetChoice, each: LeftOut, look: Look) -> ft.Control:
    line = left_out(each)
    group = GROUP_OF_PART.get(each.part)
    tint = look.palette.failed if each.faults else look.palette.ink
    face = ft.Row(
        [
            words(look, line, look.small_size, colour=tint, expand=True),
            ft.Icon(ft.Icons.CHEVRON_RIGHT, color=look.palette.quiet),
        ],
        spacing=4,
    )
    on_tap = sheet.leave if group is None else partial(sheet.show_group, group)
    lines = 1 + len(line) // max(1, int(LETTERS_A_LINE * min(look.letters, 1.3)))
    tall = max(52.0, 1.45 * lines * look.small_size * look.text_scale + 16.0)
    return ft.Row(
        [
            button(
                look, f"lacks-{each.part}", line, face, on_tap, height=tall, expand=True,
                colour=look.palette.panel,
            )
        ]
    )
