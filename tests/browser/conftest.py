"""A real Chromium on a real build, served by our own server."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Playwright, sync_playwright

from tests import chromium
from tests.phone import NewPhone, Phone
from tests.served_site import built, served


@pytest.fixture(scope="module")
def playwright() -> Iterator[Playwright]:
    """Ends with the module: while it runs, no test can run an event loop of its own."""
    try:
        chromium.find()
    except chromium.NoChromium as missing:
        pytest.fail(str(missing), pytrace=False)
    with sync_playwright() as running:
        yield running


@pytest.fixture(scope="session")
def site() -> Path:
    """Folder of the site, built once in a run."""
    return built()


@pytest.fixture(scope="session")
def address(site: Path) -> Iterator[str]:
    """Where our server has the site."""
    with served(site) as origin:
        yield f"{origin}/"


@pytest.fixture
def new_phone(playwright: Playwright, address: str, tmp_path: Path) -> Iterator[NewPhone]:
    """Makes phones with empty profiles; a test passes only if none of them saw an error."""
    phones: list[Phone] = []

    def make(at: str = address, **options: object) -> Phone:
        profile = tmp_path / f"profile-{len(phones)}"
        phones.append(Phone(playwright, profile, at, **options))
        return phones[-1]

    yield make
    for phone in phones:
        phone.close()
    assert [trouble for phone in phones for trouble in phone.troubles()] == []


@pytest.fixture
def phone(new_phone: NewPhone) -> Phone:
    """A phone that never saw the app."""
    return new_phone()
