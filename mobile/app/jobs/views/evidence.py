"""What a cylinder showed after running: print, soot, water, the wire again, words and pictures."""

import flet as ft

from core.forms.kept_words import place_words
from core.records.model import CLOCK_PLACES, Evidence, Place
from core.records.view import live
from core.texts import text
from mobile.app.jobs import filing, passing
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.size_sheet import EVIDENCE
from mobile.app.jobs.state.told import label_of
from mobile.app.jobs.views.frame import (
    Screen,
    action_key,
    delete_key,
    group,
    history_key,
    icon_button,
    quiet,
    title,
    way,
    wide_button,
)
from mobile.app.jobs.views.readings import signed
from mobile.app.jobs.views.squeeze import print_even
from mobile.app.views.look import Look
from mobile.app.views.parts import said, words
from mobile.app.views.sizes_form import size_buttons

TRACES = ("soot", "water")


def evidence_screen(jobs: Jobs, look: Look) -> Screen:
    """Sizes, traces by clock place, pictures."""
    found, made = filing.evidence(jobs), filing.form(jobs)
    assert found is not None
    assert made is not None
    names = [size.name for size in EVIDENCE]
    form = filing.current(jobs, made)
    return Screen(
        title=text("jobs.evidence"),
        undo=True,
        body=[
            _caution(look),
            *([_signed(found, look)] if found.at else []),
            *size_buttons(form, names, lambda step: filing.change(jobs, step), look),
            *print_even(found.print_depth, look),
            *(part for trace in TRACES for part in _traces(jobs, found, trace, look)),
            _annealed(jobs, found, look),
            *_words(jobs, found, look),
            *_pictures(jobs, found, look),
            history_key(jobs, found.id, look),
            delete_key(jobs, found.id, text("jobs.evidence.delete"), look),
            *_others(jobs, found, look),
        ],
    )


def _signed(found: Evidence, look: Look) -> ft.Control:
    line = signed(found.who, found.at)
    return said("signed", line, quiet(look, line))


def _caution(look: Look) -> ft.Control:
    line = text("caution.water")
    sign = ft.Icon(ft.Icons.WARNING_AMBER, color=look.palette.undecided, size=22)
    told = words(look, line, look.body_size, colour=look.palette.undecided, expand=True)
    return said("water-caution", line, ft.Row([sign, told], spacing=8))


def _traces(jobs: Jobs, found: Evidence, trace: str, look: Look) -> list[ft.Control]:
    seen = getattr(found, trace)
    return [
        title(look, label_of(trace)),
        *(_trace(jobs, found, trace, place, seen.get(place, ""), look) for place in CLOCK_PLACES),
    ]


def _trace(
    jobs: Jobs, found: Evidence, trace: str, place: Place, seen: str, look: Look
) -> ft.Control:
    label = text("jobs.trace", trace=label_of(trace), place=place_words(place))
    return way(
        look,
        f"{trace}-{place}",
        label,
        seen or text("field.empty"),
        lambda: filing.ask_words(jobs, found.id, f"{trace}@{place}", label, seen),
        icon=ft.Icons.EDIT,
    )


def _annealed(jobs: Jobs, found: Evidence, look: Look) -> ft.Control:
    told = text("jobs.annealed", n=found.sheet_annealed or 0)
    fewer = text("jobs.annealed.fewer")
    more = text("jobs.annealed.more")
    return ft.Row(
        [
            icon_button(
                look,
                "annealed-fewer",
                fewer,
                ft.Icons.REMOVE,
                lambda: filing.count_annealed(jobs, -1),
            ),
            words(look, told, look.body_size, bold=True, expand=True, align=ft.TextAlign.CENTER),
            icon_button(
                look, "annealed-more", more, ft.Icons.ADD, lambda: filing.count_annealed(jobs, 1)
            ),
        ]
    )


def _words(jobs: Jobs, found: Evidence, look: Look) -> list[ft.Control]:
    note = label_of("note")
    return [
        way(
            look,
            "words-note",
            note,
            found.note or text("field.empty"),
            lambda: filing.ask_words(jobs, found.id, "note", note, found.note),
            icon=ft.Icons.EDIT,
        )
    ]


def _pictures(jobs: Jobs, found: Evidence, look: Look) -> list[ft.Control]:
    pick = ft.PickFiles(jobs.picker, file_type=ft.FilePickerFileType.IMAGE, with_data=True)
    shown = [
        _picture(jobs, found, name, number, look) for number, name in enumerate(found.pictures, 1)
    ]
    return [
        title(look, text("jobs.pictures")),
        *shown,
        action_key(look, "take-picture", text("jobs.picture.take"), pick, ft.Icons.PHOTO_CAMERA),
    ]


def _picture(jobs: Jobs, found: Evidence, name: str, number: int, look: Look) -> ft.Control:
    said_of = found.pictures[name]
    data = jobs.pictures.get(name)
    label = text("jobs.picture.words")
    picture = (
        ft.Image(src=bytes(data), fit=ft.BoxFit.CONTAIN, height=260)
        if data
        else quiet(look, text("jobs.picture.not_here"))
    )
    return group(
        look,
        said(f"picture-{number}", text("jobs.picture.phrase", n=number, words=said_of), picture),
        way(
            look,
            f"picture-words-{number}",
            label,
            said_of or text("field.empty"),
            lambda: filing.ask_words(jobs, found.id, f"pictures@{name}", label, said_of),
            icon=ft.Icons.EDIT,
        ),
        wide_button(
            look,
            f"drop-picture-{number}",
            text("jobs.picture.drop"),
            lambda: jobs.enter([(found.id, f"pictures@{name}", None)]),
            icon=ft.Icons.DELETE_OUTLINE,
        ),
    )


def _others(jobs: Jobs, found: Evidence, look: Look) -> list[ft.Control]:
    cylinder = jobs.cylinder
    assert cylinder is not None
    others = [each for each in live(cylinder.evidence) if each.id != found.id]
    rows = [
        way(
            look,
            f"evidence-{number}",
            text("jobs.evidence"),
            signed(each.who, each.at),
            lambda record=each.id: open_it(jobs, record),
        )
        for number, each in enumerate(others, 1)
    ]
    new = wide_button(
        look,
        "new-evidence",
        text("jobs.evidence.new"),
        lambda: filing.open_new(jobs, "evidence", "evidence"),
        icon=ft.Icons.ADD,
    )
    return [*rows, new]


def open_it(jobs: Jobs, record: str) -> None:
    """Another look after running."""
    jobs.go("evidence", record=record)
    jobs.run(passing.fetch_pictures, jobs)
