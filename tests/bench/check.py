"""A whole check, texts to JSON object, and the import of core."""

import random
import statistics
import subprocess
import sys
from collections.abc import Iterator

from core.command.program import parser
from tests.measured import Row, median_seconds

CHECKS = 500
IMPORTS = 7
EMPTY = "import time; t = time.perf_counter(); {}; print(time.perf_counter() - t)"


def rows() -> Iterator[Row]:
    texts = [arguments(random.Random(seed)) for seed in range(CHECKS)]
    first = parser()
    yield Row(
        what=f"whole check, texts to JSON object, median of {CHECKS} different inputs",
        value=1e3 * median_seconds(lambda typed: run(first, typed), texts),
        unit="ms",
        goal=1.0,
        peer="argparse alone on the same texts",
        peer_value=1e3 * median_seconds(first.parse_args, texts),
    )
    yield Row(
        what=f"import of core with every command, median of {IMPORTS} processes",
        value=seconds_of("import core.command"),
        unit="s",
        goal=0.15,
        peer="import pint alone",
        peer_value=seconds_of("import pint"),
    )


def run(first: object, typed: list[str]) -> object:
    options = first.parse_args(typed)
    return options.run(options).data


def arguments(rng: random.Random) -> list[str]:
    go = rng.uniform(6, 14)
    sheets = sorted(rng.uniform(30, 90) for _ in range(4))
    sizes = {
        "--go": f"{go:.2f} thou",
        "--no-go": f"{go + rng.uniform(0.5, 3):.2f} thou",
        "--gasket": f"{sheets[0]:.2f} thou",
        "--wire": f"{rng.uniform(40.5, 41.5):.2f} thou",
        "--groove-width": f"{rng.uniform(39.5, 40.4):.2f} thou",
        "--groove-depth": f"{rng.uniform(28, 32):.2f} thou",
        "--shelf": ",".join(f"{sheet:.2f}thou" for sheet in sheets),
    }
    return ["check", *(word for pair in sizes.items() for word in pair)]


def seconds_of(statement: str) -> float:
    command = [sys.executable, "-c", EMPTY.format(statement)]
    return statistics.median(
        float(subprocess.run(command, capture_output=True, check=True, text=True).stdout)
        for _ in range(IMPORTS)
    )
