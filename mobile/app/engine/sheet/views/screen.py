"""Which sheet, as a screen: the answer stays, one part of the rest scrolls."""

from functools import partial

import flet as ft

from core.texts import text
from mobile.app.engine.sheet.basis import Basis
from mobile.app.engine.sheet.entry import PARTS
from mobile.app.engine.sheet.found import Found, find
from mobile.app.engine.sheet.model import SheetChoice
from mobile.app.engine.sheet.shown import size
from mobile.app.engine.sheet.views.answer import answer, detail
from mobile.app.engine.sheet.views.candidates import candidates
from mobile.app.engine.sheet.views.chart import chart_view
from mobile.app.engine.sheet.views.conflict import conflict_panel
from mobile.app.engine.sheet.views.figures import figures
from mobile.app.engine.sheet.views.lacking import lacking
from mobile.app.engine.sheet.views.numbers import numbers, numbers_foot
from mobile.app.engine.sheet.views.swap import swap_card
from mobile.app.engine.sheet.views.what_if import what_if
from mobile.app.views.look import Look
from mobile.app.views.parts import button, on_fill, said, words

SIDES = 12.0
ICONS = {
    "choice": ft.Icons.ALIGN_HORIZONTAL_LEFT,
    "numbers": ft.Icons.EDIT_OUTLINED,
    "figures": ft.Icons.CALCULATE_OUTLINED,
}


@ft.component
def sheet_screen(sheet: SheetChoice, look: Look, above: list[ft.Control]) -> ft.Control:
    """The whole sub-screen.

    Parameters
    ----------
    above
        What leads to the other sub-screens; it scrolls with the rest.
    """
    found = find(sheet.entry, sheet.basis)
    if look.wide:
        return _two_panes(sheet, found, look, above)
    typing = sheet.entry.form.open_field is not None
    line = answer(found, look, short=typing or not look.roomy)
    head = [line, *([] if typing else [_parts(sheet, PARTS, look)])]
    return ft.Column(
        [
            _padded(ft.Column([*_trouble(sheet, found, look), *head], spacing=6, tight=True)),
            _scrolling([*([] if typing else above), *_part(sheet, found, look)]),
            *numbers_foot(sheet, look),
        ],
        expand=True,
        spacing=0,
    )


def _two_panes(
    sheet: SheetChoice, found: Found, look: Look, above: list[ft.Control]
) -> ft.Control:
    head = ft.Column([*_trouble(sheet, found, look), answer(found, look)], spacing=6, tight=True)
    left = ft.Column(
        [_padded(head), _scrolling([*above, *_choice(sheet, found, look)])],
        width=look.pane,
        spacing=0,
    )
    shown = "figures" if sheet.entry.part == "figures" else "numbers"
    part = figures(sheet.entry, found, look) if shown == "figures" else numbers(sheet, look)
    parts = _padded(_parts(sheet, ("numbers", "figures"), look))
    right = ft.Column(
        [parts, _scrolling(part), *numbers_foot(sheet, look)], spacing=0, expand=True
    )
    return ft.Row([left, ft.VerticalDivider(width=1), right], expand=True, spacing=0)


def _padded(content: ft.Control) -> ft.Control:
    return ft.Container(
        content=content, padding=ft.Padding.only(left=SIDES, right=SIDES, top=6, bottom=6)
    )


def _scrolling(controls: list[ft.Control]) -> ft.Control:
    column = ft.Column(controls, scroll=ft.ScrollMode.AUTO, expand=True, spacing=10)
    return ft.Container(content=column, padding=ft.Padding.symmetric(horizontal=SIDES), expand=True)


def _trouble(sheet: SheetChoice, found: Found, look: Look) -> list[ft.Control]:
    lines = filter(None, (sheet.trouble, found.basis.trouble))
    lines = [*lines, *(each.sentence for each in found.faults)]
    return [words(look, line, look.small_size, colour=look.palette.failed) for line in lines]


def _parts(sheet: SheetChoice, parts: tuple[str, ...], look: Look) -> ft.Control:
    return ft.Row([_to_part(sheet, part, look) for part in parts], spacing=4)


def _to_part(sheet: SheetChoice, part: str, look: Look) -> ft.Control:
    here = sheet.entry.part == part or (
        look.wide and part == "numbers" and sheet.entry.part == "choice"
    )
    tint = on_fill(look, here)
    label = text(f"sheet.part.{part}")
    face: list[ft.Control] = [ft.Icon(ICONS[part], color=tint, size=22)]
    if look.roomy:
        face.append(words(look, label, look.body_size, colour=tint, one_line=True, bold=here))
    content = ft.Row(face, spacing=4, alignment=ft.MainAxisAlignment.CENTER)
    return button(
        look,
        f"sheet-{part}",
        label,
        content,
        partial(sheet.show_part, part),
        height=50,
        expand=True,
        filled=here,
        selected=here,
    )


def _part(sheet: SheetChoice, found: Found, look: Look) -> list[ft.Control]:
    if sheet.entry.part == "numbers":
        return numbers(sheet, look)
    if sheet.entry.part == "figures":
        return figures(sheet.entry, found, look)
    return _choice(sheet, found, look)


def _choice(sheet: SheetChoice, found: Found, look: Look) -> list[ft.Control]:
    """Swap card first, then the picture, what could be moved, and every sheet."""
    why = [] if look.roomy else [words(look, detail(found), look.small_size)]
    return [
        *why,
        *_basis(sheet, found.basis, look),
        swap_card(found, look),
        chart_view(sheet.what_if, found, look, look.pane - 2 * SIDES),
        what_if(sheet, found, look),
        *conflict_panel(found, look),
        *lacking(sheet, found, look),
        *candidates(sheet, found, look),
        words(look, text("caution.main"), look.small_size, colour=look.palette.quiet),
    ]


def _basis(sheet: SheetChoice, basis: Basis, look: Look) -> list[ft.Control]:
    """What came from the check or the job, and the way back to it."""
    line = _from_where(basis)
    label = text("sheet.to_job" if basis.job else "sheet.to_check")
    face = ft.Row(
        [
            ft.Icon(ft.Icons.ARROW_BACK, color=look.palette.ink, size=20),
            words(look, label, look.body_size, bold=True, one_line=True),
        ],
        spacing=4,
        alignment=ft.MainAxisAlignment.CENTER,
    )
    told = said("sheet-basis", line, words(look, line, look.body_size))
    back = button(look, "to-check", label, face, sheet.leave, height=56, expand=2)
    if not look.roomy:
        return [told, ft.Row([back])]
    return [ft.Row([ft.Container(told, expand=3), back], spacing=6)]


def _from_where(basis: Basis) -> str:
    if basis.job:
        return text("sheet.basis.job", job=basis.job, rings=len(basis.rings))
    if basis.height is None:
        return text("sheet.basis.none")
    height = size(basis.height.value, basis.metric)
    return text(f"sheet.basis.{basis.height.bound}", height=height)
