"""`gauges`: the leaf that must go and the leaf that must not, for each sheet on the shelf."""

import argparse
from typing import Any

from core.calc.gasket import Sheet
from core.calc.gauge_card import Gauge, gauge_card
from core.calc.leaves import Stack
from core.calc.say import marks
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
from core.forms.check_form import read_gauges
from core.texts import text
from core.texts.length import Length

FIELDS = ("shelf", "leaves", "share")


def add_to(commands: Any) -> None:
    """Declare the command."""
    parser = new_command(commands, "gauges")
    for field in FIELDS:
        required, about = field == "shelf", option_help(f"option.{field}")
        parser.add_argument(
            f"--{field}", action=Once, type=filled, required=required, help=about
        )
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> Answer:
    """Answer the options of one command line."""
    form = read_gauges(typed_fields(options, FIELDS), as_option)
    card = gauge_card(form.shelf, form.leaf_set, form.practice)
    metric = form.leaf_set.metric
    return Answer(
        data={"gauges": [_data(gauge, metric) for gauge in card]}, table=_table(card, metric)
    )


def _data(gauge: Gauge, metric: bool) -> dict[str, Any]:
    return {
        "thickness_mm": gauge.sheet.thickness,
        "must_go": _marks(gauge.must_go, metric),
        "must_not_go": _marks(gauge.must_not_go, metric),
        "largest_mm": gauge.largest,
        "least_mm": gauge.least,
    }


def _marks(stack: Stack | None, metric: bool) -> list[str] | None:
    return None if stack is None else list(marks(stack, metric))


def _table(card: tuple[Gauge, ...], metric: bool) -> str:
    head = (text("table.sheet"), text("table.must_go"), text("table.must_not_go"))
    rows = [
        (_sheet(gauge.sheet, metric), *_leaves(gauge, metric)) for gauge in card
    ]
    return "\n\n".join((columns([head, *rows]), text("caution.main")))


def _sheet(sheet: Sheet, metric: bool) -> str:
    return f"{Length(sheet.thickness).shown(metric=metric):size}"


def _leaves(gauge: Gauge, metric: bool) -> tuple[str, ...]:
    if not gauge.takes_any:
        return (text("table.takes_none"), "")
    return tuple(_cell(stack, metric) for stack in (gauge.must_go, gauge.must_not_go))


def _cell(stack: Stack | None, metric: bool) -> str:
    return text("table.no_leaf") if stack is None else " + ".join(marks(stack, metric))
