"""Fields, choices and answers, as every part of the deck screens has them."""

from collections.abc import Callable, Sequence

import flet as ft

from core.texts import text
from core.verdict import Check
from mobile.app.engine.deck.entry import VALUES, DeckEntry, chosen
from mobile.app.engine.deck.fields import label
from mobile.app.engine.deck.model import Deck
from mobile.app.views.look import Look
from mobile.app.views.parts import (
    Tap,
    button,
    field_height,
    in_rows,
    on_fill,
    said,
    two_lines,
    words,
)
from mobile.app.views.verdict_sign import colour, sign

SIDES = 12.0
PANEL = 10.0


def inner_width(look: Look) -> float:
    """Width of a picture inside a panel [px]."""
    pane = look.width - look.pane - 1.0 if look.wide else look.width
    return pane - 2.0 * (SIDES + PANEL)


def title(look: Look, key: str, **values: object) -> ft.Control:
    """Heading of a panel."""
    return words(look, text(key, **values), look.row_size, bold=True)


def note(look: Look, line: str) -> ft.Control:
    """A line of explanation."""
    return words(look, line, look.small_size, colour=look.palette.quiet)


def fields(
    deck: Deck, names: Sequence[str], look: Look, ring: Sequence[str] = ()
) -> list[ft.Control]:
    """Rows of fields; each opens the number pad. Those in `ring` are still needed."""
    return in_rows([_field(deck, name, look, name in ring) for name in names], look)


def _field(deck: Deck, name: str, look: Look, ring: bool) -> ft.Control:
    value, called = deck.entry.texts.get(name, ""), label(name)
    here = deck.entry.open_field == name
    return button(
        look,
        f"in-deck-{name}",
        text("field.phrase", field=called, value=value or text("field.empty")),
        two_lines(look, called, value or "–", here),
        lambda: deck.open_pad(name),
        height=field_height(look),
        expand=True,
        filled=here,
        ring=ring,
    )


def choice(deck: Deck, name: str, look: Look) -> list[ft.Control]:
    """What is chosen, one button an answer."""
    buttons = [_answer(deck, name, value, look) for value in VALUES[name]]
    return [note(look, text(f"deck.choice.{name}")), *in_rows(buttons, look)]


def _answer(deck: Deck, name: str, value: str, look: Look) -> ft.Control:
    called = _called(name, value)
    here = chosen(deck.entry, name) == value
    return small_button(
        look,
        f"deck-{name}-{value}",
        called,
        lambda: deck.choose(name, value),
        filled=here,
        phrase=text("deck.chosen", choice=text(f"deck.choice.{name}"), value=called),
    )


def _called(name: str, value: str) -> str:
    match name:
        case "material":
            return text(f"wire.material.{value}")
        case "part":
            return text(f"deck.part_of_span.{value}")
    return text(f"deck.{name}.{value}")


def small_button(
    look: Look,
    identifier: str,
    called: str,
    on_tap: Tap,
    *,
    filled: bool = False,
    phrase: str = "",
) -> ft.Control:
    """A button with one line of words."""
    face = words(
        look,
        called,
        look.body_size,
        bold=True,
        colour=on_fill(look, filled),
        align=ft.TextAlign.CENTER,
    )
    return button(
        look,
        identifier,
        phrase or called,
        face,
        on_tap,
        height=field_height(look),
        expand=True,
        filled=filled,
        selected=filled,
    )


def row_button(
    look: Look, identifier: str, called: str, on_tap: Tap, *, filled: bool = False
) -> ft.Control:
    """A button as wide as its panel."""
    return ft.Row([small_button(look, identifier, called, on_tap, filled=filled)])


def answer(look: Look, identifier: str, line: str, *, bold: bool = False) -> ft.Control:
    """One line of an answer."""
    return said(identifier, line, words(look, line, look.body_size, bold=bold))


def answers(look: Look, identifier: str, lines: Sequence[str]) -> list[ft.Control]:
    """Several lines, each found by its number."""
    return [answer(look, f"{identifier}-{place}", line) for place, line in enumerate(lines)]


def faults(look: Look, identifier: str, lines: Sequence[str]) -> list[ft.Control]:
    """What cannot be used, and what to type instead."""
    return [
        said(f"{identifier}-{place}", line,
             words(look, line, look.body_size, colour=look.palette.failed, bold=True))
        for place, line in enumerate(lines)
    ]


def verdict(look: Look, identifier: str, check: Check, line: str) -> ft.Control:
    """A verdict by shape, colour and word, with a line under it."""
    name, word = text(f"check.{check.id}"), text(f"word.{check.word}")
    head = text("deck.verdict", name=name, word=word)
    column = ft.Column(
        [
            words(look, head, look.body_size, bold=True, colour=colour(look, check.verdict)),
            words(look, line, look.small_size),
        ],
        spacing=0,
        tight=True,
        expand=True,
    )
    mark = sign(look, check.verdict, check.word, look.row_size * 1.2)
    return said(
        identifier,
        f"{head}. {line}",
        ft.Row([mark, column], spacing=8, vertical_alignment=ft.CrossAxisAlignment.START),
    )


def change(deck: Deck, transition: Callable[..., DeckEntry], *given: object) -> Tap:
    """A tap that applies a transition."""
    return lambda: deck.change(lambda entry: transition(entry, *given))

