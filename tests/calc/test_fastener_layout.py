"""Which fasteners clamp which cylinder, and in which order they are tightened."""

import math
import random

import pytest

from core.calc.fastener_layout import Place, part_of_each, share_fasteners
from core.calc.tightening import reminders, sequence, steps
from core.errors import InputError


def row(*xs: float, y: float = 0.0) -> list[Place]:
    return [Place(x=x, y=y) for x in xs]


def test_a_fastener_in_the_middle_between_two_bores_is_shared_by_halves() -> None:
    assert part_of_each(row(0, 100), row(50, y=60)) == ((0.5, 0.5),)


def test_a_fastener_beside_a_bore_or_past_the_last_is_its_own() -> None:
    assert part_of_each(row(0, 100), row(0, -50, 130, y=60)) == ((1, 0), (1, 0), (0, 1))


def test_the_parts_balance_the_moment_about_every_place_between_bores() -> None:
    bores = row(0, 100, 230)
    for x in (10.0, 70.0, 140.0, 229.0):
        (parts,) = part_of_each(bores, row(x))
        assert math.fsum(p * bore.x for p, bore in zip(parts, bores, strict=True)) == (
            pytest.approx(x)
        )


def test_every_fastener_is_shared_out_whole_on_random_decks() -> None:
    rng = random.Random(8)
    for _ in range(500):
        spacing, count = rng.uniform(80, 130), rng.randint(1, 6)
        turn = rng.uniform(0, math.tau)
        bores = [turned(spacing * i, 0.0, turn) for i in range(count)]
        studs = [
            turned(rng.uniform(-60, spacing * count), rng.uniform(-80, 80), turn)
            for _ in range(rng.randint(4, 30))
        ]
        parts = part_of_each(bores, studs)
        assert all(math.fsum(each) == pytest.approx(1.0) for each in parts)
        assert all(part >= -1e-12 for each in parts for part in each)


def turned(x: float, y: float, angle: float) -> Place:
    return Place(
        x=x * math.cos(angle) - y * math.sin(angle), y=x * math.sin(angle) + y * math.cos(angle)
    )


def test_halved_fasteners_scatter_like_more_fasteners() -> None:
    # two whole and two halves: (2 + 1)² / (2 + 2/4) = 3.6
    end, *_ = share_fasteners(
        row(0, 100, 200),
        [p for x in (-50, 50, 150, 250) for p in (Place(x=x, y=60), Place(x=x, y=-60))],
    )
    assert end.count == pytest.approx(3.0)
    assert end.independent == pytest.approx(3.6)


def test_a_single_cylinder_has_all_its_fasteners() -> None:
    (share,) = share_fasteners(row(0), row(-50, 50, y=50) + row(-50, 50, y=-50))
    assert (share.count, share.independent) == (4.0, 4.0)


def test_bores_at_one_place_and_bores_without_fasteners_are_named() -> None:
    with pytest.raises(InputError, match="bores"):
        share_fasteners(row(0, 0.2), row(50))
    with pytest.raises(InputError, match="fasteners"):
        share_fasteners(row(0, 100), row(0))
    with pytest.raises(InputError, match="fasteners"):
        share_fasteners(row(0), [])


def test_the_order_starts_in_the_middle_takes_every_fastener_once_and_ends_outside() -> None:
    studs = [Place(x=100.0 * i, y=y) for i in range(5) for y in (-60.0, 60.0)]
    order = sequence(studs)
    assert sorted(order) == list(range(10))
    assert {studs[i].x for i in order[:2]} == {200.0}
    assert {studs[i].x for i in order[-4:]} == {0.0, 400.0}
    distances = [math.hypot(studs[i].x - 200.0, studs[i].y) for i in order]
    assert distances == sorted(distances)


def test_one_round_goes_crosswise() -> None:
    six = [turned(50.0, 0.0, k * math.tau / 6) for k in range(6)]
    order = sequence(six)
    apart = [
        math.hypot(six[a].x - six[b].x, six[a].y - six[b].y)
        for a, b in zip(order[::2], order[1::2], strict=True)
    ]
    assert apart == pytest.approx([100.0, 100.0, 100.0])


def test_steps_rise_to_the_whole_and_the_retorque_is_cold_and_one_at_a_time() -> None:
    assert [each.share for each in steps()] == pytest.approx([1 / 3, 2 / 3, 1.0])
    assert "100 %" in str(steps()[-1].say)
    told = " ".join(map(str, reminders()))
    assert "cold" in told
    assert "one fastener at a time" in told
