"""The sentence to read back on the phone, and the link that carries this check."""

import flet as ft

from core.texts import text
from mobile.app.model import App
from mobile.app.state import phrases
from mobile.app.views.look import Look
from mobile.app.views.parts import panel, said, words


def read_back(app: App, look: Look) -> ft.Control:
    """Why, what to say, and ways to pass it on."""
    answer = app.told.answer
    line = phrases.say_line(app.told)
    parts: list[ft.Control] = []
    if answer and answer.suggestion:
        parts.append(words(look, phrases.suggestion_reasons(answer.suggestion), look.body_size))
    parts += [
        words(look, text("say.title"), look.small_size, colour=look.palette.quiet),
        said("say", line, words(look, line, look.row_size, bold=True)),
    ]
    if answer:
        parts.append(_pass_on(app, line, look))
    return panel(look, *parts, gap=6)


def _pass_on(app: App, line: str, look: Look) -> ft.Control:
    link = app.link()
    return ft.Row(
        [
            _action(look, "share-say", text("say.share"), ft.ShareText(f"{line}\n{link}")),
            _action(look, "copy-link", text("say.copy_link"), ft.CopyToClipboard(link)),
        ],
        spacing=6,
    )


def _action(look: Look, identifier: str, label: str, action: ft.ClientAction) -> ft.Control:
    return ft.Semantics(
        identifier=identifier,
        container=True,
        content=ft.OutlinedButton(
            content=words(look, label, look.small_size, bold=True),
            action=action,
            style=ft.ButtonStyle(padding=14, side=ft.BorderSide(2, look.palette.copper)),
        ),
    )
