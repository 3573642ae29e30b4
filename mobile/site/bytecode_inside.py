"""Runs inside the phone's own Python at build time: only that one writes bytecode it can read."""

import zipfile
from importlib import _bootstrap_external  # type: ignore[attr-defined]
from pathlib import Path

WORK = Path("/work")
# One fixed time in every entry: the same sources give the same bytes.
TIME = (2026, 1, 1, 0, 0, 0)
# Documentation of packages is left out. Our own modules keep theirs, and their assertions.
WITHOUT_DOCUMENTATION = 2
AS_WRITTEN = 0


def compile_archive(source: Path, target: Path, optimize: int) -> None:
    """Copy an archive with every module compiled."""
    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w") as new:
        for name in old.namelist():
            entry, content = compiled(name, old.read(name), optimize)
            new.writestr(entry, content, zipfile.ZIP_DEFLATED, 9)


def compiled(name: str, content: bytes, optimize: int) -> tuple[zipfile.ZipInfo, bytes]:
    if not name.endswith(".py"):
        return zipfile.ZipInfo(name, TIME), content
    code = compile(content, name, "exec", dont_inherit=True, optimize=optimize)
    unchecked = _bootstrap_external._code_to_hash_pyc(code, bytes(8), False)
    return zipfile.ZipInfo(f"{name}c", TIME), unchecked


for archive in sorted(WORK.glob("*.source.zip"), reverse=True):
    own = archive.name.startswith("app.")
    compile_archive(
        archive,
        archive.with_name(archive.name.replace(".source", "")),
        AS_WRITTEN if own else WITHOUT_DOCUMENTATION,
    )
