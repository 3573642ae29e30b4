"""The phone's Python packages, by the locked hashes, from the package index."""

import hashlib
import subprocess
import sys
from pathlib import Path

from mobile.site.failure import BuildError
from mobile.site.places import LOCKS, WHEELS

# What Python the browser runs (PEP 783 names the platform).
PYTHON = "3.14"
ABI = "cp314"
PLATFORM = "pyemscripten_2026_0_wasm32"
# markupsafe has no wheel for the browser. Any wheel of it holds a pure Python fallback, which runs
# once the compiled part is left out (`mobile.site.archive`).
ALSO_TAKEN_FROM = "manylinux_2_17_x86_64"


def fetch_wheels() -> list[Path]:
    """Wheels of `phone.txt`, taken from the cache where it holds all of them."""
    cache = WHEELS / fingerprint()
    if not cache.exists():
        download(cache)
    return sorted(cache.glob("*.whl"))


def fingerprint() -> str:
    return hashlib.sha256((LOCKS / "phone.txt").read_bytes()).hexdigest()[:16]


def download(into: Path) -> None:
    part = into.with_suffix(".part")
    command = [sys.executable, "-m", "pip", "download", "--quiet", "--disable-pip-version-check"]
    command += ["--require-hashes", "--no-deps", "--only-binary=:all:", "--implementation", "cp"]
    command += [
        "--python-version",
        PYTHON,
        "--abi",
        f"cp{PYTHON.replace('.', '')}",
        "--abi",
        "none",
    ]
    command += ["--platform", PLATFORM, "--platform", ALSO_TAKEN_FROM]
    command += ["-r", str(LOCKS / "phone.txt"), "-d", str(part)]
    if subprocess.run(command, check=False, stderr=subprocess.PIPE).returncode:
        raise BuildError("Could not fetch the phone's packages: is there a network?")
    part.rename(into)
