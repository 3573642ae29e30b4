"""The answer, always in view: height, every sheet, the one to run, the leaf to try."""

from typing import Any

import flet as ft

from core.calc.quick_check import Answer
from core.calc.shelf import ShelfRow
from core.texts import text
from core.texts.length import Length
from core.texts.share import Share
from mobile.app.model import App
from mobile.app.state import phrases
from mobile.app.state.told import Told
from mobile.app.views.look import Look
from mobile.app.views.parts import button, in_rows, said, words
from mobile.app.views.verdict_sign import colour, sign

TARGET = 52.0
"""Least height of a sheet on the strip, where two stand side by side [px]."""


def answer_panel(app: App, look: Look) -> ft.Control:
    """What is known now, or what is missing."""
    told = app.told
    lines = _answer(app, told.answer, look) if told.answer else [_missing(told, look)]
    return ft.Container(
        content=ft.Column(lines, spacing=2, tight=True),
        padding=ft.Padding.only(left=12, right=12, top=6, bottom=4),
    )


def _missing(told: Told, look: Look) -> ft.Control:
    wrong = " ".join(each.sentence for each in told.faults)
    line = wrong or text("screen.tap_a_leaf")
    tint = look.palette.failed if wrong else look.palette.ink
    return said(
        "height", line, words(look, line, look.title_size, bold=True, colour=tint), live=True
    )


def _answer(app: App, answer: Answer, look: Look) -> list[ft.Control]:
    return [
        _height(answer, look),
        _strip(app, answer, look),
        _suggestion(app, answer, look),
        _next_leaf(app.told, look),
    ]


def _height(answer: Answer, look: Look) -> ft.Control:
    height = answer.asked.height
    large, small = phrases.height_lines(height)
    lines = [words(look, large, look.height_size, bold=True, one_line=True)]
    if look.roomy:
        lines.append(words(look, small, look.small_size, colour=look.palette.quiet, one_line=True))
    return said(
        "height",
        phrases.height_phrase(height),
        ft.Column(lines, spacing=0, tight=True),
    )


def _strip(app: App, answer: Answer, look: Look) -> ft.Control:
    rows = answer.shelf or ((answer.gasket,) if answer.gasket else ())
    phrase = " ".join(phrases.row_phrase(row) for row in rows)
    run = answer.suggestion.run if answer.suggestion else None
    return ft.Semantics(
        identifier="strip",
        label=phrase or text("screen.no_shelf"),
        container=True,
        content=ft.Column(
            in_rows(
                [_sheet(app, row, row.sheet == run, look) for row in rows],
                look,
                gap=4.0,
                columns=2 if look.roomy else 1,
            )
            or [words(look, text("screen.no_shelf"), look.body_size)],
            spacing=4 if look.roomy else 2,
            tight=True,
        ),
    )


def _sheet(app: App, row: ShelfRow, chosen: bool, look: Look) -> ft.Control:
    """One sheet; a tap draws it in the section."""
    return button(
        look,
        f"shelf-{Length(row.sheet.thickness):in}",
        phrases.row_phrase(row),
        (_two_lines if look.roomy else _one_line)(app, row, chosen, look),
        lambda: app.draw_sheet(row.sheet.thickness),
        height=_sheet_height(look),
        expand=True,
        ring=chosen,
        colour=look.palette.panel,
        selected=app.entry.drawn_mm == row.sheet.thickness,
    )


def _sheet_height(look: Look) -> float:
    lines = 2.55 if look.roomy else 1.45
    least = TARGET if look.roomy else 0.0
    return max(least, lines * look.row_size * look.text_scale + 7.0)


def _two_lines(app: App, row: ShelfRow, chosen: bool, look: Look) -> ft.Control:
    size = f"{_label(row, app, look)} · {Share(row.share)}"
    return ft.Row(
        [
            sign(look, row.verdict, row.word, 1.6 * look.row_size),
            ft.Column(
                [
                    words(look, size, look.row_size * 0.9, bold=chosen, one_line=True),
                    _word(row, look.row_size * 0.9, look),
                ],
                spacing=0,
                tight=True,
                expand=True,
            ),
        ],
        spacing=6,
    )


def _one_line(app: App, row: ShelfRow, chosen: bool, look: Look) -> ft.Control:
    size = f"{_label(row, app, look)} {Share(row.share)}"
    return ft.Row(
        [
            sign(look, row.verdict, row.word, look.row_size),
            words(look, size, look.row_size, bold=chosen, one_line=True),
            _word(row, look.row_size, look, align=ft.TextAlign.END, expand=True),
        ],
        spacing=3,
    )


def _word(row: ShelfRow, size: float, look: Look, **placed: Any) -> ft.Text:
    return words(
        look,
        text(f"word.{row.word}"),
        size,
        colour=colour(look, row.verdict),
        bold=True,
        one_line=True,
        **placed,
    )


def _label(row: ShelfRow, app: App, look: Look) -> str:
    label = phrases.sheet_label(row.sheet, app.entry.metric)
    return label if look.roomy else label.partition(" ")[0]


def _suggestion(app: App, answer: Answer, look: Look) -> ft.Control:
    line = phrases.suggestion_line(answer, app.entry.metric)
    why = phrases.suggestion_reasons(answer.suggestion) if answer.suggestion else ""
    parts = [
        words(look, line, look.title_size, bold=True, colour=look.palette.copper, one_line=True)
    ]
    if look.roomy and answer.suggestion:
        first = str(answer.suggestion.because[0])
        parts.append(words(look, first, look.small_size, colour=look.palette.quiet))
    return said("suggestion", f"{line}. {why}", ft.Column(parts, spacing=0, tight=True), live=True)


def _next_leaf(told: Told, look: Look) -> ft.Control:
    assert told.answer is not None
    leaf = told.answer.next_leaf
    phrase = phrases.leaf_line(leaf, told.metric) if leaf else text("screen.settled")
    line = text("leaf.try", leaf=phrases.leaf_marks(leaf, told.metric)) if leaf else phrase
    return said("next-leaf", phrase, words(look, line, look.body_size, one_line=True))
