"""From a reading to a sheet: the trade's limits, worked by hand from the numbers of practice.

Leaf ± 0.0002 in, sheet ± 0.0005 in, limit 25 %, borderline to 30 %, bite 15 % and 0.006 in.
"""

from core.calc.gasket import HeightRule, Sheet
from core.calc.gauge_card import gauge_card
from core.calc.height import Height, as_given, from_leaves
from core.calc.leaves import Stack
from core.calc.quick_check import Answer, QuickCheck, answer
from core.calc.shelf import ShelfRow
from core.published.case import Case
from core.source import PRACTICE, Source, Trust, derived
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.tables.leaf_sets import INCH_SET
from core.tables.practice import HEIGHT
from core.texts import text
from core.unit_types import INCH, THOU
from core.verdict import GUARDED, PLAIN, Acceptance, Rule

TRADE = Source(Trust.PRACTICE, "share of thickness for a soft copper sheet on a flat head face")
MARGIN = derived("JCGM 106:2012, clauses 7 and 8, margin with height and sheet uncertain")
TWO_U = Acceptance(rule=Rule.GUARDED, confidence=0.977249868)
SHEETS = (0.032, 0.040, 0.043, 0.050, 0.0646)
WORDS: dict[tuple[float, float], tuple[str, ...]] = {
    (11, 13): ("37 TOO HIGH", "30 BORDERLINE", "28 BORDERLINE", "24 RUN, CLOSE", "19 RUN"),
    (11, 12): ("36 TOO HIGH", "29 BORDERLINE", "27 BORDERLINE", "23 RUN", "18 RUN"),
    (9.5, 10.5): ("31 TOO HIGH", "25 RUN, CLOSE", "23 RUN", "20 RUN", "15 RUN"),
    (10, 11): ("33 TOO HIGH", "26 BORDERLINE", "24 RUN, CLOSE", "21 RUN", "16 RUN"),
    (9, 10): ("30 BORDERLINE", "24 RUN, CLOSE", "22 RUN", "19 RUN", "15 TOO LOW"),
}
GAUGES = {
    0.0323: "8.0",
    0.040: "10.0",
    0.0431: "10.5",
    0.050: "12.5",
    0.0646: "16.0",
    0.080: "20.0",
    0.093: "23.0",
}
STOCK = (0.0216, 0.0270, 0.0323, 0.0431, 0.0500, 0.0620, 0.0800, 0.0930)


def check(
    height: Height, sheets: tuple[float, ...], half_width: float, rule: Acceptance = PLAIN
) -> Answer:
    """Quick check of a height against sheets in inch."""
    shelf = tuple(Sheet(thickness=t * INCH, half_width=half_width * INCH) for t in sheets)
    return answer(
        QuickCheck(
            height=height, leaf_set=INCH_SET, shelf=shelf, rule=HeightRule(acceptance=rule)
        )
    )


def row(go: float, no_go: float, sheet: float) -> ShelfRow:
    """One sheet under a bracket in thou."""
    height = from_leaves(Stack((go * THOU,)), Stack((no_go * THOU,)), ASSUMED_HALF_WIDTHS)
    return check(height, (sheet,), 0.0005).shelf[0]


def _cell(go: float, no_go: float, sheet: float, cell: str) -> tuple[Case, ...]:
    share, word = cell.split(" ", 1)
    name = f"{go:g} goes, {no_go:g} does not, sheet {sheet:g} in"
    return (
        Case(
            topic="shelf",
            name=f"{name}, share",
            source=TRADE,
            compute=lambda: 100.0 * row(go, no_go, sheet).share,
            printed=share,
            unit="%",
        ),
        Case(
            topic="shelf",
            name=f"{name}, word",
            source=TRADE,
            compute=lambda: text(f"word.{row(go, no_go, sheet).word}"),
            printed=word,
            unit="",
        ),
    )


def _probability(go: float, no_go: float, sheet: float, printed: str) -> Case:
    return Case(
        topic="shelf",
        name=f"{go:g} goes, {no_go:g} does not, sheet {sheet:g} in, probability",
        source=MARGIN,
        compute=lambda: row(go, no_go, sheet).probability or 0.0,
        printed=printed,
        unit="1",
    )


def _must_not_go(thickness: float) -> float:
    card = gauge_card((Sheet(thickness=thickness * INCH, half_width=0.0),), INCH_SET, HEIGHT)
    stack = card[0].must_not_go
    return stack.marked / THOU if stack else 0.0


def _gauge(thickness: float, printed: str) -> Case:
    return Case(
        topic="gauge_card",
        name=f"leaf that must not go, sheet {thickness:g} in",
        source=PRACTICE,
        compute=lambda: _must_not_go(thickness),
        printed=printed,
        unit="thou",
    )


def _suggested(height: float, half_width: float, rule: Acceptance) -> float | str:
    found = check(as_given(height * INCH, 0.0004 * INCH), STOCK, half_width, rule).suggestion.run
    return found.thickness / INCH if found else "none"


def _suggestion(
    name: str, printed: str, rule: Acceptance, height: float = 0.0100, half_width: float = 0.0
) -> Case:
    return Case(
        topic="suggestion",
        name=f"thinnest of the stock for {height:.4f} in, u 0.0004 in, {name}",
        source=MARGIN,
        compute=lambda: _suggested(height, half_width, rule),
        printed=printed,
        unit="in",
    )


CASES: tuple[Case, ...] = (
    *(
        case
        for (go, no_go), cells in WORDS.items()
        for sheet, cell in zip(SHEETS, cells, strict=True)
        for case in _cell(go, no_go, sheet, cell)
    ),
    _probability(11, 13, 0.050, "0.8004"),
    _probability(9.5, 10.5, 0.040, "0.50"),
    *(_gauge(thickness, printed) for thickness, printed in GAUGES.items()),
    _suggestion("plain rule", "0.0431", PLAIN),
    _suggestion("95 % rule", "0.0431", GUARDED),
    _suggestion("rule of two standard uncertainties", "0.0500", TWO_U),
    _suggestion("the same, sheet ± 0.0020 in", "0.0500", TWO_U, half_width=0.0020),
    _suggestion("plain rule", "none", PLAIN, height=0.0240),
)
