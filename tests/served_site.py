"""Real builds of the site, and our own server beside the tests."""

import atexit
import contextlib
import functools
import os
import shutil
import socket
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
COPIED = ("assets", "core", "mobile")
WHEELS = Path(".build") / "wheels"
LEFT_BEHIND = shutil.ignore_patterns("__pycache__")


def place_of_this_run() -> Path:
    """A new folder that goes when the tests end."""
    place = Path(tempfile.mkdtemp(prefix="standproud-"))
    atexit.register(shutil.rmtree, place, ignore_errors=True)
    return place


def standproud(*arguments: str) -> list[str]:
    return [sys.executable, "-m", "mobile.program", *arguments]


def environment(root: Path) -> dict[str, str]:
    return {**os.environ, "PYTHONPATH": str(root)}


@functools.cache
def frozen() -> Path:
    """A copy of this tree, so that all builds of one run are made from the same sources."""
    copy = place_of_this_run() / "tree"
    copy_tree(ROOT, copy)
    return copy


def copy_tree(source: Path, copy: Path) -> None:
    for name in (*COPIED, str(WHEELS)):
        if (source / name).exists():
            shutil.copytree(source / name, copy / name, ignore=LEFT_BEHIND)


@functools.cache
def built(base: str = "/") -> Path:
    """A build of this tree, made once in a run of the tests."""
    folder = place_of_this_run() / "site"
    build(folder, base=base)
    return folder


def build(folder: Path, *, root: Path | None = None, base: str = "/") -> None:
    root = root or frozen()
    command = standproud("build", "--out", str(folder), "--base", base)
    ran = subprocess.run(
        command, check=False, cwd=root, env=environment(root), capture_output=True, text=True
    )
    assert ran.returncode == 0, ran.stderr


def built_from_changed_sources(folder: Path, *, file: str, old: str, new: str) -> None:
    """Build a copy of this tree in which one text was replaced."""
    with tempfile.TemporaryDirectory() as place:
        copy = Path(place) / "tree"
        copy_tree(frozen(), copy)
        changed = copy / file
        assert old in changed.read_text()
        changed.write_text(changed.read_text().replace(old, new))
        build(folder, root=copy)


@contextlib.contextmanager
def served(folder: Path, port: int | None = None) -> Iterator[str]:
    """Our server on a folder; gives the address without the base path."""
    port = port or free_port()
    command = standproud("serve", "--site", str(folder), "--port", str(port))
    server = subprocess.Popen(
        command, cwd=ROOT, env=environment(ROOT), stdout=subprocess.PIPE, text=True
    )
    try:
        assert server.stdout is not None
        assert "http" in server.stdout.readline()
        wait_until_open(port)
        yield f"http://localhost:{port}"
    finally:
        server.terminate()
        server.wait(10)
        server.stdout.close()


def free_port() -> int:
    with socket.create_server(("127.0.0.1", 0)) as listener:
        return int(listener.getsockname()[1])


def wait_until_open(port: int) -> None:
    for _ in range(200):
        with contextlib.suppress(OSError), socket.create_connection(("127.0.0.1", port), 1):
            return
        time.sleep(0.05)
    raise TimeoutError(f"nothing answers on port {port}")
