"""What is always in view: the caution, and the answer or what it still needs."""

import flet as ft

from core.texts import text
from mobile.app.engine.clamp.entry import label
from mobile.app.engine.clamp.model import Clamp
from mobile.app.engine.clamp.told import shown_cylinder
from mobile.app.views.look import Look
from mobile.app.views.parts import button, in_rows, said, words
from mobile.app.views.verdict_sign import colour, sign


def caution(look: Look) -> ft.Control:
    """In short; a screen reader reads it whole, and it stands whole under the loads."""
    line = text("clamp.screen.caution" if look.roomy else "clamp.screen.caution_short")
    return said(
        "clamp-caution",
        text("clamp.caution"),
        ft.Row(
            [
                ft.Icon(
                    ft.Icons.WARNING_AMBER, color=look.palette.failed, size=18 * look.text_scale
                ),
                words(look, line, look.small_size, bold=True, expand=True),
            ],
            spacing=6,
        ),
    )


def answer_strip(clamp: Clamp, look: Look) -> ft.Control:
    """The weakest cylinder and its worst verdict; or the next thing that is needed, to tap."""
    told = clamp.told
    if told.needs:
        return _needs(clamp, look)
    if told.engine is None:
        return _faults(told.faults, look)
    return _weakest(clamp, look)


def _needs(clamp: Clamp, look: Look) -> ft.Control:
    first, *others = (label(clamp.entry, name) for name in clamp.told.needs)
    key = "clamp.screen.needs" if others else "clamp.screen.needs_last"
    line = text(key, name=first, count=len(others))
    return ft.Row(
        [
            button(
                look,
                "clamp-answer",
                line,
                words(look, line, look.body_size, bold=True, colour=look.palette.on_copper),
                clamp.go_on,
                height=max(56.0, 3.4 * look.body_size * look.text_scale),
                expand=True,
                filled=True,
            )
        ]
    )


def _faults(faults: tuple[str, ...], look: Look) -> ft.Control:
    line = " ".join(faults)
    return said(
        "clamp-answer",
        line,
        words(look, line, look.body_size, colour=look.palette.failed),
        live=True,
    )


def _weakest(clamp: Clamp, look: Look) -> ft.Control:
    engine = clamp.told.engine
    assert engine is not None
    judged = engine.weakest
    told = (engine.proof, *judged.judgements)
    checks = [each.check for each in told]
    name = judged.loads.cylinder.name
    lines = [f"{text(f'check.{c.id}')}: {text(f'word.{c.word}')}" for c in checks]
    one = len(engine.cylinders) == 1
    title = text("clamp.screen.only" if one else "clamp.screen.weakest", cylinder=name)
    signs = ft.Row(
        [sign(look, c.verdict, c.word, look.row_size * 1.25) for c in checks], spacing=4, tight=True
    )
    worst = min(checks, key=lambda c: ("fail", "undecided", "pass").index(c.verdict))
    return said(
        "clamp-answer",
        f"{title}. {'. '.join(lines)}.",
        ft.Row(
            [
                ft.Column(
                    [
                        words(look, title, look.small_size, colour=look.palette.quiet),
                        words(
                            look,
                            f"{text(f'check.{worst.id}')}: {text(f'word.{worst.word}')}",
                            look.row_size,
                            bold=True,
                            colour=colour(look, worst.verdict),
                        ),
                    ],
                    spacing=0,
                    tight=True,
                    expand=True,
                ),
                signs,
            ],
            spacing=8,
        ),
        live=True,
    )


def cylinder_row(clamp: Clamp, look: Look, area: str = "clamp") -> list[ft.Control]:
    """Which cylinder this part of the screen is about; nothing where there is one."""
    engine = clamp.told.engine
    assert engine is not None
    if len(engine.cylinders) == 1:
        return []
    shown = shown_cylinder(clamp.entry, engine).loads.cylinder.name
    names = [each.loads.cylinder.name for each in engine.cylinders]
    columns = 4 if len(names) % 4 == 0 else 5
    title = words(look, text("clamp.screen.cylinder"), look.small_size, colour=look.palette.quiet)
    buttons = [_cylinder(clamp, area, each, each == shown, look) for each in names]
    return [title, *in_rows(buttons, look, columns=columns)]


def _cylinder(clamp: Clamp, area: str, name: str, here: bool, look: Look) -> ft.Control:
    tint = look.palette.on_copper if here else look.palette.ink
    return button(
        look,
        f"{area}-cylinder-{name}",
        text("clamp.screen.cylinder_phrase", cylinder=name),
        words(look, name, look.body_size, bold=True, colour=tint),
        lambda: clamp.show_cylinder(name),
        height=48,
        expand=True,
        filled=here,
        selected=here,
    )
