"""`check`: from a reading to every verdict, the sheet to run and the leaf to try."""

import argparse
from collections.abc import Iterator
from typing import Any

from core.calc.deciding_leaf import NextLeaf
from core.calc.fit import Seat
from core.calc.gasket import Sheet
from core.calc.height import Height
from core.calc.quick_check import Answer as CheckAnswer
from core.calc.quick_check import answer
from core.calc.say import decides, marks, sentence
from core.calc.shelf import ShelfRow
from core.calc.suggestion import Suggestion
from core.command.answer import (
    Answer,
    Once,
    as_option,
    columns,
    filled,
    new_command,
    option_help,
    typed_fields,
)
from core.forms.check_form import FIELDS, SEVERAL_TIMES, CheckForm, read_check
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.texts import text
from core.texts.length import Length
from core.texts.share import Share, Sureness
from core.verdict import Check

LEAST_SHARE_TOLD = 0.005


def add_to(commands: Any) -> None:
    """Declare the command."""
    parser = new_command(commands, "check")
    for field in FIELDS:
        about = option_help(f"option.{field}")
        if field == "straightedge":
            assumed = f"{Length(ASSUMED_HALF_WIDTHS.straightedge):in} in"
            parser.add_argument(
                f"--{field}", action=Once, type=filled, nargs="?", const=assumed, help=about
            )
        else:
            action = "append" if field in SEVERAL_TIMES else Once
            parser.add_argument(f"--{field}", action=action, type=filled, help=about)
    parser.add_argument("--closer", action="store_true", help=option_help("option.closer"))
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> Answer:
    """Answer the options of one command line."""
    form = read_check(typed_fields(options, FIELDS), as_option, closer=options.closer)
    told = answer(form.asked)
    return Answer(data=as_data(told, form.metric), table="\n\n".join(_table(form, told)))


def as_data(told: CheckAnswer, metric: bool) -> dict[str, Any]:
    """The answer as one JSON object."""
    return {
        "height": _height(told.asked.height),
        "checks": [_check(check) for check in told.checks],
        "shelf": [_row(row, metric) for row in told.shelf],
        "suggestion": _suggestion(told.suggestion, metric),
        "next_leaf": _next_leaf(told.next_leaf, metric),
        "say": sentence(told, metric),
    }


def _height(height: Height) -> dict[str, Any]:
    return {
        "value_mm": height.value,
        "low_mm": height.low,
        "high_mm": height.high,
        "u_mm": height.u,
        "bound": height.bound,
    }


def _check(check: Check) -> dict[str, Any]:
    return {
        "id": check.id,
        "verdict": check.verdict,
        "word": text(f"word.{check.word}"),
        "value": check.value,
        "limit": check.limit,
        "unit": check.unit,
        "probability": check.probability,
        "rule": check.rule,
        "source": str(check.source),
    }


def _row(row: ShelfRow, metric: bool) -> dict[str, Any]:
    return {
        "thickness_mm": row.sheet.thickness,
        "share": row.share,
        "verdict": row.verdict,
        "word": text(f"word.{row.word}"),
        "probability": row.probability,
        "because": _because(row, metric),
    }


def _because(row: ShelfRow, metric: bool) -> str:
    return " ".join(each.said(metric=metric) for each in (row.because, row.head) if each)


def _suggestion(suggestion: Suggestion, metric: bool) -> dict[str, Any]:
    return {
        "thickness_mm": _thickness(suggestion.run),
        "sure_mm": _thickness(suggestion.sure),
        "because": _reasons(suggestion, metric),
    }


def _reasons(suggestion: Suggestion, metric: bool) -> str:
    return " ".join(each.said(metric=metric) for each in suggestion.because)


def _thickness(sheet: Sheet | None) -> float | None:
    return None if sheet is None else sheet.thickness


def _next_leaf(leaf: NextLeaf | None, metric: bool) -> dict[str, Any] | None:
    if leaf is None:
        return None
    return {"stack": list(marks(leaf.stack, metric)), "decides": decides(leaf, metric)}


def _table(form: CheckForm, told: CheckAnswer) -> Iterator[str]:
    """The same for a person, paragraph by paragraph."""
    metric, height = form.metric, told.asked.height
    yield text("table.read", read=", ".join(f"{field} {e}" for field, e in form.echoes.items()))
    yield "\n".join(_height_lines(height))
    if told.checks:
        yield columns([_check_cells(check, metric) for check in told.checks])
    if told.seat:
        yield _seat_line(told.seat, metric)
    if told.shelf:
        yield columns([_shelf_cells(row, metric) for row in told.shelf])
    if told.suggestion.because:
        yield _reasons(told.suggestion, metric)
    if told.next_leaf:
        yield text("table.next", decides=decides(told.next_leaf, metric))
    yield text("table.say", say=sentence(told, metric))
    yield text("caution.main")


def _height_lines(height: Height) -> Iterator[str]:
    explained = height.explained
    yield text(
        f"table.height.{height.bound}",
        value=Length(height.value),
        low=Length(height.low or 0.0),
        high=Length(height.high or 0.0),
        u=Length(height.u),
    )
    shares = sorted(zip(explained.shares, explained.terms, strict=True), key=lambda each: -each[0])
    told = [f"{term.name} {Share(share)}" for share, term in shares if share >= LEAST_SHARE_TOLD]
    if told:
        yield text("table.shares", shares=", ".join(told))
    yield text("table.formula", formula=explained.formula, source=explained.source)
    yield from explained.assumptions
    if height.disagreement > 1.0:
        yield text("height.disagree", ratio=f"{height.disagreement:.1f}")


def _check_cells(check: Check, metric: bool) -> tuple[str, ...]:
    return (
        text(f"check.{check.id}"),
        text(f"verdict.{check.verdict}"),
        text(f"word.{check.word}"),
        text(
            "table.against",
            value=_amount(check.value, check.unit, metric),
            limit=_amount(check.limit, check.unit, metric),
        ),
        "" if check.probability is None else text("table.sure", sure=Sureness(check.probability)),
        f"{text(f'rule.{check.rule}')}; {check.source}",
    )


def _amount(value: float, unit: str, metric: bool) -> str:
    return f"{Share(value):.1f}" if unit == "1" else _size(value, metric)


def _size(length: float, metric: bool) -> str:
    return f"{Length(length).shown(metric=metric):size}"


def _seat_line(seat: Seat, metric: bool) -> str:
    sizes = {name: _size(getattr(seat, name), metric) for name in ("floor", "best", "ceiling")}
    return text("table.seat", **sizes)


def _shelf_cells(row: ShelfRow, metric: bool) -> tuple[str, ...]:
    return (
        _size(row.sheet.thickness, metric),
        text(f"verdict.{row.verdict}"),
        text(f"word.{row.word}"),
        _because(row, metric),
        text("table.takes", least=_size(row.least, metric), largest=_size(row.largest, metric))
        if row.takes_any
        else text("table.takes_none"),
    )
