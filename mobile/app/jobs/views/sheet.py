"""Which sheet this engine runs: a decision with who, when and why."""

import flet as ft

from core.forms.kept_verdicts import decided_sheet
from core.records.model import Decision
from core.records.view import live
from core.texts import text
from mobile.app.jobs import filing
from mobile.app.jobs.engine_way import open_sheet
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.size_sheet import DECISION
from mobile.app.jobs.state.told import label_of
from mobile.app.jobs.views.frame import Screen, chips, quiet, title, way
from mobile.app.jobs.views.readings import signed
from mobile.app.state.sizes_list import parts_of
from mobile.app.views.look import Look
from mobile.app.views.sizes_form import size_buttons


def sheet_screen(jobs: Jobs, look: Look) -> Screen:
    """Sheets of the shelf, another one by the number pad, and the decisions so far."""
    made = filing.form(jobs)
    assert made is not None
    shelf = parts_of(jobs.app.entry.texts.get("shelf", ""))
    decided = decided_sheet(jobs.the_job)
    form = filing.current(jobs, made)
    names = [size.name for size in DECISION]
    return Screen(
        title=text("jobs.sheet"),
        undo=True,
        body=[
            quiet(look, text("jobs.sheet.what")),
            way(
                look,
                "open-engine",
                text("sheet.of_job"),
                text("sheet.of_job.what"),
                lambda: open_sheet(jobs),
            ),
            *chips(
                look,
                "run",
                [(each, each) for each in shelf],
                decided.typed if decided else "",
                lambda typed: filing.decide_sheet(jobs, typed),
                columns=2,
            ),
            *size_buttons(form, names, lambda step: filing.change(jobs, step), look),
            *_decisions(jobs, look),
        ],
    )


def _decisions(jobs: Jobs, look: Look) -> list[ft.Control]:
    made = sorted(live(jobs.the_job.decisions), key=lambda each: (each.at, each.id), reverse=True)
    if not made:
        return []
    rows = [_decision(jobs, each, number, look) for number, each in enumerate(made, 1)]
    return [title(look, text("jobs.decisions")), *rows]


def _decision(jobs: Jobs, decision: Decision, number: int, look: Look) -> ft.Control:
    chosen = decision.sheet.typed if decision.sheet else decision.chosen
    label = " · ".join(filter(None, (decision.about, signed(decision.who, decision.at))))
    why = label_of("reason")
    return way(
        look,
        f"decision-{number}",
        label,
        " · ".join(filter(None, (chosen, decision.reason or text("jobs.decision.why")))),
        lambda: filing.ask_words(jobs, decision.id, "reason", why, decision.reason),
        icon=ft.Icons.EDIT,
    )
