"""What a command answers: data for a program, a table for a person."""

import argparse
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from core.texts import text


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """One answer in both forms."""

    data: dict[str, Any]
    table: str


class Once(argparse.Action):
    """An option that holds one value: typed twice, neither is taken for the other."""

    def __call__(
        self,
        parser: argparse.ArgumentParser,
        namespace: argparse.Namespace,
        values: Any,
        option_string: str | None = None,
    ) -> None:
        if getattr(namespace, self.dest) is not None:
            parser.error(text("command.twice", option=option_string))
        setattr(namespace, self.dest, values)


def filled(typed: str) -> str:
    """An option's text; blank, it is refused rather than taken for left out."""
    if not typed.strip():
        raise argparse.ArgumentTypeError(text("command.blank"))
    return typed


def option_help(key: str) -> str:
    """Text of an option's help; the parser takes a single per cent sign for a place to fill."""
    return text(key).replace("%", "%%")


def add_fields(parser: argparse.ArgumentParser, helps: Mapping[str, str]) -> None:
    """One option a field, typed once; `helps` has the key of each field's help."""
    for field, key in helps.items():
        parser.add_argument(f"--{field}", action=Once, type=filled, help=option_help(key))


def typed_fields(options: argparse.Namespace, fields: Iterable[str]) -> dict[str, list[str]]:
    """What was typed, by field; a field left out is not there."""
    typed = {field: getattr(options, field.replace("-", "_")) for field in fields}
    return {
        field: each if isinstance(each, list) else [each]
        for field, each in typed.items()
        if each is not None
    }


def as_option(field: str) -> str:
    """How a sentence names a field on the command line."""
    return f"--{field}"


def new_command(commands: Any, name: str) -> argparse.ArgumentParser:
    """Parser of command `name`, described by the text `command.<name>`."""
    about = text(f"command.{name}")
    parser: argparse.ArgumentParser = commands.add_parser(
        name, help=about, description=about, allow_abbrev=False
    )
    parser.add_argument("--json", action="store_true", help=text("command.json"))
    return parser


def columns(rows: Sequence[Sequence[str]]) -> str:
    """Rows as aligned text columns."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    lines = (
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True))
        for row in rows
    )
    return "\n".join(line.rstrip() for line in lines)
