"""What is known beside the height; each field opens the number pad."""

import flet as ft

from core.texts import text
from mobile.app.model import App
from mobile.app.views.look import Look
from mobile.app.views.parts import button, on_fill, words

FIELDS = ("go", "no-go", "gasket", "wire", "groove-width", "groove-depth")
FACES = ("flat", "printed", "receiver")


def fields(app: App, look: Look) -> ft.Control:
    """Sizes, the shelf, and the head face."""
    columns = 3 if look.roomy else 2
    chips = [_field(app, field, look) for field in FIELDS]
    rows = [chips[i : i + columns] for i in range(0, len(chips), columns)]
    return ft.Column(
        [
            *(ft.Row(row, spacing=6) for row in rows),
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
        _two_lines(look, text(f"field.{field}"), value or "–", open_now),
        lambda: app.open_pad(field),
        height=_height(look),
        expand=True,
        filled=open_now,
    )


def _height(look: Look) -> float:
    return max(56.0, 2.9 * look.body_size * look.text_scale)


def _two_lines(look: Look, title: str, value: str, filled: bool) -> ft.Control:
    palette = look.palette
    return ft.Column(
        [
            words(
                look,
                title,
                look.small_size,
                one_line=True,
                colour=palette.on_copper if filled else palette.quiet,
            ),
            words(
                look, value, look.body_size, bold=True, one_line=True, colour=on_fill(look, filled)
            ),
        ],
        spacing=0,
        tight=True,
        alignment=ft.MainAxisAlignment.CENTER,
    )


def _shelf(app: App, look: Look) -> ft.Control:
    shelf = app.entry.texts.get("shelf", "")
    return ft.Row(
        [
            button(
                look,
                "in-shelf",
                text("field.phrase", field=text("field.shelf"), value=shelf or text("field.empty")),
                _two_lines(look, text("field.shelf"), shelf or text("field.empty"), False),
                lambda: app.go_to("shelf"),
                height=_height(look),
                expand=True,
            )
        ]
    )


def _faces(app: App, look: Look) -> ft.Control:
    return ft.Column(
        [
            words(look, text("face.title"), look.small_size, colour=look.palette.quiet),
            ft.Row([_face(app, face, look) for face in FACES], spacing=6),
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
        _two_lines(look, line, depth, chosen)
        if depth
        else words(look, line, look.body_size, one_line=True, colour=on_fill(look, chosen)),
        lambda: app.choose_face(face),
        height=_height(look),
        expand=True,
        filled=chosen,
        selected=chosen,
    )
