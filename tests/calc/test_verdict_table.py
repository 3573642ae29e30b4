"""The trade's verdict table of `core.published.main_job`, typed in inch and in mm."""

import pytest

from core.calc.quick_check import answer
from core.forms.check_form import read_check
from core.published.main_job import SHEETS, WORDS
from core.texts import text

TABLE = {tuple(f"{leaf:g}" for leaf in leaves): cells for leaves, cells in WORDS.items()}
METRIC = 0.0254


def texts_in_inch(go: str, no_go: str) -> dict[str, list[str]]:
    shelf = ",".join(f"{sheet}in" for sheet in SHEETS)
    return {"go": [f"{go} thou"], "no-go": [f"{no_go} thou"], "shelf": [shelf]}


def texts_in_mm(go: str, no_go: str) -> dict[str, list[str]]:
    shelf = ";".join(f"{sheet * 25.4:.8f}mm" for sheet in SHEETS)
    return {
        "go": [f"{float(go) * METRIC:.7f}mm"],
        "no-go": [f"{float(no_go) * METRIC:.7f}mm"],
        "shelf": [shelf],
    }


def rows(texts: dict[str, list[str]]):
    return answer(read_check(texts, str).asked).shelf


@pytest.mark.parametrize("texts", [texts_in_inch, texts_in_mm])
@pytest.mark.parametrize("leaves", TABLE)
def test_share_and_word_of_every_sheet(leaves, texts):
    for row, cell in zip(rows(texts(*leaves)), TABLE[leaves], strict=True):
        share, word = cell.split(" ", 1)
        assert abs(100 * row.share - float(share)) <= 0.5 + 1e-9
        assert text(f"word.{row.word}") == word


@pytest.mark.parametrize("texts", [texts_in_inch, texts_in_mm])
def test_published_probability_of_a_close_run(texts):
    fifty = rows(texts("11", "13"))[3]
    assert round(fifty.probability, 4) == 0.8004


@pytest.mark.parametrize("texts", [texts_in_inch, texts_in_mm])
def test_a_tie_passes_in_inch_and_in_millimetre(texts):
    forty = rows(texts("9.5", "10.5"))[1]
    assert (forty.verdict, forty.word) == ("pass", "run-close")
    assert round(forty.probability, 2) == 0.50


def test_a_tie_passes_where_plain_floats_would_not():
    """10.5 and 11 on 0.043: exactly 25 %, but 0.27305 > 0.27304999999999996 in floats."""
    texts = {"go": ["10.5 thou"], "no-go": ["11 thou"], "shelf": ["0.043in"]}
    assert rows(texts)[0].word == "run-close"


def test_borderline_is_fail_below_five_per_cent_and_undecided_above():
    assert rows(texts_in_inch("11", "13"))[1].verdict == "fail"
    assert rows(texts_in_inch("10", "11"))[1].verdict == "undecided"
