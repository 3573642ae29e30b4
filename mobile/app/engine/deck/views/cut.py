"""Planning the cut: wire and sheet to a groove, its place, its wire, and the sheet to print."""

import flet as ft

from core.calc.cut import Band, CutPlan, CutReading
from core.forms.cut_form import CutForm
from core.forms.cut_words import deck_cut_line, joint_lines, land_line, window_line, wire_lines
from core.texts import text
from core.texts.length import Length
from core.verdict import Verdict
from mobile.app.engine.deck.entry import chosen
from mobile.app.engine.deck.model import Deck
from mobile.app.engine.deck.told import BankTold
from mobile.app.engine.deck.views.controls import (
    answer,
    answers,
    choice,
    faults,
    fields,
    note,
    row_button,
    title,
    verdict,
)
from mobile.app.views.look import Look
from mobile.app.views.parts import panel, said, words

FIRST = ("wire", "gasket")
MORE = (
    "ring", "gasket-bore", "target-share", "share", "interference", "depth-tol", "width-tol",
    "wire-tol", "gasket-tol", "deck-cut", "trimming", "spool", "piece",
)  # fmt: skip


def cut_part(deck: Deck, look: Look) -> list[ft.Control]:
    """The answer first, then what it rests on."""
    told = deck.told
    lacks = [name for name in FIRST if name not in deck.entry.texts]
    ask = panel(
        look,
        title(look, "deck.cut"),
        *fields(deck, FIRST, look, lacks),
        *([note(look, text("deck.cut.lacks"))] if lacks else []),
        *faults(look, "deck-cut-fault", told.cut_faults),
        gap=6,
    )
    groove = _groove(deck, told.cut, look) if told.cut else []
    return [ask, *groove, *_rules(deck, look), *_place(deck, look), _more(deck, look)]


def _groove(deck: Deck, cut: CutForm, look: Look) -> list[ft.Control]:
    parts: list[ft.Control] = []
    if not cut.answer.decided:
        line = text("cut.table.undecided")
        parts.append(answer(look, "deck-cut-open", line, bold=True))
    for place, reading in enumerate(cut.answer.readings):
        parts += _reading(cut, reading, place, look)
    save = row_button(look, "deck-save", text("deck.cut.save"), deck.save_sheet, filled=True)
    saved = [answer(look, "deck-saved", deck.saved)] if deck.saved else []
    lacking = [] if deck.told.banks else [note(look, text("deck.cut.no_deck"))]
    return [panel(look, save, *saved, *lacking, *parts, gap=6)]


def _reading(cut: CutForm, reading: CutReading, place: int, look: Look) -> list[ft.Control]:
    plan = reading.plan
    rows: list[ft.Control] = [words(look, str(reading.reading), look.body_size, bold=True)]
    rows += [
        _row(look, f"deck-cut-{key}-{place}", key, band, "length")
        for key, band in (
            ("width", plan.width), ("depth", plan.depth), ("height", plan.height),
            ("interference", plan.interference), ("widest", plan.widest_point),
        )
    ]
    rows.append(_row(look, f"deck-cut-share-{place}", "share", plan.share, "share"))
    rows += [
        verdict(look, f"deck-check-{check.id}-{place}", check, str(check.source))
        for check in plan.checks
    ]
    rows += answers(look, f"deck-note-{place}", [str(each) for each in plan.notes])
    return [*rows, *_deck_cut(cut, plan, place, look)]


def _row(look: Look, identifier: str, key: str, band: Band, kind: str) -> ft.Control:
    """Target large, both ends under it."""
    low, target, high = (_amount(kind, each) for each in (band.low, band.target, band.high))
    name = text(f"cut.table.{key}")
    face = ft.Column(
        [
            words(look, name, look.small_size, colour=look.palette.quiet),
            words(look, target, look.row_size, bold=True),
            words(look, f"{low} – {high}", look.small_size),
        ],
        spacing=0,
        tight=True,
    )
    line = text("deck.cut.row", name=name, target=target, low=low, high=high)
    return said(identifier, line, face)


def _amount(kind: str, value: float) -> str:
    if kind == "share":
        return text("deck.cut.share", value=value)
    return text("deck.cut.length", value=Length(value))


def _deck_cut(cut: CutForm, plan: CutPlan, place: int, look: Look) -> list[ft.Control]:
    if cut.deck_cut is None:
        return []
    head = title(look, "deck.cut.again")
    return [head, answer(look, f"deck-again-{place}", deck_cut_line(plan, cut.deck_cut))]


def _rules(deck: Deck, look: Look) -> list[ft.Control]:
    """What makes the job unlike the usual one, and what the trade says to it."""
    choices = [
        row for name in ("face", "material", "wire-in", "sheet") for row in choice(deck, name, look)
    ]
    depth = fields(deck, ("face-depth",), look) if chosen(deck.entry, "face") != "flat" else []
    lines = [
        answer(look, f"deck-rule-{point.point}-{place}", str(sentence),
               bold=point.verdict is not Verdict.PASS)
        for point in deck.told.standpoints
        for place, sentence in enumerate(point.sentences)
    ]
    return [panel(look, title(look, "deck.cut.rules"), *lines, *choices, *depth, gap=6)]


def _place(deck: Deck, look: Look) -> list[ft.Control]:
    cut = deck.told.cut
    rows = [row for bank in deck.told.banks for row in _bank(bank, look)]
    places = [panel(look, title(look, "deck.cut.place"), *rows, gap=6)] if rows else []
    if cut is None or cut.engine is None:
        return places
    lines = answers(look, "deck-wire-line", wire_lines(cut.engine, cut.spool, cut.piece))
    return [*places, panel(look, title(look, "deck.cut.wire"), *lines, gap=6)]


def _bank(bank: BankTold, look: Look) -> list[ft.Control]:
    name = bank.layout.bank
    tight = [text("deck.cut.tight", land=land_line(land)) for land in bank.tight]
    joints = joint_lines(bank.joints) if bank.joints else ()
    turning = text("deck.joint.clockwise") if joints else ""
    return [
        title(look, f"deck.bank.{name}"),
        answer(look, f"deck-window-{name}", window_line(bank.window)),
        *answers(look, f"deck-tight-{name}", tight),
        *answers(look, f"deck-joint-{name}", joints),
        *([note(look, turning)] if turning else []),
    ]


def _more(deck: Deck, look: Look) -> ft.Control:
    return panel(look, title(look, "deck.cut.more"), *fields(deck, MORE, look), gap=6)
