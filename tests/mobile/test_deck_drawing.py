"""The deck map by its geometry: turned and never mirrored, to scale, readable, tapped."""

import math

import pytest

from mobile.app.drawing.deck_map import Circles, Strokes
from mobile.app.drawing.shapes import Label, Polygon
from mobile.app.engine.deck.entry import DeckEntry
from mobile.app.engine.deck.picture import picture, shown_banks
from mobile.app.engine.deck.told import tell

EIGHT = {
    "cylinders": "8", "banks": "2", "bore": "4.500 in", "spacing": "4.900 in",
    "bolt-offset": "2.600 in", "bolt-hole": "0.530 in",
}  # fmt: skip
NARROW, FLAT = (320.0, 568.0), (1000.0, 500.0)


def drawn(size: tuple[float, float], words: float = 12.0, **texts: str):
    entry = DeckEntry(texts={**EIGHT, **{k.replace("_", "/"): v for k, v in texts.items()}})
    return picture(entry, tell(entry), *size, words, False)


def heights(*values: str) -> dict[str, str]:
    return {f"height:3/{hour}": v for hour, v in zip((12, 3, 6, 9), values, strict=True)}


@pytest.mark.parametrize("size", [NARROW, FLAT])
def test_every_ring_lies_inside_and_none_overlap(size: tuple[float, float]) -> None:
    found = drawn(size)
    rings = list(found.rings.values())
    assert len(rings) == 8
    for x, y, r in rings:
        assert r <= x <= found.width - r
        assert r <= y <= found.height - r
    for a in rings:
        for b in rings:
            if a is not b:
                assert math.dist(a[:2], b[:2]) >= a[2] + b[2]


@pytest.mark.parametrize("size", [NARROW, FLAT])
def test_one_scale_both_ways(size: tuple[float, float]) -> None:
    """4.9 in from bore to bore is 124.46 mm."""
    found = drawn(size)
    apart = math.dist(found.rings["1"][:2], found.rings["3"][:2])
    assert apart == pytest.approx(124.46 * found.scale)


def test_the_front_is_at_the_top_of_a_narrow_picture_and_left_of_a_wide_one() -> None:
    narrow, wide = drawn(NARROW), drawn(FLAT)
    assert narrow.rings["1"][1] < narrow.rings["7"][1]
    assert narrow.rings["1"][0] < narrow.rings["2"][0]
    assert wide.rings["1"][0] < wide.rings["7"][0]
    assert wide.rings["2"][1] < wide.rings["1"][1]


def clockwise(found) -> float:
    """Cross product of front and three o'clock on the screen, whose y runs down."""
    x, y, _ = found.rings["3"]
    at = {
        shape.text: (shape.x - x, shape.y + 0.6 * shape.size - y)
        for shape in found.shapes
        if isinstance(shape, Label) and shape.text in ("20.0", "30.0")
    }
    (ax, ay), (bx, by) = at["20.0"], at["30.0"]
    return ax * by - ay * bx


@pytest.mark.parametrize("size", [NARROW, FLAT])
def test_clockwise_stays_clockwise(size: tuple[float, float]) -> None:
    found = drawn(size, 5.0, **heights("0.020 in", "0.030 in", "0.010 in", "0.010 in"))
    assert clockwise(found) > 0


def test_a_proud_place_points_out_of_its_ring() -> None:
    found = drawn(NARROW, **heights("0.010 in", "0.010 in", "0.010 in", "0.012 in"))
    points = [s for s in found.shapes if isinstance(s, Polygon) and s.role == "failed"]
    assert len(points) == 1
    x, y, r = found.rings["3"]
    assert max(math.dist((x, y), p) for p in points[0].points) == pytest.approx(r + 16.0)


def test_a_verdict_has_a_shape_of_its_own() -> None:
    even = drawn(NARROW, **heights(*["0.010 in"] * 4))
    uneven = drawn(NARROW, **heights("0.010 in", "0.010 in", "0.010 in", "0.012 in"))
    lines = {
        role: [s for s in found.shapes if isinstance(s, Circles) and s.role == role]
        for found, role in ((even, "passed"), (uneven, "failed"))
    }
    assert [len(s.circles) for s in lines["passed"]] == [1]
    assert [len(s.circles) for s in lines["failed"]] == [2]


def test_every_joint_is_drawn_beside_its_bolt_and_off_the_bridge() -> None:
    found = drawn(NARROW)
    joints = [s for s in found.shapes if isinstance(s, Strokes) and s.role == "copper"]
    lines = [line for each in joints for line in each.lines]
    assert len(lines) == 2 * 8
    for x1, y1, x2, y2 in lines:
        middle = (0.5 * (x1 + x2), 0.5 * (y1 + y2))
        x, y, r = min(found.rings.values(), key=lambda ring: math.dist(ring[:2], middle))
        assert math.dist((x, y), middle) == pytest.approx(r, abs=0.5)
        assert abs(middle[0] - x) > 0.3 * r


def test_a_tight_land_is_marked_with_its_width() -> None:
    """4.900 in less 4.850 + 0.040 in leaves 10 thou."""
    found = drawn(NARROW, ring="4.850 in")
    assert any(isinstance(s, Label) and s.text == "10" for s in found.shapes)


def test_a_finger_finds_a_ring_and_nothing_beside_the_deck() -> None:
    found = drawn(NARROW)
    for name, (x, y, _) in found.rings.items():
        assert found.ring_at(x, y) == name
    assert found.ring_at(-200.0, -200.0) is None


def test_enlarging_gives_every_place_its_height() -> None:
    texts = {**EIGHT, **heights("0.010 in", "0.010 in", "0.0105 in", "0.010 in")}
    small = DeckEntry(texts=texts, bank="left")
    large = DeckEntry(texts=texts, bank="left", zoom=3)
    shown = [picture(each, tell(each), 280.0, 340.0, 14.0, False) for each in (small, large)]
    labels = [
        sum(isinstance(s, Label) and s.text in ("10.0", "10.5") for s in each.shapes)
        for each in shown
    ]
    assert labels == [0, 4]


def test_one_bank_is_drawn_larger_than_both() -> None:
    both, one = DeckEntry(texts=EIGHT), DeckEntry(texts=EIGHT, bank="left")
    scales = [picture(e, tell(e), 300.0, 560.0, 12.0, False).scale for e in (both, one)]
    assert scales[1] > scales[0]
    assert [b.layout.bank for b in shown_banks(one, tell(one))] == ["left"]
