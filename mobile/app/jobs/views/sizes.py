"""What a cylinder measures: bore, groove at four clock places, wire and where it is from."""

import flet as ft

from core.records.model import Cylinder, Spool
from core.records.view import live
from core.texts import text
from mobile.app.jobs import filing
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.size_sheet import CYLINDER, GROOVE, Size
from mobile.app.jobs.state.told import label_of
from mobile.app.jobs.views.frame import (
    Screen,
    chips,
    delete_key,
    history_key,
    quiet,
    title,
    way,
    wide_button,
)
from mobile.app.views.look import Look
from mobile.app.views.sizes_form import size_buttons

JOINTS = tuple(str(hour) for hour in range(1, 13))


def sizes_screen(jobs: Jobs, look: Look) -> Screen:
    """Sizes by the number pad; the joint and the spool by a tap."""
    cylinder = jobs.cylinder
    assert cylinder is not None
    return Screen(
        title=text("jobs.sizes.of", cylinder=cylinder.number),
        undo=True,
        body=[
            *_sizes(jobs, CYLINDER, look),
            title(look, text("jobs.groove")),
            quiet(look, text("jobs.groove.when")),
            *_sizes(jobs, GROOVE[:4], look, columns=2),
            *_sizes(jobs, GROOVE[4:], look, columns=2),
            *_spools(jobs, cylinder, look),
            title(look, text("jobs.joint")),
            *chips(
                look,
                "joint",
                [(each, each) for each in JOINTS],
                cylinder.joint,
                lambda to: filing.choose_joint(jobs, to),
                columns=6 if look.roomy else 4,
            ),
            *_more(jobs, cylinder, look),
        ],
    )


def _sizes(
    jobs: Jobs, sizes: tuple[Size, ...], look: Look, columns: int | None = None
) -> list[ft.Control]:
    made = filing.form(jobs)
    assert made is not None
    names = [size.name for size in sizes]
    form = filing.current(jobs, made)
    return size_buttons(form, names, lambda step: filing.change(jobs, step), look, columns)


def _spools(jobs: Jobs, cylinder: Cylinder, look: Look) -> list[ft.Control]:
    assert jobs.book is not None
    spools = live(jobs.book.shop.shop.spools)
    if not spools:
        return [quiet(look, text("jobs.spool.none"))]
    by_number = {str(number): spool for number, spool in enumerate(spools, 1)}
    chosen = next((n for n, each in by_number.items() if each.id == cylinder.spool), "")
    return [
        title(look, text("jobs.spool.from")),
        *chips(
            look,
            "spool",
            [(number, spool_label(spool)) for number, spool in by_number.items()],
            chosen,
            lambda to: filing.choose_spool(jobs, by_number[to]),
            columns=2,
        ),
    ]


def spool_label(spool: Spool) -> str:
    """Name and size of a spool."""
    size = filing.spool_size(spool)
    return " · ".join(filter(None, (spool.name, size.typed if size else "")))


def _more(jobs: Jobs, cylinder: Cylinder, look: Look) -> list[ft.Control]:
    number, note = label_of("number"), label_of("note")
    return [
        wide_button(
            look, "same-for-all", text("jobs.same_for_all"), lambda: filing.same_for_all(jobs)
        ),
        way(
            look,
            "words-number",
            number,
            cylinder.number,
            lambda: filing.ask_words(jobs, cylinder.id, "number", number, cylinder.number),
            icon=ft.Icons.EDIT,
        ),
        way(
            look,
            "words-note",
            note,
            cylinder.note or text("field.empty"),
            lambda: filing.ask_words(jobs, cylinder.id, "note", note, cylinder.note),
            icon=ft.Icons.EDIT,
        ),
        history_key(jobs, cylinder.id, look),
        delete_key(jobs, cylinder.id, text("jobs.cylinder.delete"), look),
    ]
