"""The printed cut sheet: whole, self-contained, escaped, the same every time."""

from html.parser import HTMLParser

import pytest

from core.calc.joints import plan_joints
from core.calc.lands import Rings
from core.forms.cut_form import read_cut
from core.forms.cut_words import front
from core.forms.deck_form import TURN_ABOUT, read_deck
from core.report.cut_sheet import CutSheet, SheetBank, cut_sheet

DECK = {
    "cylinders": "8", "banks": "2", "bore": "4.500 in", "spacing": "4.900 in",
    "bolt-offset": "2.600 in", "bolt-hole": "0.530 in",
}  # fmt: skip
CUT = {"wire": ["0.041in"], "gasket": ["0.050in"], "cylinders": ["8"], "ring": ["4.650in"]}
VOID = {"meta", "circle", "line", "rect"}


class Balanced(HTMLParser):
    """Follows elements; what is left open or closed wrongly is a fault."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.words: list[str] = []
        self.links: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.links += [value or "" for name, value in attrs if name in ("src", "href")]
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        pass

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.words.append(data)


def sheet(**changed: str) -> CutSheet:
    form = read_cut(CUT | {name: [value] for name, value in changed.items()}, str)
    banks = []
    for layout in read_deck(DECK, TURN_ABOUT, (), str):
        rings = Rings(layout=layout, centre_diameter=4.65 * 25.4, width=1.016)
        joints = plan_joints(layout, rings.centre_diameter, front())
        banks.append(SheetBank(title=layout.bank, rings=rings, joints=joints))
    return CutSheet(
        answer=form.answer,
        standpoints=form.standpoints,
        banks=tuple(banks),
        engine=form.engine,
        deck_cut=form.deck_cut,
        printed="25 Nov 2026",
    )


def read(page: str) -> Balanced:
    parser = Balanced()
    parser.feed(page)
    assert parser.open == []
    return parser


def test_the_page_is_whole_and_fetches_nothing() -> None:
    page = cut_sheet(sheet())
    assert read(page).links == []
    assert "url(" not in page
    assert "<script" not in page


@pytest.mark.parametrize(
    ("inch", "mm"), [("0.0400", "1.016"), ("0.0292", "0.740"), ("0.0120", "0.305")]
)
def test_the_plan_stands_there_in_both_units(inch: str, mm: str) -> None:
    """0.041 in wire less 0.001 in; 24 % of 0.050 in is 0.012 in; depth by the flank model,
    0.041 + 0.00015037 − 0.012 = 0.02915 in (derived)."""
    words = read(cut_sheet(sheet())).words
    assert {inch, mm} <= set(words)


def test_every_cylinder_has_a_joint_line_and_cells_to_fill_in() -> None:
    page = cut_sheet(sheet())
    for cylinder in range(1, 9):
        assert f"Cylinder {cylinder}: joint at" in page
        assert page.count(f"<td>{cylinder}</td>") == 2


def with_ring(inches: float) -> str:
    layout = read_deck(DECK, TURN_ABOUT, (), str)[0]
    rings = Rings(layout=layout, centre_diameter=inches * 25.4, width=1.016)
    return cut_sheet(CutSheet(answer=sheet().answer, banks=(SheetBank(title="a", rings=rings),)))


def test_a_tight_land_is_named_and_marked() -> None:
    """4.900 in less a groove of 4.850 + 0.040 in leaves 0.010 in, where 0.060 in is the least."""
    page = with_ring(4.850)
    assert "cylinders 1 and 3: groove to groove 0.0100 in" in page
    assert page.count('stroke="#b00"') == 3


def test_a_roomy_bank_says_so_and_marks_nothing() -> None:
    page = with_ring(4.700)
    assert "Every land keeps" in page
    assert "#b00" not in page


def test_a_receiver_is_left_open_in_words_before_any_size() -> None:
    page = cut_sheet(sheet(**{"head-face": "receiver:0.004in"}))
    assert page.index("UNDECIDED") < page.index("<table")
    assert page.count("<h2>Groove</h2>") == 2


def test_a_deck_cut_says_how_much_deeper() -> None:
    assert "deeper" in cut_sheet(sheet(**{"deck-cut": "0.005in"}))


def test_names_are_escaped() -> None:
    bad = SheetBank(title='<b onload="x">', rings=sheet().banks[0].rings)
    page = cut_sheet(CutSheet(answer=sheet().answer, banks=(bad,)))
    assert "<b onload" not in page
    read(page)


def test_the_same_values_give_the_same_page() -> None:
    assert cut_sheet(sheet()) == cut_sheet(sheet())
