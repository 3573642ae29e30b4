"""The licences of everything the site is made from; served on request, not kept on the phone."""

import shutil
import zipfile
from email import message_from_bytes
from importlib.metadata import distribution
from pathlib import Path

FOLDER = "licences"


def write_licences(engine_notices: Path, wheels: list[Path], out: Path) -> None:
    """Write the engine's notices and those of the Python packages."""
    folder = out / FOLDER
    folder.mkdir()
    shutil.copyfile(engine_notices, folder / "engine.txt")
    parts = [client_licence(), *map(wheel_licence, wheels)]
    (folder / "packages.txt").write_text("\n\n".join(parts), encoding="utf-8")


def client_licence() -> str:
    metadata = distribution("flet-web").metadata
    return (
        f"flet-web {metadata['Version']}\n{metadata['License-Expression'] or metadata['License']}"
    )


def wheel_licence(wheel: Path) -> str:
    """Name, version, licence and licence texts of one wheel."""
    with zipfile.ZipFile(wheel) as archive:
        members = sorted(name for name in archive.namelist() if ".dist-info/" in name)
        metadata = next(name for name in members if name.endswith("/METADATA"))
        described = message_from_bytes(archive.read(metadata))
        texts = [archive.read(name).decode() for name in members if is_licence(name)]
    licence = described["License-Expression"] or described["License"] or ""
    return "\n\n".join([f"{described['Name']} {described['Version']}\n{licence}", *texts])


def is_licence(member: str) -> bool:
    return member.rpartition("/")[2].upper().startswith(("LICEN", "COPYING"))
