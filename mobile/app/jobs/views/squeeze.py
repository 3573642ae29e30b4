"""A trial squeeze: a scrap of the sheet clamped, and how deep the wire printed into it."""

import flet as ft

from core.calc.evenness import even_ring, over_median
from core.forms.kept_verdicts import found
from core.records.model import Length, Place
from core.records.view import live
from core.texts import text
from mobile.app.jobs import filing
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.size_sheet import SQUEEZE
from mobile.app.jobs.views.findings import finding_row
from mobile.app.jobs.views.frame import (
    Screen,
    chips,
    delete_key,
    history_key,
    quiet,
    way,
    wide_button,
)
from mobile.app.views.look import Look
from mobile.app.views.sizes_form import size_buttons

FEWEST = 2


def squeeze_screen(jobs: Jobs, look: Look) -> Screen:
    """Which cylinder, which sheet, and the print at four places."""
    squeeze, made = filing.squeeze(jobs), filing.form(jobs)
    assert squeeze is not None
    assert made is not None
    cylinders = [(each.number, each.number) for each in jobs.live_cylinders()]
    by_number = {each.number: each.id for each in jobs.live_cylinders()}
    chosen = next((n for n, record in by_number.items() if record == squeeze.cylinder), "")
    names = [size.name for size in SQUEEZE]
    form = filing.current(jobs, made)
    return Screen(
        title=text("jobs.squeeze"),
        undo=True,
        body=[
            quiet(look, text("jobs.squeeze.how")),
            *chips(
                look,
                "squeezed",
                cylinders,
                chosen,
                lambda to: jobs.enter([(squeeze.id, "cylinder", by_number[to])]),
                columns=4,
            ),
            *size_buttons(form, names, lambda step: filing.change(jobs, step), look),
            *print_even(squeeze.print_depth, look),
            history_key(jobs, squeeze.id, look),
            delete_key(jobs, squeeze.id, text("jobs.squeeze.delete"), look),
            *_others(jobs, look),
        ],
    )


def print_even(depths: dict[Place, Length], look: Look) -> list[ft.Control]:
    """Whether a print is even round the ring."""
    if len(depths) < FEWEST:
        return []
    over = over_median([each.mm for each in depths.values()])
    worst = max(zip(over, depths, strict=True), key=lambda pair: abs(pair[0]))[1]
    return [finding_row(found(even_ring(over), worst), look, name="print")]


def _others(jobs: Jobs, look: Look) -> list[ft.Control]:
    """Other squeezes of this job, and a new one."""
    others = [each for each in live(jobs.the_job.squeezes) if each.id != jobs.desk.record]
    rows = [
        way(
            look,
            f"squeeze-{number}",
            text("jobs.squeeze"),
            each.sheet.typed if each.sheet else text("field.empty"),
            lambda record=each.id: jobs.go("squeeze", record=record),
        )
        for number, each in enumerate(others, 1)
    ]
    new = wide_button(
        look,
        "new-squeeze",
        text("jobs.squeeze.new"),
        lambda: filing.open_new(jobs, "squeeze", "squeeze"),
        icon=ft.Icons.ADD,
    )
    return [*rows, new]
