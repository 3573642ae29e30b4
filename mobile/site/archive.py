"""The archives of Python modules: our own code, the wheels beside it, the standard library.

None holds a requirements.txt or pyproject.toml: nothing is left to install on the phone. Our own
code stands in an archive of its own, so that a new version fetches that one and no package again.
"""

import zipfile
from collections.abc import Callable, Iterator, Mapping
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
)
# Modules of the wheels that nothing on a phone imports.
WHEEL_PARTS_LEFT_OUT = (
    "flet/auth/providers",
    "flet/cli.py",
    "flet/fastapi",
    "flet/messaging/flet_dart_bridge_server.py",
    "flet/messaging/flet_socket_server.py",
    "flet/pytest_plugin.py",
    "flet/testing",
    "flexcache/testsuite",
    "flexparser/testsuite",
    "pint/testsuite",
    "pint/testing.py",
    "platformdirs/testing.py",
    "uncertainties/unumpy",
)
# Parts of the standard library that need what a browser lacks (processes, sockets, terminals) or
# that serve developers at a desk.
LIBRARY_PARTS_LEFT_OUT = (
    "_pyrepl",
    "bdb.py",
    "cProfile.py",
    "code.py",
    "compileall.py",
    "ctypes",
    "curses",
    "dbm",
    "doctest.py",
    "ensurepip",
    "ftplib.py",
    "http",
    "idlelib",
    "imaplib.py",
    "mailbox.py",
    "modulefinder.py",
    "multiprocessing",
    "optparse.py",
    "pdb.py",
    "pickletools.py",
    "poplib.py",
    "profile.py",
    "profiling",
    "pstats.py",
    "pyclbr.py",
    "pydoc.py",
    "pydoc_data",
    "smtplib.py",
    "socketserver.py",
    "sqlite3",
    "symtable.py",
    "tabnanny.py",
    "tarfile.py",
    "test",
    "tkinter",
    "trace.py",
    "turtle.py",
    "turtledemo",
    "unittest",
    "venv",
    "wave.py",
    "webbrowser.py",
    "wsgiref",
    "xml",
    "xmlrpc",
    "zipapp.py",
)
# Text of other encodings than these never reaches the app.
ENCODINGS = ("__init__", "aliases", "ascii", "cp437", "idna", "latin_1", "punycode", "utf_8")
# One fixed time in every entry: the same sources give the same bytes.
TIME = (2026, 1, 1, 0, 0, 0)


def write_archive(path: Path, files: Mapping[str, bytes]) -> None:
    """Write files into an archive, always the same way."""
    with zipfile.ZipFile(path, "w") as archive:
        for name, content in sorted(files.items()):
            archive.writestr(zipfile.ZipInfo(name, TIME), content)


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
        found.update(members(wheel, in_wheel))
    return found


def in_wheel(name: str) -> bool:
    top = PurePosixPath(name).parts[0]
    if top.endswith((".dist-info", ".data")) or PurePosixPath(name).suffix == ".pyi":
        return False
    return not under(name, WHEEL_PARTS_LEFT_OUT)


def library_files(library: Path) -> dict[str, bytes]:
    """Modules of the standard library, by their name in the archive."""
    return members(library, in_library)


def in_library(name: str) -> bool:
    path = PurePosixPath(name)
    if path.parts[0] == "encodings":
        return path.stem in ENCODINGS
    return not under(name, LIBRARY_PARTS_LEFT_OUT)


def members(archive_path: Path, wanted: Callable[[str], bool]) -> dict[str, bytes]:
    with zipfile.ZipFile(archive_path) as archive:
        names = [name for name in archive.namelist() if not name.endswith("/") and wanted(name)]
        return {name: archive.read(name) for name in names}


def under(name: str, places: tuple[str, ...]) -> bool:
    return any(name == place or name.startswith(f"{place}/") for place in places)
