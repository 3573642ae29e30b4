"""The section is to scale: pixels = millimetres × scale, to half a pixel."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from mobile.app.drawing.section import USUAL_WIRE, Labels, Section, draw_section
from mobile.app.drawing.shapes import Disc, Label, Line, Polygon

LABELS = Labels(limit="limit", bite="bite", sheet="sheet", wire="wire", deck="deck", size=14.0)
HALF_A_PIXEL = 0.5


@st.composite
def sections(draw: st.DrawFn) -> Section:
    height = draw(st.floats(0.05, 0.6))
    sheet = draw(st.none() | st.floats(0.4, 2.4))
    return Section(
        height=height,
        low=height - draw(st.floats(0, 0.05)),
        high=height + draw(st.floats(0, 0.05)),
        wire=draw(st.none() | st.floats(0.9, 1.3)),
        groove_width=draw(st.none() | st.floats(0.9, 1.3)),
        groove_depth=draw(st.none() | st.floats(0.5, 1.1)),
        sheet=sheet,
        limit=None if sheet is None else 0.25 * sheet,
        bite=None if sheet is None else max(0.15 * sheet, 0.1524),
    )


windows = st.tuples(st.floats(280, 700), st.floats(110, 340))
near = pytest.approx


def shapes(picture, kind, role):
    return [each for each in picture.shapes if isinstance(each, kind) and each.role == role]


def one(picture, kind, role):
    (shape,) = shapes(picture, kind, role)
    return shape


@settings(max_examples=200, deadline=None)
@given(sections(), windows)
def test_every_height_is_drawn_to_scale(section: Section, window: tuple[float, float]) -> None:
    picture = draw_section(section, LABELS, *window)

    def pixels(over_deck: float) -> float:
        return near(picture.deck_y - over_deck * picture.scale, abs=HALF_A_PIXEL)

    wire = one(picture, Disc, "wire")
    assert wire.y - wire.radius == pixels(section.height)
    assert picture.wire_top_y == pixels(section.height)
    assert 2 * wire.radius == near((section.wire or USUAL_WIRE) * picture.scale, abs=HALF_A_PIXEL)
    spread = [y for _, y in one(picture, Polygon, "spread").points]
    assert (max(spread), min(spread)) == (pixels(section.low), pixels(section.high))
    assert one(picture, Line, "deck").y1 == pixels(0.0)
    if section.sheet is not None:
        assert min(y for _, y in one(picture, Polygon, "sheet").points) == pixels(section.sheet)
        assert one(picture, Line, "limit").y1 == pixels(section.limit)
        assert one(picture, Line, "bite").y1 == pixels(section.bite)


@settings(max_examples=200, deadline=None)
@given(sections(), windows)
def test_the_groove_has_the_same_scale_across_and_down(
    section: Section, window: tuple[float, float]
) -> None:
    picture = draw_section(section, LABELS, *window)
    block = one(picture, Polygon, "block").points
    (left, _), (_, floor), (right, _) = block[1], block[2], block[4]
    if section.groove_width is not None:
        assert right - left == near(section.groove_width * picture.scale, abs=HALF_A_PIXEL)
    if section.groove_depth is not None:
        assert floor - picture.deck_y == near(
            section.groove_depth * picture.scale, abs=HALF_A_PIXEL
        )


@settings(max_examples=200, deadline=None)
@given(sections(), windows)
def test_nothing_that_is_measured_leaves_the_picture(
    section: Section, window: tuple[float, float]
) -> None:
    width, height = window
    picture = draw_section(section, LABELS, width, height)
    for shape in picture.shapes:
        if isinstance(shape, Disc):
            assert shape.y - shape.radius >= 0
            assert shape.y + shape.radius <= height
            assert shape.x - shape.radius >= 0
        elif isinstance(shape, Polygon):
            assert all(-1e-9 <= x <= width + 1e-9 for x, _ in shape.points)
            assert all(-1e-9 <= y <= height + 1e-9 for _, y in shape.points)
        elif isinstance(shape, Line):
            assert 0 <= shape.y1 <= height


def test_what_is_not_known_is_drawn_as_not_known() -> None:
    section = Section(height=0.3, low=0.28, high=0.32)
    picture = draw_section(section, LABELS, 360.0, 150.0)
    assert one(picture, Disc, "wire").open
    assert shapes(picture, Polygon, "sheet") == []
    assert {each.text for each in picture.shapes if isinstance(each, Label)} == {"deck", "wire"}
