"""Rules of the choice: guards, one-sided readings, what waits, what is left out and why."""

import math
from dataclasses import replace

import pytest

from core.calc.choice import candidates, choose, reasons
from core.calc.clearances import MeasuredValve
from core.calc.engine import Dowels, Engine, PistonDeck, Pistons, Ring, Valve, ValveReading, Valves
from core.calc.fit import Measured
from core.calc.gasket import HeightRule, Sheet, Standing
from core.calc.height import Bound
from core.calc.overlap import ChangeKind, conflict
from core.calc.swap import card_lines, swap_card
from core.calc.windows import sheet_probability, windows
from core.tables.clearance_practice import RodMaterial
from core.verdict import GUARDED, PLAIN, Acceptance, Rule, Verdict

INCH = 25.4
THOU = 0.0254


def sheet(thou: float, half_width: float = 0.0) -> Sheet:
    return Sheet(thickness=thou * THOU, half_width=half_width * THOU)


def ring(thou: float, u: float = 0.4, bound: Bound = Bound.BOTH, name: str = "1") -> Ring:
    return Ring(
        name=name,
        standing=Standing(bound=bound, value=thou * THOU, u=u * THOU, dof=math.inf),
    )


def engine(*rings: Ring, acceptance: Acceptance = PLAIN) -> Engine:
    return Engine(rings=rings, rule=HeightRule(acceptance=acceptance), sheet_half_width=0.0)


def low_end(of: Engine, part: str) -> float:
    window = next(each for each in windows(of)[0] if each.part == part)
    assert window.low is not None
    return window.low.allowed / THOU


@pytest.mark.parametrize(
    ("acceptance", "thinnest"),
    [
        # Derived: (10.0 + z·0.4) / 0.25; z of 95 % is 1.644854, of 97.725 % (k = 2) 2.0.
        (PLAIN, 40.0),
        (GUARDED, 42.632),
        (Acceptance(rule=Rule.GUARDED, confidence=0.9772499), 43.2),
    ],
)
def test_thinnest_sheet_for_a_height_under_each_rule(
    acceptance: Acceptance, thinnest: float
) -> None:
    assert low_end(engine(ring(10.0), acceptance=acceptance), "height-to-gasket") == pytest.approx(
        thinnest, abs=5e-4
    )


STOCK = (21.6, 27.0, 32.3, 43.1, 50.0, 62.0, 80.0, 93.0)


@pytest.mark.parametrize(
    ("height", "acceptance", "expected"),
    [
        (10.0, PLAIN, 43.1),
        (10.0, GUARDED, 43.1),
        (10.0, Acceptance(rule=Rule.GUARDED, confidence=0.9772499), 50.0),
        (24.0, PLAIN, None),
    ],
)
def test_thinnest_stock_for_a_height_under_each_rule(
    height: float, acceptance: Acceptance, expected: float | None
) -> None:
    # Derived, as above: 42.632 takes 43.1, 43.2 takes 50.0; 24 needs 96, over all stock.
    run = choose(engine(ring(height), acceptance=acceptance), [sheet(each) for each in STOCK]).run
    found = None if run is None else run.candidate.sheet.thickness / THOU
    assert found == (None if expected is None else pytest.approx(expected))


def guarded_engine() -> Engine:
    return Engine(
        sheet_on=sheet(43.0, 0.5),
        rings=(ring(10.0, 0.3),),
        rule=HeightRule(acceptance=GUARDED),
        pistons=Pistons(
            decks=(PistonDeck(name="1", deck=Measured(value=5 * THOU, half_width=THOU)),),
            least=40.0 * THOU,
        ),
        valves=Valves(
            readings=(
                ValveReading(
                    name="1",
                    valve=Valve.EXHAUST,
                    measured=MeasuredValve(clearance=100.0 * THOU, tilt=0.2),
                    half_width=2.0 * THOU,
                ),
            ),
            exhaust_least=95.0 * THOU,
        ),
    )


