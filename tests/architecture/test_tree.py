"""The tree as it must be: top level, imports, size of functions, texts, dependencies."""

import ast
import re
import statistics
import subprocess
import tomllib
from collections.abc import Iterator
from itertools import chain
from pathlib import Path

import core
import mobile
from core.texts.en import TEXTS
from tests.docstrings import ROOT

TOP = {
    "README.md", "DEVELOPERS.md", "pyproject.toml", "mobile", "core", "assets", "tests",
}  # fmt: skip
LONGEST = 60
AREA = re.compile(r"[a-z_]+")
KEY = re.compile(r"[a-z_]+(?:\.[a-z0-9_-]+)+")
AWAITED: tuple[str, ...] = ()
"""Areas whose texts wait for a command or a screen; one that is all in use leaves this list."""


def tracked() -> list[str]:
    listed = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True
    )
    return listed.stdout.splitlines()


def modules() -> Iterator[tuple[Path, ast.Module]]:
    for part in ("core", "mobile"):
        for path in sorted((ROOT / part).rglob("*.py")):
            yield path, ast.parse(path.read_text(encoding="utf-8"))


def test_the_top_level_is_as_given_and_stays_so():
    assert {each.name for each in ROOT.iterdir() if not each.name.startswith(".")} == TOP


def test_tests_are_no_packages():
    assert not list((ROOT / "tests").rglob("__init__.py"))


def test_what_is_tested_is_this_tree():
    for package in (core, mobile):
        assert Path(package.__file__).parent.parent == ROOT


def test_no_function_is_long(record_property):
    sizes = {
        f"{path.relative_to(ROOT)}:{node.name}": lines(node)
        for path, tree in modules()
        for node in ast.walk(tree)
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
    }
    longest = max(sizes, key=sizes.__getitem__)
    median = statistics.median(sizes.values())
    record_property("function length", f"median {median:g}, longest {sizes[longest]} ({longest})")
    assert sizes[longest] <= LONGEST, f"{longest} has {sizes[longest]} lines"
    assert median <= 8


def lines(node: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """Lines of the body, its docstring left out."""
    body = node.body[1:] if ast.get_docstring(node) else node.body
    return body[-1].end_lineno - body[0].lineno + 1 if body else 0


def test_every_dependency_has_its_reason():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    wanted = chain(project["dependencies"], *project["optional-dependencies"].values())
    reasons = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    table = {row.split("|")[1].strip() for row in reasons.splitlines() if row.startswith("| ")}
    names = {re.split(r"[<>=\[; ]", each)[0] for each in wanted}
    assert not names - table, "DEVELOPERS.md tells no reason for these"


def literals() -> tuple[set[str], set[str]]:
    """Every string in the code, and every text key that is put together, as a pattern."""
    strings, patterns = set(), set()
    for path, tree in modules():
        if path.is_relative_to(ROOT / "core" / "texts"):
            continue
        joined = [node for node in ast.walk(tree) if isinstance(node, ast.JoinedStr)]
        patterns.update(map(pattern, joined))
        pieces = {part for node in joined for part in node.values}
        strings.update(
            node.value
            for node in ast.walk(tree)
            if isinstance(node, ast.Constant) and isinstance(node.value, str)
            if node not in pieces
        )
    for template in sorted((ROOT / "core" / "report").glob("*.html")):
        in_template(template.read_text(encoding="utf-8"), strings, patterns)
    return strings, {each for each in patterns if AREA.match(each) and r"\." in each}


def in_template(page: str, strings: set[str], patterns: set[str]) -> None:
    """The same for a template: texts in quotes, and those that are put together with ``~``."""
    strings.update(re.findall(rf"""["']({KEY.pattern})["']""", page))
    begun = re.findall(r'text\(["\']([a-z_.-]+\.)["\'] ~', page)
    patterns.update(f"{re.escape(each)}.+" for each in begun)


def pattern(node: ast.JoinedStr) -> str:
    return "".join(
        re.escape(part.value) if isinstance(part, ast.Constant) else ".+" for part in node.values
    )


def test_every_text_is_used_and_every_key_has_a_text():
    strings, patterns = literals()
    web = "".join(path.read_text() for path in (ROOT / "mobile" / "site" / "web").iterdir())
    unused = {
        key
        for key in TEXTS
        if key not in strings
        and not any(re.fullmatch(each, key) for each in patterns)
        and not (key.startswith("site.") and key.removeprefix("site.") in web)
    }
    waiting = {area for area in AWAITED if any(key.startswith(area) for key in unused)}
    assert {key for key in unused if not key.startswith(AWAITED)} == set()
    assert waiting == set(AWAITED), "every text of these is used: take them off the list AWAITED"
    areas = {key.split(".")[0] for key in TEXTS}
    keys = {each for each in strings if KEY.fullmatch(each) and each.split(".")[0] in areas}
    assert {each for each in keys - set(TEXTS) if not each.endswith(".json")} == set()


def test_nothing_of_the_machine_or_the_workshop_is_committed():
    words = ("/wo" + "rk/", "check" + "-values", "/tm" + "p/spike")
    for name in tracked():
        path = ROOT / name
        if path.suffix in {".py", ".md", ".toml", ".html", ".js", ".css", ".txt"}:
            written = path.read_text(encoding="utf-8") if path.exists() else ""
            assert not [word for word in words if word in written], name
