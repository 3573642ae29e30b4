"""`heights`: heights of single wires from a file of readings on one wire and across two."""

import argparse
import math
from pathlib import Path
from typing import Any

from core.calc.pair_heights import Heights, Undetermined, WireHeight, heights
from core.calc.passed_over import Crossing, Laid, Outcome, crossings
from core.command.answer import Answer, columns, new_command
from core.errors import refuse
from core.forms.heights_words import (
    crossing_line,
    group_line,
    rocked_line,
    scatter_line,
    suspect_lines,
)
from core.forms.readings_file import ReadingsFile, read_readings
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.texts import text
from core.texts.length import Length
from core.uncertain import coverage_factor

RANGE_LEVEL = 0.95


def add_to(commands: Any) -> None:
    """Declare the command."""
    parser = new_command(commands, "heights")
    parser.formatter_class = argparse.RawDescriptionHelpFormatter
    limits = ASSUMED_HALF_WIDTHS
    parser.epilog = text("heights.file.form", leaf=Length(limits.leaf),
                         straightedge=Length(limits.straightedge))
    parser.add_argument("readings", metavar="READINGS.json", help=text("heights.option.readings"))
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> Answer:
    """Answer the readings of one file."""
    file = read_readings(_content(options.readings))
    found = heights(file.wires, file.readings, file.leaf_u)
    passed = crossings(found, file.laid, file.places)
    return Answer(data=as_data(file, found, passed), table=_table(file, found, passed))


def _content(path: str) -> str:
    try:
        return Path(path).read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise refuse("READINGS.json", "heights.file.not_utf8", path=path) from None
    except (OSError, ValueError):
        raise refuse("READINGS.json", "heights.file.not_read", path=path) from None


def as_data(
    file: ReadingsFile, found: Heights, passed: tuple[Crossing, ...]
) -> dict[str, Any]:
    """The JSON object."""
    return {
        "heights": [_wire(each) for each in found.wires],
        "undetermined": [_group(each) for each in found.undetermined],
        "correlation": {"wires": list(found.determined), "matrix": _correlations(found)},
        "leaf_error_mm": {"value": found.leaf_error[0], "u": found.leaf_error[1]},
        "scatter": {
            "chi_square": found.chi2,
            "degrees_of_freedom": found.dof,
            "probability": found.p,
            "agreement": found.agreement,
            "said": text(f"heights.agreement.{found.agreement}"),
        },
        "readings": [
            {
                "name": each.reading.name,
                "value_mm": each.reading.value,
                "u_mm": each.reading.u,
                "fitted_mm": each.fitted,
                "normalised": each.normalised,
                "suspect": each.suspect,
                "outside_span": each.reading.outside,
            }
            for each in found.residuals
        ],
        "passed_over": [_crossing(each) for each in passed],
        "rocked": [_rocked(each, passed) for each in file.rocked],
        "assumed": [str(each) for each in file.assumed],
        "caution": text("caution.main"),
    }


def _wire(wire: WireHeight) -> dict[str, Any]:
    if wire.height is None or wire.u is None:
        return {"wire": wire.name, "status": "undetermined"}
    reach = coverage_factor(RANGE_LEVEL, math.inf) * wire.u
    return {
        "wire": wire.name,
        "status": "determined",
        "height_mm": wire.height,
        "u_mm": wire.u,
        "low_mm": wire.height - reach,
        "high_mm": wire.height + reach,
    }


def _group(group: Undetermined) -> dict[str, Any]:
    return {
        "wires": list(group.names),
        "free": {name: float(move) for name, move in group.free},
        "said": group_line(group),
    }


def _correlations(found: Heights) -> list[list[float]]:
    names = found.determined
    return [[found.correlation(a, b) for b in names] for a in names]


def _crossing(crossing: Crossing) -> dict[str, Any]:
    found = crossing.found
    return {
        "reading": crossing.laid.name,
        "over": crossing.over,
        "outcome": crossing.outcome,
        "above_line_mm": found.margin if found else None,
        "u_mm": found.u if found else None,
        "probability_above": found.p_above if found else None,
    }


def _rocked(rocked: Laid, passed: tuple[Crossing, ...]) -> dict[str, Any]:
    over = [each.over for each in passed if each.laid == rocked]
    return {"name": rocked.name, "across": [rocked.first, rocked.second], "over": over,
            "said": rocked_line(rocked, over)}


def _table(file: ReadingsFile, found: Heights, passed: tuple[Crossing, ...]) -> str:
    parts = [
        columns([_cells(each) for each in found.wires]),
        "\n".join(group_line(each) for each in found.undetermined),
        scatter_line(found),
        "\n".join(suspect_lines(found)),
        "\n".join(rocked_line(each, [c.over for c in passed
                                      if c.laid == each])
                  for each in file.rocked),
        "\n".join(crossing_line(each) for each in passed if each.outcome is not Outcome.CLEAR),
        "\n".join(str(each) for each in file.assumed),
        text("caution.main"),
    ]
    return "\n\n".join(part for part in parts if part)


def _cells(wire: WireHeight) -> tuple[str, str, str]:
    if wire.height is None or wire.u is None:
        return wire.name, text("heights.undetermined"), ""
    return (wire.name, text("heights.height", value=Length(wire.height)),
            text("heights.spread", u=Length(wire.u)))
