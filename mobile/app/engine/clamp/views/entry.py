"""Choosing and typing: every choice a button with its answer, every size opens the number pad."""

import flet as ft

from core.texts import text
from mobile.app.engine.clamp.choices import (
    ALWAYS,
    Option,
    asked,
    offered,
    options,
    wanted,
)
from mobile.app.engine.clamp.entry import label, scatter_is_asked, text_of
from mobile.app.engine.clamp.fields import OWN_HEIGHT
from mobile.app.engine.clamp.model import Clamp
from mobile.app.engine.clamp.views.answer import cylinder_row
from mobile.app.views.look import Look
from mobile.app.views.number_pad import number_pad
from mobile.app.views.parts import button, field_height, in_rows, on_fill, panel, two_lines, words

GROUPS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("fastener", ("size", "thread", "strength")),
    ("tightening", ("tightened", "lubricant", "by")),
    ("engine", ("around",)),
    ("gas", ("peak",)),
    ("sheet", ("copper", "face")),
)
OPTIONS_SHARE = 0.46
"""Most of the height that the answers to a choice take."""


def entry_part(clamp: Clamp, look: Look) -> list[ft.Control]:
    """Everything that is chosen or typed, group by group, and a way to begin anew."""
    groups = [_group(clamp, title, names, look) for title, names in GROUPS]
    return [*groups, _wire(clamp, look), _anew(clamp, look)]


def entry_foot(clamp: Clamp, look: Look) -> list[ft.Control]:
    """Under the thumb: the answers to the open choice, or the number pad."""
    if clamp.entry.open_choice is not None:
        return [_foot(_answers(clamp, clamp.entry.open_choice, look))]
    if clamp.entry.open_field is not None:
        return [_foot(number_pad(clamp.keys(), look))]
    return []


def _foot(content: ft.Control) -> ft.Control:
    return ft.Container(content=content, padding=ft.Padding.only(top=4, bottom=4))


def _group(clamp: Clamp, title: str, names: tuple[str, ...], look: Look) -> ft.Control:
    choices = clamp.entry.choices
    open_ones = {*asked(choices), *offered(choices)}
    controls: list[ft.Control] = []
    for name in names:
        if name in open_ones and (name != "by" or scatter_is_asked(clamp.entry)):
            controls.append(_choice(clamp, name, look))
            fields = wanted(choices, name)
            controls += [_field(clamp, field, look) for field in (*fields.must, *fields.may)]
    return _titled(title, controls, look)


def _titled(title: str, controls: list[ft.Control], look: Look) -> ft.Control:
    notes = []
    if title == "tightening":
        notes.append(
            words(look, text("clamp.screen.friction"), look.small_size, colour=look.palette.quiet)
        )
    head = words(look, text(f"clamp.group.{title}"), look.row_size, bold=True)
    return panel(look, head, *notes, *in_rows(controls, look), gap=6)


def _wire(clamp: Clamp, look: Look) -> ft.Control:
    """Ring, wire and height; where there are several cylinders, one may have its own height."""
    engine = clamp.told.engine
    fields = [_field(clamp, name, look) for name in (*ALWAYS.must, *ALWAYS.may)]
    own: list[ft.Control] = []
    if engine is not None and len(engine.cylinders) > 1:
        own = cylinder_row(clamp, look, "entry")
        if clamp.entry.cylinder is not None:
            own.append(ft.Row([_field(clamp, OWN_HEIGHT, look)]))
    head = words(look, text("clamp.group.wire"), look.row_size, bold=True)
    return panel(look, head, *_from_check(clamp, look), *in_rows(fields, look), *own, gap=6)


def _from_check(clamp: Clamp, look: Look) -> list[ft.Control]:
    """What the quick check knows already, while something of it is lacking here."""
    if not any(name not in clamp.entry.texts for name in clamp.check()):
        return []
    line = text("clamp.screen.from_check")
    face = words(look, line, look.body_size, bold=True, align=ft.TextAlign.CENTER)
    height = field_height(look)
    way = button(look, "take-check", line, face, clamp.take_check, height=height, expand=True)
    return [ft.Row([way])]


def _choice(clamp: Clamp, name: str, look: Look) -> ft.Control:
    choices = clamp.entry.choices
    answer = _answer(clamp, name)
    title = text(f"field.clamp-{name}")
    lacking = name in clamp.told.needs
    reachable = name not in ("thread", "strength") or "size" in choices
    reachable = reachable and (name != "strength" or "thread" in choices)
    open_now = clamp.entry.open_choice == name
    return button(
        look,
        f"choose-{name}",
        text("field.phrase", field=title, value=answer or text("clamp.screen.choose")),
        two_lines(look, title, answer or text("clamp.screen.choose"), open_now),
        (lambda: clamp.open_choice(name)) if reachable else clamp.go_on,
        height=field_height(look),
        expand=True,
        filled=open_now,
        ring=lacking,
    )


def _answer(clamp: Clamp, name: str) -> str:
    value = clamp.entry.choices.get(name)
    if value is None:
        return text(f"clamp.usual.{name}") if name in ("by", "copper", "face") else ""
    found = (o for o in options(clamp.entry.choices, name, clamp.metric()) if o.value == value)
    return next(found).label


def _field(clamp: Clamp, name: str, look: Look) -> ft.Control:
    value = text_of(clamp.entry, name)
    title = label(clamp.entry, name)
    open_now = clamp.entry.open_field == name
    return button(
        look,
        f"in-clamp-{name}",
        text("field.phrase", field=title, value=value or text("field.empty")),
        two_lines(look, title, value or "–", open_now),
        lambda: clamp.open_pad(name),
        height=field_height(look),
        expand=True,
        filled=open_now,
        ring=name in clamp.told.needs,
    )


def _answers(clamp: Clamp, name: str, look: Look) -> ft.Control:
    found = options(clamp.entry.choices, name, clamp.metric())
    chosen = clamp.entry.choices.get(name)
    rows = in_rows([_option(clamp, name, each, each.value == chosen, look) for each in found], look)
    question = text(f"clamp.ask.{name}" if look.roomy else f"field.clamp-{name}")
    title = words(look, question, look.body_size, bold=True)
    tall = len(rows) * (field_height(look) + 6.0) + 2.6 * look.body_size * look.text_scale + 8.0
    return ft.Container(
        padding=ft.Padding.symmetric(horizontal=8),
        height=min(tall, OPTIONS_SHARE * look.height),
        content=ft.Column([title, *rows], spacing=6, scroll=ft.ScrollMode.AUTO),
    )


def _option(clamp: Clamp, name: str, option: Option, chosen: bool, look: Look) -> ft.Control:
    face = (
        two_lines(look, option.detail, option.label, chosen)
        if option.detail
        else words(
            look,
            option.label,
            look.body_size,
            bold=True,
            colour=on_fill(look, chosen),
            align=ft.TextAlign.CENTER,
        )
    )
    return button(
        look,
        f"pick-{name}-{option.value}",
        f"{option.label} {option.detail}".strip(),
        face,
        lambda: clamp.choose(name, option.value),
        height=field_height(look),
        expand=True,
        filled=chosen,
        selected=chosen,
    )


def _anew(clamp: Clamp, look: Look) -> ft.Control:
    line = text("clamp.screen.anew")
    face = words(look, line, look.body_size, bold=True, one_line=True)
    return ft.Row([button(look, "clamp-anew", line, face, clamp.begin_anew, expand=True)])
