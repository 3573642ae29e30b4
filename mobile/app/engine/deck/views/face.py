"""Flatness of a deck or head face from lines and from a grid, and its finish."""

import flet as ft

from core.calc.flatness import Line, LineFlatness
from core.texts import text
from core.texts.length import Length
from mobile.app.engine.deck import entry as entries
from mobile.app.engine.deck.entry import point_is_ready
from mobile.app.engine.deck.model import Deck
from mobile.app.engine.deck.told import FaceTold
from mobile.app.engine.deck.views.controls import (
    answer,
    change,
    choice,
    faults,
    fields,
    row_button,
    title,
    verdict,
)
from mobile.app.views.look import Look
from mobile.app.views.parts import panel


def face_part(deck: Deck, look: Look) -> list[ft.Control]:
    """Lines, grid, finish: each with its answer on top."""
    told = deck.told.face
    wrong = faults(look, "deck-face-fault", told.faults)
    return [*wrong, _lines(deck, told, look), _grid(deck, told, look), _finish(deck, told, look)]


def _lines(deck: Deck, told: FaceTold, look: Look) -> ft.Control:
    names = [f"{side}:{line}" for line in Line for side in ("goes", "stops")]
    answers = _line_answers(told.lines, look) if told.lines else []
    head = title(look, "deck.face.lines")
    rows = [row for k in range(0, len(names), 2) for row in fields(deck, names[k : k + 2], look)]
    return panel(look, head, *answers, *rows, gap=6)


def _line_answers(found: LineFlatness, look: Look) -> list[ft.Control]:
    lines = [text("flatness.lower_bound", at_least=Length(found.at_least))]
    if found.worst is not None:
        worst = text(f"flatness.line.{found.worst}")
        lines.append(text("deck.face.worst", line=worst))
    if found.under is not None:
        lines.append(text("flatness.lines_under", under=Length(found.under)))
    if found.not_tried:
        names = ", ".join(text(f"flatness.line.{line}") for line in found.not_tried)
        lines.append(text("flatness.not_tried", lines=names))
    return [verdict(look, "deck-lines", found.check, " ".join(lines))]


def _grid(deck: Deck, told: FaceTold, look: Look) -> ft.Control:
    add = change(deck, entries.add_point)
    ready = point_is_ready(deck.entry)
    points = [
        row_button(
            look,
            f"deck-drop-point-{place}",
            text("deck.pairs.drop", reading=text("deck.face.point", **point)),
            change(deck, entries.drop_point, place),
        )
        for place, point in enumerate(deck.entry.grid)
    ]
    return panel(
        look,
        title(look, "deck.face.grid"),
        *_grid_answers(told, look),
        *fields(deck, ("grid-x", "grid-y", "grid-z"), look),
        *([row_button(look, "deck-add-point", text("deck.face.add"), add, filled=True)]
          if ready else []),
        *points,
        gap=6,
    )


def _grid_answers(told: FaceTold, look: Look) -> list[ft.Control]:
    found: list[ft.Control] = []
    for key, flatness, check in (
        ("zone", told.zone, told.zone_check),
        ("stretch", told.stretch, told.stretch_check),
    ):
        if flatness is not None and check is not None:
            value, limit = Length(flatness.value), Length(check.limit)
            line = text(f"deck.face.{key}", value=value, limit=limit)
            found.append(verdict(look, f"deck-{key}", check, line))
    if told.squares is not None:
        line = text("deck.face.squares", value=Length(told.squares.value))
        found.append(answer(look, "deck-squares", line))
    return found


def _finish(deck: Deck, told: FaceTold, look: Look) -> ft.Control:
    found: list[ft.Control] = []
    if told.roughness is not None:
        roughness = told.roughness
        line = text(
            "finish.both",
            parameter=roughness.parameter,
            microinches=roughness.microinches,
            micrometres=roughness.micrometres,
        )
        found.append(
            verdict(look, "deck-finish", told.finish, line)
            if told.finish
            else answer(look, "deck-finish", line, bold=True)
        )
    rows = (*choice(deck, "finish", look), *fields(deck, ("finish",), look))
    return panel(look, title(look, "deck.face.finish"), *found, *rows, gap=6)
