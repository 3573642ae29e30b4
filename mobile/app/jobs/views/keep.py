"""Where a quick check is kept: which job, which cylinder, which place."""

from dataclasses import replace

import flet as ft

from core.forms.kept_words import place_words
from core.records.model import NAMED_PLACES
from core.texts import text
from mobile.app.jobs import passing
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.walk import CLOCK
from mobile.app.jobs.views.frame import Screen, chips, title, wide_button
from mobile.app.state import phrases
from mobile.app.views.look import Look
from mobile.app.views.parts import said, words

PLACES = (*CLOCK, *NAMED_PLACES)
MOST_JOBS = 12


def keep_screen(jobs: Jobs, look: Look) -> Screen:
    """The check, then where it goes."""
    line = phrases.say_line(jobs.app.told)
    check = said("kept-check", line, words(look, line, look.row_size, bold=True))
    where = _cylinders(jobs, look) if jobs.job else _jobs(jobs, look)
    return Screen(title=text("jobs.keep_check"), body=[check, *where])


def _jobs(jobs: Jobs, look: Look) -> list[ft.Control]:
    found = [each for each in jobs.lines() if not each.demo][:MOST_JOBS]
    new = wide_button(
        look,
        "keep-in-new",
        text("jobs.keep_check.new"),
        lambda: jobs.run(passing.keep_check, jobs, None),
        icon=ft.Icons.ADD,
        filled=not found,
    )
    rows = [
        wide_button(
            look,
            f"keep-in-{each.id}",
            each.title or text("jobs.untitled"),
            lambda job_id=each.id: jobs.run(passing.keep_check, jobs, job_id),
        )
        for each in found
    ]
    return [title(look, text("jobs.keep_check.job")), *rows, new]


def _cylinders(jobs: Jobs, look: Look) -> list[ft.Control]:
    by_number = {each.number: each for each in jobs.live_cylinders()}
    chosen = jobs.cylinder or next(iter(by_number.values()), None)
    if chosen is None:
        return [words(look, text("jobs.keep_check.no_cylinder"), look.body_size)]
    return [
        title(look, text("jobs.keep_check.cylinder")),
        *chips(
            look,
            "cylinder",
            [(number, number) for number in by_number],
            chosen.number,
            lambda number: jobs.move(replace(jobs.desk, cylinder=by_number[number].id)),
            columns=4,
        ),
        title(look, text("jobs.keep_check.place")),
        *chips(
            look,
            "place",
            [(place, place_words(place)) for place in PLACES],
            "",
            lambda place: passing.keep_check_at(jobs, chosen, place),
        ),
    ]
