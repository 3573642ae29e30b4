"""A layer imports only from below; the linter that says so can say no."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.docstrings import ROOT

LINTER = Path(sys.executable).with_name("lint-imports")
PLANTED = {
    "core/calc/leaves.py": ("from core.forms import entries", "A layer imports only from below"),
    "core/tables/practice.py": ("import core.calc.height", "A layer imports only from below"),
    "core/errors.py": ("import core.units", "A layer imports only from below"),
    "core/command/check.py": ("import flet", "core knows no screen, no browser"),
    "core/calc/fit.py": ("import pint", "pint is asked in one place"),
    "core/calc/shelf.py": ("import uncertainties", "uncertainties is asked in one place"),
    "core/forms/entries.py": ("import jinja2", "jinja2 is asked by the report alone"),
    "core/report/say.py": ("import segno", "segno is asked by the hand-over alone"),
    "core/handover/parts.py": ("import core.report.plain", "A layer imports only from below"),
    "core/forms/check_form.py": ("import tinydb", "tinydb is asked by the store alone"),
}


def lint(folder: Path) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "PYTHONPATH": str(folder)}
    return subprocess.run(
        [LINTER, "--no-cache"], cwd=folder, env=environment, capture_output=True, text=True,
        check=False,
    )  # fmt: skip


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    for part in ("core", "mobile"):
        shutil.copytree(ROOT / part, tmp_path / part, ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    return tmp_path


def test_the_layers_hold_and_every_planted_import_is_found(copy: Path):
    clean = lint(copy)
    assert clean.returncode == 0, clean.stdout
    for path, (statement, contract) in PLANTED.items():
        module = copy / path
        before = module.read_text(encoding="utf-8")
        module.write_text(f"{before}\n{statement}\n", encoding="utf-8")
        found = lint(copy)
        module.write_text(before, encoding="utf-8")
        assert found.returncode != 0, f"{statement} in {path} went unseen"
        assert f"{contract} BROKEN" in found.stdout, found.stdout
