"""Makes the project's own virtual environment; standard library only.

Both `python3 mobile` and `python3 tests` start here on a machine with nothing installed.
"""

import hashlib
import os
import shutil
import subprocess
import sys
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
LOCK = ROOT / "mobile" / "locks" / "desktop.txt"
HOME = ROOT / ".venv"
STAMP = HOME / "lock.sha256"
OLDEST_PYTHON = (3, 11)


def restart_inside(module: str, arguments: list[str]) -> None:
    """Replace this process by `module`, run in the project's environment."""
    if sys.version_info < OLDEST_PYTHON:
        sys.exit("standproud needs Python 3.11 or newer.")
    ensure()
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    command = [str(python()), "-m", module, *arguments]
    if os.name == "nt":
        sys.exit(subprocess.run(command, env=environment, check=False).returncode)
    os.execve(command[0], command, environment)


def python() -> Path:
    """Path of the environment's interpreter."""
    return HOME / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def ensure() -> None:
    """Make the environment if it is absent or was made from another lock."""
    wanted = fingerprint()
    if STAMP.exists() and STAMP.read_text() == wanted and python().exists():
        return
    say("Setting up .venv (once; about a minute) …")
    shutil.rmtree(HOME, ignore_errors=True)
    create()
    say("Installing the locked packages …")
    install("pip", only_pip_lock())
    install("packages", LOCK)
    STAMP.write_text(wanted)
    say("Ready.")


def fingerprint() -> str:
    """Hash of what the environment is made from."""
    made_from = LOCK.read_bytes() + sys.version.encode() + str(ROOT).encode()
    return hashlib.sha256(made_from).hexdigest()


def create() -> None:
    try:
        venv.create(HOME, with_pip=True, symlinks=os.name != "nt")
    except subprocess.CalledProcessError:
        shutil.rmtree(HOME, ignore_errors=True)
        version = ".".join(map(str, sys.version_info[:2]))
        sys.exit(
            "This Python cannot make virtual environments: install the package "
            f"python{version}-venv (Debian, Ubuntu) and start again."
        )


def only_pip_lock() -> Path:
    """Write the lock's own entry for pip into a file: pip comes first, then fetches the rest."""
    entries = LOCK.read_text().replace("\\\n", " ").splitlines()
    path = HOME / "pip.txt"
    path.write_text(next(entry for entry in entries if entry.startswith("pip==")) + "\n")
    return path


def install(what: str, requirements: Path) -> None:
    command = [str(python()), "-m", "pip", "install", "--quiet", "--require-hashes", "--no-deps"]
    command += ["--only-binary=:all:", "--disable-pip-version-check", "-r", str(requirements)]
    if subprocess.run(command, check=False).returncode:
        shutil.rmtree(HOME, ignore_errors=True)
        sys.exit(f"Could not install {what}: is there a network, and is the clock right?")


def say(line: str) -> None:
    print(line, file=sys.stderr, flush=True)
