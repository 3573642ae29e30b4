"""The user's own leaves side by side: the upper side of a leaf goes, the lower side does not."""

import flet as ft

from core.texts import text
from mobile.app.model import App
from mobile.app.state.leaf_pad import PadLeaf, PadWindow, pad_leaves, start_of
from mobile.app.views.look import Look
from mobile.app.views.parts import button, on_fill, words

SIDE = 64.0
WIDE_SIDE = 84.0
LEAF_WIDTH = 64.0
GAP = 4.0
EDGE = 6.0
USUAL_LETTERS = 2
MARKS = {"go": ft.Icons.CHECK, "no-go": ft.Icons.CLOSE}


def leaf_pad(app: App, look: Look) -> ft.Control:
    """Both sides picked so far, the way to thinner and thicker leaves, and the leaves."""
    leaves = pad_leaves(app.entry, app.told)
    count = _count(look)
    start = start_of(leaves, app.window, count)
    shown = leaves[start : start + count]
    return ft.Container(
        padding=ft.Padding.symmetric(horizontal=EDGE),
        content=ft.Column(
            [
                _picked(app, leaves, start, count, look),
                ft.Row([_leaf(app, leaf, shown[0], look) for leaf in shown], spacing=GAP),
            ],
            spacing=GAP,
            tight=True,
        ),
    )


def _count(look: Look) -> int:
    """Leaves that fit beside each other, each wide enough for its number at this text size."""
    width = max(LEAF_WIDTH, 2.5 * _label_size(look) * look.text_scale)
    return max(2, int((look.pane - 2 * EDGE + GAP) // (width + GAP)))


def _height(look: Look) -> float:
    return WIDE_SIDE if look.wide and not look.low else SIDE


def _label_size(look: Look) -> float:
    return look.text(24.0, 14.0)


def _fitting(leaf: PadLeaf, look: Look) -> float:
    """A stack has a longer number than a leaf."""
    return _label_size(look) * (0.8 if len(leaf.label) > USUAL_LETTERS else 1.0)


def _picked(
    app: App, leaves: tuple[PadLeaf, ...], start: int, count: int, look: Look
) -> ft.Control:
    thinner, thicker = max(0, start - count + 1), min(len(leaves) - 1, start + count - 1)
    return ft.Row(
        [
            _page(app, "thinner", ft.Icons.CHEVRON_LEFT, leaves[thinner], look),
            _pick(app, "go", look),
            _pick(app, "no-go", look),
            _page(app, "thicker", ft.Icons.CHEVRON_RIGHT, leaves[thicker], look),
        ],
        spacing=GAP,
    )


def _page(app: App, way: str, icon: ft.IconData, first: PadLeaf, look: Look) -> ft.Control:
    return button(
        look,
        f"leaves-{way}",
        text(f"pad.{way}"),
        ft.Icon(icon, color=look.palette.ink, size=28),
        lambda: app.move_pad(PadWindow(first_mm=first.stack.marked, paged=True)),
        height=48,
        width=48,
    )


def _pick(app: App, side: str, look: Look) -> ft.Control:
    armed = app.entry.armed == side
    value = app.side_label(side)
    line = text(f"pick.{side}", leaf=value) if value else text(f"pick.{side}.none")
    return button(
        look,
        f"pick-{side}",
        f"{line}. {text('pick.phrase')}",
        _pick_face(line if look.roomy else value or "…", side, on_fill(look, armed), look),
        lambda: app.arm(side),
        height=48,
        expand=True,
        filled=armed,
        selected=armed,
    )


def _pick_face(line: str, side: str, tint: str, look: Look) -> ft.Control:
    return ft.Row(
        [
            ft.Icon(MARKS[side], color=tint, size=20),
            words(look, line, look.body_size, bold=True, one_line=True, colour=tint),
        ],
        spacing=GAP,
        alignment=ft.MainAxisAlignment.CENTER,
    )


def _leaf(app: App, leaf: PadLeaf, first: PadLeaf, look: Look) -> ft.Control:
    armed = app.entry.armed
    if armed:
        return _side(app, leaf, armed, leaf.identifier, first, 2 * _height(look) + GAP, look)
    stops = leaf.identifier.replace("leaf", "stops", 1)
    return ft.Column(
        [
            ft.Row([_side(app, leaf, "go", leaf.identifier, first, _height(look), look)]),
            ft.Row([_side(app, leaf, "no-go", stops, first, _height(look), look)]),
        ],
        spacing=GAP,
        tight=True,
        expand=True,
    )


def _side(
    app: App,
    leaf: PadLeaf,
    side: str,
    identifier: str,
    first: PadLeaf,
    height: float,
    look: Look,
) -> ft.Control:
    picked = leaf.goes if side == "go" else leaf.stops
    tint = on_fill(look, picked) if picked or leaf.within else look.palette.quiet
    return button(
        look,
        identifier,
        text(f"leaf.{side}", leaf=leaf.label) + (text("leaf.decides") if leaf.decides else ""),
        ft.Column(
            [
                words(
                    look, leaf.label, _fitting(leaf, look), bold=True, colour=tint, one_line=True
                ),
                ft.Icon(MARKS[side], color=tint, size=18),
            ],
            spacing=0,
            tight=True,
            alignment=ft.MainAxisAlignment.CENTER,
            horizontal_alignment=ft.CrossAxisAlignment.CENTER,
        ),
        lambda: app.tap_leaf(side, leaf.stack, PadWindow(first_mm=first.stack.marked)),
        height=height,
        expand=True,
        filled=picked,
        ring=leaf.decides,
        selected=picked,
    )
