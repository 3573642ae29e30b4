"""A bare hello-world Flet app as a site, made from the same wheels as ours: the peer of our start.

It is what flet-web's own files do: the stock page, the stock worker that starts Python after the
screen's first frame, modules as source. Only what would leave the origin is taken out, and our
service worker keeps it offline, so that both are read from the same kind of place.
"""

import re
import shutil
from pathlib import Path

from flet.controls.types import RouteUrlStrategy, WebRenderer
from flet_web import get_package_web_dir, patch_index_html

from mobile.site.archive import wheel_files, write_archive
from mobile.site.client import write_client
from mobile.site.compression import compress
from mobile.site.precache import write_service_worker
from mobile.site.wheels import fetch_wheels

HELLO = """
import flet as ft


def main(page):
    page.add(ft.Semantics(identifier="hello", container=True, content=ft.Text("hello, world")))


ft.run(main)
"""
NEEDED = ("flet", "repath", "six", "msgpack")
REGISTER = """
<script>
var state = { offline: "no" };
navigator.serviceWorker.addEventListener("message", (event) => {
  if (event.data.kind === "complete") state.offline = "ready";
});
navigator.serviceWorker.register("service-worker.js");
navigator.serviceWorker.ready.then((ready) => ready.active.postMessage("complete?"));
</script>
</head>"""


def build_hello(out: Path, program: str = HELLO) -> None:
    """Write the site into a new folder; another program may take hello world's place."""
    source = Path(get_package_web_dir())
    write_client(source, out)
    for name in ("python.js", "python-worker.js", "index.html", "manifest.json", "favicon.png"):
        shutil.copyfile(source / name, out / name)
    shutil.copytree(source / "icons", out / "icons")
    write_python(source / "pyodide", out, program)
    write_page(out / "index.html")
    compress(out)
    write_service_worker(out, "/", "hello")


def write_python(source: Path, out: Path, program: str) -> None:
    (out / "pyodide").mkdir()
    for name in (
        "pyodide.mjs",
        "pyodide.asm.mjs",
        "pyodide.asm.wasm",
        "python_stdlib.zip",
        "pyodide-lock.json",
    ):
        shutil.copyfile(source / name, out / "pyodide" / name)
    wheels = [each for each in fetch_wheels() if each.name.split("-")[0] in NEEDED]
    packages = {f"__pypackages__/{name}": held for name, held in wheel_files(wheels).items()}
    write_archive(out / "app.zip", {**packages, "main.py": program.encode()})


def write_page(index: Path) -> None:
    patch_index_html(
        index_path=str(index),
        base_href="/",
        pyodide=True,
        pyodide_script_path="main.py",
        pyodide_version="314.0.7",
        app_package_url="app.zip",
        web_renderer=WebRenderer.CANVAS_KIT,
        route_url_strategy=RouteUrlStrategy.HASH,
        no_cdn=True,
    )
    page = index.read_text()
    page = page.replace('"pyodide/pyodide.mjs"', '"./pyodide/pyodide.mjs"')
    page = page.replace("</head>", REGISTER)
    scripts = re.findall(r"<script>(.*?)</script>", page, re.DOTALL)
    for number, script in enumerate(scripts):
        # Our policy runs no script that stands in the page.
        (index.parent / f"page-{number}.js").write_text(script)
        moved = f'<script src="page-{number}.js"></script>'
        page = page.replace(f"<script>{script}</script>", moved)
    index.write_text(page)
