"""Python in the browser: the interpreter (Pyodide) and three archives of compiled modules."""

import json
import shutil
import tempfile
from pathlib import Path

from mobile.site.archive import library_files, own_files, wheel_files, write_archive
from mobile.site.bytecode import compile_archives

INTERPRETER = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")
LIBRARY = "python_stdlib.zip"
PACKAGES = "packages.zip"
APP = "app.zip"


def write_runtime(source: Path, wheels: list[Path], out: Path) -> None:
    """Write the interpreter, an empty index of further packages, and the compiled archives."""
    pyodide = out / "pyodide"
    pyodide.mkdir()
    for name in INTERPRETER:
        shutil.copyfile(source / name, pyodide / name)
    index = json.loads((source / "pyodide-lock.json").read_text())
    (pyodide / "pyodide-lock.json").write_text(json.dumps({**index, "packages": {}}))
    archives = {
        LIBRARY: library_files(source / LIBRARY),
        PACKAGES: wheel_files(wheels),
        APP: own_files(),
    }
    with tempfile.TemporaryDirectory() as folder:
        for name, files in archives.items():
            write_archive(Path(folder) / name.replace(".zip", ".source.zip"), files)
        compile_archives(source, Path(folder))
        shutil.copyfile(Path(folder) / LIBRARY, pyodide / LIBRARY)
        shutil.copyfile(Path(folder) / PACKAGES, out / PACKAGES)
        shutil.copyfile(Path(folder) / APP, out / APP)
