"""Every job: search as you type, state, last touched, and how safe the book is."""

import flet as ft

from core.forms.kept_words import state_words
from core.records.job_index import JobLine
from core.texts import text
from mobile.app.jobs import filing
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.room import backup_words, warnings
from mobile.app.jobs.state.told import counts, job_phrase
from mobile.app.jobs.state.when import when
from mobile.app.jobs.views.frame import Screen, group, quiet, text_input, way, wide_button
from mobile.app.overview import desk as narrowed
from mobile.app.overview.screens import narrow_way
from mobile.app.views.look import Look
from mobile.app.views.parts import button, said, words

MOST_SHOWN = 40


def job_list(jobs: Jobs, look: Look) -> Screen:
    """Search, new job, jobs, book."""
    lines = narrowed.lines(jobs)
    return Screen(
        title=text("jobs.title" if not jobs.desk.deleted else "jobs.title.deleted"),
        back=False,
        body=[
            *_warnings(jobs, look),
            *_name(jobs, look),
            text_input(look, "search", text("jobs.search"), jobs.desk.query, jobs.search),
            *narrow_way(jobs, look),
            _begin(jobs, look),
            *(job_line(jobs, line, look) for line in lines[:MOST_SHOWN]),
            *_rest(lines, jobs, look),
            *_foot(jobs, look),
        ],
    )


def _warnings(jobs: Jobs, look: Look) -> list[ft.Control]:
    assert jobs.book is not None
    kept = jobs.app.page_state.kept
    found = list(warnings(jobs.room, jobs.book.backup, kept, jobs.now()))
    if not found:
        return []
    line = " ".join(found)
    sign = ft.Icon(ft.Icons.WARNING_AMBER, color=look.palette.undecided, size=24)
    told = words(look, line, look.body_size, colour=look.palette.undecided, expand=True)
    return [said("warnings", line, ft.Row([sign, told], spacing=8))]


def _name(jobs: Jobs, look: Look) -> list[ft.Control]:
    """Who writes here is asked once; whoever does not say is not asked again today."""
    assert jobs.book is not None
    if jobs.book.device.name or not jobs.asks_name:
        return []

    def later() -> None:
        jobs.asks_name = False

    ask = text("jobs.device.ask")
    return [
        group(
            look,
            words(look, ask, look.body_size, bold=True),
            quiet(look, text("jobs.device.why")),
            wide_button(
                look, "name-device", text("jobs.device.name"), lambda: ask_name(jobs), filled=True
            ),
            wide_button(look, "name-later", text("jobs.device.later"), later),
        )
    ]


def ask_name(jobs: Jobs) -> None:
    """Type a name for this device."""
    assert jobs.book is not None
    name = jobs.book.device.name
    filing.ask_words(jobs, "", "", text("jobs.device.title"), name, ledger="device")


def _begin(jobs: Jobs, look: Look) -> ft.Control:
    return wide_button(
        look,
        "new-job",
        text("jobs.new"),
        lambda: jobs.go("new"),
        icon=ft.Icons.ADD,
        filled=True,
    )


def job_line(jobs: Jobs, line: JobLine, look: Look) -> ft.Control:
    """One job: title, engine, state, when it was last touched."""
    palette = look.palette
    here = jobs.desk.job == line.id
    title = line.title or text("jobs.untitled")
    touched = text("jobs.line.touched", when=when(line.touched, jobs.now()))
    lines: list[ft.Control] = [
        words(look, title, look.row_size, bold=True, one_line=True),
        words(look, f"{state_words(line.state)} · {touched}", look.small_size, one_line=True),
    ]
    if look.roomy:
        engine = " · ".join(filter(None, (line.engine, line.owner, counts(line))))
        lines.append(words(look, engine, look.small_size, colour=palette.quiet, one_line=True))
    if line.trouble:
        lines.append(words(look, line.trouble, look.small_size, colour=palette.failed))
    face = ft.Container(
        padding=ft.Padding.symmetric(horizontal=6),
        content=ft.Row(
            [*_demo_mark(line, look), ft.Column(lines, spacing=0, tight=True, expand=True)]
        ),
    )
    sizes = look.row_size + (len(lines) - 1) * look.small_size
    key = button(
        look,
        f"job-{line.id}",
        job_phrase(line, jobs.now()),
        face,
        lambda: jobs.run(jobs.open_job, line.id),
        height=max(64.0, 1.42 * sizes * look.text_scale + 12),
        expand=True,
        ring=here,
        colour=palette.panel,
    )
    return ft.Row([key])


def _demo_mark(line: JobLine, look: Look) -> list[ft.Control]:
    if not line.demo:
        return []
    mark = words(
        look, text("jobs.demo.mark"), look.small_size, bold=True, colour=look.palette.on_copper
    )
    return [
        ft.Container(
            mark,
            bgcolor=look.palette.copper,
            border_radius=6,
            padding=ft.Padding.symmetric(horizontal=6, vertical=2),
        )
    ]


def _rest(lines: tuple[JobLine, ...], jobs: Jobs, look: Look) -> list[ft.Control]:
    """What is not shown, or that nothing is here."""
    more = len(lines) - MOST_SHOWN
    if more > 0:
        line = text("jobs.more", n=more)
        return [said("more-jobs", line, quiet(look, line))]
    if lines:
        return []
    key = "jobs.none_found" if jobs.lines() or jobs.desk.query else "jobs.none"
    return [said("no-jobs", text(key), words(look, text(key), look.body_size))]


def _foot(jobs: Jobs, look: Look) -> list[ft.Control]:
    assert jobs.book is not None

    def other_list() -> None:
        jobs.go("list", deleted=not jobs.desk.deleted)

    told = backup_words(jobs.book.backup, jobs.now())
    return [
        wide_button(look, "demo", text("jobs.demo"), lambda: filing.open_demo(jobs)),
        way(look, "take", text("taking.title"), text("taking.way"), lambda: jobs.go("take")),
        way(look, "book", text("jobs.book"), told, lambda: jobs.go("book")),
        way(look, "shop", text("jobs.shop"), text("jobs.shop.what"), lambda: jobs.go("shop")),
        wide_button(
            look,
            "deleted-jobs",
            text("jobs.show_deleted" if not jobs.desk.deleted else "jobs.show_living"),
            other_list,
        ),
    ]
