"""The jobs' own window: one screen, or the list beside it where there is room."""

from dataclasses import replace

import flet as ft

from mobile.app.handover.give_screens import codes_screen, give_screen
from mobile.app.handover.take_screen import take_screen
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.views.book import book_screen, incoming_screen
from mobile.app.jobs.views.cylinder import cylinder_screen
from mobile.app.jobs.views.elsewhere import no_book
from mobile.app.jobs.views.evidence import evidence_screen
from mobile.app.jobs.views.frame import beside, framed
from mobile.app.jobs.views.history import history_screen
from mobile.app.jobs.views.identity import identity
from mobile.app.jobs.views.job import job_screen
from mobile.app.jobs.views.keep import keep_screen
from mobile.app.jobs.views.list import job_list
from mobile.app.jobs.views.new import new_job
from mobile.app.jobs.views.readings import readings_screen
from mobile.app.jobs.views.sheet import sheet_screen
from mobile.app.jobs.views.shop import shop_screen, thing_screen
from mobile.app.jobs.views.sizes import sizes_screen
from mobile.app.jobs.views.squeeze import squeeze_screen
from mobile.app.jobs.views.steps import steps_screen
from mobile.app.jobs.views.walk import walk_screen
from mobile.app.jobs.views.words import words_screen
from mobile.app.model import App
from mobile.app.overview.screens import compare_screen, narrow_screen
from mobile.app.views.look import Look

SCREENS = {
    "list": job_list,
    "new": new_job,
    "book": book_screen,
    "incoming": incoming_screen,
    "shop": shop_screen,
    "thing": thing_screen,
    "keep": keep_screen,
    "words": words_screen,
    "history": history_screen,
    "job": job_screen,
    "identity": identity,
    "steps": steps_screen,
    "sheet": sheet_screen,
    "squeeze": squeeze_screen,
    "cylinder": cylinder_screen,
    "walk": walk_screen,
    "sizes": sizes_screen,
    "evidence": evidence_screen,
    "readings": readings_screen,
    "give": give_screen,
    "codes": codes_screen,
    "take": take_screen,
    "narrow": narrow_screen,
    "compare": compare_screen,
}
LIST_WIDTH = 380.0


@ft.component
def jobs_window(jobs: Jobs, _app: App, look: Look) -> ft.Control:
    """Only this is drawn anew when something among the jobs changes, or the unit in the app."""
    if jobs.book is None:
        return framed(jobs, no_book(jobs, look), look)
    here = jobs.screen()
    if not look.wide or here == "list":
        return framed(jobs, SCREENS[here](jobs, _one_pane(look)), _one_pane(look))
    left, right = _panes(look)
    other = "job" if jobs.job and here != "job" else "list"
    return ft.Row(
        [
            ft.Container(beside(SCREENS[other](jobs, left), left), width=LIST_WIDTH),
            ft.VerticalDivider(width=1),
            ft.Container(framed(jobs, SCREENS[here](jobs, right), right), expand=True),
        ],
        expand=True,
        spacing=0,
    )


def _one_pane(look: Look) -> Look:
    return replace(look, width=min(look.width, 760.0))


def _panes(look: Look) -> tuple[Look, Look]:
    """How things look left and right; each pane is a phone of its own."""
    rest = look.width - LIST_WIDTH - 1
    return replace(look, width=LIST_WIDTH), replace(look, width=min(rest, 760.0))
