"""A real Chromium for the tests: found, else installed, else a line that says what to install."""

import functools
import os
import shutil
import subprocess
import sys

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--enable-unsafe-swiftshader",
    # The browser's own errands, which the recording proxy would otherwise see beside the page's.
    "--disable-extensions",
    "--gaia-url=http://localhost:9/",
    "--component-updater=url-source=http://localhost:9/",
    "--check-for-update-interval=31536000",
)
ADVICE = (
    "No Chromium for the browser tests. Install one: `apt-get install chromium` (Debian, as "
    "root), or `.venv/bin/python -m playwright install chromium`."
)


class NoChromium(Exception):
    """This machine has no Chromium and would not install one."""


@functools.cache
def find() -> str:
    """Path of a Chromium: on the PATH, else Debian's package, else Playwright's own.

    Raises
    ------
    NoChromium
        With what to install.
    """
    path = on_path() or from_debian() or from_playwright()
    if not path:
        raise NoChromium(ADVICE)
    return path


def on_path() -> str | None:
    return next(filter(None, map(shutil.which, NAMES)), None)


def from_debian() -> str | None:
    if not shutil.which("apt-get") or os.geteuid() != 0:
        return None
    quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL, "check": False}
    for command in (["update", "-q"], ["install", "-y", "-q", "chromium"]):
        if subprocess.run(["apt-get", *command], **quiet).returncode:
            return None
    return on_path()


def from_playwright() -> str | None:
    from playwright.sync_api import sync_playwright

    subprocess.run([sys.executable, "-m", "playwright", "install", "chromium"], check=False)
    with sync_playwright() as playwright:
        path = playwright.chromium.executable_path
    return path if os.path.exists(path) else None
