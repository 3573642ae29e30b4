"""A verdict by shape and colour, beside its word."""

import flet as ft

from core.verdict import Verdict
from mobile.app.views.look import Look

SHAPES = {
    "run": ft.Icons.CHECK_CIRCLE,
    "run-close": ft.Icons.CHECK_CIRCLE_OUTLINE,
    "borderline": ft.Icons.DIAMOND_OUTLINED,
    "too-high": ft.Icons.ARROW_CIRCLE_UP,
    "too-low": ft.Icons.ARROW_CIRCLE_DOWN,
}
OTHERS = {
    Verdict.PASS: ft.Icons.CHECK_CIRCLE,
    Verdict.FAIL: ft.Icons.DO_NOT_DISTURB_ON,
    Verdict.UNDECIDED: ft.Icons.HELP_OUTLINE,
}


def colour(look: Look, verdict: Verdict) -> str:
    """Colour of a verdict."""
    palette = look.palette
    return {
        Verdict.PASS: palette.passed,
        Verdict.FAIL: palette.failed,
        Verdict.UNDECIDED: palette.undecided,
    }[verdict]


def sign(look: Look, verdict: Verdict, word: str, size: float) -> ft.Icon:
    """Shape of a verdict."""
    return ft.Icon(
        SHAPES.get(word, OTHERS[verdict]), color=colour(look, verdict), size=size * look.text_scale
    )
