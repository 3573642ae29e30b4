"""What a built site holds, and what it must not hold."""

import gzip
import hashlib
import json
import re
import sys
import zipfile
from base64 import b64encode
from pathlib import Path

import pytest
from flet_web import get_package_web_dir
from fontTools.ttLib import TTFont

from mobile.app.theme import DARK, LIGHT
from mobile.site.client import FOREIGN_HOST, replace_once
from mobile.site.failure import BuildError
from mobile.site.icon_font import ENGINE_ICONS, glyph, glyphs, named_icons
from mobile.site.media_types import media_type
from tests.served_site import ROOT, build, built, frozen

LISTING = "site.json"
OURS = ("index.html", "page.css", "page.js", "python.js", "python-worker.js", "settings.js")
PNG_SIZE = slice(16, 24)


@pytest.fixture(scope="module")
def site() -> Path:
    return built()


@pytest.fixture(scope="module")
def listing(site: Path) -> dict:
    return json.loads((site / LISTING).read_text())


def names(site: Path) -> set[str]:
    found = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    return {name for name in found if not name.endswith(".gz")}


def archived(site: Path, archive: str) -> set[str]:
    with zipfile.ZipFile(site / archive) as opened:
        return set(opened.namelist())


def test_the_listing_names_every_file_with_its_true_hash(site: Path, listing: dict) -> None:
    assert set(listing["files"]) == names(site) - {LISTING, "service-worker.js"}
    for name, file in listing["files"].items():
        digest = b64encode(hashlib.sha256((site / name).read_bytes()).digest()).decode()
        assert file["hash"] == f"sha256-{digest}", name


def test_the_compressed_copies_unfold_to_the_files_beside_them(site: Path) -> None:
    packed = list(site.rglob("*.gz"))
    assert len(packed) > 10
    for copy in packed:
        assert gzip.decompress(copy.read_bytes()) == copy.with_suffix("").read_bytes(), copy


def test_the_same_sources_build_the_same_version(listing: dict, tmp_path: Path) -> None:
    build(tmp_path / "again")
    assert json.loads((tmp_path / "again" / LISTING).read_text())["version"] == listing["version"]


def test_no_path_of_this_machine_stands_in_the_site(site: Path) -> None:
    private = {str(ROOT), str(frozen()), sys.prefix, str(site.parent)}
    told = [place.encode() for place in private]
    for path in site.rglob("*"):
        if path.is_file() and path.suffix != ".gz":
            contents = unpacked(path)
            assert [place for place in told for each in contents if place + b"/" in each] == [], (
                path
            )


def unpacked(path: Path) -> list[bytes]:
    if path.suffix != ".zip":
        return [path.read_bytes()]
    with zipfile.ZipFile(path) as archive:
        return [archive.read(name) for name in archive.namelist()]


def test_the_app_archive_holds_our_code_compiled_and_nothing_of_the_desk(site: Path) -> None:
    held = archived(site, "app.zip")
    assert {"core/errors.pyc", "mobile/main.pyc", "mobile/page_bridge.pyc"} <= held
    left_at_home = ("core/command", "core/hub", "mobile/site", "mobile/locks", "mobile/program")
    assert [name for name in held if name.startswith(left_at_home)] == []
    assert [name for name in held if name.endswith(".py")] == []


@pytest.mark.parametrize("archive", ["app.zip", "packages.zip"])
def test_no_archive_asks_the_phone_to_install_anything(site: Path, archive: str) -> None:
    asking = {"requirements.txt", "pyproject.toml"}
    assert {name for name in archived(site, archive) if Path(name).name in asking} == set()


def test_every_locked_package_is_in_the_packages_archive(site: Path) -> None:
    tops = {name.split("/")[0].removesuffix(".pyc") for name in archived(site, "packages.zip")}
    locked = {name.replace("-", "_") for name in pinned("phone")}
    assert locked - tops == {"typing_extensions"}  # asked for by older versions of Python only
    assert tops <= locked


def test_the_phone_runs_the_versions_the_tests_ran() -> None:
    desktop = pinned("desktop")
    phone = pinned("phone")
    assert phone
    assert phone == {name: desktop[name] for name in phone}


def pinned(lock: str) -> dict[str, str]:
    text = (ROOT / "mobile" / "locks" / f"{lock}.txt").read_text()
    return dict(re.findall(r"^([\w.-]+)==([\w.]+)", text, re.MULTILINE))


def test_no_page_or_script_of_ours_names_a_foreign_host(site: Path) -> None:
    for name in (*OURS, "service-worker.js", "manifest.webmanifest"):
        assert re.findall(r"(?:https?:)?//[a-z][\w.-]+\.[a-z]{2,}", code_of(site / name)) == [], (
            name
        )


def code_of(path: Path) -> str:
    return re.sub(r"^\s*//.*$", "", path.read_text(), flags=re.MULTILINE)


