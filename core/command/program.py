"""From arguments to an answer on standard output, or one line on standard error."""

import argparse
import json
import re
import sys
from collections.abc import Sequence
from typing import NoReturn

from core.command import check, choose, clamp, cut, gauges, heights, ratio, vee
from core.errors import InputError
from core.texts import text

NEGATIVE_NUMBER = re.compile(r"[-−][\d.,]")
COMMANDS = (check, choose, clamp, cut, gauges, heights, ratio, vee)


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


def with_negative_numbers(arguments: Sequence[str]) -> list[str]:
    """Arguments with `--deck -0.004in` as one word; the parser takes the second for an option."""
    joined: list[str] = []
    for each in arguments:
        if NEGATIVE_NUMBER.match(each) and joined and joined[-1].startswith("--"):
            joined[-1] = f"{joined[-1]}={each}"
        else:
            joined.append(each)
    return joined


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit code."""
    typed = sys.argv[1:] if arguments is None else arguments
    options = parser().parse_args(with_negative_numbers(typed))
    try:
        answer = options.run(options)
    except InputError as error:
        print(f"standproud {options.command}: {error}", file=sys.stderr)
        return 2
    print(json.dumps(answer.data, ensure_ascii=False) if options.json else answer.table)
    return 0
