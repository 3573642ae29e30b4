"""Geometry of the clamp's pictures: lengths, places and marks, without a screen."""

from dataclasses import replace
from itertools import pairwise

import pytest

from core.calc.fastener_layout import FastenerRow, head_pattern
from core.calc.load_curve import load_curve
from core.calc.tightening import sequence
from mobile.app.drawing.fastener_order import OrderPicture, draw_order
from mobile.app.drawing.height_load import CurveLabels, CurvePicture, draw_height_load
from mobile.app.drawing.load_bar import SIDE, BarLabels, LoadBar, bar_of, draw_load_bar, stripes
from mobile.app.drawing.shapes import Disc, Label, Line, Polygon, Shape
from mobile.app.drawing.share_bar import draw_share_bar
from mobile.app.engine.clamp.entry import ClampEntry
from mobile.app.engine.clamp.told import ClampTold, tell

WIDTH, HEIGHT, SIZE = 366.0, 74.0, 14.0
BAR = LoadBar(
    clamp=180e3,
    clamp_low=120e3,
    clamp_high=240e3,
    wire_low=40e3,
    wire_high=150e3,
    gas_low=90e3,
    gas_high=110e3,
    proof=240e3,
    scale=250e3,
)
WORDS = BarLabels(gas="gas", proof="proof", wire="wire", body="sheet", size=SIZE)
CURVE_WORDS = CurveLabels(
    today="now 0.0105 in",
    quarter="quarter 0.0100 in",
    slack="body slack",
    wire="wire",
    body="sheet",
    clamp="clamp",
    low="low end of the clamp",
    slack_low="slack at the low end",
    size=SIZE,
)


def weak() -> ClampTold:
    choices = {
        "size": "3/8",
        "thread": "3/8-16",
        "strength": "5",
        "tightened": "preload",
        "around": "fasteners",
        "peak": "pressure",
    }
    texts = {
        "preload": "75 %",
        "fasteners": "4",
        "pressure": "1500 psi",
        "ring": "4.3 in",
        "wire": "41 thou",
        "height": "10.5 thou",
        "gasket": "40 thou",
    }
    return tell(ClampEntry(choices=choices, texts=texts))


def across(load: float, width: float = WIDTH) -> float:
    """Where a load lies on the bar."""
    return SIDE + load / BAR.scale * (width - 2 * SIDE)


def boxes(shapes: tuple[Shape, ...], role: str) -> list[tuple[float, float]]:
    found = [each for each in shapes if isinstance(each, Polygon) and each.role == role]
    return [(min(x for x, _ in p.points), max(x for x, _ in p.points)) for p in found]


def test_the_bar_is_clamp_long_and_its_solid_part_is_the_wire_by_the_softest_answer() -> None:
    shapes = draw_load_bar(BAR, WORDS, WIDTH, HEIGHT)
    assert boxes(shapes, "sheet") == [pytest.approx((across(0.0), across(180e3)))]
    solid, *strips = boxes(shapes, "wire")
    assert solid == pytest.approx((across(0.0), across(40e3)))
    assert strips[0][0] == pytest.approx(across(40e3))
    assert max(right for _, right in strips) <= across(150e3) + 1e-9


def test_strips_cover_half_of_what_is_disputed_and_never_more_than_it() -> None:
    found = stripes(10.0, 110.0)
    assert sum(right - left for left, right in found) == pytest.approx(50.0)
    assert all(a[1] < b[0] for a, b in pairwise(found))
    assert stripes(10.0, 10.0) == []
    assert stripes(10.0, 13.0) == [(10.0, 13.0)]


def test_gas_and_proof_stand_at_their_loads() -> None:
    lines = [each for each in draw_load_bar(BAR, WORDS, WIDTH, HEIGHT) if isinstance(each, Line)]
    gas = next(each for each in lines if each.role == "failed" and each.dashed)
    assert gas.x1 == gas.x2 == pytest.approx(across(100e3))
    proof = next(each for each in lines if each.role == "ink" and each.width == 3.0)
    assert proof.x1 == pytest.approx(across(240e3))
    whisker = next(each for each in lines if each.y1 == each.y2 and each.role == "ink")
    assert (whisker.x1, whisker.x2) == pytest.approx((across(120e3), across(240e3)))


def test_nothing_leaves_the_bar_even_where_gas_is_above_the_scale() -> None:
    engine = weak().engine
    assert engine is not None
    bar = bar_of(engine.weakest.loads, 1.0)
    for shape in draw_load_bar(bar, WORDS, WIDTH, HEIGHT):
        if isinstance(shape, Polygon):
            assert all(0.0 <= x <= WIDTH and 0.0 <= y <= HEIGHT for x, y in shape.points)
        if isinstance(shape, Line) and shape.role == "failed":
            assert 0.0 <= shape.x1 <= shape.x2 <= WIDTH


def test_words_stand_in_the_bar_only_where_they_fit() -> None:
    def words(bar: LoadBar) -> set[str]:
        return {e.text for e in draw_load_bar(bar, WORDS, WIDTH, HEIGHT) if isinstance(e, Label)}

    assert words(BAR) == {"gas", "proof", "wire", "sheet"} - {"sheet"}
    assert "sheet" in words(replace(BAR, wire_high=60e3))
    assert "wire" not in words(replace(BAR, wire_low=5e3))


