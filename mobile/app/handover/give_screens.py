"""The ways out of a job: the sentence, the report, the table, a message, a link, codes."""

import flet as ft
import flet.canvas as cv

from core.texts import text
from mobile.app.drawing.code import QUIET_ZONE, draw_code, module_size
from mobile.app.handover import desk
from mobile.app.handover.actions import ShareOneFile
from mobile.app.handover.giving import Ready
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.views.frame import Screen, action_key, group, quiet, title, wide_button
from mobile.app.views.look import Look
from mobile.app.views.parts import said, words
from mobile.app.views.section_view import drawn

UNDER_A_CODE = 250.0
"""What stands over and under a code [px]."""


def give_screen(jobs: Jobs, look: Look) -> Screen:
    """The sentence first: whoever is on the phone waits."""
    made = jobs.hand.ready
    if made is None:
        line = text("giving.making")
        again = wide_button(
            look, "make-ready", text("giving.again"), lambda: jobs.run(desk.give, jobs)
        )
        return Screen(
            title=text("giving.title"), body=[said("making", line, quiet(look, line)), again]
        )
    return Screen(
        title=text("giving.title"),
        body=[
            *_sentence(made, look),
            *_report(jobs, made, look),
            *_table(jobs, made, look),
            *_message(made, look),
            *_link(jobs, made, look),
        ],
    )


def _sentence(made: Ready, look: Look) -> list[ft.Control]:
    line = made.sentence
    return [
        said("job-sentence", line, words(look, line, look.title_size, bold=True)),
        _copy(look, "copy-sentence", text("giving.sentence.copy"), line),
    ]


def _report(jobs: Jobs, made: Ready, look: Look) -> list[ft.Control]:
    opened = ft.OpenUrl(jobs.hand.address)
    return [
        title(look, text("giving.report")),
        quiet(look, text("giving.report.what")),
        action_key(look, "open-report", text("giving.report.open"), opened, ft.Icons.OPEN_IN_NEW),
        *_file(jobs, look, "report", made.page_name, made.page),
    ]


def _table(jobs: Jobs, made: Ready, look: Look) -> list[ft.Control]:
    return [
        title(look, text("giving.table")),
        *_file(jobs, look, "table", made.table_name, made.table),
    ]


def _message(made: Ready, look: Look) -> list[ft.Control]:
    share = ft.ShareText(made.message)
    return [
        title(look, text("giving.message")),
        said("message", made.message, group(look, words(look, made.message, look.small_size))),
        action_key(look, "share-message", text("giving.send"), share, ft.Icons.SHARE),
        _copy(look, "copy-message", text("giving.copy"), made.message),
    ]


def _link(jobs: Jobs, made: Ready, look: Look) -> list[ft.Control]:
    left_out = [quiet(look, text("giving.left_out", n=made.left_out))] if made.left_out else []
    return [
        title(look, text("giving.link")),
        quiet(look, text("giving.link.what")),
        *left_out,
        wide_button(
            look,
            "codes",
            text("giving.codes"),
            lambda: desk.show_codes(jobs),
            icon=ft.Icons.QR_CODE_2,
            filled=True,
        ),
        action_key(
            look, "share-link", text("giving.link.send"), ft.ShareText(made.link), ft.Icons.SHARE
        ),
        _copy(look, "copy-job-link", text("giving.link.copy"), made.link),
    ]


def _file(jobs: Jobs, look: Look, what: str, name: str, data: bytes) -> list[ft.Control]:
    return [
        wide_button(
            look,
            f"save-{what}",
            text("giving.save", name=name),
            lambda: jobs.run(desk.save, jobs, name, data),
            icon=ft.Icons.DOWNLOAD,
        ),
        action_key(
            look,
            f"share-{what}",
            text("giving.send"),
            ShareOneFile(name=name, data=data),
            ft.Icons.SHARE,
        ),
    ]


def _copy(look: Look, identifier: str, label: str, value: str) -> ft.Control:
    return action_key(look, identifier, label, ft.CopyToClipboard(value), ft.Icons.CONTENT_COPY)


def codes_screen(jobs: Jobs, look: Look) -> Screen:
    """One code as large as the screen allows, and the keys to the others."""
    hand = jobs.hand
    if not hand.codes:
        desk_again = wide_button(
            look, "make-codes", text("giving.codes"), lambda: desk.show_codes(jobs), filled=True
        )
        return Screen(title=text("giving.codes.title"), body=[desk_again])
    code = hand.codes[hand.number]
    line = text("giving.code", number=code.part.number, of=code.part.of)
    return Screen(
        title=text("giving.codes.title"),
        body=[
            said("code", line, words(look, line, look.row_size, bold=True), live=True),
            ft.Row([_code(code.rows, look)], alignment=ft.MainAxisAlignment.CENTER),
            quiet(look, text("giving.codes.what")),
        ],
        foot=_turning(jobs, look) if code.part.of > 1 else None,
    )


def _code(rows: tuple[tuple[bool, ...], ...], look: Look) -> ft.Control:
    side = min(look.width - 20.0, max(look.height - UNDER_A_CODE, 240.0))
    edge = module_size(rows, side) * (len(rows) + 2 * QUIET_ZONE)
    shapes = [drawn(each, look.palette) for each in draw_code(rows, side)]
    return said(
        "code-picture",
        text("giving.code.picture"),
        cv.Canvas(width=edge, height=edge, shapes=shapes),
    )


def _turning(jobs: Jobs, look: Look) -> ft.Control:
    before, after = (
        wide_button(look, name, text(f"giving.{name}"), lambda step=step: desk.turn(jobs, step))
        for name, step in (("code-before", -1), ("code-after", 1))
    )
    return ft.Container(
        padding=ft.Padding.symmetric(horizontal=10),
        content=ft.Row([ft.Container(each, expand=True) for each in (before, after)], spacing=6),
    )
