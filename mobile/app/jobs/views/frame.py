"""What every screen of the jobs has: a way back, a title, what was saved or went wrong."""

import math
from collections.abc import Callable
from dataclasses import dataclass, field

import flet as ft

from core.texts import text
from mobile.app.jobs import filing
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.size_sheet import KINDS
from mobile.app.views.look import Look
from mobile.app.views.number_pad import number_pad
from mobile.app.views.parts import Tap, button, on_fill, panel, said, words
from mobile.app.views.sizes_form import form_keys

KEY = 52.0
GAP = 8.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Screen:
    """One screen: what scrolls, and what stays under the thumb.

    Parameters
    ----------
    undo
        Whether taking back belongs here.
    """

    title: str
    body: list[ft.Control] = field(default_factory=list)
    foot: ft.Control | None = None
    back: bool = True
    undo: bool = False


def beside(screen: Screen, look: Look) -> ft.Control:
    """A screen that stands beside the one in front: no way back, no keys at its foot."""
    name = words(look, screen.title, look.title_size, bold=True, one_line=True)
    head = ft.Container(name, padding=ft.Padding.only(left=10, right=10, top=14, bottom=6))
    return ft.Column([head, _scrolling(screen, "beside")], expand=True, spacing=4)


def framed(jobs: Jobs, screen: Screen, look: Look) -> ft.Control:
    """The whole screen."""
    foot = screen.foot or _pad(jobs, look)
    parts: list[ft.Control] = [
        _head(jobs, screen, look),
        *_told(jobs, look),
        _scrolling(screen, jobs.screen()),
    ]
    if foot:
        parts.append(ft.Container(content=foot, padding=ft.Padding.only(top=4, bottom=4)))
    return ft.Column(parts, expand=True, spacing=4)


def _scrolling(screen: Screen, name: str) -> ft.Control:
    """What scrolls; each screen begins at its top."""
    column = ft.Column(
        screen.body,
        scroll=ft.ScrollMode.AUTO,
        expand=True,
        spacing=GAP,
        key=ft.ValueKey(f"{name}-{screen.title}"),
    )
    return ft.Container(column, padding=ft.Padding.symmetric(horizontal=10), expand=True)


def _pad(jobs: Jobs, look: Look) -> ft.Control | None:
    """The number pad, while a size is being typed."""
    made = filing.form(jobs)
    if made is None or jobs.desk.sizes.open_field is None:
        return None
    form = filing.current(jobs, made)
    return number_pad(form_keys(form, KINDS, lambda step: filing.change(jobs, step)), look)


def _head(jobs: Jobs, screen: Screen, look: Look) -> ft.Control:
    size = look.title_size if look.roomy else 1.2 * look.row_size
    title = words(look, screen.title, size, bold=True, one_line=True, expand=True)
    named = ft.Semantics(
        identifier="title", label=screen.title, exclude_semantics=True, expand=True, content=title
    )
    parts: list[ft.Control] = [named]
    if screen.back:
        parts.insert(
            0, icon_button(look, "back", text("jobs.back"), ft.Icons.ARROW_BACK, jobs.back)
        )
    if screen.undo and jobs.job:
        parts += [
            _taking(jobs.job.can_undo, look, "undo", ft.Icons.UNDO, jobs.undo),
            _taking(jobs.job.can_redo, look, "redo", ft.Icons.REDO, jobs.redo),
        ]
    return ft.Container(
        padding=ft.Padding.only(left=6, right=6, top=4), content=ft.Row(parts, spacing=6)
    )


def _taking(able: bool, look: Look, name: str, icon: ft.IconData, on_tap: Tap) -> ft.Control:
    tint = look.palette.ink if able else look.palette.line
    phrase = text(f"jobs.{name}")
    face = ft.Icon(icon, color=tint, size=26)
    return button(look, name, phrase, face, on_tap if able else _nothing, width=KEY, height=KEY)


def _nothing() -> None:
    """A key that has nothing to do."""


def _told(jobs: Jobs, look: Look) -> list[ft.Control]:
    """What went wrong, then what is on the disk."""
    found: list[ft.Control] = []
    if jobs.trouble:
        found.append(trouble(jobs, look))
    if jobs.told:
        found.append(good_news(jobs.told, look))
    return found


