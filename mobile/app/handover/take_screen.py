"""The one way in: a pasted link or a file; a link that is opened leads to the same preview."""

import flet as ft

from core.texts import text
from mobile.app.handover import desk
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.views.frame import Screen, action_key, quiet, text_input, wide_button
from mobile.app.views.look import Look
from mobile.app.views.parts import said, words

LINES = 3


def take_screen(jobs: Jobs, look: Look) -> Screen:
    """Paste or pick; what waits for its other parts stands below."""
    pick = ft.PickFiles(jobs.picker, with_data=True)
    return Screen(
        title=text("taking.title"),
        body=[
            quiet(look, text("taking.how")),
            text_input(
                look,
                "pasted",
                text("taking.paste"),
                jobs.hand.pasted,
                lambda typed: desk.paste(jobs, typed),
                lines=LINES,
            ),
            wide_button(
                look,
                "look-into",
                text("taking.look"),
                lambda: jobs.run(desk.take_pasted, jobs),
                filled=True,
            ),
            action_key(look, "import", text("jobs.in.pick"), pick, ft.Icons.UPLOAD_FILE),
            *_waiting(jobs, look),
        ],
    )


def _waiting(jobs: Jobs, look: Look) -> list[ft.Control]:
    count = len(desk.waiting(jobs))
    if not count:
        return []
    line = text("taking.waiting", n=count)
    return [
        said("waiting", line, words(look, line, look.body_size)),
        wide_button(look, "drop-waiting", text("taking.drop"), lambda: desk.drop_waiting(jobs)),
    ]
