"""A gzip copy beside each file that gets smaller by it.

Our server sends the copy in place of the file. The service worker asks for the copy by its name
and unpacks it, so that a first visit is as small from a host that compresses nothing.
"""

import gzip
from pathlib import Path

ENDING = ".gz"
# Already packed inside: gzip would only add bytes.
PACKED_INSIDE = {".png", ".woff2"}
BEST = 9


def compress(out: Path) -> None:
    """Write the copies, the same bytes each time."""
    for path in sorted(out.rglob("*")):
        if path.is_file() and path.suffix not in PACKED_INSIDE:
            pack(path)


def pack(path: Path) -> None:
    """Write the copy of one file."""
    copy_of(path).write_bytes(gzip.compress(path.read_bytes(), BEST, mtime=0))


def copy_of(path: Path) -> Path:
    """Where the copy of a file stands."""
    return path.with_name(path.name + ENDING)
