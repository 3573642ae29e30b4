"""The media type of every kind of file in the site; the system's own registry is not asked."""

from pathlib import PurePosixPath

from mobile.site.failure import BuildError

MEDIA_TYPES = {
    ".bin": "application/octet-stream",
    ".css": "text/css; charset=utf-8",
    ".frag": "text/plain; charset=utf-8",
    ".gz": "application/gzip",
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".mjs": "text/javascript; charset=utf-8",
    ".otf": "font/otf",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".ttf": "font/ttf",
    ".txt": "text/plain; charset=utf-8",
    ".wasm": "application/wasm",
    ".webmanifest": "application/manifest+json",
    ".woff2": "font/woff2",
    ".zip": "application/zip",
}


def media_type(path: str) -> str:
    """Media type of a file of the site.

    Raises
    ------
    BuildError
        If the table has no such ending.
    """
    ending = PurePosixPath(path).suffix
    if ending not in MEDIA_TYPES:
        raise BuildError(f"{path}: no media type is known for {ending or 'no ending'}.")
    return MEDIA_TYPES[ending]
