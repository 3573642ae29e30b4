"""Bytecode for the phone: a start that compiles nothing.

The compiler is the phone's own Python, run by the Node.js that Playwright's wheel carries.
"""

import subprocess
from pathlib import Path

from playwright._impl._driver import compute_driver_executable

from mobile.site.failure import BuildError

HERE = Path(__file__).resolve().parent


def compile_archives(runtime: Path, folder: Path) -> None:
    """Compile each ``NAME.source.zip`` of the folder into ``NAME.zip``.

    Raises
    ------
    BuildError
        If a module cannot be compiled.
    """
    node, _driver = compute_driver_executable()
    command = [node, HERE / "bytecode.mjs", runtime, folder, HERE / "bytecode_inside.py"]
    ran = subprocess.run([str(part) for part in command], check=False, stderr=subprocess.PIPE)
    if ran.returncode:
        why = ran.stderr.decode(errors="replace").strip().rpartition("\n")[2]
        raise BuildError(f"Could not compile the phone's Python: {why}")
