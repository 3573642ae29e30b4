"""A deck from a few numbers: coordinates, lands and the places where it is tight."""

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.calc.deck_layout import (
    Along,
    BankNumbers,
    Bore,
    DeckLayout,
    Hole,
    HoleKind,
    HoleRow,
    build,
)
from core.calc.lands import LandKind, Rings, centre_window, lands, tight_spots
from core.errors import InputError
from core.texts import text
from core.verdict import Verdict

INCH = 25.4
BOLTS = HoleRow(kind=HoleKind.BOLT, along=Along.BETWEEN, offset=2.4 * INCH, diameter=0.53 * INCH)
WATER = HoleRow(kind=HoleKind.WATER, along=Along.BESIDE, offset=2.75 * INCH, diameter=0.5 * INCH)
BANK = BankNumbers(
    bank="left", cylinders=("1", "3", "5", "7"), bore=4.125 * INCH, spacing=4.6 * INCH,
    rows=(BOLTS, WATER),
)


def test_four_bores_share_ten_bolts_between_them() -> None:
    layout = build(BANK)
    assert [bore.x for bore in layout.bores] == pytest.approx([k * 4.6 * INCH for k in range(4)])
    assert len(layout.bolts) == 10
    assert {bolt.y for bolt in layout.bolts} == {-2.4 * INCH, 2.4 * INCH}
    assert len(layout.holes) == 18


def test_row_on_the_line_of_bores_has_one_hole_a_place() -> None:
    pins = HoleRow(kind=HoleKind.DOWEL, along=Along.BETWEEN, offset=0.0, diameter=6.0)
    bank = build(replace(BANK, bore=4.0 * INCH, rows=(pins,)))
    assert len(bank.holes) == 5


def test_extent_holds_everything() -> None:
    layout = build(replace(BANK, flange=4.4 * INCH))
    (left, low), (right, high) = layout.extent
    for hole in layout.holes:
        assert left <= hole.x - hole.diameter / 2 < hole.x + hole.diameter / 2 <= right
        assert low <= hole.y - hole.diameter / 2 < hole.y + hole.diameter / 2 <= high
    assert left <= -2.2 * INCH


def test_any_coordinate_can_be_replaced_and_the_rest_stays() -> None:
    layout = build(BANK)
    moved = layout.moved("bolt 3", 60.0, -70.0)
    assert (moved.holes[2].x, moved.holes[2].y) == (60.0, -70.0)
    assert moved.holes[:2] == layout.holes[:2]
    assert layout.moved("5", 230.0, 1.0).bore("5").y == 1.0


def test_faults_name_what_is_wrong_and_change_nothing() -> None:
    layout = build(BANK)
    with pytest.raises(InputError, match="bolt 99: nothing on this deck"):
        layout.moved("bolt 99", 0.0, 0.0)
    with pytest.raises(InputError, match="1: this overlaps bolt 1"):
        layout.moved("bolt 1", 0.0, 0.0)
    with pytest.raises(InputError, match="cylinders: a bank needs"):
        build(replace(BANK, cylinders=()))
    bore = Bore(name="1", x=0.0, y=0.0, diameter=100.0, flange=90.0)
    twice = Hole(name="1", kind=HoleKind.OIL, x=200.0, y=0.0, diameter=0.0)
    with pytest.raises(InputError, match=r"used twice.*above zero.*wider than its bore"):
        DeckLayout(bank="b", bores=(bore,), holes=(twice,))


def test_lands_of_a_usual_bank_are_the_plain_differences() -> None:
    rings = Rings(layout=build(BANK), centre_diameter=4.300 * INCH, width=0.040 * INCH,
                  gasket_bore=4.180 * INCH)
    found = {(land.kind, land.cylinder, land.other): land.width / INCH for land in lands(rings)}
    assert math.isclose(found[LandKind.BORE, "1", "1"], (4.3 - 0.04 - 4.125) / 2)
    assert math.isclose(found[LandKind.GROOVE, "1", "3"], 4.6 - 4.34)
    assert math.isclose(found[LandKind.COVER, "5", "5"], (4.26 - 4.18) / 2)
    assert math.isclose(found[LandKind.BACK, "5", "5"], (4.18 - 4.125) / 2)
    bolt = math.hypot(2.3, 2.4) - 0.265 - 2.17
    assert math.isclose(found[LandKind.HOLE, "1", "bolt 1"], bolt)


