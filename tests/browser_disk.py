"""A real Chromium whose Python worker keeps the book on the browser's disk, without screens.

One page, one worker: Pyodide as the site ships it, our sources, TinyDB. `run` executes Python in
the worker and gives back what its last line is worth, as JSON.
"""

import contextlib
import functools
import io
import json
import os
import signal
import tempfile
import threading
import zipfile
from collections.abc import Callable, Iterator
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from importlib.util import find_spec
from pathlib import Path
from typing import Any

from playwright.sync_api import Error, Page, Playwright

from tests.chromium import FLAGS, find

ROOT = Path(__file__).resolve().parent.parent
ALSO_SHIPPED = ("ffi.d.ts", "pyodide-lock.json", "python_stdlib.zip")
PAGE = """<!doctype html><meta charset="utf-8"><script>
const worker = new Worker("worker.mjs", {type: "module"});
const waiting = new Map();
let number = 0;
worker.onmessage = ({data}) => {
  if (data.said !== undefined) return window.said(data.said);
  const {resolve, reject} = waiting.get(data.number);
  waiting.delete(data.number);
  data.error ? reject(new Error(data.error)) : resolve(data.result);
};
window.run = code => new Promise((resolve, reject) => {
  waiting.set(++number, {resolve, reject});
  worker.postMessage({number, code});
});
</script>"""
WORKER = """
import {loadPyodide} from "./pyodide/pyodide.mjs";
const ready = (async () => {
  const python = await loadPyodide({indexURL: "./pyodide/"});
  const sources = await (await fetch("sources.zip")).arrayBuffer();
  python.unpackArchive(sources, "zip", {extractDir: "/sources"});
  python.runPython("import sys; sys.path.insert(0, '/sources')");
  return python;
})();
self.say = words => self.postMessage({said: words});
self.onmessage = async ({data: {number, code}}) => {
  try {
    const result = await (await ready).runPythonAsync(code);
    self.postMessage({number, result: result === undefined ? "null" : String(result)});
  } catch (error) {
    self.postMessage({number, error: String(error)});
  }
};
"""


@functools.cache
def folder() -> Path:
    """Folder with the page, made once in a run."""
    place = Path(tempfile.mkdtemp(prefix="standproud-disk-"))
    spec = find_spec("flet_web")
    shipped = Path(str(spec.origin)).parent / "web" / "pyodide"
    (place / "pyodide").mkdir()
    for file in shipped.iterdir():
        if file.suffix in (".mjs", ".wasm", ".zip", ".json"):
            (place / "pyodide" / file.name).symlink_to(file)
    (place / "index.html").write_text(PAGE)
    (place / "worker.mjs").write_text(WORKER)
    (place / "sources.zip").write_bytes(sources())
    return place


def sources() -> bytes:
    packed = io.BytesIO()
    tinydb = Path(str(find_spec("tinydb").origin)).parent
    with zipfile.ZipFile(packed, "w") as archive:
        for top in (ROOT / "core", tinydb):
            for file in sorted(top.rglob("*.py")):
                archive.write(file, file.relative_to(top.parent))
        archive.writestr("mobile/__init__.py", "")
        archive.write(ROOT / "mobile" / "opfs_storage.py", "mobile/opfs_storage.py")
    return packed.getvalue()


class Quiet(SimpleHTTPRequestHandler):
    """Serves without a word and with the types that modules need."""

    extensions_map = {  # noqa: RUF012
        ".html": "text/html",
        ".mjs": "text/javascript",
        ".wasm": "application/wasm",
        "": "application/octet-stream",
    }

    def log_message(self, *words: object) -> None:
        pass


@contextlib.contextmanager
def served() -> Iterator[str]:
    """Address of the page."""
    handler = functools.partial(Quiet, directory=str(folder()))
    with ThreadingHTTPServer(("localhost", 0), handler) as server:
        thread = threading.Thread(target=server.serve_forever, daemon=True)
        thread.start()
        try:
            yield f"http://localhost:{server.server_address[1]}/"
        finally:
            server.shutdown()
            thread.join()


class Window:
    """One window of one browser profile."""

    def __init__(self, page: Page, address: str, heard: Callable[[str], None]) -> None:
        self.page = page
        page.expose_function("said", heard)
        page.goto(address)

    def run(self, code: str) -> Any:
        """What the last line of the code is worth."""
        return json.loads(self.page.evaluate("code => window.run(code)", code))

    def start(self, code: str) -> None:
        """Begin to run and do not wait."""
        self.page.evaluate("code => { window.run(code) }", code)


class Browser:
    """A Chromium with a profile of its own, which can be killed."""

    def __init__(self, playwright: Playwright, profile: Path, address: str) -> None:
        self._profile, self._address = profile, address
        self.context = playwright.chromium.launch_persistent_context(
            str(profile), executable_path=find(), args=list(FLAGS), headless=True
        )

    def window(self, heard: Callable[[str], None] = lambda words: None) -> Window:
        return Window(self.context.new_page(), self._address, heard)

    def close(self) -> None:
        self.context.close()

    def kill(self) -> None:
        """SIGKILL to every process of this profile, as when the battery is pulled out."""
        for process in self._processes():
            with contextlib.suppress(ProcessLookupError):
                os.kill(process, signal.SIGKILL)
        with contextlib.suppress(Error):
            self.context.close()

    def _processes(self) -> list[int]:
        mark = str(self._profile).encode()
        found = []
        for entry in Path("/proc").glob("[0-9]*"):
            with contextlib.suppress(OSError):
                if mark in (entry / "cmdline").read_bytes():
                    found.append(int(entry.name))
        return found