def test_a_guarded_end_is_where_the_probability_is_that_of_the_rule() -> None:
    tested = 0
    for window in windows(guarded_engine())[0]:
        for end in window.ends:
            if window.acceptance.rule is Rule.GUARDED:
                at_end = Sheet(
                    thickness=end.allowed, half_width=guarded_engine().sheet_half_width
                )
                assert sheet_probability(end, at_end) == pytest.approx(0.95, abs=1e-6)
                tested += 1
            assert end.side.value * (end.sure - end.at) > 0.0 > end.side.value * (end.out - end.at)
    assert tested == 4


def test_a_clearance_inside_its_guard_is_undecided() -> None:
    row = choose(guarded_engine(), [sheet(38.2)]).rows[0]
    piston = next(each for each in row.parts if each.part == "piston-to-head")
    # 5 + 38.2 is 3.2 over 40: sure. At 35.3, 0.3 over with u 0.577: 70 %.
    assert piston.verdict is Verdict.PASS
    row = choose(guarded_engine(), [sheet(35.3)]).rows[0]
    piston = next(each for each in row.parts if each.part == "piston-to-head")
    assert piston.verdict is Verdict.UNDECIDED
    assert piston.probability == pytest.approx(0.698, abs=1e-3)


def test_a_leaf_that_only_goes_leaves_the_height_out_and_says_which_ring() -> None:
    found, left_out = windows(engine(ring(10.0), ring(11.0, bound=Bound.LOWER, name="6")))
    assert {each.part for each in found} == {"bite"}
    because = next(each.because for each in left_out if each.part == "height-to-gasket")
    assert because == "Wire height: left out, needs a leaf that does not go at 6."


def test_a_leaf_that_only_does_not_go_leaves_the_bite_out() -> None:
    found, _ = windows(engine(ring(10.0, bound=Bound.UPPER)))
    assert {each.part for each in found} == {"height-to-gasket"}


def test_piston_to_head_has_no_default_until_the_rods_are_chosen() -> None:
    decks = (PistonDeck(name="1", deck=Measured(value=0.0, half_width=0.0)),)
    bare = replace(engine(ring(10.0)), pistons=Pistons(decks=decks))
    left_out = {each.part: each.because for each in windows(bare)[1]}
    assert left_out["piston-to-head"] == (
        "Piston to head: left out, needs the material of the rods, or the least piston to head."
    )
    # Upper end of what is heard: 40 for steel rods, 65 for aluminium; the user's own wins.
    for rod, least in ((RodMaterial.STEEL, 40.0), (RodMaterial.ALUMINIUM, 65.0)):
        chosen = replace(bare, pistons=Pistons(decks=decks, rod=rod))
        assert low_end(chosen, "piston-to-head") == pytest.approx(least)
    own = replace(bare, pistons=Pistons(decks=decks, rod=RodMaterial.STEEL, least=50 * THOU))
    assert low_end(own, "piston-to-head") == pytest.approx(50.0)


def test_a_thinner_sheet_is_not_suggested_while_a_clearance_is_unknown() -> None:
    on_thick = replace(engine(ring(10.0)), sheet_on=sheet(80.0))
    choice = choose(on_thick, [sheet(43.1), sheet(50.0)])
    assert choice.run is None
    assert choice.unchecked is not None
    assert choice.unchecked.candidate.sheet == sheet(50.0)
    assert "check piston to head and valves first" in str(reasons(choice)[0])


def test_a_thinner_sheet_is_suggested_once_the_clearances_are_known_and_says_so() -> None:
    known = replace(
        engine(ring(10.0)),
        sheet_on=sheet(80.0),
        pistons=Pistons(
            decks=(PistonDeck(name="1", deck=Measured(value=0.0, half_width=0.0)),),
            rod=RodMaterial.STEEL,
        ),
        valves=Valves(
            readings=tuple(
                ValveReading(
                    name="1",
                    valve=valve,
                    measured=MeasuredValve(clearance=200 * THOU),
                    half_width=0.0,
                )
                for valve in Valve
            ),
            intake_least=80 * THOU,
            exhaust_least=100 * THOU,
        ),
    )
    choice = choose(known, [sheet(43.1), sheet(50.0)])
    assert choice.run is not None
    assert choice.run.candidate.sheet == sheet(43.1)
    assert "Head comes down by 36.9 thou" in str(reasons(choice)[1])


