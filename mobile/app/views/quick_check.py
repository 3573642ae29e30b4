"""The quick check: the answer, the picture, the words; the leaves under the thumb."""

import flet as ft

from core.texts import text
from mobile.app.model import App
from mobile.app.views.answer_panel import answer_panel
from mobile.app.views.banner import notices, questions
from mobile.app.views.fields import fields
from mobile.app.views.leaf_pad import leaf_pad
from mobile.app.views.look import Look
from mobile.app.views.number_pad import number_pad
from mobile.app.views.parts import button, words
from mobile.app.views.read_back import read_back
from mobile.app.views.section_view import section_view
from mobile.app.views.verdict_list import verdict_list

SIDES = 12.0
SECTION_SHARE = 0.42
LARGEST_SECTION = 340.0


def quick_check(app: App, look: Look) -> ft.Control:
    """Answer and pad stay; what lies between scrolls. On a wide screen they stand side by side."""
    head = ft.Column([*_first(app, look), answer_panel(app, look)], spacing=4, tight=True)
    rest = [*_later(app, look), *_details(app, look)]
    if look.wide:
        return _panes(app, look, head, rest)
    between = _scrolling([*_picture(app, look), *rest])
    return ft.Column([head, between, _foot(app, look)], expand=True, spacing=0)


def _first(app: App, look: Look) -> list[ft.Control]:
    """What stands over the answer: on a low screen only what waits for a word."""
    return [*questions(app, look), *([] if look.low else notices(app, look))]


def _later(app: App, look: Look) -> list[ft.Control]:
    return notices(app, look) if look.low else []


def _foot(app: App, look: Look) -> ft.Control:
    """The pad; on a low screen a question takes its place until it is answered."""
    if look.low and app.asks():
        return ft.Container()
    pad = number_pad(app.keys(), look) if app.entry.open_field else leaf_pad(app, look)
    return ft.Container(content=pad, padding=ft.Padding.only(top=4, bottom=4))


def _panes(app: App, look: Look, head: ft.Control, rest: list[ft.Control]) -> ft.Control:
    """Answer and pad left, the rest right; on a phone laid on its side the pad right, too."""
    picture, pad = _scrolling(_picture(app, look)), _foot(app, look)
    details = _scrolling([ft.Container(height=4), *rest])
    left = [head, picture] if look.low else [head, picture, pad]
    right = [details, pad] if look.low else [details]
    return ft.Row(
        [
            ft.Column(left, width=look.pane, spacing=0),
            ft.VerticalDivider(width=1),
            ft.Column(right, expand=True, spacing=0),
        ],
        expand=True,
        spacing=0,
    )


def _scrolling(controls: list[ft.Control]) -> ft.Control:
    column = ft.Column(controls, scroll=ft.ScrollMode.AUTO, expand=True, spacing=10)
    return ft.Container(content=column, padding=ft.Padding.symmetric(horizontal=SIDES), expand=True)


def _picture(app: App, look: Look) -> list[ft.Control]:
    width = look.pane - 2 * SIDES
    return [section_view(app, look, width, min(width * SECTION_SHARE, LARGEST_SECTION))]


def _details(app: App, look: Look) -> list[ft.Control]:
    return [
        fields(app, look),
        verdict_list(app.told, app.entered(), look),
        read_back(app, look),
        words(look, text("caution.main"), look.small_size, colour=look.palette.quiet),
        *_to_engine(app, look),
        *_to_job(app, look),
        _anew(app, look),
    ]


def _to_engine(app: App, look: Look) -> list[ft.Control]:
    """A height that is read leads on to everything else that the sheet changes."""
    if app.told.answer is None:
        return []
    label = text("sheet.open")
    face = words(look, label, look.body_size, bold=True, one_line=True)
    return [ft.Row([button(look, "open-engine", label, face, app.open_engine, expand=True)])]


def _to_job(app: App, look: Look) -> list[ft.Control]:
    """A check that says something can be kept in a job."""
    if app.to_job is None or app.told.answer is None:
        return []
    label = text("jobs.keep_check")
    face = words(look, label, look.body_size, bold=True, one_line=True)
    return [ft.Row([button(look, "keep-in-job", label, face, app.to_job, expand=True)])]


def _anew(app: App, look: Look) -> ft.Control:
    restore = app.dropped is not None
    key = "screen.bring_back" if restore else "screen.anew"
    return ft.Row(
        [
            button(
                look,
                "bring-back" if restore else "new-check",
                text(key),
                words(look, text(key), look.body_size, bold=True, one_line=True),
                app.bring_back if restore else app.begin_anew,
                expand=True,
            )
        ]
    )
