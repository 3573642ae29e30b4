"""Will it hold, as a screen: the caution and the answer stay, one part of the rest scrolls."""

import flet as ft

from core.texts import text
from mobile.app.engine.clamp.entry import PARTS
from mobile.app.engine.clamp.model import Clamp
from mobile.app.engine.clamp.views.answer import answer_strip, caution
from mobile.app.engine.clamp.views.curve import curve_part
from mobile.app.engine.clamp.views.entry import entry_foot, entry_part
from mobile.app.engine.clamp.views.loads import loads_part
from mobile.app.engine.clamp.views.spread import spread_part
from mobile.app.engine.clamp.views.tighten import tighten_part
from mobile.app.views.look import Look
from mobile.app.views.parts import button, on_fill, words

SIDES = 12.0
ICONS = {
    "entry": ft.Icons.EDIT_OUTLINED,
    "loads": ft.Icons.ALIGN_HORIZONTAL_LEFT,
    "curve": ft.Icons.SHOW_CHART,
    "spread": ft.Icons.BLUR_ON,
    "tighten": ft.Icons.BUILD_OUTLINED,
}
ANSWERS = {
    "loads": loads_part,
    "curve": curve_part,
    "spread": spread_part,
    "tighten": tighten_part,
}


@ft.component
def clamp_screen(clamp: Clamp, look: Look, above: list[ft.Control]) -> ft.Control:
    """The whole sub-screen.

    Parameters
    ----------
    above
        What leads to the other sub-screens; it scrolls with the rest.
    """
    if look.wide:
        return _two_panes(clamp, look, above)
    typing = _typing(clamp)
    head = [caution(look), *([] if typing else [answer_strip(clamp, look), _parts(clamp, look)])]
    return ft.Column(
        [
            _padded(ft.Column(head, spacing=6, tight=True)),
            _scrolling([*([] if typing else above), *_part(clamp, look)]),
            *entry_foot(clamp, look),
        ],
        expand=True,
        spacing=0,
    )


def _two_panes(clamp: Clamp, look: Look, above: list[ft.Control]) -> ft.Control:
    entry = ft.Column(
        [_scrolling([*above, *entry_part(clamp, look)]), *entry_foot(clamp, look)],
        width=look.pane,
        spacing=0,
    )
    head = ft.Column(
        [caution(look), answer_strip(clamp, look), _parts(clamp, look)], spacing=6, tight=True
    )
    part = "loads" if clamp.entry.part == "entry" else clamp.entry.part
    answer = ft.Column(
        [_padded(head), _scrolling(_answered(clamp, part, look))], spacing=0, expand=True
    )
    return ft.Row([entry, ft.VerticalDivider(width=1), answer], expand=True, spacing=0)


def _typing(clamp: Clamp) -> bool:
    return clamp.entry.open_field is not None or clamp.entry.open_choice is not None


def _padded(content: ft.Control) -> ft.Control:
    return ft.Container(
        content=content, padding=ft.Padding.only(left=SIDES, right=SIDES, top=6, bottom=6)
    )


def _scrolling(controls: list[ft.Control]) -> ft.Control:
    column = ft.Column(controls, scroll=ft.ScrollMode.AUTO, expand=True, spacing=10)
    return ft.Container(content=column, padding=ft.Padding.symmetric(horizontal=SIDES), expand=True)


def _part(clamp: Clamp, look: Look) -> list[ft.Control]:
    if clamp.entry.part == "entry":
        return entry_part(clamp, look)
    return _answered(clamp, clamp.entry.part, look)


def _answered(clamp: Clamp, part: str, look: Look) -> list[ft.Control]:
    if clamp.told.engine is None:
        line = text("clamp.screen.nothing_yet")
        return [words(look, line, look.body_size, colour=look.palette.quiet)]
    return ANSWERS[part](clamp, look)


def _parts(clamp: Clamp, look: Look) -> ft.Control:
    parts = PARTS[1:] if look.wide else PARTS
    return ft.Row([_to_part(clamp, part, look) for part in parts], spacing=4)


def _to_part(clamp: Clamp, part: str, look: Look) -> ft.Control:
    here = clamp.entry.part == part
    tint = on_fill(look, here)
    label = text(f"clamp.part.{part}")
    face: list[ft.Control] = [ft.Icon(ICONS[part], color=tint, size=22)]
    if look.roomy:
        face.append(words(look, label, look.small_size, colour=tint, one_line=True, bold=here))
    content = ft.Column(
        face,
        spacing=0,
        tight=True,
        alignment=ft.MainAxisAlignment.CENTER,
        horizontal_alignment=ft.CrossAxisAlignment.CENTER,
    )
    return button(
        look,
        f"clamp-{part}",
        label,
        content,
        lambda: clamp.show_part(part),
        height=52,
        expand=True,
        filled=here,
        selected=here,
    )
