"""Every reading of a cylinder with who and when; deleted ones can be brought back."""

from collections.abc import Iterable

import flet as ft

from core.forms.kept_words import place_words, reading_words
from core.records.model import Reading
from core.texts import text
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.when import moment
from mobile.app.jobs.views.frame import Screen, icon_button, title
from mobile.app.views.look import Look
from mobile.app.views.parts import said, words


def readings_screen(jobs: Jobs, look: Look) -> Screen:
    """The last one first."""
    cylinder = jobs.cylinder
    assert cylinder is not None
    ordered = sorted(cylinder.readings, key=lambda each: (each.at, each.id), reverse=True)
    there = [each for each in ordered if not each.deleted]
    gone = [each for each in ordered if each.deleted]
    body: list[ft.Control] = list(_rows(jobs, there, "reading", look))
    if not there:
        body.append(words(look, text("jobs.ring.unread"), look.body_size))
    if gone:
        body += [title(look, text("jobs.readings.gone")), *_rows(jobs, gone, "gone", look)]
    named = text("jobs.readings.of", cylinder=cylinder.number)
    return Screen(title=named, undo=True, body=body)


def _rows(jobs: Jobs, readings: Iterable[Reading], name: str, look: Look) -> Iterable[ft.Control]:
    for number, each in enumerate(readings, 1):
        yield _row(jobs, each, f"{name}-{number}", look)


def signed(who: str, at: int) -> str:
    """Who entered something, and when."""
    return text("jobs.signed", who=who or text("jobs.nobody"), when=moment(at))


def _row(jobs: Jobs, reading: Reading, name: str, look: Look) -> ft.Control:
    measured = reading.measured
    if measured is None:
        return ft.Container()
    line = text("jobs.ring.place", place=place_words(measured.place), read=reading_words(measured))
    small = " · ".join(
        (
            text(f"kept.tapped.{measured.tapped}"),
            signed(reading.who, reading.at),
            *([text("jobs.corrected")] if reading.corrected else []),
        )
    )
    told = said(
        name,
        f"{line} {small}",
        ft.Column(
            [
                words(look, line, look.body_size, bold=True),
                words(look, small, look.small_size, colour=look.palette.quiet),
            ],
            spacing=0,
            tight=True,
        ),
    )
    told.expand = True
    return ft.Row([told, *_keys(jobs, reading, name, look)], spacing=6)


def _keys(jobs: Jobs, reading: Reading, name: str, look: Look) -> list[ft.Control]:
    if reading.deleted:
        phrase = text("jobs.restore")
        back = icon_button(
            look,
            f"restore-{name}",
            phrase,
            ft.Icons.RESTORE_FROM_TRASH,
            lambda: jobs.restore(reading.id),
        )
        return [back]
    return [
        icon_button(
            look,
            f"history-{name}",
            text("jobs.history"),
            ft.Icons.HISTORY,
            lambda: jobs.go("history", came_from="readings", record=reading.id),
        ),
        icon_button(
            look,
            f"delete-{name}",
            text("jobs.delete"),
            ft.Icons.DELETE_OUTLINE,
            lambda: jobs.delete(reading.id),
        ),
    ]
