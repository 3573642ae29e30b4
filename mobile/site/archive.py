"""The app archive: our own code, and the wheels unpacked beside it.

It holds no requirements.txt and no pyproject.toml: there is nothing left to install on the phone.
"""

import zipfile
from collections.abc import Iterator
from pathlib import Path, PurePosixPath

from mobile.site.places import ROOT

SHIPPED = ("core", "mobile")
STAYS_HOME = (
    "core/command",
    "core/hub",
    "mobile/__main__.py",
    "mobile/environment.py",
    "mobile/locks",
    "mobile/program.py",
    "mobile/site",
    "mobile/testing.py",
)
PACKAGES = "__pypackages__"
# Modules of the wheels that nothing on a phone imports.
NEVER_IMPORTED = (
    "flet/cli.py",
    "flet/fastapi",
    "flet/pytest_plugin.py",
    "flet/testing",
    "pint/testsuite",
    "pint/testing.py",
)
# One fixed time in every entry: the same sources give the same bytes.
TIME = (2026, 1, 1, 0, 0, 0)


def write_archive(path: Path, wheels: list[Path]) -> None:
    """Write the archive the Python worker unpacks."""
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as archive:
        for name, content in sorted({**own_files(), **wheel_files(wheels)}.items()):
            entry = zipfile.ZipInfo(name, TIME)
            entry.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(entry, content)


def own_files() -> dict[str, bytes]:
    """Our own files that a phone needs, by their name in the archive."""
    return {name: (ROOT / name).read_bytes() for name in own_names()}


def own_names() -> Iterator[str]:
    for package in SHIPPED:
        for path in (ROOT / package).rglob("*"):
            name = path.relative_to(ROOT).as_posix()
            if path.is_file() and "__pycache__" not in name and not under(name, STAYS_HOME):
                yield name


def wheel_files(wheels: list[Path]) -> dict[str, bytes]:
    """Modules and data of the wheels, by their name in the archive."""
    found: dict[str, bytes] = {}
    for wheel in wheels:
        with zipfile.ZipFile(wheel) as archive:
            for name in filter(needed, archive.namelist()):
                found[f"{PACKAGES}/{name}"] = archive.read(name)
    return found


def needed(name: str) -> bool:
    """Is this file of a wheel imported or read by a running app?"""
    top = PurePosixPath(name).parts[0]
    if name.endswith("/") or top.endswith((".dist-info", ".data")):
        return False
    return PurePosixPath(name).suffix != ".pyi" and not under(name, NEVER_IMPORTED)


def under(name: str, places: tuple[str, ...]) -> bool:
    return any(name == place or name.startswith(f"{place}/") for place in places)
