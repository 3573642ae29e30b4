"""Hand out a built site with its fixed headers, compressed, on one fixed port."""

import json
import socket
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import uvicorn
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import FileResponse, PlainTextResponse, RedirectResponse, Response
from starlette.routing import Route

from mobile.site.compression import ENDING, copy_of
from mobile.site.media_types import media_type
from mobile.site.precache import LISTING, WORKER

# Ask again each time: the answer is short when nothing changed, and old files are never mixed in.
CACHING = {"Cache-Control": "no-cache", "Vary": "Accept-Encoding"}
HOST = "localhost"


class Site:
    """A built site, answering requests.

    The listing is read with each request: a site that was built anew is served as one.

    Parameters
    ----------
    folder
        What `build_site` wrote.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def listing(self) -> dict[str, Any]:
        """Version, base path, headers and files of the site."""
        listing: dict[str, Any] = json.loads((self.folder / LISTING).read_text())
        return listing

    async def answer(self, request: Request) -> Response:
        """Answer with a file of the site, or say that there is none."""
        if request.url.hostname == "127.0.0.1":
            # Another name is another origin to a browser: an app without its jobs.
            return RedirectResponse(request.url.replace(hostname=HOST))
        listing = self.listing()
        if not request.url.path.startswith(listing["base"]):
            return RedirectResponse(listing["base"])
        name = request.url.path.removeprefix(listing["base"]) or "index.html"
        headers = {**listing["headers"], **CACHING}
        if name in (WORKER, LISTING):
            return self.file(name, headers, request.headers)
        digest = hash_of(name, listing["files"])
        if not digest:
            return PlainTextResponse("Not found", 404, headers)
        headers["ETag"] = f'"{digest}"'
        if request.headers.get("if-none-match") == headers["ETag"]:
            return Response(status_code=304, headers=headers)
        return self.file(name, headers, request.headers)

    def file(self, name: str, headers: dict[str, str], asked: Mapping[str, str]) -> Response:
        packed = copy_of(self.folder / name)
        if packed.exists() and "gzip" in asked.get("accept-encoding", ""):
            headers = {**headers, "Content-Encoding": "gzip"}
            return FileResponse(packed, headers=headers, media_type=media_type(name))
        return FileResponse(self.folder / name, headers=headers, media_type=media_type(name))


def hash_of(name: str, files: dict[str, Any]) -> str | None:
    """Hash of a listed file or of its compressed copy; none for anything else."""
    if name in files:
        return str(files[name]["hash"])
    whole = files.get(name.removesuffix(ENDING), {})
    return whole.get("packed") if name.endswith(ENDING) else None


def application(folder: Path) -> Starlette:
    """Web application that answers with the site in `folder`."""
    site = Site(folder)
    return Starlette(routes=[Route("/{path:path}", site.answer)])


def listen(port: int) -> socket.socket:
    """Take the port.

    Raises
    ------
    OSError
        If another program has it.
    """
    return socket.create_server(("127.0.0.1", port))


def address(folder: Path, port: int) -> str:
    """Address to open."""
    base = Site(folder).listing()["base"]
    return f"http://{HOST}:{port}{base}"


def serve(folder: Path, taken: socket.socket) -> None:
    """Serve until interrupted."""
    config = uvicorn.Config(application(folder), log_level="warning", server_header=False)
    uvicorn.Server(config).run(sockets=[taken])
