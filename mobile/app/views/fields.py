"""What is known beside the height; each field opens the number pad."""

import flet as ft

from core.texts import text
from mobile.app.model import App
from mobile.app.state.told import lacks_depth
from mobile.app.views.look import Look
from mobile.app.views.parts import button, field_height, in_rows, on_fill, said, two_lines, words

FIELDS = ("go", "no-go", "gasket", "wire", "groove-width", "groove-depth")
FACES = ("flat", "printed", "receiver")


def fields(app: App, look: Look) -> ft.Control:
    """Sizes, the shelf, and the head face."""
    chips = [_field(app, field, look) for field in FIELDS]
    return ft.Column(
        [
            *in_rows(chips, look),
            *_beside(app, look),
            _shelf(app, look),
            _faces(app, look),
        ],
        spacing=6,
        tight=True,
    )


def _field(app: App, field: str, look: Look) -> ft.Control:
    value = app.shown(field)
    phrase = text("field.phrase", field=text(f"field.{field}"), value=value or text("field.empty"))
    open_now = app.entry.open_field == field
    return button(
        look,
        f"in-{field}",
        phrase,
        two_lines(look, text(f"field.{field}"), value or "–", open_now),
        lambda: app.open_pad(field),
        height=field_height(look),
        expand=True,
        filled=open_now,
    )


def _beside(app: App, look: Look) -> list[ft.Control]:
    """What a link brought that has no field here: seen, and taken away by a tap."""
    chips = [_brought(app, field, look) for field in app.entry.beside()]
    title = words(look, text("beside.title"), look.small_size, colour=look.palette.quiet)
    return [title, *in_rows(chips, look)] if chips else []


def _brought(app: App, field: str, look: Look) -> ft.Control:
    label, value = text(f"field.{field}"), app.shown(field)
    return button(
        look,
        f"drop-{field}",
        text("beside.drop", field=label, value=value),
        two_lines(look, label, value, False),
        lambda: app.drop_text(field),
        height=field_height(look),
        expand=True,
    )


def _shelf(app: App, look: Look) -> ft.Control:
    shelf = app.entry.texts.get("shelf", "")
    return ft.Row(
        [
            button(
                look,
                "in-shelf",
                text("field.phrase", field=text("field.shelf"), value=shelf or text("field.empty")),
                two_lines(look, text("field.shelf"), shelf or text("field.empty"), False),
                lambda: app.go_to("shelf"),
                height=field_height(look),
                expand=True,
            )
        ]
    )


def _faces(app: App, look: Look) -> ft.Control:
    lacks = text("face.lacks_depth")
    lacking = said(
        "lacks-face-depth", lacks, words(look, lacks, look.small_size, colour=look.palette.failed)
    )
    return ft.Column(
        [
            words(look, text("face.title"), look.small_size, colour=look.palette.quiet),
            ft.Row([_face(app, face, look) for face in FACES], spacing=6),
            *([lacking] if lacks_depth(app.entry) else []),
        ],
        spacing=2,
        tight=True,
    )


def _face(app: App, face: str, look: Look) -> ft.Control:
    chosen = app.entry.texts.get("face") == face
    depth = app.entry.texts.get("face-depth", "") if chosen else ""
    line = text(f"face.{face}")
    return button(
        look,
        f"face-{face}",
        f"{line} {depth}",
        two_lines(look, line, depth, chosen)
        if depth
        else words(look, line, look.body_size, one_line=True, colour=on_fill(look, chosen)),
        lambda: app.choose_face(face),
        height=field_height(look),
        expand=True,
        filled=chosen,
        selected=chosen,
    )
