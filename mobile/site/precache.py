"""Every file of a build with its hash, and the service worker that keeps exactly these."""

import hashlib
import json
from base64 import b64encode
from pathlib import Path

from mobile.site import policy
from mobile.site.compression import ENDING, copy_of
from mobile.site.licences import FOLDER
from mobile.site.media_types import media_type
from mobile.site.places import WEB

WORKER = "service-worker.js"
LISTING = "site.json"
# Listed and served, not kept on the phone.
ONLY_ON_REQUEST = (f"{FOLDER}/", "screenshots/")
PLACEHOLDER = "/* the build's listing */ null"


def write_service_worker(out: Path, base: str, made_from: str) -> None:
    """List the files of `out`, and write the listing and the worker beside them."""
    files = {name: describe(out / name, name) for name in names(out)}
    listing = {
        "version": version(files),
        "base": base,
        "made_from": made_from,
        "headers": policy.headers(),
        "files": files,
    }
    (out / LISTING).write_text(json.dumps(listing, indent=1))
    kept = {key: listing[key] for key in ("version", "headers", "files")}
    worker = (WEB / WORKER).read_text(encoding="utf-8")
    (out / WORKER).write_text(worker.replace(PLACEHOLDER, json.dumps(kept)), encoding="utf-8")


def names(out: Path) -> list[str]:
    files = [path for path in out.rglob("*") if path.is_file() and path.suffix != ENDING]
    return sorted(path.relative_to(out).as_posix() for path in files)


def describe(path: Path, name: str) -> dict[str, object]:
    return {
        "hash": integrity(path),
        "packed": integrity(copy_of(path)) if copy_of(path).exists() else None,
        "type": media_type(name),
        "size": path.stat().st_size,
        "kept": not name.startswith(ONLY_ON_REQUEST),
    }


def integrity(path: Path) -> str:
    """Hash of a file, in the words of Subresource Integrity."""
    return f"sha256-{b64encode(hashlib.sha256(path.read_bytes()).digest()).decode()}"


def version(files: dict[str, dict[str, object]]) -> str:
    """Short name of a build: the hash of the hashes of its files."""
    return hashlib.sha256(json.dumps(files, sort_keys=True).encode()).hexdigest()[:12]
