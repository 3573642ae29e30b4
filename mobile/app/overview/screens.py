"""What narrows the list, and two jobs side by side."""

import flet as ft

from core.records import JobLine
from core.report.compared import Compared
from core.texts import text
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.views.frame import Screen, action_key, chips, quiet, title, way, wide_button
from mobile.app.overview import desk
from mobile.app.overview.narrowed import AGES, OPEN, engines, people
from mobile.app.views.look import Look
from mobile.app.views.parts import panel, said, words

VERDICTS = ("pass", "undecided", "fail", OPEN)
MOST_JOBS = 12


def narrow_way(jobs: Jobs, look: Look) -> list[ft.Control]:
    """The way to the choices, and what is chosen."""
    chosen = jobs.overview.chosen
    label = chosen.words or text("narrow.all")
    parts = [
        way(look, "narrow", text("narrow.title"), label, lambda: jobs.run(desk.open_choices, jobs))
    ]
    if chosen.any:
        parts.append(
            wide_button(look, "narrow-all", text("narrow.show_all"), lambda: desk.choose_all(jobs))
        )
    return parts


def narrow_screen(jobs: Jobs, look: Look) -> Screen:
    """Engine, date, verdict, person; and how many are left."""
    view, lines = jobs.overview, jobs.lines()
    left = text("narrow.left", n=len(desk.lines(jobs)), of=len(lines))
    parts: list[ft.Control] = [
        said("narrow-left", left, words(look, left, look.row_size, bold=True))
    ]
    if view.to_read:
        reading = text("narrow.reading", n=view.to_read)
        parts.append(said("narrow-reading", reading, quiet(look, reading), live=True))
    for name, choices in (
        ("engine", [(each, each) for each in engines(lines)]),
        ("age", [(each, text("narrow.age.within", days=each)) for each in AGES]),
        ("verdict", [(each, text(f"narrow.verdict.{each}")) for each in VERDICTS]),
        ("person", [(each, each) for each in people(view.facts.values())]),
    ):
        if choices:
            parts += [title(look, text(f"narrow.{name}")), *_choices(jobs, name, choices, look)]
    return Screen(title=text("narrow.title"), body=parts)


def _choices(jobs: Jobs, name: str, choices: list[tuple[str, str]], look: Look) -> list[ft.Control]:
    chosen = getattr(jobs.overview.chosen, name)
    return chips(
        look,
        f"narrow-{name}",
        choices,
        chosen,
        lambda value: desk.choose(jobs, **{name: value}),
        columns=1 if name in ("engine", "person") and not look.roomy else 2,
    )


def compare_screen(jobs: Jobs, look: Look) -> Screen:
    """Another job to choose, then what differs and what is the same."""
    view = jobs.overview
    if not view.rows:
        others = [each for each in jobs.lines() if each.id != jobs.desk.job][:MOST_JOBS]
        how = quiet(look, text("compare.how" if others else "compare.none"))
        return Screen(title=text("compare.title"), body=[how, *_others(jobs, others, look)])
    mine = jobs.the_job.title or text("kept.untitled")
    differ = sum(not row.same for row in view.rows)
    line = text("compare.line", mine=mine, other=view.with_job, n=differ)
    return Screen(
        title=text("compare.title"),
        body=[
            said("compared", line, words(look, line, look.body_size, bold=True)),
            action_key(
                look,
                "open-comparison",
                text("compare.open"),
                ft.OpenUrl(view.address),
                ft.Icons.OPEN_IN_NEW,
            ),
            *(_row(row, number, look) for number, row in enumerate(view.rows, 1)),
        ],
    )


def _others(jobs: Jobs, others: list[JobLine], look: Look) -> list[ft.Control]:
    return [
        wide_button(
            look,
            f"compare-{each.id}",
            each.title or text("kept.untitled"),
            lambda job_id=each.id: jobs.run(desk.compare, jobs, job_id),
        )
        for each in others
    ]


def _row(row: Compared, number: int, look: Look) -> ft.Control:
    """Both values side by side; a sign where they differ."""
    palette = look.palette
    tint = palette.quiet if row.same else palette.ink
    mark = ft.Icon(
        ft.Icons.DRAG_HANDLE if row.same else ft.Icons.COMPARE_ARROWS, color=tint, size=22
    )
    values = ft.Row(
        [
            words(look, row.left or "–", look.body_size, bold=not row.same, expand=True),
            mark,
            words(look, row.right or "–", look.body_size, bold=not row.same, expand=True),
        ],
        spacing=8,
        vertical_alignment=ft.CrossAxisAlignment.START,
    )
    key = "compare.row.same" if row.same else "compare.row.differs"
    phrase = text(key, what=row.what, left=row.left or "–", right=row.right or "–")
    return said(
        f"compare-row-{number}",
        phrase,
        panel(look, words(look, row.what, look.small_size, colour=palette.quiet), values, gap=2),
    )
