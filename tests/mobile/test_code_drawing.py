"""A code is drawn module by module, to whole pixels, with its quiet zone."""

import numpy
import pytest
import zxingcpp

from core.handover.codes import codes
from core.records.demo import demo_events
from mobile.app.drawing.code import QUIET_ZONE, draw_code, module_size


@pytest.fixture(scope="module")
def code():
    return codes({"job-demo": list(demo_events())}, "https://shop.example/")[0]


@pytest.mark.parametrize("side", [300.0, 370.5, 512.0])
def test_what_is_drawn_is_read_again(code, side):
    ground, bars = draw_code(code.rows, side)
    edge = int(ground.points[2][0])
    assert edge <= side
    picture = numpy.full((edge, edge), 255, dtype=numpy.uint8)
    half = bars.width / 2
    for x1, x2, y in bars.bars:
        picture[int(y - half) : int(y + half), int(x1) : int(x2)] = 0
    (found,) = zxingcpp.read_barcodes(picture)
    assert found.text.endswith(str(code.part))


def test_every_dark_module_is_covered_once_and_the_quiet_zone_is_light(code):
    _, bars = draw_code(code.rows, 400.0)
    size = module_size(code.rows, 400.0)
    dark = sum(cell for row in code.rows for cell in row)
    assert sum(x2 - x1 for x1, x2, _ in bars.bars) == dark * size
    assert min(x1 for x1, _, _ in bars.bars) >= QUIET_ZONE * size


def test_a_screen_too_small_still_gets_a_pixel_a_module(code):
    assert module_size(code.rows, 10.0) == 1
