"""What a person sees from the first moment on, also when something is missing."""

import gzip
import json
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.phone import NewPhone, Phone
from tests.served_site import built, served

LAST = {"height": "0.0120 in", "suggestion": "Run the 0.050", "say": "call it twelve"}
LEAVE = f"""
import js, json
js.sitePort.postMessage(json.dumps({{"kind": "last-answer", **{LAST}}}))
"""


@pytest.fixture
def spoilt(site: Path, tmp_path: Path) -> Iterator[Callable[[str, bytes], str]]:
    """Serves a copy of the site in which one file is spoilt."""
    folder = tmp_path / "spoilt"
    shutil.copytree(site, folder)
    with served(folder) as origin:

        def spoil(name: str, content: bytes) -> str:
            (folder / name).write_bytes(content)
            copy = folder / f"{name}.gz"
            copy.write_bytes(gzip.compress(content))
            return f"{origin}/"

        yield spoil


def test_the_first_picture_is_there_before_any_script_of_the_engine(phone: Phone) -> None:
    phone.open()
    assert phone.page.locator("#first-picture svg").is_visible()
    assert phone.page.locator("#first-step").inner_text()


def test_the_last_answer_is_shown_as_such_at_the_next_start(phone: Phone) -> None:
    phone.open()
    phone.wait_for_view()
    phone.python(LEAVE)
    phone.page.wait_for_timeout(300)
    phone.context.add_init_script(WATCH_FIRST_PICTURE)
    phone.page.reload()
    phone.page.wait_for_function("() => window.firstPicture", timeout=30_000)
    shown = phone.page.evaluate("() => window.firstPicture")
    assert "last answer" in shown
    assert all(value in shown for value in LAST.values())


WATCH_FIRST_PICTURE = """
addEventListener("DOMContentLoaded", () => requestAnimationFrame(() => {
  window.firstPicture = document.getElementById("first-picture").innerText;
}));
"""


def test_nothing_of_the_first_picture_is_left_and_nothing_moved(phone: Phone) -> None:
    phone.open()
    phone.wait_for_view()
    shift = phone.page.evaluate(LAYOUT_SHIFT)
    assert shift == 0


LAYOUT_SHIFT = """
() => new Promise((resolve) => {
  let total = 0;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) total += entry.value;
  }).observe({ type: "layout-shift", buffered: true });
  setTimeout(() => resolve(total), 500);
})
"""


def test_when_python_cannot_start_the_page_says_so_and_offers_another_try(
    new_phone: NewPhone, spoilt: Callable[[str, bytes], str]
) -> None:
    phone = new_phone(spoilt("app.zip", b"no archive"), service_workers="block")
    phone.open()
    alert = phone.page.get_by_role("alert")
    alert.wait_for(state="visible", timeout=30_000)
    assert "could not start" in alert.inner_text()
    assert phone.page.locator("#trouble-again").is_visible()
    assert not phone.page.locator("#first-step").is_visible()
    phone.forgive()
    phone.close()


def test_when_the_engine_is_missing_the_page_says_so(
    new_phone: NewPhone, spoilt: Callable[[str, bytes], str]
) -> None:
    phone = new_phone(
        spoilt("flutter_bootstrap.js", b"throw new Error('spoilt')"), service_workers="block"
    )
    phone.open()
    phone.page.get_by_role("alert").wait_for(state="visible", timeout=30_000)
    phone.forgive()
    phone.close()


def test_a_spoilt_file_is_never_kept(
    new_phone: NewPhone, spoilt: Callable[[str, bytes], str]
) -> None:
    phone = new_phone(spoilt("packages.zip", b"cut off"))
    phone.open()
    phone.page.get_by_role("alert").wait_for(state="visible", timeout=60_000)
    assert phone.page_state()["offline"] != "ready"
    phone.forgive()
    phone.close()


def test_the_site_opens_under_any_base_path(new_phone: NewPhone) -> None:
    with served(built("/shop/standproud")) as origin:
        phone = new_phone(f"{origin}/shop/standproud/")
        phone.open()
        phone.wait_until_ready_for_offline()
        phone.close()
        phone.open("#/check?go=0.011in", offline=True)
        phone.read_aloud()
        assert phone.phrase("in-go", holding="0.011")
        phone.close()


def test_a_sign_that_no_font_of_ours_has_asks_nobody_and_disturbs_nothing(phone: Phone) -> None:
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.wait_for_view()
    asked: list[str] = []
    phone.context.on("request", lambda request: asked.append(request.url))
    phone.python(FOREIGN_SIGNS)
    phone.page.wait_for_timeout(3000)
    assert 0 < len(asked) < 10
    assert all("/assets/fonts/" in url for url in asked)


FOREIGN_SIGNS = """
import gc
import flet as ft
from flet.controls.page import Page
page = next(each for each in gc.get_objects() if type(each) is Page)
page.overlay.append(ft.Text("\u6c49\u2300\u0e01", size=40))
page.update()
"""


def test_every_module_of_ours_and_every_name_of_flet_imports_on_the_phone(phone: Phone) -> None:
    phone.open()
    phone.wait_for_view()
    assert json.loads(phone.python(IMPORT_EVERYTHING)) == []


IMPORT_EVERYTHING = """
import importlib, json, pkgutil
import core, flet, mobile, pint, tinydb, uncertainties
failed = []
def walk(package):
    for each in pkgutil.walk_packages(package.__path__, package.__name__ + "."):
        try:
            importlib.import_module(each.name)
        except Exception as error:
            failed.append(f"{each.name}: {error!r}")
for package in (core, mobile):
    walk(package)
for name in dir(flet):
    try:
        getattr(flet, name)
    except Exception as error:
        failed.append(f"flet.{name}: {error!r}")
json.dumps(failed)
"""
