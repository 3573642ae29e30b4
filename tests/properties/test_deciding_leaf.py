"""The deciding leaf ends at the sheet the true height gives, in few tries."""

import math
import random

from core.calc.deciding_leaf import (
    Question,
    deciding_leaf,
    halving_leaf,
    outcome,
    outcomes,
    separating,
)
from core.calc.gasket import HeightRule, Sheet
from core.calc.leaves import stacks
from core.tables.leaf_sets import INCH_SET, METRIC_SET, LeafSet

HEIGHTS = 1000
THOU = 0.0254


def some_set(rng: random.Random) -> LeafSet:
    whole = [thou * THOU for thou in range(3, 26)]
    own = LeafSet(leaves=tuple(sorted(rng.sample(whole, 12))), metric=False)
    return rng.choice((INCH_SET, METRIC_SET, own))


def some_shelf(rng: random.Random) -> tuple[Sheet, ...]:
    thicknesses = sorted(rng.uniform(20, 95) for _ in range(rng.randint(1, 7)))
    return tuple(Sheet(thickness=t * THOU, half_width=0.5 * THOU) for t in thicknesses)


def cases():
    for seed in range(HEIGHTS):
        rng = random.Random(seed)
        leaf_set = some_set(rng)
        marks = [stack.marked for stack in stacks(leaf_set) if stack.marked < 25 * THOU]
        low, high = sorted(rng.sample(range(len(marks)), 2))
        question = Question(
            low=marks[low], high=marks[high], shelf=some_shelf(rng), on_now=None, rule=HeightRule()
        )
        yield rng.uniform(marks[low], marks[high]), question, leaf_set


def narrowed(question: Question, mark: float, height: float) -> Question:
    low, high = (mark, question.high) if height >= mark else (question.low, mark)
    return Question(low=low, high=high, shelf=question.shelf, on_now=None, rule=question.rule)


def play(height, question, leaf_set, choose) -> tuple[int, Question]:
    tries = 0
    while (mark := choose(question, leaf_set)) is not None:
        question = narrowed(question, mark, height)
        tries += 1
    return tries, question


def by_deciding(question, leaf_set):
    leaf = deciding_leaf(question, leaf_set)
    return leaf.stack.marked if leaf else None


def by_halving(question, leaf_set):
    """Halves until the sheet is settled or no leaf is left that could settle it."""
    if not separating(question, leaf_set):
        return None
    leaf = halving_leaf(question, leaf_set)
    return leaf.stack.marked if leaf else None


def inside(question, leaf_set):
    return [s for s in stacks(leaf_set) if question.low < s.marked < question.high]


def test_it_ends_at_the_sheet_of_the_true_height_in_few_tries(record_property):
    ours, halving, settled = [], [], 0
    for height, question, leaf_set in cases():
        tries, end = play(height, question, leaf_set, by_deciding)
        left = outcomes(end, end.low, end.high)
        assert outcome(question, height) in left
        if len(left) > 1:
            assert not inside(end, leaf_set), "a leaf could still have told them apart"
        else:
            settled += 1
        leaves = len(inside(question, leaf_set))
        assert tries <= (math.ceil(math.log2(leaves)) + 1 if leaves else 0)
        ours.append(tries)
        halving.append(play(height, question, leaf_set, by_halving)[0])
    assert settled > HEIGHTS // 2
    assert sum(ours) < sum(halving)
    record_property(
        f"tries of the deciding leaf over {HEIGHTS} heights",
        f"{sum(ours) / HEIGHTS:.3f} on average, {max(ours)} at most; "
        f"by halving {sum(halving) / HEIGHTS:.3f} and {max(halving)}",
    )


def test_one_outcome_left_asks_for_no_leaf():
    question = Question(
        low=11 * THOU,
        high=12 * THOU,
        shelf=(Sheet(thickness=50 * THOU, half_width=0),),
        on_now=None,
        rule=HeightRule(),
    )
    assert deciding_leaf(question, INCH_SET) is None


def test_without_a_shelf_the_verdicts_of_the_sheet_on_now_are_separated():
    question = Question(
        low=9 * THOU,
        high=11 * THOU,
        shelf=(),
        on_now=Sheet(thickness=40 * THOU, half_width=0),
        rule=HeightRule(),
    )
    assert deciding_leaf(question, INCH_SET).stack.leaves == (10 * 25.4 / 1000,)