def test_tight_spot_is_named_with_its_numbers_and_place() -> None:
    rings = Rings(layout=build(BANK), centre_diameter=4.52 * INCH, width=0.040 * INCH)
    worst = tight_spots(rings)[0]
    assert worst.kind is LandKind.GROOVE
    assert math.isclose(worst.width, 0.04 * INCH)
    assert worst.check.verdict is Verdict.FAIL
    assert math.isclose(math.dist(worst.start, worst.end), worst.width)
    assert text(f"deck.land.{worst.kind}")


def test_gasket_bore_over_the_wire_is_a_land_below_zero() -> None:
    rings = Rings(layout=build(BANK), centre_diameter=4.300 * INCH, width=0.040 * INCH,
                  gasket_bore=4.300 * INCH)
    cover = next(land for land in tight_spots(rings) if land.kind is LandKind.COVER)
    assert cover.width < 0.0


def test_groove_across_a_sleeve_seam_is_found() -> None:
    layout = build(replace(BANK, flange=4.34 * INCH, rows=()))
    rings = Rings(layout=layout, centre_diameter=4.34 * INCH, width=0.04 * INCH)
    seam = next(land for land in tight_spots(rings) if land.kind is LandKind.SEAM)
    assert seam.width < 0.0


@st.composite
def ring_sets(draw: st.DrawFn) -> Rings:
    bore = draw(st.floats(80.0, 110.0))
    spacing = bore + draw(st.floats(6.0, 30.0))
    bolts = replace(BOLTS, offset=draw(st.floats(0.62, 0.8)) * spacing, diameter=12.0)
    numbers = replace(BANK, bore=bore, spacing=spacing, rows=(bolts,))
    return Rings(layout=build(numbers), centre_diameter=bore + draw(st.floats(1.0, 12.0)),
                 width=draw(st.floats(0.5, 1.5)))


@given(ring_sets())
@settings(max_examples=60, deadline=None)
def test_land_to_a_hole_is_the_shortest_way_between_both_edges(rings: Rings) -> None:
    turn = [math.tau * k / 720 for k in range(720)]
    for land in lands(rings):
        if land.kind is LandKind.HOLE and land.width > 0.0:
            bore = rings.layout.bore(land.cylinder)
            hole = next(each for each in rings.layout.holes if each.name == land.other)
            shortest = min(
                math.dist((bore.x + rings.outside * math.cos(a),
                           bore.y + rings.outside * math.sin(a)), (hole.x, hole.y))
                for a in turn
            ) - hole.diameter / 2
            assert land.width <= shortest + 1e-9
            assert math.isclose(land.width, shortest, abs_tol=0.05)


@given(ring_sets())
@settings(max_examples=100, deadline=None)
def test_no_tight_spot_inside_the_window_and_one_just_outside(rings: Rings) -> None:
    window = centre_window(rings.layout, rings.width)
    below = replace(rings, centre_diameter=window.least.diameter - 0.01)
    assert any(land.kind is window.least.kind for land in tight_spots(below))
    above = replace(rings, centre_diameter=window.greatest.diameter + 0.01)
    assert any(land.kind is window.greatest.kind for land in tight_spots(above))
    if window.suggested is None:
        assert window.least.diameter > window.greatest.diameter
    else:
        assert not tight_spots(replace(rings, centre_diameter=window.suggested))


def test_bridge_too_narrow_for_two_grooves_has_no_suggestion_but_says_why() -> None:
    layout = build(replace(BANK, spacing=4.25 * INCH, rows=()))
    window = centre_window(layout, 0.040 * INCH)
    assert window.suggested is None
    assert (window.least.kind, window.greatest.kind) == (LandKind.BORE, LandKind.GROOVE)


def test_single_bore_without_holes_has_no_upper_limit() -> None:
    layout = build(replace(BANK, cylinders=("1",), rows=()))
    window = centre_window(layout, 1.0)
    assert window.greatest is None
    assert math.isclose(window.suggested, (4.125 + 0.2) * INCH + 1.0)
