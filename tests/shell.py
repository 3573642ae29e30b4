"""The `standproud` command as a person starts it: a process of its own."""

import json
import os
import shlex
import subprocess
import sys
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parent.parent
EXAMPLE_LINE = (
    "check --go 0.011in --no-go 0.013in --gasket 0.040in --wire 0.041in --groove-width 0.040in "
    "--groove-depth 0.030in --shelf 0.032in,0.040in,0.050in,0.0646in"
)
EXAMPLE = tuple(shlex.split(EXAMPLE_LINE))


def run(*arguments: str, **options: Any) -> subprocess.CompletedProcess[str]:
    """Run the command inside the environment of the tests."""
    return subprocess.run(
        [sys.executable, "-m", "mobile.program", *arguments],
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "PYTHONPATH": str(ROOT), **options},
    )


def answer(*arguments: str) -> dict[str, Any]:
    """The JSON object of a command that must succeed."""
    done = run(*arguments, "--json")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.count("\n") == 1
    return json.loads(done.stdout)


def refused(*arguments: str) -> str:
    """The one line of a command that must be refused."""
    done = run(*arguments)
    assert (done.returncode, done.stdout) == (2, ""), done.stdout
    assert "Traceback" not in done.stderr
    assert done.stderr.count("\n") == 1, done.stderr
    return done.stderr.strip()
