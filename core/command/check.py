"""`check`: from a reading to every verdict, the sheet to run and the leaf to try."""

import argparse
from typing import Any

from core.calc.deciding_leaf import NextLeaf
from core.calc.gasket import Sheet
from core.calc.height import Height
from core.calc.quick_check import Answer as CheckAnswer
from core.calc.quick_check import answer
from core.calc.say import marks, sentence
from core.calc.shelf import ShelfRow
from core.calc.suggestion import Suggestion
from core.command.answer import Answer, columns, new_command
from core.forms.check_form import FIELDS, SEVERAL_TIMES, CheckForm, read_check
from core.texts import text
from core.texts.length import Length
from core.texts.share import Share, Sureness
from core.verdict import Check


def add_to(commands: Any) -> None:
    """Declare the command."""
    parser = new_command(commands, "check")
    for field in FIELDS:
        action = "append" if field in SEVERAL_TIMES else "store"
        parser.add_argument(f"--{field}", action=action, help=text(f"option.{field}"))
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> Answer:
    """Answer the options of one command line."""
    form = read_check(_texts(options), lambda field: f"--{field}")
    return Answer(data=as_data(answer(form.asked), form.metric), table=_table(form))


def _texts(options: argparse.Namespace) -> dict[str, list[str]]:
    typed = {field: getattr(options, field.replace("-", "_")) for field in FIELDS}
    return {
        field: each if isinstance(each, list) else [each]
        for field, each in typed.items()
        if each is not None
    }


def as_data(told: CheckAnswer, metric: bool) -> dict[str, Any]:
    """The answer as one JSON object."""
    return {
        "height": _height(told.asked.height),
        "checks": [_check(check) for check in told.checks],
        "shelf": [_row(row) for row in told.shelf],
        "suggestion": _suggestion(told.suggestion),
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


def _row(row: ShelfRow) -> dict[str, Any]:
    return {
        "thickness_mm": row.sheet.thickness,
        "share": row.share,
        "verdict": row.verdict,
        "word": text(f"word.{row.word}"),
        "probability": row.probability,
        "because": str(row.because),
    }


def _suggestion(suggestion: Suggestion | None) -> dict[str, Any] | None:
    if suggestion is None:
        return None
    return {
        "thickness_mm": _thickness(suggestion.run),
        "sure_mm": _thickness(suggestion.sure),
        "because": " ".join(str(each) for each in suggestion.because),
    }


def _thickness(sheet: Sheet | None) -> float | None:
    return None if sheet is None else sheet.thickness


def _next_leaf(leaf: NextLeaf | None, metric: bool) -> dict[str, Any] | None:
    if leaf is None:
        return None
    return {"stack": list(marks(leaf.stack, metric)), "decides": decides(leaf, metric)}


def decides(leaf: NextLeaf, metric: bool) -> str:
    """What each outcome of a leaf would settle."""
    return text(
        "next.sheet",
        leaf=" + ".join(marks(leaf.stack, metric)),
        goes=_outcome(leaf.if_goes),
        not_goes=_outcome(leaf.if_not),
    )


def _outcome(sheet: Sheet | None) -> str:
    if sheet is None:
        return text("next.open")
    return text("next.run", sheet=Length(sheet.thickness))


def _table(form: CheckForm) -> str:
    told = answer(form.asked)
    parts = [_understood(form), _height_line(told.asked.height), _checks_table(told.checks)]
    if told.shelf:
        parts.append(_shelf_table(told.shelf))
    if told.suggestion:
        parts.append(" ".join(str(each) for each in told.suggestion.because))
    if told.next_leaf:
        parts.append(text("table.next", decides=decides(told.next_leaf, form.metric)))
    parts += [sentence(told, form.metric), text("caution.main")]
    return "\n\n".join(part for part in parts if part)


def _understood(form: CheckForm) -> str:
    read = ", ".join(f"{field} {echo}" for field, echo in form.echoes.items())
    return text("table.read", read=read) if read else ""


def _height_line(height: Height) -> str:
    low, high = height.low, height.high
    return text(
        f"table.height.{height.bound}",
        value=Length(height.value),
        low=Length(low or 0.0),
        high=Length(high or 0.0),
        u=Length(height.u),
    )


def _checks_table(checks: tuple[Check, ...]) -> str:
    return columns([_check_cells(check) for check in checks]) if checks else ""


def _check_cells(check: Check) -> tuple[str, ...]:
    return (
        text(f"check.{check.id}"),
        text(f"verdict.{check.verdict}"),
        text(f"word.{check.word}"),
        text(
            "table.against",
            value=_amount(check.value, check.unit),
            limit=_amount(check.limit, check.unit),
        ),
        _percent(check.probability),
        f"{text(f'rule.{check.rule}')}; {check.source}",
    )


def _amount(value: float, unit: str) -> str:
    return f"{Share(value):.1f}" if unit == "1" else f"{Length(value):in} in"


def _percent(p: float | None) -> str:
    return "" if p is None else text("table.sure", sure=Sureness(p))


def _shelf_table(rows: tuple[ShelfRow, ...]) -> str:
    return columns(
        [
            (
                f"{Length(row.sheet.thickness):in} in",
                f"{Share(row.share)}",
                text(f"verdict.{row.verdict}"),
                text(f"word.{row.word}"),
                str(row.because),
            )
            for row in rows
        ]
    )
