"""The chart of windows: every end, mark and overlap where its thickness lies on the one axis."""

import random
from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.calc.choice import choose
from core.calc.gasket import Sheet
from mobile.app.drawing.shapes import Disc, Line, Polygon
from mobile.app.drawing.window_chart import (
    BAR,
    FADES,
    LETTER,
    SIDES,
    ChartPicture,
    WindowChart,
    draw_windows,
)
from mobile.app.engine.sheet.basis import Basis
from mobile.app.engine.sheet.chart import chart_of
from mobile.app.engine.sheet.found import Found
from tests.forward import complete_engine

THOU = 0.0254
SHELF = tuple(Sheet(thickness=(15 + 7 * step) * THOU, half_width=0.01) for step in range(12))
A_TENTH = 0.1


def chart(seed: int) -> WindowChart:
    engine = complete_engine(random.Random(seed), cylinders=4)
    choice = choose(engine, SHELF)
    found = Found(
        basis=Basis(metric=False, shelf=SHELF), as_it_is=engine, as_moved=engine, pairs=False,
        now=choice, choice=choice, row=None, row_now=None,
    )  # fmt: skip
    return chart_of(found, choice, None)


def of(picture: ChartPicture, kind: type, role: str) -> list:
    return [each for each in picture.shapes if isinstance(each, kind) and each.role == role]


def edges(polygon: Polygon) -> tuple[float, float]:
    across = [x for x, _ in polygon.points]
    return min(across), max(across)


charts = st.integers(0, 500).map(chart)
widths = st.floats(280.0, 700.0)


@settings(max_examples=60, deadline=None)
@given(charts, widths)
def test_every_end_in_reach_is_notched_where_it_lies(shown: WindowChart, width: float) -> None:
    low, high = shown.span
    scale = (width - 2 * SIDES) / (high - low)
    ends = [end for bar in shown.bars for end in (bar.low, bar.high) if end is not None]
    expected = sorted(
        SIDES + (end.allowed - low) * scale for end in ends if low <= end.allowed <= high
    )
    notches = of(draw_windows(shown, width, 14.0), Polygon, "ink")
    assert sorted(sum(edges(each)) / 2 for each in notches) == pytest.approx(expected, abs=A_TENTH)


@settings(max_examples=60, deadline=None)
@given(charts, widths)
def test_every_sheet_has_a_line_and_a_sign_at_its_thickness(
    shown: WindowChart, width: float
) -> None:
    low, high = shown.span
    picture = draw_windows(shown, width, 14.0)
    upright = [
        each.x1 for each in picture.shapes if isinstance(each, Line) and each.x1 == each.x2
    ]
    signs = [each.x for each in picture.shapes if isinstance(each, Disc)]
    signs += [
        (each.x1 + each.x2) / 2
        for each in picture.shapes
        if isinstance(each, Line) and each.x1 != each.x2
    ]
    for mark in shown.marks:
        at = SIDES + (mark.at - low) / (high - low) * (width - 2 * SIDES)
        assert min(abs(x - at) for x in upright) < A_TENTH
        assert min(abs(x - at) for x in signs) < A_TENTH


@settings(max_examples=60, deadline=None)
@given(charts, widths)
def test_the_overlap_is_shaded_between_its_ends_and_a_gap_is_told_from_it(
    shown: WindowChart, width: float
) -> None:
    low, high = shown.span
    band = next(
        each
        for each in draw_windows(shown, width, 14.0).shapes
        if isinstance(each, Polygon) and each.role in ("passed", "failed")
    )
    assert band.role == ("failed" if shown.clash else "passed")
    left, right = edges(band)
    for end, edge in ((shown.low, left), (shown.high, right)):
        if end is not None and low <= end <= high:
            at = SIDES + (end - low) / (high - low) * (width - 2 * SIDES)
            assert edge == pytest.approx(at, abs=2.1)


@settings(max_examples=60, deadline=None)
@given(charts, widths)
def test_bars_are_whole_inside_and_fade_towards_where_a_sheet_is_out(
    shown: WindowChart, width: float
) -> None:
    picture = draw_windows(shown, width, 14.0)
    bars = of(picture, Polygon, "copper")
    assert {each.strength for each in bars} <= {1.0, *FADES}
    assert list(FADES) == sorted(FADES, reverse=True)
    whole = {each.points[0][1]: edges(each) for each in bars if each.strength == 1.0}
    for faded in (each for each in bars if each.strength == FADES[0]):
        inner = whole.get(faded.points[0][1])
        if inner is not None:
            left, right = edges(faded)
            assert right == pytest.approx(inner[0]) or left == pytest.approx(inner[1])
    tops = sorted({each.points[0][1] for each in bars})
    assert all(below - above > BAR for above, below in pairwise(tops))


@settings(max_examples=60, deadline=None)
@given(charts, widths, st.floats(11.0, 28.0))
def test_thicknesses_never_lie_over_each_other_nor_outside(
    shown: WindowChart, width: float, size: float
) -> None:
    picture = draw_windows(shown, width, size)
    labels = [each for each in picture.labels if each.anchor == 0.5]
    marks = [each for each in labels if each.text in {mark.label for mark in shown.marks}]
    assert any("on now" in each.text for each in marks)
    for one, other in combinations(marks, 2):
        halves = LETTER * size * (len(one.text) + len(other.text)) / 2
        assert one.y != other.y or abs(one.x - other.x) >= halves - A_TENTH
    assert all(0.0 <= each.x <= width for each in labels)
    assert max(each.y + size for each in marks) <= picture.height
