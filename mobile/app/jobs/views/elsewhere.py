"""No book here: it is being opened, it is open in another window, or it cannot be opened."""

import flet as ft

from core.texts import text
from mobile.app.jobs.model import Elsewhere, Jobs
from mobile.app.jobs.state.when import when
from mobile.app.jobs.views.frame import Screen, quiet, wide_button
from mobile.app.views.look import Look
from mobile.app.views.parts import said, words


def no_book(jobs: Jobs, look: Look) -> Screen:
    """What is known, and what can be done."""
    if jobs.elsewhere is None:
        body = [] if jobs.trouble else [words(look, text("jobs.opening"), look.body_size)]
        return Screen(title=text("jobs.title"), back=False, body=[*body, *_again(jobs, look)])
    return Screen(title=text("jobs.title"), back=False, body=_elsewhere(jobs, jobs.elsewhere, look))


def _again(jobs: Jobs, look: Look) -> list[ft.Control]:
    if not jobs.trouble:
        return []
    return [
        wide_button(
            look, "open-again", text("jobs.open_again"), lambda: jobs.run(jobs.open), filled=True
        )
    ]


def _elsewhere(jobs: Jobs, elsewhere: Elsewhere, look: Look) -> list[ft.Control]:
    line = _line(jobs, elsewhere)
    return [
        said("elsewhere", line, words(look, line, look.row_size, bold=True), live=True),
        wide_button(
            look,
            "ask-for-book",
            text("jobs.elsewhere.ask"),
            lambda: jobs.run(jobs.ask_for_book),
            filled=True,
        ),
        quiet(look, text("jobs.elsewhere.checks")),
    ]


def _line(jobs: Jobs, elsewhere: Elsewhere) -> str:
    since = when(elsewhere.since, jobs.now()) if elsewhere.since else text("jobs.elsewhere.unknown")
    key = "jobs.elsewhere.asleep" if elsewhere.asked else "jobs.elsewhere"
    return text(key, since=since)
