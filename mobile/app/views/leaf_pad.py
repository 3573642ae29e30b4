"""The user's own leaves, fanned out: the upper side of a leaf goes, the lower side does not."""

import flet as ft

from core.texts import text
from mobile.app.model import App
from mobile.app.state.leaf_pad import PadLeaf, focus, pad_leaves
from mobile.app.views.look import Look
from mobile.app.views.parts import button, on_fill, words

SIDE = 64.0
LEAF_WIDTH = 66.0
GAP = 4.0


def leaf_pad(app: App, look: Look) -> ft.Control:
    """Both sides picked so far, and the leaves."""
    leaves = pad_leaves(app.entry, app.told)
    return ft.Column([_picked(app, look), _fan(app, leaves, look)], spacing=GAP, tight=True)


def leaf_width(look: Look) -> float:
    """Wide enough for its number at the text size in force [px]."""
    return max(LEAF_WIDTH, 2.6 * _label_size(look) * look.text_scale)


def _label_size(look: Look) -> float:
    return look.text(24.0, 15.0)


def _picked(app: App, look: Look) -> ft.Control:
    return ft.Container(
        padding=ft.Padding.symmetric(horizontal=8),
        content=ft.Row(
            [
                _pick(app, "go", look),
                _pick(app, "no-go", look),
                button(
                    look,
                    "unit",
                    text("screen.unit_phrase"),
                    words(
                        look,
                        text("unit.mm" if app.entry.metric else "unit.thou"),
                        look.small_size,
                        bold=True,
                        one_line=True,
                    ),
                    app.switch_unit,
                    height=48,
                ),
            ],
            spacing=GAP,
        ),
    )


def _pick(app: App, side: str, look: Look) -> ft.Control:
    armed = app.entry.armed == side
    value = app.side_label(side)
    line = text(f"pick.{side}", leaf=value) if value else text(f"pick.{side}.none")
    return button(
        look,
        f"pick-{side}",
        f"{line}. {text('pick.phrase')}",
        words(look, line, look.body_size, bold=True, one_line=True, colour=on_fill(look, armed)),
        lambda: app.arm(side),
        height=48,
        expand=True,
        filled=armed,
        selected=armed,
    )


@ft.component
def _fan(app: App, leaves: tuple[PadLeaf, ...], look: Look) -> ft.Control:
    """The leaves side by side; it moves by itself only to bring a leaf in sight that matters."""
    row, seen = ft.use_ref(), ft.use_ref(0.0)
    step = leaf_width(look) + GAP
    at = focus(leaves) * step

    async def bring_in_sight() -> None:
        if not seen.current <= at <= seen.current + look.pane - step:
            seen.current = max(0.0, at - 0.5 * (look.pane - step))
            await row.current.scroll_to(offset=seen.current, duration=0)

    def scrolled(event: ft.OnScrollEvent) -> None:
        seen.current = event.pixels

    ft.use_effect(bring_in_sight, dependencies=[at, step])
    return ft.Row(
        [_leaf(app, leaf, look) for leaf in leaves],
        ref=row,
        spacing=GAP,
        scroll=ft.ScrollMode.HIDDEN,
        on_scroll=scrolled,
    )


def _leaf(app: App, leaf: PadLeaf, look: Look) -> ft.Control:
    armed = app.entry.armed
    if armed:
        return _side(app, leaf, armed, leaf.identifier, 2 * SIDE + GAP, look)
    return ft.Column(
        [
            _side(app, leaf, "go", leaf.identifier, SIDE, look),
            _side(app, leaf, "no-go", leaf.identifier.replace("leaf", "stops", 1), SIDE, look),
        ],
        spacing=GAP,
        tight=True,
    )


def _side(
    app: App, leaf: PadLeaf, side: str, identifier: str, height: float, look: Look
) -> ft.Control:
    picked = leaf.goes if side == "go" else leaf.stops
    tint = on_fill(look, picked) if picked or leaf.within else look.palette.quiet
    mark = ft.Icons.CHECK if side == "go" else ft.Icons.CLOSE
    return button(
        look,
        identifier,
        text(f"leaf.{side}", leaf=leaf.label) + (text("leaf.decides") if leaf.decides else ""),
        ft.Column(
            [
                words(look, leaf.label, _label_size(look), bold=True, colour=tint, one_line=True),
                ft.Icon(mark, color=tint, size=18),
            ],
            spacing=0,
            tight=True,
            alignment=ft.MainAxisAlignment.CENTER,
            horizontal_alignment=ft.CrossAxisAlignment.CENTER,
        ),
        lambda: app.tap_leaf(side, leaf.stack),
        height=height,
        width=leaf_width(look),
        filled=picked,
        ring=leaf.decides,
        selected=picked,
    )
