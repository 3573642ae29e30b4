"""A bank from a few numbers, and every coordinate one by one."""

import flet as ft

from core.calc.deck_layout import Bore, DeckLayout, Hole
from core.forms.deck_form import FIELDS
from core.texts import text
from core.texts.length import Length
from mobile.app.engine.deck import entry as entries
from mobile.app.engine.deck.fields import label
from mobile.app.engine.deck.model import Deck
from mobile.app.engine.deck.views.controls import (
    change,
    choice,
    faults,
    fields,
    note,
    row_button,
    small_button,
    title,
)
from mobile.app.views.look import Look
from mobile.app.views.parts import in_rows, panel


def numbers_part(deck: Deck, look: Look) -> list[ft.Control]:
    """Numbers, then places, then a way to begin anew."""
    told = deck.told
    lacking = ", ".join(label(field) for field in told.lacks)
    needs = [note(look, text("deck.numbers.lacks", fields=lacking))] if told.lacks else []
    two_banks = deck.entry.texts.get("banks", "").startswith("2")
    return [
        panel(
            look,
            title(look, "deck.numbers"),
            *needs,
            *fields(deck, tuple(FIELDS), look, told.lacks),
            *(choice(deck, "numbering", look) if two_banks else []),
            *faults(look, "deck-fault", told.faults),
            gap=6,
        ),
        *_places(deck, look),
        row_button(look, "deck-anew", text("deck.anew"), deck.begin_anew),
    ]


def _places(deck: Deck, look: Look) -> list[ft.Control]:
    if not deck.told.banks:
        return []
    shown = next(
        (b.layout for b in deck.told.banks if b.layout.bank == deck.entry.bank),
        deck.told.banks[0].layout,
    )
    things = [_thing(deck, shown, each, look) for each in shown.everything]
    return [
        panel(
            look,
            title(look, "deck.places"),
            note(look, text("deck.places.how")),
            *bank_chips(deck, look, everything=False),
            *_edited(deck, look),
            *in_rows(things, look, columns=2),
            gap=6,
        )
    ]


def bank_chips(deck: Deck, look: Look, *, everything: bool) -> list[ft.Control]:
    """Which bank is shown, where there are two."""
    banks = [bank.layout.bank for bank in deck.told.banks]
    if len(banks) == 1:
        return []
    names: list[str | None] = [None, *banks] if everything else list(banks)
    first = None if everything else banks[0]
    return in_rows([_chip(deck, name, first, look) for name in names], look, columns=len(names))


def _chip(deck: Deck, name: str | None, first: str | None, look: Look) -> ft.Control:
    called = text(f"deck.bank.{name or 'all'}")
    here = (deck.entry.bank or first) == name
    tap = change(deck, entries.show_bank, name)
    return small_button(look, f"deck-bank-{name or 'all'}", called, tap, filled=here)


def _thing(deck: Deck, layout: DeckLayout, thing: Bore | Hole, look: Look) -> ft.Control:
    key, metric = f"{layout.bank}/{thing.name}", deck.metric()
    x, y = (Length(each).shown(metric=metric) for each in (thing.x, thing.y))
    called = text("deck.place", name=thing.name, x=x, y=y)
    tap = change(deck, entries.move, key, f"{thing.x / 25.4:.4f} in", f"{thing.y / 25.4:.4f} in")
    here = deck.entry.moving == key
    return small_button(look, f"deck-at-{key}", called, tap, filled=here)


def _edited(deck: Deck, look: Look) -> list[ft.Control]:
    key = deck.entry.moving
    if key is None:
        return []
    back = small_button(
        look, "deck-put-back", text("deck.put_back"), change(deck, entries.put_back, key)
    )
    away = small_button(look, "deck-moved", text("deck.away"), change(deck, entries.move, None))
    return [*fields(deck, (f"x:{key}", f"y:{key}"), look), ft.Row([back, away], spacing=6)]
