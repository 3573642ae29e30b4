"""The table source → cases → result, as the tests print it and README.md shows it."""

from core.published.all_cases import SourceResult, all_cases, by_source


def table() -> str:
    """One line a source."""
    rows = by_source(all_cases())
    lines = ["| source | cases | result |", "|---|---:|---|", *map(_line, rows)]
    cases, met = sum(row.cases for row in rows), sum(row.met for row in rows)
    return "\n".join((*lines, f"| **all** | **{cases}** | **{_result(cases, met)}** |"))


def _line(row: SourceResult) -> str:
    return f"| {row.source} | {row.cases} | {_result(row.cases, row.met)} |"


def _result(cases: int, met: int) -> str:
    return "all met" if met == cases else f"{cases - met} MISSED"
