"""The sentence to read back on the phone, in plain words."""

from collections.abc import Iterator

from core.calc.deciding_leaf import NextLeaf
from core.calc.gasket import Sheet
from core.calc.height import Bound
from core.calc.leaves import Stack
from core.calc.quick_check import Answer, QuickCheck
from core.texts import text
from core.texts.length import Length
from core.texts.share import Sureness
from core.unit_types import Millimetre
from core.verdict import TIE, Verdict


def spoken(length: Millimetre, metric: bool) -> str:
    """A small length as it is said: thou without the word, or mm."""
    return f"{Length(length):mm}".rstrip("0").rstrip(".") if metric else f"{Length(length):thou}"


def marks(stack: Stack, metric: bool) -> tuple[str, ...]:
    """What is marked on each leaf of a stack, thickest first."""
    spec = "mm" if metric else "in"
    return tuple(f"{Length(leaf):{spec}} {spec}" for leaf in stack.leaves)


def sentence(answer: Answer, metric: bool) -> str:
    """Everything that is worth saying aloud, in the order a person needs it."""
    return " ".join(
        (
            *_height(answer.asked, metric),
            *_seat(answer),
            *_gasket(answer, metric),
            *_suggestion(answer, metric),
            *_leaf(answer.next_leaf, metric),
            *_face(answer),
        )
    )


def _height(asked: QuickCheck, metric: bool) -> Iterator[str]:
    go, no_go = asked.go, asked.no_go
    height = spoken(asked.height.value, metric)
    if asked.height.bound is Bound.LOWER and go:
        yield text("say.lower", go=spoken(go.marked, metric))
    elif asked.height.bound is Bound.UPPER and no_go:
        yield text("say.upper", no_go=spoken(no_go.marked, metric))
    elif go and no_go:
        go_said, no_go_said = spoken(go.marked, metric), spoken(no_go.marked, metric)
        yield text("say.both", go=go_said, no_go=no_go_said, height=height)
    else:
        yield text("say.height", height=height)


def _seat(answer: Answer) -> Iterator[str]:
    if answer.seat and answer.seat.check.word in {
        "tap-and-measure",
        "not-down",
        "lower-than-entered",
    }:
        yield text(f"say.seat.{answer.seat.check.word}")


def _gasket(answer: Answer, metric: bool) -> Iterator[str]:
    row = answer.gasket
    if row is None or (answer.suggestion and answer.suggestion.run == row.sheet):
        return
    word = text(f"word.{row.word}").lower()
    yield text("say.gasket", sheet=spoken(row.sheet.thickness, metric), word=word)


def _suggestion(answer: Answer, metric: bool) -> Iterator[str]:
    if answer.suggestion is None:
        return
    run = answer.suggestion.run
    if run is None:
        yield from (str(each) for each in answer.suggestion.because)
        return
    keep = answer.gasket is not None and abs(_moved(run, answer)) <= TIE
    yield text("say.keep" if keep else "say.run", sheet=spoken(run.thickness, metric))
    if answer.gasket is not None and _moved(run, answer) > TIE:
        yield text("say.up", move=spoken(_moved(run, answer), metric))
    yield from _sure(answer, run)


def _moved(run: Sheet, answer: Answer) -> Millimetre:
    assert answer.gasket is not None
    return run.thickness - answer.gasket.sheet.thickness


def _sure(answer: Answer, run: Sheet) -> Iterator[str]:
    row = next(each for each in answer.shelf if each.sheet == run)
    if row.verdict is Verdict.PASS and row.word == "run-close" and row.probability is not None:
        yield text("say.sure", sure=Sureness(row.probability))


def _leaf(next_leaf: NextLeaf | None, metric: bool) -> Iterator[str]:
    if next_leaf:
        yield text("say.leaf", leaf=spoken(next_leaf.stack.marked, metric))


def _face(answer: Answer) -> Iterator[str]:
    judged = answer.shelf or answer.gasket
    if judged and not answer.asked.face.answered:
        yield text("say.flat")