def trouble(jobs: Jobs, look: Look) -> ft.Control:
    """What went wrong, and a way to close it."""

    def close() -> None:
        jobs.trouble = ""

    line = words(look, jobs.trouble, look.body_size, colour=look.palette.failed, expand=True)
    sign = ft.Icon(ft.Icons.ERROR_OUTLINE, color=look.palette.failed, size=24)
    closing = icon_button(look, "close-trouble", text("link.close"), ft.Icons.CLOSE, close)
    shown = said("trouble", jobs.trouble, ft.Row([sign, line], spacing=8), live=True)
    shown.expand = True
    parts: list[ft.Control] = [ft.Row([shown, closing], spacing=6)]
    if jobs.disk_failed and jobs.job:
        anew = text("jobs.open_anew")
        again = wide_button(look, "open-anew", anew, lambda: jobs.run(jobs.open_anew))
        parts.append(again)
    return ft.Container(
        padding=ft.Padding.symmetric(horizontal=10),
        content=ft.Column(parts, spacing=4, tight=True),
    )


def good_news(line: str, look: Look) -> ft.Control:
    """What is on the disk."""
    palette = look.palette
    sign = ft.Icon(ft.Icons.CHECK_CIRCLE, color=palette.passed, size=22)
    content = ft.Row(
        [sign, words(look, line, look.body_size, bold=True, colour=palette.passed, expand=True)],
        spacing=8,
    )
    return ft.Container(
        padding=ft.Padding.symmetric(horizontal=10), content=said("told", line, content, live=True)
    )


def icon_button(
    look: Look, identifier: str, phrase: str, icon: ft.IconData, on_tap: Tap
) -> ft.Control:
    """A square key with a picture."""
    face = ft.Icon(icon, color=look.palette.ink, size=26)
    return button(look, identifier, phrase, face, on_tap, width=KEY, height=KEY)


def wide_button(
    look: Look,
    identifier: str,
    label: str,
    on_tap: Tap,
    *,
    icon: ft.IconData | None = None,
    filled: bool = False,
    height: float = KEY,
) -> ft.Control:
    """A key as wide as the screen."""
    tint = on_fill(look, filled)
    label_part = words(look, label, look.body_size, bold=True, colour=tint)
    label_part.text_align = ft.TextAlign.CENTER
    content: list[ft.Control] = [ft.Icon(icon, color=tint, size=22)] if icon else []
    label_part.expand = bool(icon)
    label_part.text_align = ft.TextAlign.START if icon else ft.TextAlign.CENTER
    face = ft.Row([*content, label_part], spacing=8) if icon else label_part
    tall = max(height, _label_height(look))
    key = button(look, identifier, label, face, on_tap, height=tall, expand=True, filled=filled)
    return ft.Row([key])


def _label_height(look: Look) -> float:
    """Room for a label, which takes two lines on a narrow screen [px]."""
    size = look.body_size * look.text_scale
    return 1.5 * size + 16 if look.roomy else 2.9 * size


def way(
    look: Look,
    identifier: str,
    label: str,
    value: str,
    on_tap: Tap,
    icon: ft.IconData | None = None,
) -> ft.Control:
    """A line that leads somewhere: what it is, what stands there now."""
    palette = look.palette
    lines = ft.Column(
        [
            words(look, label, look.small_size, colour=palette.quiet),
            words(look, value, look.row_size, bold=True, one_line=True),
        ],
        spacing=0,
        tight=True,
        expand=True,
        alignment=ft.MainAxisAlignment.CENTER,
    )
    face = ft.Container(
        padding=ft.Padding.symmetric(horizontal=6),
        content=ft.Row(
            [lines, ft.Icon(icon or ft.Icons.CHEVRON_RIGHT, color=palette.quiet, size=24)]
        ),
    )
    height = max(60.0, (look.small_size + look.row_size) * 1.45 * look.text_scale + 10)
    key = button(
        look,
        identifier,
        text("field.phrase", field=label, value=value),
        face,
        on_tap,
        height=height,
        expand=True,
        colour=palette.panel,
    )
    return ft.Row([key])


