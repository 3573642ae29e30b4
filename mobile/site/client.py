"""The screen's engine (the Flutter client in flet-web's wheel), pruned and bound to our origin."""

import json
import re
import shutil
from pathlib import Path

from flet_web import patch_font_manifest_json

from mobile.site.failure import BuildError
from mobile.site.icon_font import cut_icon_font

COPIED = (
    "assets/AssetManifest.bin.json",
    "assets/FontManifest.json",
    "assets/fonts/MaterialIcons-Regular.otf",
    "assets/fonts/roboto.woff2",
    "assets/packages/wakelock_plus/assets/no_sleep.js",
    "assets/shaders/ink_sparkle.frag",
    "assets/shaders/stretch_effect.frag",
    "canvaskit/canvaskit.js",
    "canvaskit/canvaskit.wasm",
    "canvaskit/chromium/canvaskit.js",
    "canvaskit/chromium/canvaskit.wasm",
    "flutter_bootstrap.js",
    "main.dart.js",
    "version.json",
)
# Every font of the manifest is loaded before the first frame: those of formulas and of another
# system's icons are left out.
UNUSED_FONTS = ("packages/flutter_math_fork/", "packages/cupertino_icons/")

# An animation player that no screen of ours uses fetches its engine from a foreign host at every
# start. It is given a promise that stays open instead.
FOREIGN_HOST = re.compile(r"https://cdn\.jsdelivr\.net/npm/@rive-app/flutter-native-wasm@[\d.]+/")
IN_ITS_PLACE = "unused/"
STAND_IN = "self.RiveNative = () => new Promise(() => {});\n"

# Flutter's worker would replace ours by one that removes itself and reloads the page.
OWN_WORKER = re.compile(r"\n    serviceWorkerSettings: \{\n[^}]*\},(?=\n    onEntrypointLoaded)")


def write_client(source: Path, out: Path) -> None:
    """Copy the client's files, with the two places changed that would leave our origin."""
    for name in COPIED:
        (out / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(source / name, out / name)
    replace_once(out / "main.dart.js", FOREIGN_HOST, IN_ITS_PLACE)
    replace_once(out / "flutter_bootstrap.js", OWN_WORKER, "")
    stand_in = out / IN_ITS_PLACE / "wasm" / "rive_native.js"
    stand_in.parent.mkdir(parents=True)
    stand_in.write_text(STAND_IN)
    cut_icon_font(out / "assets" / "fonts" / "MaterialIcons-Regular.otf")
    write_font_manifest(out / "assets" / "FontManifest.json")


def replace_once(path: Path, pattern: re.Pattern[str], replacement: str) -> None:
    """Replace the one place that matches; a client with none or several is not the one we know."""
    text, count = pattern.subn(replacement, path.read_text(encoding="utf-8"))
    if count != 1:
        raise BuildError(
            f"{path.name}: {pattern.pattern!r} stands there {count} times instead of once; "
            "this version of flet-web is not the one this build was written for."
        )
    path.write_text(text, encoding="utf-8")


def write_font_manifest(path: Path) -> None:
    families = json.loads(path.read_text())
    used = [family for family in families if not family["family"].startswith(UNUSED_FONTS)]
    path.write_text(json.dumps(used))
    patch_font_manifest_json(str(path))
