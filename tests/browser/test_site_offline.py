"""The app is installed by one visit and opens without a network from then on."""

from tests.phone import Phone


def test_after_one_visit_a_closed_browser_opens_the_app_offline(phone: Phone) -> None:
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.close()
    phone.open(offline=True)
    phone.read_aloud()
    assert phone.phrase("height")


def test_a_link_opened_cold_and_offline_reaches_python(phone: Phone) -> None:
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.close()
    phone.open("#/check?go=0.011in", offline=True)
    phone.read_aloud()
    assert phone.phrase("height", holding="0.0110")


def test_a_link_into_the_running_app_reaches_python_without_a_reload(phone: Phone) -> None:
    page = phone.open()
    phone.read_aloud()
    page.evaluate("window.sameDocument = true; location.hash = '#/check?go=0.012in'")
    assert phone.phrase("height", holding="0.0120")
    assert page.evaluate("window.sameDocument")


def test_the_page_tells_python_that_it_is_ready_for_offline(phone: Phone) -> None:
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.wait_for_view()
    phone.python(LISTEN)
    while not phone.python("len(told)"):
        phone.page.wait_for_timeout(50)
    assert phone.python("told[-1].offline") == "ready"
    assert phone.python("told[-1].kept") in (True, False)


def test_chromium_finds_nothing_that_prevents_installing(phone: Phone) -> None:
    page = phone.open()
    phone.wait_until_ready_for_offline()
    session = phone.context.new_cdp_session(page)
    found = session.send("Page.getInstallabilityErrors")["installabilityErrors"]
    assert found == []


LISTEN = """
from mobile import page_bridge
told = []
bridge = page_bridge.connect(told.append)
"""
