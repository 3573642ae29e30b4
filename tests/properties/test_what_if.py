"""Moving something does what the smallest changes promise, worked apart from them."""

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.calc.overlap import Change, ChangeKind, conflict, overlap
from core.calc.what_if import Moves, moved
from core.calc.windows import windows
from tests.forward import complete_engine

THOU = 0.0254
MOVES = {
    ChangeKind.DECK_CUT: lambda much: Moves(deck_cut=much),
    ChangeKind.PISTON_LOWER: lambda much: Moves(piston_lower=much),
    ChangeKind.PISTON_HIGHER: lambda much: Moves(piston_lower=-much),
    ChangeKind.CHAMBER_LARGER: lambda much: Moves(chamber_larger=much),
    ChangeKind.CHAMBER_SMALLER: lambda much: Moves(chamber_larger=-much),
}
ENGINES = [complete_engine(random.Random(seed), cylinders=3) for seed in range(400)]


def changes() -> list[tuple[int, Change]]:
    found = ((seed, conflict(each, windows(each)[0])) for seed, each in enumerate(ENGINES))
    return [
        (seed, change)
        for seed, two in found
        if two
        for change in two.changes
        if change.kind in MOVES
    ]


def test_the_smallest_change_of_each_kind_just_opens_a_window() -> None:
    tried = changes()
    for seed, change in tried:
        move = MOVES[change.kind]
        enough, short = move(1.0001 * change.amount), move(0.99 * change.amount - 0.0001)
        assert overlap(windows(moved(ENGINES[seed], enough))[0]) is not None, (seed, change)
        assert overlap(windows(moved(ENGINES[seed], short))[0]) is None, (seed, change)
    assert {change.kind for _, change in tried} >= {ChangeKind.DECK_CUT, ChangeKind.PISTON_LOWER}


@given(st.integers(0, len(ENGINES) - 1))
def test_moving_nothing_changes_nothing(seed: int) -> None:
    assert moved(ENGINES[seed], Moves()) == ENGINES[seed]


@given(st.integers(0, len(ENGINES) - 1), st.floats(-0.1, 0.1))
def test_a_higher_wire_asks_for_so_much_more_sheet_by_its_share(seed: int, much: float) -> None:
    engine = ENGINES[seed]
    before, after = (
        next(each for each in windows(which)[0] if each.part == "height-to-gasket").low
        for which in (engine, moved(engine, Moves(wire_higher=much)))
    )
    assert before is not None
    assert after is not None
    share = engine.rule.practice.largest_share
    assert after.at - before.at == pytest.approx(much / share, abs=1e-9)


@given(st.integers(0, len(ENGINES) - 1), st.floats(0.0, 1.0))
def test_a_cut_deck_moves_every_end_that_rests_on_the_head_by_the_cut(
    seed: int, cut: float
) -> None:
    engine = ENGINES[seed]
    before = {each.part: each for each in windows(engine)[0]}
    after = {each.part: each for each in windows(moved(engine, Moves(deck_cut=cut)))[0]}
    for part in ("piston-to-head", "intake-valve", "intake-faces", "cam-timing", "threads"):
        low, lower = after[part].low, before[part].low
        assert low is not None
        assert lower is not None
        assert low.at - lower.at == pytest.approx(cut, abs=1e-6), part
    thread, was = after["threads"].high, before["threads"].high
    assert thread is not None
    assert was is not None
    assert thread.at == pytest.approx(was.at)
