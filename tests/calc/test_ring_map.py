"""Heights round each ring: median, proud places, and where they are on the deck."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calc.deck_layout import BankNumbers, build
from core.calc.joints import Datum
from core.calc.ring_map import PlaceReading, map_bank
from core.errors import InputError
from core.texts import text
from core.verdict import Verdict

THOU = 0.0254
FRONT = Datum(name="front")
BANK = build(BankNumbers(bank="left", cylinders=("1", "3", "5"), bore=100.0, spacing=112.0))


def round_ring(cylinder: str, *thou: float) -> list[PlaceReading]:
    return [
        PlaceReading(cylinder=cylinder, angle=math.tau * k / len(thou), value=value * THOU)
        for k, value in enumerate(thou)
    ]


def test_even_rings_pass_and_unread_cylinders_are_told() -> None:
    readings = [*round_ring("1", 10, 10.5, 11, 10), *round_ring("3", 10.5, 10.5, 11, 11)]
    found = map_bank(BANK, 106.0, readings, FRONT)
    assert [ring.check.verdict for ring in found.rings] == [Verdict.PASS, Verdict.PASS]
    assert found.check.verdict is Verdict.PASS
    assert found.unread == ("5",)
    assert math.isclose(found.rings[0].median, 10.25 * THOU)
    assert math.isclose(found.rings[0].spread, 1.0 * THOU)


def test_proud_spot_and_low_place_are_named_and_a_tie_is_even() -> None:
    readings = [
        *round_ring("1", 10, 10, 12, 10), *round_ring("3", 10, 10, 8, 10),
        *round_ring("5", 10, 10, 11, 10),
    ]
    proud, low, even = map_bank(BANK, 106.0, readings, FRONT).rings
    assert [place.proud for place in proud.places] == [False, False, True, False]
    assert (proud.check.word, low.check.word, even.check.word) == ("proud", "low-place", "even")


def test_bank_whose_rings_differ_is_uneven() -> None:
    found = map_bank(BANK, 106.0, [*round_ring("1", 10, 10), *round_ring("5", 12, 12)], FRONT)
    assert found.check.word == "uneven"
    assert math.isclose(found.spread, 2.0 * THOU)
    assert text(f"word.{found.check.word}")


def test_nothing_read_is_an_empty_map() -> None:
    found = map_bank(BANK, 106.0, [], FRONT)
    assert (found.rings, found.unread, found.spread) == ((), ("1", "3", "5"), 0.0)


def test_unknown_cylinder_is_named() -> None:
    with pytest.raises(InputError, match="7: this bank has no such cylinder"):
        map_bank(BANK, 106.0, round_ring("7", 10.0), FRONT)


@given(st.floats(0.0, 6.28), st.booleans(), st.floats(-3.0, 3.0))
def test_place_is_on_its_ring_at_its_angle(angle: float, clockwise: bool, turned: float) -> None:
    datum = Datum(name="any", direction=turned, clockwise=clockwise)
    reading = PlaceReading(cylinder="3", angle=angle, value=0.25)
    (x, y) = map_bank(BANK, 106.0, [reading], datum).rings[0].places[0].at
    assert math.isclose(math.dist((x, y), (112.0, 0.0)), 53.0)
    back = datum.angle(math.atan2(y, x - 112.0))
    assert math.isclose(math.cos(back), math.cos(angle), abs_tol=1e-9)
    assert math.isclose(math.sin(back), math.sin(angle), abs_tol=1e-9)
