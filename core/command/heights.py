"""`heights`: heights of single wires from a file of readings on one wire and across two."""

import argparse
import math
from pathlib import Path
from typing import Any

from core.calc.pair_heights import Heights, Undetermined, WireHeight, heights
from core.calc.passed_over import Crossing, Laid, Outcome, crossings
from core.command.answer import Answer, columns, new_command
from core.errors import refuse
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
        "said": _group_text(group),
    }


def _group_text(group: Undetermined) -> str:
    if len(group.free) == 1:
        return text("heights.unread", wire=group.names[0])
    up = ", ".join(name for name, move in group.free if move > 0)
    down = ", ".join(name for name, move in group.free if move < 0)
    key = "heights.see_saw" if down else "heights.together"
    return text(key, wires=", ".join(group.names), up=up, down=down)


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
            "said": _rocked_text(rocked, over)}


def _rocked_text(rocked: Laid, over: list[str]) -> str:
    key = "heights.rocked" if over else "heights.rocked_over_nothing"
    return text(key, first=rocked.first, second=rocked.second, over=", ".join(over))


def _table(file: ReadingsFile, found: Heights, passed: tuple[Crossing, ...]) -> str:
    parts = [
        columns([_cells(each) for each in found.wires]),
        "\n".join(_group_text(each) for each in found.undetermined),
        _scatter_text(found),
        "\n".join(_suspects(found)),
        "\n".join(_rocked_text(each, [c.over for c in passed
                                      if c.laid == each])
                  for each in file.rocked),
        "\n".join(_crossing_text(each) for each in passed if each.outcome is not Outcome.CLEAR),
        "\n".join(str(each) for each in file.assumed),
        text("caution.main"),
    ]
    return "\n\n".join(part for part in parts if part)


def _cells(wire: WireHeight) -> tuple[str, str, str]:
    if wire.height is None or wire.u is None:
        return wire.name, text("heights.undetermined"), ""
    return (wire.name, text("heights.height", value=Length(wire.height)),
            text("heights.spread", u=Length(wire.u)))


def _scatter_text(found: Heights) -> str:
    said = text(f"heights.agreement.{found.agreement}")
    if found.p is None:
        return said
    return text("heights.scatter", chi2=found.chi2, dof=found.dof, p=found.p, said=said)


def _suspects(found: Heights) -> list[str]:
    lines = [
        text("heights.suspect", name=each.reading.name, value=Length(each.reading.value),
             fitted=Length(each.fitted))
        for each in found.residuals
        if each.suspect
    ]
    return lines + [
        text("heights.outside", name=each.reading.name)
        for each in found.residuals
        if each.reading.outside
    ]


def _crossing_text(crossing: Crossing) -> str:
    margin = Length(crossing.found.margin if crossing.found else 0.0)
    sure = crossing.found.p_above if crossing.found else 0.0
    return text(f"heights.crossing.{crossing.outcome}", reading=crossing.laid.name,
                over=crossing.over, first=crossing.laid.first, second=crossing.laid.second,
                margin=margin, sure=sure)
