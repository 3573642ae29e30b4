"""What a first visit sends, and how soon the app stands, beside a bare hello-world Flet app."""

import statistics
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import Playwright, sync_playwright

from tests.counting_server import counting
from tests.hello_site import build_hello
from tests.measured import Row
from tests.phone import Phone
from tests.served_site import built

STARTS = 7
MEGABYTE = 1e6
LARGEST = 10
# Time for the browser to write its own caches, as between two uses of a phone.
REST = 4000


def rows() -> Iterator[Row]:
    with tempfile.TemporaryDirectory() as place, sync_playwright() as playwright:
        hello = Path(place) / "hello"
        hello.mkdir()
        build_hello(hello)
        ours = Start(playwright, built(), "height", Path(place) / "ours")
        peer = Start(playwright, hello, "hello", Path(place) / "peer")
        yield from first_visits(ours, peer)
        yield from warm_starts(ours, peer)


class Start:
    """One site on one phone, visited once and then opened offline again and again.

    Parameters
    ----------
    folder
        The built site.
    identifier
        Of a node that is there when the app is usable.
    profile
        Folder for the browser's profile.
    """

    def __init__(
        self, playwright: Playwright, folder: Path, identifier: str, profile: Path
    ) -> None:
        self.playwright = playwright
        self.folder = folder
        self.identifier = identifier
        self.profile = profile
        self.times: list[float] = []

    def first_visit(self) -> tuple[float, dict[str, int]]:
        """Seconds from an empty profile to usable, and the bytes sent until ready for offline."""
        with counting(self.folder) as (self.origin, sent):
            phone = self.phone()
            seconds = self.usable(phone, offline=False)
            phone.wait_until_ready_for_offline()
            phone.page.wait_for_timeout(REST)
            phone.close()
        return seconds, dict(sent)

    def warm_start(self) -> None:
        phone = self.phone()
        self.times.append(self.usable(phone, offline=True))
        phone.page.wait_for_timeout(REST)
        phone.close()

    def phone(self) -> Phone:
        return Phone(self.playwright, self.profile, f"{self.origin}/")

    def usable(self, phone: Phone, *, offline: bool) -> float:
        """Seconds from the navigation to the app's own node on the screen."""
        phone.launch()
        start = time.perf_counter()
        phone.open(offline=offline)
        phone.read_aloud()
        phone.phrase(self.identifier)
        return time.perf_counter() - start


def first_visits(ours: Start, peer: Start) -> Iterator[Row]:
    seconds, sent = ours.first_visit()
    peer_seconds, peer_sent = peer.first_visit()
    yield Row(
        what="first visit, empty profile to ready for offline: bodies our server sent",
        value=sum(sent.values()) / MEGABYTE,
        unit="MB",
        goal=13,
        peer="hello world",
        peer_value=sum(peer_sent.values()) / MEGABYTE,
    )
    for path, size in sorted(sent.items(), key=lambda item: -item[1])[:LARGEST]:
        yield Row(what=f"  of which {path}", value=size / MEGABYTE, unit="MB")
    yield Row(
        what="first visit, navigation to usable, from this machine",
        value=seconds,
        unit="s",
        peer="hello world",
        peer_value=peer_seconds,
    )


def warm_starts(ours: Start, peer: Start) -> Iterator[Row]:
    for _ in range(STARTS):
        ours.warm_start()
        peer.warm_start()
    hello = statistics.median(peer.times)
    yield Row(
        what=f"warm offline start, navigation to usable, median of {STARTS}",
        value=statistics.median(ours.times),
        unit="s",
        goal=hello,
        peer="hello world",
        peer_value=hello,
    )
