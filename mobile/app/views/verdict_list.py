"""Every verdict with word, value, limit, rule and how sure it is."""

import flet as ft

from core.texts import text
from core.texts.share import Sureness
from core.verdict import Check
from mobile.app.state import phrases
from mobile.app.state.told import Told
from mobile.app.views.look import Look
from mobile.app.views.parts import panel, said, words
from mobile.app.views.verdict_sign import colour, sign

NEEDS = {
    "height-to-gasket": ("gasket",),
    "bite": ("gasket",),
    "interference": ("wire", "groove-width"),
    "held": ("wire", "groove-depth"),
    "seated": ("wire", "groove-width", "groove-depth"),
}


def verdict_list(told: Told, entered: frozenset[str], look: Look) -> ft.Control:
    """Each check, or what it still lacks, named where it is missing."""
    checks = {check.id: check for check in told.answer.checks} if told.answer else {}
    return panel(
        look,
        *(
            _verdict(checks[name], _title(name, told), look)
            if name in checks
            else _lacking(name, entered, look)
            for name in NEEDS
        ),
        gap=8,
    )


def _title(name: str, told: Told) -> str:
    """The check, and the sheet it is about."""
    title = text(f"check.{name}")
    if NEEDS[name] != ("gasket",) or told.answer is None or told.answer.gasket is None:
        return title
    sheet = phrases.sheet_label(told.answer.gasket.sheet, told.metric)
    return text("verdict.of_sheet", check=title, sheet=sheet)


def _verdict(check: Check, title: str, look: Look) -> ft.Control:
    tint = colour(look, check.verdict)
    return said(
        f"verdict-{check.id}",
        phrases.verdict_phrase(check),
        ft.Row(
            [
                sign(look, check.verdict, check.word, look.row_size * 1.2),
                ft.Column(
                    [
                        words(
                            look,
                            title,
                            look.small_size,
                            colour=look.palette.quiet,
                        ),
                        words(
                            look, text(f"word.{check.word}"), look.row_size, bold=True, colour=tint
                        ),
                        words(look, _against(check), look.small_size),
                    ],
                    spacing=0,
                    tight=True,
                    expand=True,
                ),
            ],
            spacing=10,
            vertical_alignment=ft.CrossAxisAlignment.START,
        ),
    )


def _against(check: Check) -> str:
    sure = (
        "" if check.probability is None else text("phrase.sure", sure=Sureness(check.probability))
    )
    return text(
        "verdict.against",
        value=phrases.amount(check.value, check.unit),
        limit=phrases.amount(check.limit, check.unit),
        rule=text(f"rule.{check.rule}"),
        sure=sure,
    )


def _lacking(name: str, entered: frozenset[str], look: Look) -> ft.Control:
    lacking = [text(f"field.{field}") for field in NEEDS[name] if field not in entered]
    line = text(
        "verdict.lacks", check=text(f"check.{name}"), fields=", ".join(lacking) or text("field.go")
    )
    return said(
        f"verdict-{name}", line, words(look, line, look.small_size, colour=look.palette.quiet)
    )
