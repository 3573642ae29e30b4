"""A whole check, texts to JSON object, and the import of core.

No answer is kept from one input to the next. What is made once a process (units met so far, the
stacks of a leaf set) is made by the first of them, and the median does not show it; the row for
a process does.
"""

import json
import random
import statistics
import subprocess
import sys
from collections.abc import Callable, Iterator

from core.command.program import OneLineParser, parser
from tests.measured import Row, median_seconds
from tests.shell import EXAMPLE, run

CHECKS = 500
IMPORTS = 7
EMPTY = "import time; t = time.perf_counter(); {}; print(time.perf_counter() - t)"


def rows() -> Iterator[Row]:
    commands = parser()
    for what, make in INPUTS.items():
        texts = [make(random.Random(seed)) for seed in range(CHECKS)]
        yield Row(
            what=f"whole check, texts to JSON object, {what}, median of {CHECKS} different inputs",
            value=1e3 * median_seconds(lambda typed: checked(commands, typed), texts),
            unit="ms",
            goal=1.0,
            peer="argparse alone on the same texts",
            peer_value=1e3 * median_seconds(commands.parse_args, texts),
        )
    yield Row(
        what=f"import of core as a check needs it, median of {IMPORTS} processes",
        value=seconds_of("import core.command.check"),
        unit="s",
        goal=0.15,
        peer="import pint alone",
        peer_value=seconds_of("import pint"),
    )
    yield Row(
        what=f"import of core with every command, median of {IMPORTS} processes",
        value=seconds_of("from core.command.program import parser; parser()"),
        unit="s",
    )
    yield Row(
        what=f"standproud check … --json, a process of its own, median of {IMPORTS}",
        value=median_seconds(lambda _: run(*EXAMPLE, "--json"), range(IMPORTS)),
        unit="s",
        peer="python that does nothing",
        peer_value=median_seconds(
            lambda _: subprocess.run([sys.executable, "-c", ""], check=True), range(IMPORTS)
        ),
    )


def checked(commands: OneLineParser, typed: list[str]) -> str:
    options = commands.parse_args(typed)
    return json.dumps(options.run(options).data)


def bracket(rng: random.Random) -> list[str]:
    """Two leaves, wire, groove and four sheets, in thou."""
    go = rng.uniform(6, 14)
    sheets = sorted(rng.uniform(30, 90) for _ in range(4))
    return words(
        {
            "--go": f"{go:.2f} thou",
            "--no-go": f"{go + rng.uniform(0.5, 3):.2f} thou",
            "--gasket": f"{sheets[0]:.2f} thou",
            "--wire": f"{rng.uniform(40.5, 41.5):.2f} thou",
            "--groove-width": f"{rng.uniform(39.5, 40.4):.2f} thou",
            "--groove-depth": f"{rng.uniform(28, 32):.2f} thou",
            "--shelf": ",".join(f"{sheet:.2f}thou" for sheet in sheets),
        }
    )


def one_side(rng: random.Random) -> list[str]:
    """One leaf that goes and eight sheets in mm: every leaf and stack above it is weighed."""
    sheets = sorted(rng.uniform(0.6, 2.4) for _ in range(8))
    return words(
        {
            "--go": f"{rng.uniform(0.1, 0.3):.3f} mm",
            "--gasket": f"{sheets[0]:.3f} mm",
            "--shelf": ";".join(f"{sheet:.3f}mm" for sheet in sheets),
        }
    )


def words(sizes: dict[str, str]) -> list[str]:
    return ["check", *(word for pair in sizes.items() for word in pair)]


INPUTS: dict[str, Callable[[random.Random], list[str]]] = {
    "two leaves, wire, groove, four sheets": bracket,
    "one leaf, eight sheets": one_side,
}


def seconds_of(statement: str) -> float:
    command = [sys.executable, "-c", EMPTY.format(statement)]
    return statistics.median(
        float(subprocess.run(command, capture_output=True, check=True, text=True).stdout)
        for _ in range(IMPORTS)
    )