def curve_picture(sheet: float | None = 1.016) -> tuple[CurvePicture, float]:
    told = weak()
    assert told.engine is not None
    assert told.form is not None
    curve = load_curve(told.form.joint, told.engine.weakest.loads, sheet)
    return draw_height_load(curve, CURVE_WORDS, WIDTH, 264.0), curve.points[-1].height


def test_today_quarter_and_slack_lie_at_their_heights() -> None:
    picture, top = curve_picture()
    assert picture.today_x == pytest.approx(0.0105 * 25.4 / top * WIDTH)
    assert picture.quarter_x == pytest.approx(0.25 * 1.016 / top * WIDTH)
    # weak clamp: R − √(R² − a²) with a = F/(2·p·π·Dc) = 0.01008238 in, by hand
    assert picture.slack_x[0] == pytest.approx(0.00265075 * 25.4 / top * WIDTH, rel=1e-4)
    assert picture.slack_x[1] is None
    discs = [each.x for each in picture.shapes if isinstance(each, Disc)]
    assert picture.slack_x[0] in discs
    assert curve_picture(None)[0].quarter_x is None


def test_names_of_two_marks_close_together_stand_on_either_side() -> None:
    picture, _ = curve_picture()
    names = {each.text: each for each in picture.shapes if isinstance(each, Label)}
    quarter, today = names["quarter 0.0100 in"], names["now 0.0105 in"]
    assert picture.quarter_x is not None
    assert quarter.anchor == 1.0
    assert quarter.x < picture.quarter_x
    assert today.anchor == 0.0
    assert today.x > picture.today_x


def test_the_sheet_keeps_less_the_higher_the_wire_and_stripes_lie_above_it() -> None:
    picture, _ = curve_picture()
    *strips, sure = [e for e in picture.shapes if isinstance(e, Polygon) and e.role == "sheet"]
    tops = [y for _, y in sure.points[:-2]]
    assert all(b >= a - 1e-9 for a, b in pairwise(tops)), "downwards is larger"
    for strip in strips:
        (_, upper), _, _, (_, lower) = strip.points
        assert upper <= lower


def head() -> OrderPicture:
    pattern = head_pattern(4, 111.76, ROWS)
    return draw_order(pattern, sequence(pattern.fasteners), 2, WIDTH, SIZE)


ROWS = [FastenerRow(between=True, offset=63.5), FastenerRow(between=True, offset=-63.5)]


def test_every_fastener_is_drawn_once_in_its_order_and_apart_from_the_others() -> None:
    picture = head()
    numbers = [each.text for each in picture.shapes if isinstance(each, Label)]
    assert numbers == [str(1 + turn) for turn in range(10)]
    discs = [each for each in picture.shapes if isinstance(each, Disc) and not each.open]
    for i, a in enumerate(discs):
        for b in discs[i + 1 :]:
            assert ((a.x - b.x) ** 2 + (a.y - b.y) ** 2) ** 0.5 > 2 * picture.radius


def test_what_is_done_the_next_one_and_the_rest_look_apart() -> None:
    roles = [e.role for e in head().shapes if isinstance(e, Disc) and not e.open]
    assert roles == ["passed"] * 2 + ["copper"] + ["key"] * 7


def test_the_head_is_drawn_to_scale_inside_its_frame() -> None:
    picture = head()
    bores = [each for each in picture.shapes if isinstance(each, Disc) and each.open]
    gaps = {round(b.x - a.x, 6) for a, b in pairwise(bores)}
    assert gaps == {round(111.76 * picture.scale, 6)}
    for each in picture.shapes:
        if isinstance(each, Disc):
            assert each.radius <= each.x <= WIDTH - each.radius
            assert each.radius <= each.y <= picture.height - each.radius
    upper = max(e.y for e in picture.shapes if isinstance(e, Disc) and not e.open)
    lower = min(e.y for e in picture.shapes if isinstance(e, Disc) and not e.open)
    assert upper - lower == pytest.approx(127.0 * picture.scale)


def test_one_bore_alone_can_be_drawn() -> None:
    pattern = head_pattern(1, 110.0, ROWS)
    picture = draw_order(pattern, sequence(pattern.fasteners), 0, WIDTH, SIZE)
    assert len([e for e in picture.shapes if isinstance(e, Disc) and not e.open]) == 4


@pytest.mark.parametrize("share", [0.0, 0.25, 1.0])
def test_a_share_is_that_part_of_its_bar(share: float) -> None:
    whole, part = draw_share_bar(share, 200.0, 14.0)
    assert max(x for x, _ in whole.points) == 200.0
    assert max(x for x, _ in part.points) == pytest.approx(200.0 * share)


def test_the_sheets_name_keeps_clear_of_the_proof_line() -> None:
    yielding = replace(BAR, wire_high=60e3, proof=120e3)
    shapes = draw_load_bar(yielding, WORDS, WIDTH, HEIGHT)
    name = next(each for each in shapes if isinstance(each, Label) and each.text == "sheet")
    half = 0.5 * 0.65 * SIZE * len("sheet")
    assert abs(name.x - across(120e3)) > half
