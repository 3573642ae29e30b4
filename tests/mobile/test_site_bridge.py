"""The messages between the app and the page around it."""

import json

import pytest

from mobile.page_bridge import PageBridge, PageState


class Port:
    """A message port that keeps what was sent."""

    def __init__(self) -> None:
        self.sent: list[dict[str, str]] = []

    def postMessage(self, message: str) -> None:  # noqa: N802 (the browser's name)
        self.sent.append(json.loads(message))


@pytest.fixture
def told() -> list[PageState]:
    return []


@pytest.fixture
def port() -> Port:
    return Port()


@pytest.fixture
def bridge(port: Port, told: list[PageState]) -> PageBridge:
    return PageBridge(port, told.append)


def test_a_state_of_the_page_reaches_the_app(bridge: PageBridge, told: list[PageState]) -> None:
    bridge.receive(
        '{"kind": "state", "offline": "ready", "newVersion": true, "kept": null, "textScale": 2}'
    )
    assert told == [PageState(offline="ready", new_version=True, kept=None, text_scale=2)]


def test_the_app_asks_for_the_state(bridge: PageBridge, port: Port) -> None:
    bridge.ask()
    assert port.sent == [{"kind": "ask"}]


def test_the_app_changes_to_the_new_version(bridge: PageBridge, port: Port) -> None:
    bridge.use_new_version()
    assert port.sent == [{"kind": "use-new-version"}]


def test_the_app_leaves_its_last_answer(bridge: PageBridge, port: Port) -> None:
    bridge.leave_last_answer(height="0.0120 in", suggestion="0.050", say="twelve")
    assert port.sent == [
        {"kind": "last-answer", "height": "0.0120 in", "suggestion": "0.050", "say": "twelve"}
    ]
