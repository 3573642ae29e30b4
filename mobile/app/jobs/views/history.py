"""Every value that something ever had, who entered it and when; values on which people differ."""

import flet as ft

from core.forms.kept_words import field_words, value_words
from core.records.ledger import Change, Rivals
from core.texts import text
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.views.frame import Screen, group, quiet, wide_button
from mobile.app.jobs.views.readings import signed
from mobile.app.views.look import Look
from mobile.app.views.parts import said, words

MOST_SHOWN = 100


def history_screen(jobs: Jobs, look: Look) -> Screen:
    """The history of one record, last first; without one, what waits for a word."""
    if not jobs.desk.record:
        found = jobs.ledger().rivals()
        body = [_rivals(jobs, each, number, look) for number, each in enumerate(found, 1)]
        return Screen(title=text("jobs.rivals"), undo=True, body=body or [_settled(look)])
    record = jobs.desk.record
    changes = reversed(jobs.ledger_of(record).changes(record)[-MOST_SHOWN:])
    body = [_change(each, number, look) for number, each in enumerate(changes, 1)]
    return Screen(title=text("jobs.history"), body=body)


def _settled(look: Look) -> ft.Control:
    return quiet(look, text("jobs.rivals.none"))


def _change(change: Change, number: int, look: Look) -> ft.Control:
    line = text("jobs.change", field=field_words(change.field), value=value_words(change.value))
    parts = [signed(change.who, change.at)]
    if change.undoes:
        parts.append(text("jobs.change.undone"))
    if not change.stands:
        parts.append(text("jobs.change.replaced"))
    small = " · ".join(parts)
    tint = None if change.stands else look.palette.quiet
    return said(
        f"change-{number}",
        f"{line} {small}",
        ft.Column(
            [
                words(look, line, look.body_size, bold=change.stands, colour=tint),
                words(look, small, look.small_size, colour=look.palette.quiet),
            ],
            spacing=0,
            tight=True,
        ),
    )


def _rivals(jobs: Jobs, rivals: Rivals, number: int, look: Look) -> ft.Control:
    choices = (rivals.shown, *rivals.others)
    return group(
        look,
        words(look, field_words(rivals.field), look.body_size, bold=True),
        *(_choice(jobs, each, f"{number}-{n}", look) for n, each in enumerate(choices, 1)),
    )


def _choice(jobs: Jobs, change: Change, number: str, look: Look) -> ft.Control:
    label = text(
        "jobs.rivals.take", value=value_words(change.value), signed=signed(change.who, change.at)
    )
    return wide_button(
        look,
        f"settle-{number}",
        label,
        lambda: jobs.attempt(lambda: jobs.ledger().settle(change)),
    )
