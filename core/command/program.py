"""From arguments to an answer on standard output, or one line on standard error."""

import argparse
import json
import re
import sys
from collections.abc import Sequence
from importlib import import_module
from io import TextIOWrapper
from typing import NoReturn, TextIO

from core.errors import InputError
from core.texts import text

NEGATIVE_NUMBER = re.compile(r"[-−][\d.,]")
COMMANDS = ("check", "choose", "clamp", "cut", "gauges", "heights", "ratio", "vee")
"""Modules of `core.command`; only those that are asked for are loaded."""


class OneLineParser(argparse.ArgumentParser):
    """Says what is wrong in one line and exits with 2."""

    def error(self, message: str) -> NoReturn:
        self.exit(2, f"{self.prog}: {' '.join(message.split())}\n")


def parser(names: Sequence[str] = COMMANDS) -> OneLineParser:
    """Parser of the commands of these names."""
    top = OneLineParser(prog="standproud", description=text("command.about"), allow_abbrev=False)
    commands = top.add_subparsers(dest="command", required=True, metavar="COMMAND")
    for name in names:
        import_module(f"core.command.{name}").add_to(commands)
    return top


def with_negative_numbers(arguments: Sequence[str]) -> list[str]:
    """Arguments with `--deck -0.004in` as one word; the parser takes the second for an option."""
    joined: list[str] = []
    for each in arguments:
        if NEGATIVE_NUMBER.match(each) and joined and joined[-1].startswith("--"):
            joined[-1] = f"{joined[-1]}={each}"
        else:
            joined.append(each)
    return joined


def print_any_sign(stream: TextIO) -> None:
    """Let a terminal that lacks a sign show a stand-in instead of failing."""
    if isinstance(stream, TextIOWrapper):
        stream.reconfigure(errors="replace")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit code."""
    print_any_sign(sys.stdout)
    typed = sys.argv[1:] if arguments is None else arguments
    named = typed[:1] if typed and typed[0] in COMMANDS else COMMANDS
    options = parser(named).parse_args(with_negative_numbers(typed))
    try:
        answer = options.run(options)
    except InputError as error:
        print(f"standproud {options.command}: {error}", file=sys.stderr)
        return 2
    print(json.dumps(answer.data, ensure_ascii=False) if options.json else answer.table)
    return 0
