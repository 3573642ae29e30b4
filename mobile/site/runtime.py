"""Python for the browser (Pyodide), without what an app that installs nothing never asks for."""

import json
import shutil
from pathlib import Path

KEPT = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip")


def write_runtime(source: Path, out: Path) -> None:
    """Copy the interpreter, its standard library and an empty index of further packages."""
    out.mkdir()
    for name in KEPT:
        shutil.copyfile(source / name, out / name)
    index = json.loads((source / "pyodide-lock.json").read_text())
    (out / "pyodide-lock.json").write_text(json.dumps({**index, "packages": {}}))
