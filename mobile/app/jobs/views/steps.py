"""The steps of the job in their order, each with its cautions."""

import flet as ft

from core.records.model import StepTick
from core.records.steps import STEPS, Step
from core.texts import text
from mobile.app.jobs import filing
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.views.frame import Screen, quiet
from mobile.app.jobs.views.readings import signed
from mobile.app.views.look import Look
from mobile.app.views.parts import button, words


def steps_screen(jobs: Jobs, look: Look) -> Screen:
    """A tap ticks a step; another takes the tick off."""
    ticks = {each.id: each for each in jobs.the_job.steps}
    body = [part for step in STEPS for part in _step(jobs, step, ticks.get(step.record), look)]
    return Screen(title=text("jobs.steps"), undo=True, body=body)


def _step(jobs: Jobs, step: Step, tick: StepTick | None, look: Look) -> list[ft.Control]:
    done = bool(tick and tick.done)
    said_by = signed(tick.who, tick.at) if tick and done else ""
    sign = ft.Icon(
        ft.Icons.CHECK_BOX if done else ft.Icons.CHECK_BOX_OUTLINE_BLANK,
        color=look.palette.passed if done else look.palette.ink,
        size=28,
    )
    lines: list[ft.Control] = [words(look, step.words, look.body_size, bold=not done)]
    lines += [_caution(each, look) for each in step.caution_words]
    if said_by:
        lines.append(quiet(look, said_by))
    face = ft.Container(
        padding=6,
        content=ft.Row(
            [sign, ft.Column(lines, spacing=2, tight=True, expand=True)],
            spacing=8,
            vertical_alignment=ft.CrossAxisAlignment.START,
        ),
    )
    phrase = " ".join(
        (text(f"jobs.step.{'done' if done else 'open'}"), step.words, *step.caution_words)
    )
    key = button(
        look,
        f"step-{step.key}",
        phrase,
        face,
        lambda: filing.tick(jobs, step, not done),
        height=None,
        expand=True,
        colour=look.palette.panel,
        selected=done,
    )
    return [ft.Row([key])]


def _caution(line: str, look: Look) -> ft.Control:
    return ft.Row(
        [
            ft.Icon(ft.Icons.WARNING_AMBER, color=look.palette.undecided, size=18),
            words(look, line, look.small_size, colour=look.palette.undecided, expand=True),
        ],
        spacing=4,
    )
