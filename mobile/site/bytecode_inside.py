"""Runs inside the phone's own Python at build time: only that one writes bytecode it can read."""

import ast
import zipfile
from importlib import _bootstrap_external  # type: ignore[attr-defined]
from pathlib import Path

WORK = Path("/work")
# One fixed time in every entry: the same sources give the same bytes.
TIME = (2026, 1, 1, 0, 0, 0)
# Packages are compiled as Python's -OO does. Our own modules lose only their documentation, which
# the phone never shows; their assertions stand as the tests ran them.
LIKE_OO = 2
WITH_ASSERTIONS = 0
DOCUMENTED = (ast.Module, ast.ClassDef, ast.FunctionDef, ast.AsyncFunctionDef)


def compile_archive(source: Path, target: Path, optimize: int) -> None:
    """Copy an archive with every module compiled, as it is: gzip packs the whole of it better."""
    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w") as new:
        for name in old.namelist():
            entry, content = compiled(name, old.read(name), optimize)
            new.writestr(entry, content)


def compiled(name: str, content: bytes, optimize: int) -> tuple[zipfile.ZipInfo, bytes]:
    if not name.endswith(".py"):
        return zipfile.ZipInfo(name, TIME), content
    tree = without_documentation(ast.parse(content))
    code = compile(tree, name, "exec", dont_inherit=True, optimize=optimize)
    unchecked = _bootstrap_external._code_to_hash_pyc(code, bytes(8), False)
    return zipfile.ZipInfo(f"{name}c", TIME), unchecked


def without_documentation(tree: ast.Module) -> ast.Module:
    for node in ast.walk(tree):
        if isinstance(node, DOCUMENTED) and ast.get_docstring(node, clean=False) is not None:
            node.body = node.body[1:] or [ast.copy_location(ast.Pass(), node.body[0])]
    return tree


for archive in sorted(WORK.glob("*.source.zip"), reverse=True):
    own = archive.name.startswith("app.")
    compile_archive(
        archive,
        archive.with_name(archive.name.replace(".source", "")),
        WITH_ASSERTIONS if own else LIKE_OO,
    )
