"""What engine it is, whose, and what the wire meets in the head."""

import flet as ft

from core.records.model import HeadFaceKind
from core.records.view import JOB
from core.texts import text
from mobile.app.jobs import filing
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.size_sheet import FACE
from mobile.app.jobs.state.told import label_of
from mobile.app.jobs.views.frame import Screen, chips, history_key, title, way
from mobile.app.views.look import Look
from mobile.app.views.sizes_form import size_buttons

WORDS = ("title", "engine", "owner", "block", "head", "note")


def identity(jobs: Jobs, look: Look) -> Screen:
    """Words one by one; the head face by its kind and depth."""
    job = jobs.the_job
    kind = job.head_face.kind.value if job.head_face else ""
    faces = [(each.value, text(f"face.{each}")) for each in HeadFaceKind]
    return Screen(
        title=text("jobs.identity"),
        undo=True,
        body=[
            *(_words(jobs, name, getattr(job, name), look) for name in WORDS),
            title(look, text("face.title")),
            *chips(
                look, "face", faces, kind, lambda to: filing.choose_face(jobs, HeadFaceKind(to))
            ),
            *_depth(jobs, look),
            history_key(jobs, JOB, look),
        ],
    )


def _words(jobs: Jobs, name: str, value: str, look: Look) -> ft.Control:
    label = label_of(name)
    return way(
        look,
        f"words-{name}",
        label,
        value or text("field.empty"),
        lambda: filing.ask_words(jobs, JOB, name, label, value),
        icon=ft.Icons.EDIT,
    )


def _depth(jobs: Jobs, look: Look) -> list[ft.Control]:
    made = filing.form(jobs)
    if made is None:
        return []
    names = [size.name for size in FACE]
    form = filing.current(jobs, made)
    return size_buttons(form, names, lambda step: filing.change(jobs, step), look)
