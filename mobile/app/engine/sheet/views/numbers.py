"""The numbers of the engine, group by group; every one may be missing."""

from functools import partial

import flet as ft

from core.forms.limits_form import TWO_AS_ONE, WORDS
from core.texts import text
from mobile.app.engine.sheet.entry import MOST_CYLINDERS
from mobile.app.engine.sheet.fields import GROUPS, OF_A_CYLINDER, entered, shown_fields
from mobile.app.engine.sheet.model import SheetChoice
from mobile.app.views.look import Look
from mobile.app.views.number_pad import number_pad
from mobile.app.views.parts import (
    button,
    field_height,
    in_rows,
    on_fill,
    panel,
    two_lines,
    words,
)
from mobile.app.views.sizes_form import size_buttons


def numbers(sheet: SheetChoice, look: Look) -> list[ft.Control]:
    """One button a group, its fields under it where it is open, and a way to begin anew."""
    groups = [each for group in GROUPS for each in _group(sheet, group, look)]
    anew = [] if sheet.source.of_a_job else [_anew(sheet, look)]
    return [words(look, text("sheet.numbers.hint"), look.small_size), *groups, *anew]


def numbers_foot(sheet: SheetChoice, look: Look) -> list[ft.Control]:
    """The number pad, while a field is open."""
    if sheet.entry.form.open_field is None:
        return []
    pad = number_pad(sheet.keys(), look)
    return [ft.Container(content=pad, padding=ft.Padding.only(top=4, bottom=4))]


def _group(sheet: SheetChoice, group: str, look: Look) -> list[ft.Control]:
    here = sheet.entry.group == group
    texts = sheet.entry.form.texts
    title = text(f"sheet.group.{group}")
    count = text(
        "sheet.group.count", entered=entered(group, texts), of=len(shown_fields(group, texts))
    )
    icon = ft.Icons.EXPAND_LESS if here else ft.Icons.EXPAND_MORE
    face = ft.Row(
        [
            words(look, title, look.row_size, bold=True, expand=True),
            words(look, count, look.small_size, colour=look.palette.quiet),
            ft.Icon(icon, color=look.palette.ink),
        ],
        spacing=6,
    )
    head = button(
        look,
        f"group-{group}",
        f"{title}: {count}",
        ft.Container(face, padding=ft.Padding.symmetric(horizontal=8)),
        partial(sheet.show_group, group),
        height=max(56.0, 3.0 * look.row_size * look.text_scale),
        expand=True,
        selected=here,
    )
    return [ft.Row([head]), *([panel(look, *_fields(sheet, group, look), gap=6)] if here else [])]


def _fields(sheet: SheetChoice, group: str, look: Look) -> list[ft.Control]:
    names = shown_fields(group, sheet.entry.form.texts)
    whole = [name for name in names if name not in OF_A_CYLINDER and not _is_chosen(name)]
    own = [name for name in names if name in OF_A_CYLINDER]
    choices = [each for name in names if _is_chosen(name) for each in _choice(sheet, name, look)]
    hint = words(
        look, text(f"sheet.hint.{group}"), look.small_size, colour=look.palette.quiet
    )
    controls = [hint, *choices, *size_buttons(sheet.entry.form, whole, sheet.change, look)]
    if own:
        controls += [
            *_cylinders(sheet, look),
            *size_buttons(sheet.entry.form, own, sheet.change, look),
        ]
    return controls


def _is_chosen(name: str) -> bool:
    return name in WORDS or name == TWO_AS_ONE


def _choice(sheet: SheetChoice, name: str, look: Look) -> list[ft.Control]:
    """A question and its answers; a tap on the answer again takes it back."""
    title = words(look, text(f"field.{name}"), look.small_size, colour=look.palette.quiet)
    if name == TWO_AS_ONE:
        yes = bool(sheet.entry.form.texts.get(name))
        answer = _answer(look, f"choose-{name}", text("sheet.word.two-as-one"), yes,
                         partial(sheet.turn_over, name))
        return [title, ft.Row([answer])]
    chosen = sheet.entry.form.texts.get(name)
    answers = [
        _answer(
            look,
            f"choose-{name}-{word.replace(' ', '-')}",
            text(f"sheet.word.{word.replace(' ', '-')}"),
            chosen == word,
            partial(sheet.choose_word, name, word),
        )
        for word in WORDS[name]
    ]
    return [title, ft.Row(answers, spacing=6)]


def _answer(look: Look, identifier: str, label: str, here: bool, on_tap) -> ft.Control:
    return button(
        look,
        identifier,
        label,
        words(look, label, look.body_size, bold=here, colour=on_fill(look, here),
              align=ft.TextAlign.CENTER),
        on_tap,
        height=field_height(look),
        expand=True,
        filled=here,
        selected=here,
    )


def _cylinders(sheet: SheetChoice, look: Look) -> list[ft.Control]:
    """Which cylinder's numbers are shown; one more, or one fewer."""
    title = words(look, text("sheet.cylinders"), look.small_size, colour=look.palette.quiet)
    entry = sheet.entry
    buttons = [_cylinder(sheet, number, look) for number in entry.cylinders]
    own = not sheet.source.of_a_job
    if own and len(entry.cylinders) < MOST_CYLINDERS:
        buttons.append(_icon(look, "add-cylinder", ft.Icons.ADD, sheet.add_cylinder))
    if own and len(entry.cylinders) > 1:
        buttons.append(_icon(look, "drop-cylinder", ft.Icons.REMOVE, sheet.drop_cylinder))
    columns = 6 if look.roomy else 4
    return [title, *in_rows(buttons, look, columns=columns)]


def _cylinder(sheet: SheetChoice, number: str, look: Look) -> ft.Control:
    here = sheet.entry.cylinder == number
    filled = bool(sheet.entry.cylinders[number])
    label = text("choose.cylinder", cylinder=number)
    return button(
        look,
        f"cylinder-{number}",
        label,
        two_lines(look, "", number, here) if not filled else words(
            look, number, look.row_size, bold=True, colour=on_fill(look, here)
        ),
        partial(sheet.show_cylinder, number),
        height=52,
        expand=True,
        filled=here,
        selected=here,
    )


def _icon(look: Look, name: str, icon: ft.IconData, on_tap) -> ft.Control:
    face = ft.Icon(icon, color=look.palette.ink)
    return button(look, name, text(f"sheet.{name}"), face, on_tap, height=52, expand=True)


def _anew(sheet: SheetChoice, look: Look) -> ft.Control:
    line = text("sheet.anew")
    face = words(look, line, look.body_size, bold=True, one_line=True)
    return ft.Row([button(look, "sheet-anew", line, face, sheet.begin_anew, expand=True)])
