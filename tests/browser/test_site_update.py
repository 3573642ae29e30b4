"""One build is one unit: a new one is fetched in parts, waits, and takes over when asked."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.phone import NewPhone
from tests.recording_proxy import RecordingProxy
from tests.served_site import built_from_changed_sources, served

USE_IT = """
import js, json
js.sitePort.postMessage(json.dumps({"kind": "use-new-version"}))
"""
OLD_NAME, NEW_NAME = '"site.name": "Standproud"', '"site.name": "Standproud anew"'


@pytest.fixture(scope="module")
def newer_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("newer") / "site"
    built_from_changed_sources(folder, file="core/texts/en/site.py", old=OLD_NAME, new=NEW_NAME)
    return folder


@pytest.fixture
def hosted(site: Path, tmp_path: Path) -> Iterator[tuple[Path, str]]:
    """A host whose folder a test may replace."""
    folder = tmp_path / "hosted"
    shutil.copytree(site, folder)
    with served(folder) as origin:
        yield folder, origin


def test_a_new_version_waits_for_the_word_and_takes_over_in_one_reload(
    new_phone: NewPhone, hosted: tuple[Path, str], newer_site: Path
) -> None:
    folder, origin = hosted
    with RecordingProxy(origin) as proxy:
        phone = new_phone(f"{origin}/", arguments=proxy.arguments)
        phone.open()
        phone.wait_until_ready_for_offline()
        phone.close()
        replace(folder, newer_site)
        proxy.asked.clear()

        page = phone.open()
        phone.wait_for_view()
        page.wait_for_function("() => state.newVersion", timeout=60_000)
        old_caches = page.evaluate("() => caches.keys()")
        assert len(old_caches) == 3
        assert set(proxy.paths()) <= {
            "/",  # Chromium asks the host while it wakes the service worker, and drops the answer
            "/service-worker.js",
            "/app.zip.gz",
            "/index.html.gz",
            "/manifest.webmanifest.gz",
        }
        assert "/app.zip.gz" in proxy.paths()

        loads = []
        page.on("load", lambda _page: loads.append(page.url))
        phone.python(USE_IT)
        page.wait_for_function(
            "() => document.querySelector('meta[name=apple-mobile-web-app-title]')"
            "?.content === 'Standproud anew'",
            timeout=60_000,
        )
        phone.wait_for_view()
        phone.wait_until_ready_for_offline()
        page.wait_for_timeout(2000)
        assert len(loads) == 1
        assert page.evaluate("() => caches.keys()") == old_caches[1:]
        assert proxy.foreign() == []
        assert "/main.dart.js.gz" not in proxy.paths()

        phone.close()
        phone.open(offline=True)
        phone.wait_for_view()
        phone.close()


def test_until_asked_the_old_version_opens_offline_as_one_unit(
    new_phone: NewPhone, hosted: tuple[Path, str], newer_site: Path
) -> None:
    folder, origin = hosted
    phone = new_phone(f"{origin}/")
    phone.open()
    phone.wait_until_ready_for_offline()
    replace(folder, newer_site)
    phone.open()
    phone.page.wait_for_function("() => state.newVersion", timeout=60_000)
    phone.close()
    phone.open(offline=True)
    phone.wait_for_view()
    assert phone.python("from core.texts import text; text('site.name')") == "Standproud"
    phone.close()


def replace(folder: Path, newer: Path) -> None:
    shutil.rmtree(folder)
    shutil.copytree(newer, folder)
