"""`python3 mobile check …` is the same program, from any folder, with a space in the path."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.shell import EXAMPLE, ROOT, answer

STAMP = "import sys; sys.path.insert(0, sys.argv[1]); from mobile import environment as e; "
STAMP += "e.STAMP.write_text(e.fingerprint())"


@pytest.fixture(scope="module")
def copy(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The tree of `core` and `mobile` in a folder with a space, its environment already made.

    The environment has its own stamp and borrows the packages of this one, which nothing writes to.
    """
    tree = tmp_path_factory.mktemp("engine stand") / "stand proud"
    for part in ("core", "mobile"):
        shutil.copytree(ROOT / part, tree / part, ignore=shutil.ignore_patterns("__pycache__"))
    venv, ours = tree / ".venv", Path(sys.prefix)
    venv.mkdir()
    shutil.copy(ours / "pyvenv.cfg", venv)
    (venv / "lib").symlink_to(ours / "lib", target_is_directory=True)
    (venv / "bin").mkdir()
    (venv / "bin" / "python").symlink_to(Path(sys.executable).resolve())
    subprocess.run([sys.executable, "-c", STAMP, str(tree)], check=True)
    return tree


def start(tree: Path, *arguments: str, folder: Path) -> subprocess.CompletedProcess[str]:
    bare = {key: value for key, value in os.environ.items() if key != "PYTHONPATH"}
    command = [sys.executable, str(tree / "mobile"), *arguments]
    return subprocess.run(
        command, cwd=folder, env=bare, capture_output=True, text=True, check=False
    )


def test_the_example_gives_the_same_answer(copy: Path, tmp_path: Path):
    done = start(copy, *EXAMPLE, "--json", folder=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert json.loads(done.stdout) == answer(*EXAMPLE)


def test_it_is_the_copy_that_ran(copy: Path, tmp_path: Path):
    texts = copy / "core" / "texts" / "en" / "check.py"
    texts.write_text(texts.read_text().replace("Run the {sheet}.", "Use the {sheet}."))
    assert "Use the 50." in start(copy, *EXAMPLE, folder=tmp_path).stdout


def test_bad_input_is_one_line_there_too(copy: Path, tmp_path: Path):
    done = start(copy, "check", "--go", "nan", folder=tmp_path)
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.startswith("standproud check: --go:")
    assert done.stderr.count("\n") == 1


def test_nothing_is_left_behind(copy: Path, tmp_path: Path):
    start(copy, *EXAMPLE, folder=tmp_path)
    assert list(tmp_path.iterdir()) == []
    assert {each.name for each in copy.iterdir()} == {".venv", "core", "mobile"}
