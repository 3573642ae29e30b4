"""The sentence to read back on the phone, in plain words."""

from collections.abc import Iterator

from core.calc.deciding_leaf import NextLeaf, Outcome
from core.calc.gasket import Sheet
from core.calc.height import Bound, Height
from core.calc.leaves import Stack
from core.calc.quick_check import MAY_BE_UP, Answer, QuickCheck
from core.texts import text
from core.texts.length import Length
from core.texts.sentence import Sentence
from core.texts.share import Sureness
from core.unit_types import Millimetre
from core.verdict import TIE, Verdict

SEATS_WORTH_SAYING = (*MAY_BE_UP, "lower-than-entered")


def spoken(length: Millimetre, metric: bool) -> str:
    """A small length as it is said: thou without the word, or mm.

    Parameters
    ----------
    length
        Length [mm].

    Source
    ------
    *common practice, no source*.
    """
    return f"{Length(length):mm}".rstrip("0").rstrip(".") if metric else f"{Length(length):thou}"


def marks(stack: Stack, metric: bool) -> tuple[str, ...]:
    """What is marked on each leaf of a stack, thickest first.

    Source
    ------
    *common practice, no source*.
    """
    spec = "mm" if metric else "in"
    return tuple(f"{Length(leaf):{spec}} {spec}" for leaf in stack.leaves)


def decides(leaf: NextLeaf, metric: bool) -> str:
    """What each outcome of a leaf would settle.

    Source
    ------
    As `deciding_leaf`.
    """
    stack = " + ".join(marks(leaf.stack, metric))
    if leaf.goes == leaf.not_goes:
        return text("next.closer", leaf=stack)
    return text(
        "next.leaf",
        leaf=stack,
        goes=_left(leaf.goes, metric),
        not_goes=_left(leaf.not_goes, metric),
    )


def _left(outcomes: frozenset[Outcome], metric: bool) -> str:
    if len(outcomes) > 1:
        return text("next.open")
    only = next(iter(outcomes))
    if isinstance(only, Sheet):
        return Sentence("next.run", {"sheet": Length(only.thickness)}).said(metric=metric)
    return text(f"word.{only}") if only else text("next.none")


def sentence(answer: Answer, metric: bool) -> str:
    """Everything that is worth saying aloud, in the order a person needs it.

    Source
    ------
    *common practice, no source*.
    """
    return " ".join(
        (
            *_height(answer.asked, metric),
            *_readings(answer.asked.height),
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


def _readings(height: Height) -> Iterator[str]:
    if height.disagreement > 1.0:
        yield text("say.disagree")


def _seat(answer: Answer) -> Iterator[str]:
    if answer.seat and answer.seat.check.word in SEATS_WORTH_SAYING:
        yield text(f"say.seat.{answer.seat.check.word}")


def _gasket(answer: Answer, metric: bool) -> Iterator[str]:
    row = answer.gasket
    if row is None or answer.suggestion.run == row.sheet:
        return
    word = text(f"word.{row.word}").lower()
    yield text("say.gasket", sheet=spoken(row.sheet.thickness, metric), word=word)


def _suggestion(answer: Answer, metric: bool) -> Iterator[str]:
    run = answer.suggestion.run
    if run is None:
        if answer.shelf:
            yield from (each.said(metric=metric) for each in answer.suggestion.because)
        return
    moved = run.thickness - answer.gasket.sheet.thickness if answer.gasket else None
    keep = moved is not None and abs(moved) <= TIE
    yield text("say.keep" if keep else "say.run", sheet=spoken(run.thickness, metric))
    if moved is not None and moved > TIE:
        yield text("say.up", move=spoken(moved, metric))
    yield from _sure(answer, run, metric)


def _sure(answer: Answer, run: Sheet, metric: bool) -> Iterator[str]:
    row = next(each for each in answer.shelf if each.sheet == run)
    if row.word == "run-close" and row.probability is not None:
        yield text("say.sure", sure=Sureness(row.probability))
    if row.bite_check.verdict is Verdict.UNDECIDED and answer.next_leaf is None:
        yield text("say.bite_open", least=spoken(row.least, metric))


def _leaf(leaf: NextLeaf | None, metric: bool) -> Iterator[str]:
    if leaf:
        said = text("say.leaf.with").join(spoken(each, metric) for each in leaf.stack.leaves)
        yield text("say.leaf.decides" if leaf.settles else "say.leaf.next", leaf=said)


def _face(answer: Answer) -> Iterator[str]:
    judged = answer.shelf or answer.gasket
    if judged and not answer.asked.face.answered:
        yield text("say.flat")
