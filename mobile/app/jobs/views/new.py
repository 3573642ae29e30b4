"""A new job: laid out by hand, from a template of the shop, or after a job that is here."""

from dataclasses import replace

import flet as ft

from core.texts import text
from mobile.app.jobs import filing
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.desk import MOST_CYLINDERS, Layout
from mobile.app.jobs.views.frame import Screen, chips, group, icon_button, quiet, title, wide_button
from mobile.app.views.look import Look
from mobile.app.views.parts import said, words


def new_job(jobs: Jobs, look: Look) -> Screen:
    """How the engine is laid out, and what is at hand to start from."""
    return Screen(
        title=text("jobs.new"),
        body=[
            group(look, title(look, text("jobs.layout")), *_layout(jobs, look)),
            *_templates(jobs, look),
            quiet(look, text("jobs.new.next")),
        ],
    )


def _layout(jobs: Jobs, look: Look) -> list[ft.Control]:
    layout = jobs.desk.layout
    told = text(
        "jobs.layout.told", numbers=" | ".join(", ".join(each) for each in layout.numbers())
    )
    banks = [("1", text("jobs.layout.one")), ("2", text("jobs.layout.two"))]
    return [
        *chips(
            look,
            "banks",
            banks,
            str(layout.banks),
            lambda n: lay_out(jobs, banks=int(n)),
            columns=2,
        ),
        _count(jobs, layout, look),
        *(_numbering(jobs, layout, look) if layout.banks > 1 else []),
        said("layout", told, words(look, told, look.body_size)),
        wide_button(
            look, "begin", text("jobs.begin"), lambda: filing.begin_laid_out(jobs), filled=True
        ),
    ]


def lay_out(jobs: Jobs, **changes: int | bool) -> None:
    """Another layout for the new job."""
    jobs.move(replace(jobs.desk, layout=replace(jobs.desk.layout, **changes)))


def _count(jobs: Jobs, layout: Layout, look: Look) -> ft.Control:
    told = text("jobs.layout.cylinders", n=layout.cylinders)
    fewer, more = max(1, layout.cylinders - 1), min(MOST_CYLINDERS, layout.cylinders + 1)
    return ft.Row(
        [
            icon_button(
                look,
                "fewer",
                text("jobs.layout.fewer"),
                ft.Icons.REMOVE,
                lambda: lay_out(jobs, cylinders=fewer),
            ),
            words(look, told, look.body_size, bold=True, expand=True, align=ft.TextAlign.CENTER),
            icon_button(
                look,
                "more",
                text("jobs.layout.more"),
                ft.Icons.ADD,
                lambda: lay_out(jobs, cylinders=more),
            ),
        ]
    )


def _numbering(jobs: Jobs, layout: Layout, look: Look) -> list[ft.Control]:
    choices = [("rows", text("jobs.layout.rows")), ("odd", text("jobs.layout.odd"))]
    chosen = "odd" if layout.odd_even else "rows"
    return chips(
        look,
        "numbering",
        choices,
        chosen,
        lambda to: lay_out(jobs, odd_even=to == "odd"),
        columns=2,
    )


def _templates(jobs: Jobs, look: Look) -> list[ft.Control]:
    found = filing.templates(jobs)
    if not found:
        return [quiet(look, text("jobs.template.none"))]
    return [
        group(
            look,
            title(look, text("jobs.template.title")),
            *(
                _template(jobs, each.id, each.name, number, look)
                for number, each in enumerate(found, 1)
            ),
        )
    ]


def _template(jobs: Jobs, record: str, name: str, number: int, look: Look) -> ft.Control:
    begin = wide_button(
        look, f"template-{number}", name, lambda: filing.begin_from(jobs, record), icon=ft.Icons.ADD
    )
    begin.expand = True
    drop = icon_button(
        look,
        f"drop-template-{number}",
        text("jobs.template.drop", name=name),
        ft.Icons.DELETE_OUTLINE,
        lambda: filing.drop_template(jobs, record),
    )
    return ft.Row([begin, drop], spacing=6)
