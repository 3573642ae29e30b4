"""What `python3 tests` runs, inside the project's environment.

Without options: every test, with a tenth of the long counts. `--long`: the full counts. `--all`:
also fails for parts that this machine cannot run. `--lint`: style, types, layers. `--bench`: the
figures, each beside its peer; names after it choose among them. `--readme`: bring the parts of
README.md that the program makes up to date. Other arguments go to pytest.
"""

import importlib
import os
import pkgutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
LINT = (
    ("ruff", "check", "core", "mobile", "tests"),
    ("mypy",),
    ("importlinter.cli", "lint"),
)


def main(arguments: list[str]) -> int:
    os.chdir(ROOT)
    if "--lint" in arguments:
        return lint()
    if "--bench" in arguments:
        return bench([each for each in arguments if not each.startswith("-")])
    if "--readme" in arguments:
        return readme()
    return test(arguments)


def readme() -> int:
    from tests.readme import write

    write()
    return 0


def lint() -> int:
    codes = [run(tool) for tool in (*LINT, ("pytest", "tests/architecture"))]
    return max(codes)


def run(tool: tuple[str, ...]) -> int:
    print(f"--- {' '.join(tool)}", flush=True)
    command = [sys.executable, "-m", *tool]
    if tool[0] == "importlinter.cli":
        command = [str(Path(sys.executable).with_name("lint-imports"))]
    return subprocess.run(command, check=False).returncode


def test(arguments: list[str]) -> int:
    import pytest

    for option, variable in (("--long", "STANDPROUD_LONG"), ("--all", "STANDPROUD_ALL")):
        if option in arguments:
            arguments.remove(option)
            os.environ[variable] = "1"
    code = pytest.main(arguments)
    if not arguments:
        code = max(code, run(("pytest", "--doctest-modules", "core")))
    return int(code)


def bench(names: list[str]) -> int:
    """Print the rows of each bench; a row that misses its goal makes the run fail."""
    import tests.bench as benches

    found = [each.name for each in pkgutil.iter_modules(benches.__path__)]
    missed = 0
    for name in names or found:
        print(f"--- {name}", flush=True)
        for row in importlib.import_module(f"tests.bench.{name}").rows():
            print(row, flush=True)
            missed += not row.met
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
