"""No overlap: which two exclude each other, by how much, and what would open a window."""

import flet as ft

from core.texts import text
from mobile.app.engine.sheet.found import Found
from mobile.app.views.look import Look
from mobile.app.views.parts import panel, said, words


def conflict_panel(found: Found, look: Look) -> list[ft.Control]:
    """The two and the smallest changes; nothing where a sheet can fit."""
    conflict, metric = found.choice.conflict, found.basis.metric
    if conflict is None:
        return []
    line = conflict.sentence.said(metric=metric)
    changes = [
        _change(str(each.kind), each.sentence.said(metric=metric), look)
        for each in conflict.changes
    ]
    title = text("sheet.changes" if changes else "sheet.no_change")
    return [
        panel(
            look,
            said("conflict", line, words(look, line, look.body_size, bold=True)),
            words(look, title, look.small_size, colour=look.palette.quiet),
            *changes,
            gap=6,
        )
    ]


def _change(kind: str, line: str, look: Look) -> ft.Control:
    face = ft.Row(
        [
            ft.Icon(
                ft.Icons.BUILD_OUTLINED,
                color=look.palette.copper,
                size=look.body_size * look.text_scale,
            ),
            words(look, line, look.body_size, expand=True),
        ],
        spacing=6,
    )
    return said(f"change-{kind}", line, face)
