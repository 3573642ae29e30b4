"""Build the site: one folder that any static host can serve over https."""

import hashlib
import json
import shutil
from pathlib import Path

from flet_web import get_package_web_dir, version

from mobile.site.archive import own_files
from mobile.site.client import write_client
from mobile.site.compression import compress, pack
from mobile.site.licences import write_licences
from mobile.site.pages import write_pages
from mobile.site.places import ASSETS, LOCKS, ROOT, WEB
from mobile.site.precache import LISTING, WORKER, write_service_worker
from mobile.site.runtime import write_runtime
from mobile.site.wheels import fetch_wheels


def build_site(out: Path, base: str = "/") -> None:
    """Build the site into `out`, which is replaced as a whole when everything is there.

    Raises
    ------
    BuildError
        If a package cannot be fetched or a part is not the one this build knows.
    """
    part = out.with_name(f"{out.name}.part")
    shutil.rmtree(part, ignore_errors=True)
    part.mkdir(parents=True)
    client = Path(get_package_web_dir())
    wheels = fetch_wheels()
    write_client(client, part)
    write_runtime(client / "pyodide", wheels, part)
    write_licences(client / "assets" / "NOTICES", wheels, part)
    write_pages(part, normal_base(base))
    compress(part)
    write_service_worker(part, normal_base(base), made_from())
    pack(part / WORKER)
    replace_folder(out, part)


def replace_folder(out: Path, part: Path) -> None:
    old = out.with_name(f"{out.name}.old")
    shutil.rmtree(old, ignore_errors=True)
    if out.exists():
        out.rename(old)
    part.rename(out)
    shutil.rmtree(old, ignore_errors=True)


def normal_base(base: str) -> str:
    """Base path with a slash at both ends."""
    inner = base.strip().strip("/")
    return f"/{inner}/" if inner else "/"


def made_from() -> str:
    """Hash of everything a build is made from."""
    total = hashlib.sha256(version.version.encode())
    for name, content in sorted({**own_files(), **site_files()}.items()):
        total.update(f"{name}\0{len(content)}\0".encode() + content)
    return total.hexdigest()


def site_files() -> dict[str, bytes]:
    paths = [*WEB.parent.rglob("*"), *ASSETS.rglob("*"), LOCKS / "phone.txt"]
    return {
        path.relative_to(ROOT).as_posix(): path.read_bytes()
        for path in paths
        if path.is_file() and "__pycache__" not in path.parts
    }


def is_current(out: Path) -> bool:
    """Was this folder built from what stands here now?"""
    listing = out / LISTING
    return listing.exists() and json.loads(listing.read_text())["made_from"] == made_from()
