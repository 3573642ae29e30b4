"""The app talks to its own origin and to nobody else; a recording proxy and a policy agree."""

import functools
import threading
from collections import Counter
from collections.abc import Iterator
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest

from tests.phone import NewPhone
from tests.recording_proxy import RecordingProxy

FOREIGN = "http://foreign.example/planted"
PLANTED = f"""
import asyncio, js
from pyodide.ffi import JsException, create_proxy
refused = []
def note(event):
    refused.append(f"{{event.effectiveDirective}} {{event.blockedURI}}")
js.self.addEventListener("securitypolicyviolation", create_proxy(note))
try:
    await js.fetch("{FOREIGN}", mode="no-cors")
except JsException:
    pass
await asyncio.sleep(0.5)
" ".join(refused)
"""
REFUSED = f"connect-src {FOREIGN}"
LARGE = ("main.dart.js", "pyodide/pyodide.asm.wasm", "pyodide/python_stdlib.zip", "packages.zip")


@pytest.fixture
def proxy(address: str) -> Iterator[RecordingProxy]:
    with RecordingProxy(address.rstrip("/")) as recording:
        yield recording


@pytest.fixture
def host_without_headers(site: Path) -> Iterator[str]:
    """The plainest static host: no policy, no compression."""
    handler = functools.partial(QuietHandler, directory=site)
    server = ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield f"http://localhost:{server.server_address[1]}/"
    server.shutdown()
    server.server_close()
    thread.join()


class QuietHandler(SimpleHTTPRequestHandler):
    def log_message(self, *_message: object) -> None:
        return None


def test_nothing_but_our_origin_is_asked_over_install_use_and_offline(
    new_phone: NewPhone, proxy: RecordingProxy
) -> None:
    phone = new_phone(arguments=proxy.arguments)
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.read_aloud()
    phone.page.wait_for_timeout(1000)
    phone.close()
    asked = len(proxy.asked)
    phone.open("#/check?go=0.011in", offline=True)
    phone.read_aloud()
    assert proxy.foreign() == []
    assert len(proxy.asked) == asked


def test_each_file_is_fetched_once_on_a_first_visit(
    new_phone: NewPhone, proxy: RecordingProxy
) -> None:
    phone = new_phone(arguments=proxy.arguments)
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.wait_for_view()
    counts = Counter(proxy.paths())
    assert [counts[f"/{name}"] + counts[f"/{name}.gz"] for name in LARGE] == [1] * len(LARGE)


def test_a_foreign_fetch_from_python_is_refused_by_policy(
    new_phone: NewPhone, proxy: RecordingProxy
) -> None:
    phone = new_phone(arguments=proxy.arguments)
    phone.open()
    phone.wait_for_view()
    assert phone.python(PLANTED) == REFUSED
    assert proxy.foreign() == []


def test_the_service_worker_brings_the_policy_where_the_host_sends_none(
    new_phone: NewPhone, host_without_headers: str
) -> None:
    with RecordingProxy(host_without_headers.rstrip("/")) as recording:
        phone = new_phone(host_without_headers, arguments=recording.arguments)
        phone.open()
        phone.wait_for_view()
        assert phone.python(PLANTED) == REFUSED
        assert recording.foreign() == []
        phone.forgive()
        phone.close()


def test_the_recording_proxy_sees_a_planted_fetch_where_no_policy_stands(
    new_phone: NewPhone, host_without_headers: str
) -> None:
    with RecordingProxy(host_without_headers.rstrip("/")) as recording:
        arguments = recording.arguments
        phone = new_phone(host_without_headers, arguments=arguments, service_workers="block")
        phone.open()
        phone.wait_for_view()
        assert phone.python(PLANTED) == ""
        assert recording.foreign() == [FOREIGN]
        phone.forgive()
        phone.close()
