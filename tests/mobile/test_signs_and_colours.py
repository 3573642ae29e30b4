"""A verdict reads by word, by shape and by colour; every pair of colours has its contrast."""

from itertools import product

import flet as ft
import pytest

from core.calc.quick_check import answer
from core.forms.check_form import read_check
from core.texts import text
from core.verdict import Verdict
from mobile.app.theme import DARK, LIGHT, VALUE_PAIRS, WORD_PAIRS, Palette
from mobile.app.views.look import Look
from mobile.app.views.verdict_sign import SHAPES, colour, sign

PALETTES = {"light": LIGHT, "dark": DARK}
VALUES, WORDS = 7.0, 4.5
"""WCAG 2.2, success criteria 1.4.6 and 1.4.3."""


def look(palette: Palette) -> Look:
    return Look(palette=palette, width=390.0, height=844.0, text_scale=1.0)


def judged() -> set[tuple[Verdict, str]]:
    """Every verdict and word that a grid of real checks comes to."""
    found = set()
    heights = (2, 5, 7, 8, 9, 10, 11, 12, 13, 15, 20)
    for low, gap, wire, depth in product(heights, (0.5, 2, 4), (38, 40, 41, 44), (20, 29, 36)):
        texts = {
            "go": [f"{low} thou"],
            "no-go": [f"{low + gap} thou"],
            "gasket": ["40 thou"],
            "wire": [f"{wire} thou"],
            "groove-width": ["40 thou"],
            "groove-depth": [f"{depth} thou"],
            "shelf": ["32 thou; 50 thou; 65 thou"],
        }
        told = answer(read_check(texts, str).asked)
        found |= {(check.verdict, check.word) for check in told.checks}
        found |= {(row.verdict, row.word) for row in told.shelf}
    return found


def test_no_two_verdicts_share_word_shape_and_colour() -> None:
    light = look(LIGHT)
    signs = [
        (text(f"word.{word}"), sign(light, verdict, word, 20).icon, colour(light, verdict))
        for verdict, word in judged()
    ]
    assert len(signs) > 12
    assert len(set(signs)) == len(signs)


def test_one_word_has_one_verdict() -> None:
    words = [word for _, word in judged() if word != "undecided"]
    assert {"run", "run-close", "borderline", "too-high", "too-low"} <= set(words)
    twice = {word for word in words if words.count(word) > 1}
    assert twice <= {"borderline", "run-close"}


def test_where_the_verdict_differs_the_shape_differs() -> None:
    shapes: dict[object, set[Verdict]] = {}
    for verdict, word in judged():
        if word not in SHAPES:
            shapes.setdefault(sign(look(LIGHT), verdict, word, 20).icon, set()).add(verdict)
    assert all(len(verdicts) == 1 for verdicts in shapes.values())


def test_the_five_words_of_a_sheet_have_five_shapes() -> None:
    assert len(set(SHAPES.values())) == len(SHAPES) == 5
    assert all(isinstance(shape, ft.IconData) for shape in SHAPES.values())


@pytest.mark.parametrize("palette", PALETTES)
@pytest.mark.parametrize("pair", VALUE_PAIRS, ids="-on-".join)
def test_values_and_verdicts_stand_out(palette: str, pair: tuple[str, str]) -> None:
    assert contrast(PALETTES[palette], pair) >= VALUES


@pytest.mark.parametrize("palette", PALETTES)
@pytest.mark.parametrize("pair", WORD_PAIRS, ids="-on-".join)
def test_other_words_can_be_read(palette: str, pair: tuple[str, str]) -> None:
    assert contrast(PALETTES[palette], pair) >= WORDS


def contrast(palette: Palette, pair: tuple[str, str]) -> float:
    """WCAG 2.2, definition of contrast ratio."""
    light, dark = sorted((luminance(getattr(palette, name)) for name in pair), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def luminance(colour: str) -> float:
    """WCAG 2.2, definition of relative luminance."""
    channels = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def test_the_contrast_of_black_on_white_is_the_standards_own() -> None:
    """WCAG 2.2: contrast ratios range from 1 to 21."""
    assert (luminance("#FFFFFF") + 0.05) / (luminance("#000000") + 0.05) == pytest.approx(21.0)
