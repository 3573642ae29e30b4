"""Reads docstrings the way a person does: which unit a name has, and which source a formula."""

import ast
import re
import typing
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from core import unit_types
from core.unit_types import Unit

ROOT = Path(__file__).resolve().parent.parent
CALC = ROOT / "core" / "calc"
SECTION = re.compile(r"\n(?P<name>[A-Z][A-Za-z ]+)\n-{3,}\n")
ENTRY = re.compile(r"^(?P<names>\w+(?:, \w+)*)\s*$")
UNITS = {
    name: unit.symbol
    for name, kind in vars(unit_types).items()
    if typing.get_origin(kind) is typing.Annotated
    for unit in typing.get_args(kind)[1:]
    if isinstance(unit, Unit)
}
RESULTS = {"Check", "Explained", "Term"}
"""Results that hold numbers and are not declared among the calculations."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Documented:
    """A public function or dataclass, and what it names with a unit.

    Parameters
    ----------
    where
        File and name.
    units
        Unit of each parameter or field that has one.
    returns
        Unit of the result, where it has one.
    formula
        Whether it is a function that gives a number with a unit, or a result that holds some, so
        that it needs a source.
    docstring
        As written, without indentation.
    """

    where: str
    units: dict[str, str]
    returns: str | None
    formula: bool
    docstring: str

    def faults(self) -> Iterator[str]:
        """What the docstring lacks."""
        sections = split(self.docstring)
        if "Parameters" in sections or not self.formula:
            yield from self._entries_without_unit(described(sections.get("Parameters", "")))
        else:
            yield from self._sentence_without_units(sections[""])
        told = sections[""] + sections.get("Returns", "")
        if self.returns and f"[{self.returns}]" not in told:
            yield f"{self.where}: its result is in {self.returns}, which the docstring lacks"
        if self.formula and "Source" not in sections:
            yield f"{self.where}: no Source section"

    def _entries_without_unit(self, entries: dict[str, str]) -> Iterator[str]:
        for name, unit in self.units.items():
            if f"[{unit}]" not in entries.get(name, ""):
                yield f"{self.where}: {name} is in {unit}, and its entry lacks [{unit}]"

    def _sentence_without_units(self, sentence: str) -> Iterator[str]:
        """A short formula may tell its inputs in its first sentence: "of clamp [N], load [N]"."""
        for unit, count in Counter(self.units.values()).items():
            if sentence.count(f"[{unit}]") < count:
                yield f"{self.where}: {count} inputs are in {unit}, and its sentence lacks [{unit}]"


def split(docstring: str) -> dict[str, str]:
    """Text of each section; the text before the first section has no name."""
    parts = SECTION.split(f"\n{docstring}\n")
    return {"": parts[0], **dict(zip(parts[1::2], parts[2::2], strict=True))}


def described(parameters: str) -> dict[str, str]:
    """Text below each name of a Parameters section."""
    entries: dict[str, str] = {}
    names: list[str] = []
    for line in parameters.splitlines():
        head = ENTRY.match(line)
        if head:
            names = head["names"].split(", ")
        for name in names if line.startswith(" ") else ():
            entries[name] = f"{entries.get(name, '')} {line.strip()}"
    return entries


def documented(folder: Path = CALC) -> Iterator[Documented]:
    """Every public function and dataclass of the calculations."""
    nodes = tuple(_public(folder))
    classes = (node for _, node in nodes if isinstance(node, ast.ClassDef))
    results = RESULTS | {node.name for node in classes if _units(_fields(node))}
    for path, node in nodes:
        yield from _documented(path, node, results)


def _public(folder: Path) -> Iterator[tuple[Path, ast.FunctionDef | ast.ClassDef]]:
    for path in sorted(folder.rglob("*.py")):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_"):
                yield path, node


def _documented(
    path: Path, node: ast.FunctionDef | ast.ClassDef, results: set[str]
) -> Iterator[Documented]:
    where = f"{path.relative_to(ROOT)}:{node.name}"
    docstring = ast.get_docstring(node) or ""
    if isinstance(node, ast.FunctionDef):
        yield Documented(
            where=where,
            units=_units((each.arg, each.annotation) for each in _arguments(node)),
            returns=unit_of(node.returns),
            formula=unit_of(node.returns) is not None or bool(named(node.returns) & results),
            docstring=docstring,
        )
    elif any("dataclass" in ast.unparse(each) for each in node.decorator_list):
        yield Documented(
            where=where,
            units=_units(_fields(node)),
            returns=None,
            formula=False,
            docstring=docstring,
        )


def _arguments(node: ast.FunctionDef) -> Iterator[ast.arg]:
    yield from (*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs)


def _fields(node: ast.ClassDef) -> Iterator[tuple[str, ast.expr]]:
    for each in node.body:
        if isinstance(each, ast.AnnAssign) and isinstance(each.target, ast.Name):
            yield each.target.id, each.annotation


def _units(annotations) -> dict[str, str]:
    found = ((name, unit_of(annotation)) for name, annotation in annotations)
    return {name: unit for name, unit in found if unit is not None}


def unit_of(annotation: ast.expr | None) -> str | None:
    """The one unit in an annotation: `Millimetre`, `Sequence[Millimetre]`, `Newton | None`."""
    if annotation is None:
        return None
    units = {UNITS[name] for name in named(annotation) if name in UNITS}
    return units.pop() if len(units) == 1 else None


def named(annotation: ast.expr | None) -> set[str]:
    """Every name in an annotation."""
    nodes = ast.walk(annotation) if annotation else ()
    return {each.id for each in nodes if isinstance(each, ast.Name)}
