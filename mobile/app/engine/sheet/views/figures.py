"""The figures behind the choice: compression, intake side, cam, and what heat does."""

import flet as ft

from core.texts import text
from mobile.app.engine.sheet.entry import SheetEntry
from mobile.app.engine.sheet.figures import Figure, figures_of
from mobile.app.engine.sheet.found import Found
from mobile.app.views.look import Look
from mobile.app.views.parts import panel, said, words


def figures(entry: SheetEntry, found: Found, look: Look) -> list[ft.Control]:
    """One panel a topic, each with its figures or what it lacks."""
    title = text("sheet.figures.hint")
    panels = [
        _panel(topic, rows, look) for topic, rows in figures_of(entry, found).items()
    ]
    return [words(look, title, look.small_size, colour=look.palette.quiet), *panels]


def _panel(topic: str, rows: tuple[Figure, ...], look: Look) -> ft.Control:
    head = words(look, text(f"sheet.topic.{topic}"), look.row_size, bold=True)
    lines = [_figure(topic, number, each, look) for number, each in enumerate(rows)]
    return panel(look, head, *lines, gap=6)


def _figure(topic: str, number: int, figure: Figure, look: Look) -> ft.Control:
    palette = look.palette
    tint = palette.failed if figure.wrong else palette.ink
    face: list[ft.Control] = []
    if figure.what:
        face.append(words(look, figure.what, look.small_size, colour=palette.quiet))
    weight = bool(figure.what)
    face.append(
        words(look, figure.value, look.body_size if weight else look.small_size, bold=weight,
              colour=tint)
    )
    phrase = f"{figure.what}: {figure.value}" if figure.what else figure.value
    return said(f"figure-{topic}-{number}", phrase, ft.Column(face, spacing=0, tight=True))
