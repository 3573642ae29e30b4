"""The archives of Python modules: our own code, the wheels beside it, the standard library.

None holds a requirements.txt or pyproject.toml: nothing is left to install on the phone. Our own
code stands in an archive of its own, so that a new version fetches that one and no package again.
"""

import zipfile
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path, PurePosixPath

from mobile.site.places import ROOT

HERE = Path(__file__).resolve().parent
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
    "jinja2/ext.py",
    "jinja2/nativetypes.py",
    "jinja2/sandbox.py",
    "markupsafe/_speedups.c",
    "markupsafe/_speedups.cpython-314-x86_64-linux-gnu.so",
    "pint/matplotlib.py",
    "pint/testing.py",
    "pint/testsuite",
    "platformdirs/__main__.py",
    "platformdirs/_android.py",
    "platformdirs/android.py",
    "platformdirs/ios.py",
    "platformdirs/macos.py",
    "platformdirs/pytest_plugin.py",
    "platformdirs/testing.py",
    "platformdirs/windows.py",
    "segno/cli.py",
    "segno/helpers.py",
    "tinydb/mypy_plugin.py",
    "typing_extensions.py",  # asked for by older versions of Python only
    "uncertainties/unumpy",
)
# Parts of the standard library that need what a browser lacks (processes, sockets, terminals),
# that serve developers at a desk, or whose work a compiled module does.
LIBRARY_PARTS_LEFT_OUT = tuple((HERE / "library_left_out.txt").read_text().split())
# Of these packages only the modules named here are kept: no text in another encoding ever reaches
# the app.
KEPT_OF = {
    "encodings": (
        "__init__",
        "aliases",
        "ascii",
        "cp437",
        "idna",
        "latin_1",
        "punycode",
        "unicode_escape",
        "utf_8",
    ),
}
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
    if path.parts[0] in KEPT_OF:
        return path.with_suffix("").parts[1:] in [(module,) for module in KEPT_OF[path.parts[0]]]
    return not under(name, LIBRARY_PARTS_LEFT_OUT)


def members(archive_path: Path, wanted: Callable[[str], bool]) -> dict[str, bytes]:
    with zipfile.ZipFile(archive_path) as archive:
        names = [name for name in archive.namelist() if not name.endswith("/") and wanted(name)]
        return {name: archive.read(name) for name in names}


def under(name: str, places: tuple[str, ...]) -> bool:
    return any(name == place or name.startswith(f"{place}/") for place in places)
