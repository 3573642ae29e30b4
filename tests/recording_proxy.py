"""A proxy that lets a browser reach one origin only and writes down everything it asks for."""

import http.client
import threading
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from types import TracebackType
from typing import Self
from urllib.parse import urlsplit

HOP_BY_HOP = {"connection", "keep-alive", "proxy-connection", "transfer-encoding"}


class RecordingProxy:
    """Proxy for a browser started with `arguments`.

    Parameters
    ----------
    origin
        Scheme, host and port that may be reached; everything else is written down and refused.
    """

    def __init__(self, origin: str) -> None:
        self.origin = origin
        self.asked: list[str] = []
        self._server = ThreadingHTTPServer(("127.0.0.1", 0), self._handler())
        self._thread = threading.Thread(target=self._server.serve_forever)

    @property
    def arguments(self) -> list[str]:
        """Arguments that send a Chromium through this proxy, its own machine included."""
        port = self._server.server_address[1]
        return [f"--proxy-server=http://127.0.0.1:{port}", "--proxy-bypass-list=<-loopback>"]

    def foreign(self) -> list[str]:
        """What was asked for outside our origin."""
        return [url for url in self.asked if not url.startswith(f"{self.origin}/")]

    def paths(self) -> list[str]:
        """What was asked for of our origin."""
        return [urlsplit(url).path for url in self.asked if url.startswith(f"{self.origin}/")]

    def __enter__(self) -> Self:
        self._thread.start()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._server.shutdown()
        self._server.server_close()
        self._thread.join()

    def _handler(self) -> type[BaseHTTPRequestHandler]:
        proxy = self

        class Handler(BaseHTTPRequestHandler):
            def do_CONNECT(self) -> None:
                proxy.asked.append(f"https://{self.path}/")
                self.send_error(502)

            def do_GET(self) -> None:
                proxy.asked.append(self.path)
                if not self.path.startswith(f"{proxy.origin}/"):
                    return self.send_error(502)
                return self.forward()

            def forward(self) -> None:
                url = urlsplit(self.path)
                upstream = http.client.HTTPConnection("127.0.0.1", url.port, timeout=30)
                target = url.path + (f"?{url.query}" if url.query else "")
                kept = {n: v for n, v in self.headers.items() if n.lower() not in HOP_BY_HOP}
                try:
                    upstream.request("GET", target, headers=kept)
                    answer = upstream.getresponse()
                    body = answer.read()
                    self.send_response_only(answer.status, answer.reason)
                    for name, value in answer.getheaders():
                        if name.lower() not in HOP_BY_HOP | {"content-length"}:
                            self.send_header(name, value)
                    self.send_header("Content-Length", str(len(body)))
                    self.end_headers()
                    self.wfile.write(body)
                except OSError:
                    self.close_connection = True
                finally:
                    upstream.close()

            def log_message(self, *_message: object) -> None:
                return None

        return Handler