def chips(
    look: Look,
    name: str,
    choices: list[tuple[str, str]],
    chosen: str,
    on_choose: Callable[[str], None],
    *,
    columns: int | None = None,
) -> list[ft.Control]:
    """Words to choose one of, in rows; identifiers are ``name-choice``."""
    columns = columns or (3 if look.roomy else 2)
    tall = max(KEY, 1.6 * look.body_size * look.text_scale + 12)
    keys = [_chip(look, name, each, chosen, on_choose, tall) for each in choices]
    blank = -len(keys) % columns
    keys += [ft.Container(expand=True) for _ in range(blank)]
    return [ft.Row(keys[i : i + columns], spacing=6) for i in range(0, len(keys), columns)]


def _chip(
    look: Look,
    name: str,
    choice: tuple[str, str],
    chosen: str,
    on_choose: Callable[[str], None],
    height: float,
) -> ft.Control:
    value, label = choice
    here = value == chosen
    face = words(look, label, look.body_size, bold=here, one_line=True, colour=on_fill(look, here))
    return button(
        look,
        f"{name}-{value.replace(' ', '-')}",
        label,
        face,
        lambda: on_choose(value),
        height=height,
        expand=True,
        filled=here,
        selected=here,
    )


def history_key(jobs: Jobs, record: str, look: Look) -> ft.Control:
    """The way to everything that was ever entered for a record."""
    here = jobs.screen()
    return wide_button(
        look,
        "history",
        text("jobs.history"),
        lambda: jobs.go("history", came_from=here, record=record),
        icon=ft.Icons.HISTORY,
    )


def delete_key(
    jobs: Jobs, record: str, label: str, look: Look, *, ledger: str = "job"
) -> ft.Control:
    """Take a record out and go back; undo brings it back."""

    def drop() -> None:
        jobs.delete(record, ledger=ledger)
        jobs.back()

    return wide_button(look, "delete", label, drop, icon=ft.Icons.DELETE_OUTLINE)


def title(look: Look, line: str) -> ft.Control:
    """Title of a part of a screen."""
    return words(look, line, look.row_size, bold=True)


def quiet(look: Look, line: str) -> ft.Control:
    """A line that explains."""
    return words(look, line, look.small_size, colour=look.palette.quiet)


def group(look: Look, *controls: ft.Control) -> ft.Control:
    """Things that belong together."""
    return panel(look, *controls, gap=6)


def text_input(
    look: Look,
    identifier: str,
    label: str,
    value: str,
    on_change: Callable[[str], None],
    *,
    on_submit: Tap | None = None,
    lines: int = 1,
    autofocus: bool = False,
) -> ft.Control:
    """Words by the system's keyboard."""
    palette = look.palette
    return ft.Semantics(
        identifier=identifier,
        container=True,
        content=ft.TextField(
            width=math.inf,
            value=value,
            label=label,
            text_size=look.row_size,
            color=palette.ink,
            label_style=ft.TextStyle(color=palette.quiet),
            border_color=palette.line,
            focused_border_color=palette.copper,
            cursor_color=palette.copper,
            multiline=lines > 1,
            min_lines=lines,
            max_lines=max(lines, 6) if lines > 1 else 1,
            autofocus=autofocus,
            on_change=lambda event: on_change(event.control.value or ""),
            on_submit=(lambda _event: on_submit()) if on_submit else None,
        ),
    )


def action_key(
    look: Look, identifier: str, label: str, action: ft.ClientAction, icon: ft.IconData
) -> ft.Control:
    """A key whose work the browser does inside the tap itself."""
    face = ft.Row(
        [
            ft.Icon(icon, color=look.palette.ink, size=22),
            words(look, label, look.body_size, bold=True, expand=True),
        ],
        spacing=8,
    )
    pressed = ft.OutlinedButton(
        content=face,
        action=action,
        expand=True,
        height=max(KEY, _label_height(look)),
        style=ft.ButtonStyle(
            padding=ft.Padding.symmetric(horizontal=14), side=ft.BorderSide(2, look.palette.copper)
        ),
    )
    return ft.Semantics(identifier=identifier, container=True, content=ft.Row([pressed]))
