"""Sliders for what could be changed; the chart follows while a finger is on one."""

from functools import partial

import flet as ft

from core.texts import text
from mobile.app.engine.sheet import sliders
from mobile.app.engine.sheet.found import Found
from mobile.app.engine.sheet.model import SheetChoice
from mobile.app.engine.sheet.sliders import SHEET, Slider
from mobile.app.views.look import Look
from mobile.app.views.parts import button, panel, words

KEY = 52.0


def what_if(sheet: SheetChoice, found: Found, look: Look) -> ft.Control:
    """One slider a thing that can be moved, with keys for single steps."""
    title = words(look, text("sheet.what_if.title"), look.row_size, bold=True)
    hint = words(look, text("sheet.what_if.hint"), look.small_size, colour=look.palette.quiet)
    rows = [_slider(sheet, found, each, look) for each in sliders.sliders(found)]
    return panel(look, title, hint, *rows, *_back(sheet, look), gap=4)


def _slider(sheet: SheetChoice, found: Found, slider: Slider, look: Look) -> ft.Control:
    value = slider.placed(_value(sheet, found, slider))
    line = _line(slider, value, found.basis.metric)
    return ft.Column(
        [
            words(look, line, look.body_size, bold=bool(value)),
            ft.Row(
                [
                    _step(sheet, slider, value, -1, look),
                    _track(sheet, slider, value, line),
                    _step(sheet, slider, value, 1, look),
                ],
                spacing=2,
            ),
        ],
        spacing=0,
        tight=True,
    )


def _line(slider: Slider, value: float, metric: bool) -> str:
    name = text(f"sheet.slider.{slider.name}")
    if slider.name == SHEET:
        return text("sheet.slider.told", name=name, told=sliders.told(slider, value, metric))
    told = sliders.told(slider, value, metric)
    return f"{told[0].upper()}{told[1:]}" if value else name


def _value(sheet: SheetChoice, found: Found, slider: Slider) -> float:
    if slider.name != SHEET:
        return sheet.entry.moves.get(slider.name, 0.0)
    if sheet.entry.picked is not None:
        return sheet.entry.picked
    return found.row.candidate.sheet.thickness if found.row else slider.low


def _track(sheet: SheetChoice, slider: Slider, value: float, line: str) -> ft.Control:
    track = ft.Slider(
        value=value,
        min=slider.low,
        max=slider.high,
        expand=True,
        on_change=lambda event: sheet.what_if.slide(slider, float(event.control.value)),
        on_change_end=lambda _event: sheet.settle(),
    )
    return ft.Semantics(
        identifier=f"slide-{slider.name}", label=line, container=True, content=track, expand=True
    )


def _step(
    sheet: SheetChoice, slider: Slider, value: float, way: int, look: Look
) -> ft.Control:
    key = "more" if way > 0 else "less"
    name = text(f"sheet.slider.{slider.name}")
    icon = ft.Icons.ADD if way > 0 else ft.Icons.REMOVE
    return button(
        look,
        f"{key}-{slider.name}",
        text(f"sheet.slider.{key}", name=name),
        ft.Icon(icon, color=look.palette.ink),
        partial(sheet.step, slider, value + way * slider.step),
        height=KEY,
        width=KEY,
    )


def _back(sheet: SheetChoice, look: Look) -> list[ft.Control]:
    if not sheet.entry.moves and sheet.entry.picked is None:
        return []
    line = text("sheet.what_if.back")
    face = words(look, line, look.body_size, bold=True, one_line=True)
    return [ft.Row([button(look, "what-if-back", line, face, sheet.put_back, expand=True)])]
