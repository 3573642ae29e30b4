"""What came from outside: a link that waits for a word, a new version, a fault of the draft."""

import flet as ft

from core.texts import text
from mobile.app.model import App
from mobile.app.state import phrases
from mobile.app.views.look import Look
from mobile.app.views.parts import button, on_fill, panel, said, words


def questions(app: App, look: Look) -> list[ft.Control]:
    """What a link brought and what waits for a word before anything else."""
    found = []
    if app.link_trouble:
        found.append(_trouble(app, look))
    if app.preview is not None:
        found.append(_preview(app, look))
    return found


def notices(app: App, look: Look) -> list[ft.Control]:
    """What may wait."""
    found = []
    if app.draft_trouble:
        found.append(_not_kept(app.draft_trouble, look))
    if app.page_state.new_version:
        found.append(
            _question(
                look,
                "new-version",
                text("device.new_version_ready"),
                (("use-new-version", "device.new_version", app.use_new_version),),
            )
        )
    return found


def _not_kept(why: str, look: Look) -> ft.Control:
    line = words(look, why, look.small_size, colour=look.palette.failed)
    return said("not-kept", why, panel(look, line), live=True)


def _trouble(app: App, look: Look) -> ft.Control:
    line = text("link.trouble", what=app.link_trouble)
    return _question(look, "link-trouble", line, (("close-link", "link.close", app.drop_link),))


def _preview(app: App, look: Look) -> ft.Control:
    told = app.previewed()
    line = text("link.preview", what=phrases.say_line(told))
    if look.low and told.answer:
        line = text(
            "link.preview.short",
            height=phrases.height_lines(told.answer.asked.height)[0],
            run=phrases.suggestion_line(told.answer, told.metric),
        )
    return _question(
        look,
        "link-preview",
        line,
        (("use-link", "link.use", app.use_link), ("keep-mine", "link.keep", app.drop_link)),
    )


def _question(look: Look, identifier: str, line: str, choices) -> ft.Control:
    buttons = [
        button(
            look,
            name,
            text(key),
            words(
                look,
                text(key),
                look.body_size,
                bold=True,
                one_line=True,
                colour=on_fill(look, index == 0),
            ),
            on_tap,
            height=48,
            filled=index == 0,
            expand=True,
        )
        for index, (name, key, on_tap) in enumerate(choices)
    ]
    return panel(
        look,
        said(identifier, line, words(look, line, look.body_size), live=True),
        ft.Row(buttons, spacing=6),
    )
