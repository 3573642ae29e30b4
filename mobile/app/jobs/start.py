"""The jobs of this device, opened once the first screen stands."""

import time
from typing import Any

import flet as ft

from mobile.app.handover import desk as giving
from mobile.app.jobs import passing, walking
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.windows import Windows
from mobile.app.model import App
from mobile.app.notes import Notes
from mobile.app.overview import desk as overview
from mobile.opfs_storage import open_browser_home


def begin(page: ft.Page, app: App, notes: Notes) -> Jobs:
    """The jobs, not opened yet."""
    found: list[Jobs] = []
    picker = ft.FilePicker(on_result=lambda event: page.run_task(giving.picked, jobs, event.files))
    page.services.append(picker)
    jobs = Jobs(
        app=app,
        run=page.run_task,
        home=open_browser_home,
        now=lambda: time.time_ns() // 1_000_000,
        notes=notes,
        windows=Windows(
            lambda: page.run_task(found[0].give), lambda: page.run_task(found[0].take_book)
        ),
        picker=picker,
    )
    found.append(jobs)
    app.to_job = lambda: passing.ask_where(jobs)
    page.run_task(giving.open_and_follow, jobs, page.route)
    return jobs


def strike(app: App, jobs: Jobs, event: Any) -> None:
    """A key of a real keyboard goes to the screen in front."""
    if app.screen == "jobs":
        walking.strike(jobs, event.key)
        overview.strike(jobs, event.key)
    else:
        app.strike(event.key)
