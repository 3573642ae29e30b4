"""Our server in a thread, counting what it sends."""

import contextlib
import threading
import time
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import uvicorn

from mobile.site.server import application, listen
from tests.served_site import free_port


class Counting:
    """An application that counts the bytes of each answer's body, as sent."""

    def __init__(self, folder: Path) -> None:
        self._application = application(folder)
        self.sent: Counter[str] = Counter()

    async def __call__(self, scope: Any, receive: Any, send: Any) -> None:
        async def count(message: Any) -> None:
            self.sent[scope["path"]] += len(message.get("body", b""))
            await send(message)

        await self._application(scope, receive, count if scope["type"] == "http" else send)


@contextlib.contextmanager
def counting(folder: Path) -> Iterator[tuple[str, Counter[str]]]:
    """Serve a site; gives its origin and the bytes sent, by path."""
    port = free_port()
    counted = Counting(folder)
    config = uvicorn.Config(counted, log_level="error", lifespan="off")
    server = uvicorn.Server(config)
    thread = threading.Thread(target=server.run, kwargs={"sockets": [listen(port)]})
    thread.start()
    while not server.started:
        time.sleep(0.02)
    try:
        yield f"http://localhost:{port}", counted.sent
    finally:
        server.should_exit = True
        thread.join()