def test_no_script_stands_in_the_page_itself(site: Path) -> None:
    page = (site / "index.html").read_text()
    inline = re.findall(r"<script(?![^>]*(?:src=|application/json))[^>]*>", page)
    assert inline == []
    assert page.index("Content-Security-Policy") < page.index("<link")


def test_the_one_foreign_address_of_the_engine_is_gone(site: Path) -> None:
    assert FOREIGN_HOST.search((site / "main.dart.js").read_text()) is None
    assert (site / "unused" / "wasm" / "rive_native.js").exists()


FOREIGN = "https://cdn.jsdelivr.net/npm/@rive-app/flutter-native-wasm@44.0.0/"


@pytest.mark.parametrize("text", ["nothing of the kind", f'"{FOREIGN}" and "{FOREIGN}"'])
def test_an_engine_with_no_or_several_foreign_addresses_stops_the_build(
    text: str, tmp_path: Path
) -> None:
    script = tmp_path / "main.dart.js"
    script.write_text(text)
    with pytest.raises(BuildError, match="instead of once"):
        replace_once(script, FOREIGN_HOST, "unused/")
    assert script.read_text() == text


def test_the_first_picture_has_the_grounds_of_the_app_that_follows(site: Path) -> None:
    style = (site / "page.css").read_text()
    light, dark = style.split("prefers-color-scheme: dark")
    assert f"--ground: {LIGHT.ground};" in light
    assert f"--ground: {DARK.ground};" in dark


def test_every_font_the_engine_loads_is_there(site: Path) -> None:
    families = json.loads((site / "assets" / "FontManifest.json").read_text())
    assets = [font["asset"] for family in families for font in family["fonts"]]
    assert sorted(assets) == ["fonts/MaterialIcons-Regular.otf", "fonts/roboto.woff2"]
    assert all((site / "assets" / asset).exists() for asset in assets)


def test_an_icon_the_font_has_not_stops_the_build() -> None:
    with pytest.raises(BuildError, match="no no_such_icon_baseline"):
        glyphs(["CHECK", "NO_SUCH_ICON"], ["check_baseline"])


def test_the_icon_font_holds_every_icon_the_screens_name(site: Path) -> None:
    font = TTFont(site / "assets" / "fonts" / "MaterialIcons-Regular.otf")
    whole = TTFont(Path(get_package_web_dir()) / "assets" / "fonts" / "MaterialIcons-Regular.otf")
    place = {name: code for code, name in whole.getBestCmap().items()}
    icons = {glyph(icon) for icon in (*named_icons(), *ENGINE_ICONS)}
    assert icons
    assert {place[icon] for icon in icons} <= set(font.getBestCmap())
    assert len(font.getBestCmap()) < 200


def test_icons_are_named_where_the_build_can_read_them() -> None:
    hidden = re.compile(r"getattr\((?:ft\.)?Icons|Icons\[|Icons\(|CupertinoIcons")
    sources = (ROOT / "mobile" / "app").rglob("*.py")
    assert [path.name for path in sources if hidden.search(path.read_text())] == []


def test_the_manifest_makes_an_installable_app(site: Path) -> None:
    manifest = json.loads((site / "manifest.webmanifest").read_text())
    assert manifest["id"] == manifest["scope"] == manifest["start_url"] == "/"
    assert manifest["display"] == "standalone"
    assert {icon["purpose"] for icon in manifest["icons"]} == {"any", "maskable"}
    assert {each["form_factor"] for each in manifest["screenshots"]} == {"narrow", "wide"}
    for picture in (*manifest["icons"], *manifest["screenshots"]):
        header = (site / picture["src"]).read_bytes()[PNG_SIZE]
        width, height = (int.from_bytes(header[at : at + 4]) for at in (0, 4))
        assert f"{width}x{height}" == picture["sizes"]


def test_pictures_for_the_install_question_are_not_kept_on_the_phone(site: Path) -> None:
    files = json.loads((site / "site.json").read_text())["files"]
    pictures = [name for name in files if name.startswith("screenshots/")]
    assert pictures
    assert not any(files[name]["kept"] for name in pictures)


def test_a_base_path_stands_everywhere_it_is_needed() -> None:
    site = built("/shop/standproud")
    base = "/shop/standproud/"
    assert f'<base href="{base}">' in (site / "index.html").read_text()
    assert json.loads((site / "manifest.webmanifest").read_text())["scope"] == base
    assert f'flet.canvasKitBaseUrl="{base}canvaskit/"' in (site / "settings.js").read_text()


def test_a_file_of_an_unknown_kind_stops_the_build() -> None:
    with pytest.raises(BuildError, match="no media type is known"):
        media_type("notes.docx")


def test_the_licences_of_what_is_shipped_are_in_the_site(site: Path, listing: dict) -> None:
    packages = (site / "licences" / "packages.txt").read_text()
    named = packages.lower().replace("_", "-")
    assert [name for name in pinned("phone") if f"{name} " not in named] == []
    assert not listing["files"]["licences/engine.txt"]["kept"]
