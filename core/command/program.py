"""From arguments to an answer on standard output, or one line on standard error."""

import argparse
import json
import sys
from collections.abc import Sequence
from typing import NoReturn

from core.command import check, clamp, gauges
from core.errors import InputError
from core.texts import text

COMMANDS = (check, clamp, gauges)


class OneLineParser(argparse.ArgumentParser):
    """Says what is wrong in one line and exits with 2."""

    def error(self, message: str) -> NoReturn:
        self.exit(2, f"{self.prog}: {' '.join(message.split())}\n")


def parser() -> OneLineParser:
    """Parser of every command."""
    top = OneLineParser(prog="standproud", description=text("command.about"), allow_abbrev=False)
    commands = top.add_subparsers(dest="command", required=True, metavar="COMMAND")
    for each in COMMANDS:
        each.add_to(commands)
    return top


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit code."""
    options = parser().parse_args(arguments)
    try:
        answer = options.run(options)
    except InputError as error:
        print(f"standproud {options.command}: {error}", file=sys.stderr)
        return 2
    print(json.dumps(answer.data, ensure_ascii=False) if options.json else answer.table)
    return 0
