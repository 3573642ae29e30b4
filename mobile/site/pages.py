"""The page around the app: start page, web app manifest, scripts, icons."""

import html
import json
import re
import shutil
from pathlib import Path
from string import Template

from flet.controls.types import RouteUrlStrategy, WebRenderer
from flet_web import patch_index_html

from core.texts import text
from core.texts.en import TEXTS
from mobile.site import policy
from mobile.site.failure import BuildError
from mobile.site.places import ASSETS, WEB

COPPER = "#B87333"
GRAPHITE = "#23262A"
PYODIDE_VERSION = "314.0.7"
# What the client's start script reads besides the settings that `patch_index_html` writes.
DEFAULTS = "var flet = {multiView: false, flutterAppResolve() {}};\n"
CONFIG = re.compile(r"<script>\n(flet\.pyodide = .*?)\n</script>", re.DOTALL)


def write_pages(out: Path, base: str) -> None:
    """Write everything that stands around the client and the Python worker."""
    for script in ("page.css", "page.js", "python.js", "python-worker.js"):
        shutil.copyfile(WEB / script, out / script)
    shutil.copytree(ASSETS / "icons", out / "icons", ignore=shutil.ignore_patterns("*.py"))
    shutil.copytree(ASSETS / "screenshots", out / "screenshots")
    write_index(out / "index.html", base)
    (out / "manifest.webmanifest").write_text(json.dumps(web_app_manifest(base), indent=1))


def write_index(path: Path, base: str) -> None:
    """Write the start page; its settings go to a file, so that no script stands in the page."""
    page_texts = {key.removeprefix("site."): TEXTS[key] for key in TEXTS if key.startswith("site.")}
    escaped = {key: html.escape(value) for key, value in page_texts.items()}
    template = Template((WEB / "index.html").read_text(encoding="utf-8"))
    texts_json = json.dumps(page_texts).replace("<", "\\u003c")
    page = template.substitute(escaped, policy=policy.in_page(), theme=GRAPHITE, texts=texts_json)
    path.write_text(page, encoding="utf-8")
    patch_index_html(
        index_path=str(path),
        base_href=base,
        pyodide=True,
        pyodide_script_path="main.py",
        pyodide_version=PYODIDE_VERSION,
        app_package_url="app.zip",
        web_renderer=WebRenderer.CANVAS_KIT,
        route_url_strategy=RouteUrlStrategy.HASH,
        no_cdn=True,
    )
    move_settings_out(path)


def move_settings_out(path: Path) -> None:
    page = path.read_text(encoding="utf-8")
    found = CONFIG.findall(page)
    if len(found) != 1:
        raise BuildError(f"index.html: {len(found)} blocks of settings instead of one.")
    (path.parent / "settings.js").write_text(DEFAULTS + found[0] + "\n", encoding="utf-8")
    path.write_text(CONFIG.sub('<script src="settings.js"></script>', page), encoding="utf-8")


def web_app_manifest(base: str) -> dict[str, object]:
    """What makes the site an app that a phone installs."""
    return {
        "id": base,
        "scope": base,
        "start_url": base,
        "name": text("site.name"),
        "short_name": text("site.name"),
        "description": text("site.description"),
        "lang": "en",
        "display": "standalone",
        "orientation": "any",
        "background_color": GRAPHITE,
        "theme_color": GRAPHITE,
        "categories": ["utilities", "productivity"],
        "icons": [
            icon("icon-192.png", 192, "any"),
            icon("icon-512.png", 512, "any"),
            icon("icon-maskable-192.png", 192, "maskable"),
            icon("icon-maskable-512.png", 512, "maskable"),
        ],
        "screenshots": [
            screenshot("phone.png", 390, 844, "narrow"),
            screenshot("wide.png", 1280, 800, "wide"),
        ],
    }


def icon(name: str, size: int, purpose: str) -> dict[str, str]:
    return {
        "src": f"icons/{name}",
        "sizes": f"{size}x{size}",
        "type": "image/png",
        "purpose": purpose,
    }


def screenshot(name: str, width: int, height: int, form: str) -> dict[str, str]:
    """A picture that a browser shows when it offers to install the app."""
    return {
        "src": f"screenshots/{name}",
        "sizes": f"{width}x{height}",
        "type": "image/png",
        "form_factor": form,
        "label": text("site.description"),
    }
