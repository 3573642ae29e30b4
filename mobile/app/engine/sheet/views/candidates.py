"""Every sheet as a card, side by side against the sheet on now."""

from collections.abc import Iterator

import flet as ft

from core.calc.choice import HEIGHT_PARTS, SheetRow
from core.texts import text
from core.texts.length import Length
from core.texts.share import Share
from mobile.app.engine.sheet.found import Found
from mobile.app.engine.sheet.model import SheetChoice
from mobile.app.engine.sheet.shown import size, small
from mobile.app.views.look import Look
from mobile.app.views.parts import button, in_rows, words
from mobile.app.views.verdict_sign import colour, sign

LINE = 1.42


def candidates(sheet: SheetChoice, found: Found, look: Look) -> list[ft.Control]:
    """The cards, thinnest first; a tap looks at one."""
    rows = found.choice.rows
    if not rows:
        return []
    most = max(len((*_lines(found, row), *_barred(row))) for row in rows)
    columns = 2 if look.roomy else 1
    cards = [_card(sheet, found, row, most, look) for row in rows]
    title = words(look, text("sheet.candidates"), look.row_size, bold=True)
    return [title, *in_rows(cards, look, columns=columns)]


def _card(
    sheet: SheetChoice, found: Found, row: SheetRow, most: int, look: Look
) -> ft.Control:
    thickness = row.candidate.sheet.thickness
    here = found.row is not None and found.row.candidate == row.candidate
    lines, barred = tuple(_lines(found, row)), tuple(_barred(row))
    title = _title(found, row)
    tall = LINE * look.text_scale * (look.row_size + most * look.small_size) + 24.0
    return button(
        look,
        f"sheet-{Length(thickness):in}",
        ". ".join((title, text(f"verdict.{row.verdict}"), *lines, *map(_not, barred))),
        ft.Container(
            _face(title, lines, barred, row, look), padding=8, alignment=ft.Alignment.TOP_LEFT
        ),
        lambda: sheet.pick(thickness),
        height=tall,
        expand=True,
        ring=here,
        colour=look.palette.panel,
        selected=here,
    )


def _not(part: str) -> str:
    return text("sheet.card.not", what=part)


def _face(
    title: str, lines: tuple[str, ...], barred: tuple[str, ...], row: SheetRow, look: Look
) -> ft.Control:
    fit = row.fit.verdict if row.fit else row.verdict
    word = row.fit.word if row.fit and fit is row.verdict else ""
    head = ft.Row(
        [
            sign(look, row.verdict, word, look.row_size),
            words(look, title, look.row_size, bold=True, one_line=True, expand=True),
        ],
        spacing=5,
    )
    first, *rest = lines
    return ft.Column(
        [
            head,
            words(look, first, look.small_size, bold=True, colour=colour(look, fit), one_line=True),
            *(words(look, line, look.small_size, one_line=True) for line in rest),
            *(_bar(part, look) for part in barred),
        ],
        spacing=0,
        tight=True,
    )


def _title(found: Found, row: SheetRow) -> str:
    metric = found.basis.metric
    if len(row.candidate.parts) > 1:
        return " + ".join(
            size(each.thickness, metric).partition(" ")[0] for each in row.candidate.parts
        )
    return size(row.candidate.sheet.thickness, metric)


def _lines(found: Found, row: SheetRow) -> Iterator[str]:
    """The same lines on every card, so that cards read across."""
    yield f"{Share(row.fit.share)} {text(f'word.{row.fit.word}')}" if row.fit else text(
        f"verdict.{row.verdict}"
    )
    yield from _against_now(row, found.basis.metric)


def _barred(row: SheetRow) -> Iterator[str]:
    """Parts besides the wire that do not allow the sheet."""
    for part in row.excluded_by:
        if part not in HEIGHT_PARTS:
            yield text(f"windows.name.{part}")


def _bar(part: str, look: Look) -> ft.Control:
    tint = look.palette.failed
    icon = ft.Icon(
        ft.Icons.DO_NOT_DISTURB_ON, color=tint, size=look.small_size * look.text_scale
    )
    line = words(look, part, look.small_size, colour=tint, one_line=True, expand=True)
    return ft.Row([icon, line], spacing=4)


def _against_now(row: SheetRow, metric: bool) -> Iterator[str]:
    card = row.card
    if card is None:
        return
    if not card.rise:
        yield text("sheet.card.on_now")
    else:
        way = "up" if card.rise > 0.0 else "down"
        yield text(f"sheet.card.{way}", much=small(abs(card.rise), metric))
    for what, moved in (
        ("piston", card.piston_to_head),
        ("intake", card.intake_valve),
        ("exhaust", card.exhaust_valve),
    ):
        if moved is not None:
            yield text(f"sheet.card.{what}", size=size(moved.then, metric))
    if card.ratio is not None:
        yield text("sheet.card.ratio", ratio=card.ratio.then)
