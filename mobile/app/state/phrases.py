"""Each answer as one phrase: for a screen reader, and for whoever asks on the phone."""

from core.calc.deciding_leaf import NextLeaf
from core.calc.gasket import Sheet
from core.calc.height import Bound, Height
from core.calc.quick_check import Answer
from core.calc.say import marks, sentence
from core.calc.shelf import ShelfRow
from core.calc.suggestion import Suggestion
from core.texts import text
from core.texts.length import Length
from core.texts.share import Share, Sureness
from core.verdict import Check, Verdict
from mobile.app.state.told import Told


def height_phrase(height: Height) -> str:
    """The height in both unit systems, with its range."""
    return text(f"phrase.height.{height.bound}", **_ends(height))


def height_lines(height: Height) -> tuple[str, str]:
    """The height, large, and its range, small."""
    key = "one" if height.bound is not Bound.BOTH else "range"
    return (
        text(f"height.large.{height.bound}", value=Length(height.value)),
        text(f"height.small.{key}", **_ends(height)),
    )


def _ends(height: Height) -> dict[str, object]:
    return {
        "value": Length(height.value),
        "low": Length(height.low or 0.0),
        "high": Length(height.high or 0.0),
    }


def verdict_phrase(check: Check) -> str:
    """Name, verdict, word, value and limit with units, rule, and how sure."""
    sure = (
        "" if check.probability is None else text("phrase.sure", sure=Sureness(check.probability))
    )
    return text(
        "phrase.verdict",
        name=text(f"check.{check.id}"),
        verdict=text(f"verdict.{check.verdict}"),
        word=text(f"word.{check.word}"),
        value=amount(check.value, check.unit),
        limit=amount(check.limit, check.unit),
        rule=text(f"rule.{check.rule}"),
        sure=sure,
    )


def amount(value: float, unit: str) -> str:
    """A value with its unit, in both systems where it is a length."""
    if unit == "1":
        return f"{Share(value)}"
    return text("amount.length", length=Length(value))


def row_phrase(row: ShelfRow) -> str:
    """One sheet of the shelf."""
    return text(
        "phrase.row",
        sheet=Length(row.sheet.thickness),
        verdict=text(f"verdict.{row.verdict}"),
        word=text(f"word.{row.word}"),
        share=Share(row.share),
    )


def sheet_label(sheet: Sheet, metric: bool) -> str:
    """Thickness as the shelf is marked: three decimals of an inch, four where they are needed."""
    if metric:
        return f"{Length(sheet.thickness):mm} mm"
    inches = f"{Length(sheet.thickness):in}"
    return f"{inches.removesuffix('0')} in"


def suggestion_line(answer: Answer, metric: bool) -> str:
    """The sheet to run, in two words."""
    suggestion = answer.suggestion
    if suggestion is None:
        return text("screen.add_shelf")
    undecided = any(row.verdict is Verdict.UNDECIDED for row in answer.shelf)
    if suggestion.run is None:
        return text("suggestion.open" if undecided else "suggestion.none")
    return text("suggestion.run", sheet=sheet_label(suggestion.run, metric))


def suggestion_reasons(suggestion: Suggestion) -> str:
    """Why, and what it brings with it."""
    return " ".join(str(each) for each in suggestion.because)


def leaf_marks(leaf: NextLeaf, metric: bool) -> str:
    """What is marked on the leaves to try."""
    return " + ".join(marks(leaf.stack, metric))


def leaf_line(leaf: NextLeaf, metric: bool) -> str:
    """The leaf to try and what each outcome gives."""
    return text(
        "leaf.line",
        leaf=leaf_marks(leaf, metric),
        goes=_outcome(leaf.if_goes),
        not_goes=_outcome(leaf.if_not),
    )


def _outcome(sheet: Sheet | None) -> str:
    if sheet is None:
        return text("next.open")
    return text("next.run", sheet=Length(sheet.thickness))


def say_line(told: Told) -> str:
    """The sentence to read back."""
    return sentence(told.answer, told.metric) if told.answer else text("say.nothing")
