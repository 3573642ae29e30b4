"""Heights from readings on one wire and across two."""

from collections.abc import Mapping
from typing import Any

import flet as ft

from core.calc.pair_heights import WireHeight
from core.calc.passed_over import Outcome
from core.forms.heights_words import (
    crossing_line,
    group_line,
    rocked_line,
    scatter_line,
    suspect_lines,
)
from core.texts import text
from core.texts.length import Length
from mobile.app.engine.deck import entry as entries
from mobile.app.engine.deck.entry import chosen, pair_is_ready
from mobile.app.engine.deck.model import Deck
from mobile.app.engine.deck.told import HeightsTold, wire_names
from mobile.app.engine.deck.views.controls import (
    answer,
    answers,
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


def pairs_part(deck: Deck, look: Look) -> list[ft.Control]:
    """What was found above, then the next reading, then those kept."""
    return [*_found(deck.told.heights, look), _next(deck, look), _kept(deck, look)]


def _next(deck: Deck, look: Look) -> ft.Control:
    entry = deck.entry
    rings = [
        small_button(
            look,
            f"deck-wire-{name}",
            text("deck.pairs.ring", name=name),
            change(deck, entries.tap_wire, name),
            filled=name in entry.on,
        )
        for name in wire_names(entry)
    ]
    by_leaves = chosen(entry, "with") == "leaves"
    names = ("pair-go", "pair-no-go") if by_leaves else ("pair-height",)
    return panel(
        look,
        title(look, "deck.pairs"),
        note(look, text("deck.pairs.how")),
        *in_rows(rings, look, columns=4 if look.roomy else 2),
        *(choice(deck, "part", look) if len(entry.on) > 1 else []),
        *choice(deck, "with", look),
        *fields(deck, names, look),
        *_keep(deck, look),
        gap=6,
    )


def _keep(deck: Deck, look: Look) -> list[ft.Control]:
    found = []
    if pair_is_ready(deck.entry):
        add = change(deck, entries.add_pair)
        found.append(row_button(look, "deck-add-pair", text("deck.pairs.add"), add, filled=True))
    if len(deck.entry.on) > 1:
        rocks = change(deck, entries.add_rocking)
        found.append(row_button(look, "deck-rocks", text("deck.pairs.rocks"), rocks))
    return found


def _kept(deck: Deck, look: Look) -> ft.Control:
    if not deck.entry.pairs:
        return note(look, text("deck.pairs.none"))
    rows = [
        row_button(
            look,
            f"deck-drop-pair-{place}",
            text("deck.pairs.drop", reading=_reading(pair)),
            change(deck, entries.drop_pair, place),
        )
        for place, pair in enumerate(deck.entry.pairs)
    ]
    return panel(look, *rows, gap=6)


def _reading(pair: Mapping[str, Any]) -> str:
    on = (
        text("deck.pairs.on", wire=pair["wire"])
        if "wire" in pair
        else text(
            "deck.pairs.across",
            first=pair["across"][0],
            second=pair["across"][1],
            part=text(f"deck.part_of_span.{pair.get('part', '1/2')}"),
        )
    )
    if "rocks" in pair:
        return text("deck.pairs.rocked", on=on)
    if "height" in pair:
        tool = text(f"deck.with.{pair['with']}")
        return text("deck.pairs.height", on=on, height=pair["height"], tool=tool)
    return text("deck.pairs.leaves", on=on, go=pair["go"], no_go=pair["no_go"])


def _found(told: HeightsTold, look: Look) -> list[ft.Control]:
    if told.found is None:
        return faults(look, "deck-pair-fault", told.faults)
    found = told.found
    undetermined = [group_line(group) for group in found.undetermined]
    doubts = [
        *suspect_lines(found),
        *_rocked(told),
        *(crossing_line(c) for c in told.crossings if c.outcome is not Outcome.CLEAR),
    ]
    assumed = [str(each) for each in told.file.assumed] if told.file else []
    return [
        panel(
            look,
            *(answer(look, f"deck-found-{w.name}", _height(w), bold=True) for w in found.wires),
            *answers(look, "deck-undetermined", undetermined),
            *answers(look, "deck-doubt", doubts),
            answer(look, "deck-scatter", scatter_line(found)),
            *(note(look, line) for line in assumed),
            gap=4,
        )
    ]


def _rocked(told: HeightsTold) -> list[str]:
    rocked = told.file.rocked if told.file else ()
    return [
        rocked_line(laid, [each.over for each in told.crossings if each.laid == laid])
        for laid in rocked
    ]


def _height(wire: WireHeight) -> str:
    if wire.height is None or wire.u is None:
        undetermined = text("heights.undetermined")
        return text("deck.pairs.open", name=wire.name, undetermined=undetermined)
    return text(
        "deck.pairs.found",
        name=wire.name,
        height=text("heights.height", value=Length(wire.height)),
        spread=text("heights.spread", u=Length(wire.u)),
    )