def test_without_a_wire_height_nothing_is_suggested() -> None:
    bare = Engine(dowels=Dowels(proud=250 * THOU, least=200 * THOU))
    choice = choose(bare, [sheet(43.1)])
    assert choice.run is None
    assert choice.rows[0].verdict is Verdict.UNDECIDED


def test_a_receiver_leaves_every_sheet_undecided() -> None:
    received = replace(engine(ring(10.0)), receiver=2.0 * THOU)
    choice = choose(received, [sheet(43.1), sheet(50.0)])
    assert {row.verdict for row in choice.rows} == {Verdict.UNDECIDED}
    assert choice.run is None


def test_two_sheets_are_one_only_where_the_user_allows_it() -> None:
    # 13 / 0.25 = 52: none of the two alone, 64.6 of both.
    shelf = [sheet(21.5, 1.2), sheet(43.1, 1.6)]
    assert choose(engine(ring(13.0)), shelf).run is None
    run = choose(engine(ring(13.0)), shelf, pairs=True).run
    assert run is not None
    assert [each.thickness / THOU for each in run.candidate.parts] == pytest.approx([21.5, 43.1])
    assert run.candidate.sheet.half_width == pytest.approx(2.0 * THOU)


def test_a_single_sheet_comes_before_a_thinner_pair() -> None:
    run = choose(engine(ring(13.0)), [sheet(26.5), sheet(64.6)], pairs=True).run
    assert run is not None
    assert run.candidate.sheet.thickness == pytest.approx(64.6 * THOU)


def test_a_pair_as_thick_as_a_single_sheet_is_not_offered() -> None:
    found = candidates([sheet(20.0), sheet(40.0)], pairs=True)
    assert [round(each.sheet.thickness / THOU) for each in found] == [20, 40, 60, 80]


def test_a_thinner_wire_is_not_offered_where_the_groove_would_not_hold_it() -> None:
    loose = replace(ring(14.0), interference=1.0 * THOU)
    tight = replace(ring(14.0), interference=2.5 * THOU)
    dowels = Dowels(proud=250 * THOU, least=200 * THOU)
    # 14 - 12.5 = 1.5 thinner leaves - 0.5 or 1.0 of interference; 0.5 holds.
    for one, is_offered in ((loose, False), (tight, True)):
        closed = replace(engine(one), dowels=dowels)
        found = conflict(closed, windows(closed)[0])
        assert found is not None
        kinds = {each.kind for each in found.changes}
        assert ChangeKind.GROOVE_DEEPER in kinds
        assert (ChangeKind.THINNER_WIRE in kinds) == is_offered


def test_what_if_is_the_same_choice_made_again() -> None:
    first = engine(ring(10.0))
    shelf = [sheet(each) for each in STOCK]
    assert choose(replace(first, receiver=0.0), shelf) == choose(first, shelf)


def test_a_card_without_engine_data_tells_head_and_share() -> None:
    card = swap_card(engine(ring(10.0)), sheet(40.0), sheet(50.0))
    assert [str(each) for each in card_lines(card)] == [
        "Head goes up 10 thou.",
        "Wire: 25% RUN, CLOSE to 20% RUN (1)",
    ]


def test_chart_span_holds_every_mark() -> None:
    choice = choose(engine(ring(10.0)), [sheet(each) for each in STOCK])
    low, high = choice.span
    assert low < 21.6 * THOU
    assert high > 93.0 * THOU
    for window in choice.windows:
        for end in window.ends:
            assert low <= end.out <= high
