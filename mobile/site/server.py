"""Hand out a built site with its fixed headers, compressed, on one fixed port."""

import json
import socket
from collections.abc import Mapping
from pathlib import Path

import uvicorn
from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from mobile.site.media_types import media_type
from mobile.site.precache import LISTING, WORKER

# Ask again each time: the answer is short when nothing changed, and old files are never mixed in.
CACHING = {"Cache-Control": "no-cache", "Vary": "Accept-Encoding"}
HOST = "localhost"


class Site:
    """A built site, answering requests.

    Parameters
    ----------
    folder
        What `build_site` wrote.
    """

    def __init__(self, folder: Path) -> None:
        listing = json.loads((folder / LISTING).read_text())
        self.folder = folder
        self.base: str = listing["base"]
        self.headers: dict[str, str] = listing["headers"]
        self.etags = {name: f'"{file["hash"]}"' for name, file in listing["files"].items()}

    async def answer(self, request: Request) -> Response:
        """Answer with a file of the site, or say that there is none."""
        if request.url.hostname == "127.0.0.1":
            # Another name is another origin to a browser: an app without its jobs.
            return RedirectResponse(request.url.replace(hostname=HOST))
        path = request.url.path
        if not path.startswith(self.base):
            return RedirectResponse(self.base)
        name = path.removeprefix(self.base) or "index.html"
        if name not in self.etags and name not in (WORKER, LISTING):
            raise HTTPException(404, headers=self.headers)
        return self.file(name, request.headers)

    def file(self, name: str, asked: Mapping[str, str]) -> Response:
        headers = {**self.headers, **CACHING, "Content-Type": media_type(name)}
        if name in self.etags:
            headers["ETag"] = self.etags[name]
            if asked.get("if-none-match") == self.etags[name]:
                return Response(status_code=304, headers=headers)
        packed = self.folder / f"{name}.gz"
        if packed.exists() and "gzip" in asked.get("accept-encoding", ""):
            return Response(packed.read_bytes(), headers={**headers, "Content-Encoding": "gzip"})
        return Response((self.folder / name).read_bytes(), headers=headers)


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
    return f"http://{HOST}:{port}{Site(folder).base}"


def serve(folder: Path, taken: socket.socket) -> None:
    """Serve until interrupted."""
    config = uvicorn.Config(application(folder), log_level="warning", server_header=False)
    uvicorn.Server(config).run(sockets=[taken])
