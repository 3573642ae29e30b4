"""How the site is handed out: headers, media types, compression, the one port."""

import gzip
import socket
import subprocess
from collections.abc import Iterator
from pathlib import Path

import httpx
import pytest

from mobile.site import policy
from mobile.site.media_types import MEDIA_TYPES
from tests.served_site import ROOT, built, environment, free_port, served, standproud


@pytest.fixture(scope="module")
def client() -> Iterator[httpx.Client]:
    with served(built()) as origin, httpx.Client(base_url=origin) as client:
        yield client


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("", "text/html; charset=utf-8"),
        ("index.html", "text/html; charset=utf-8"),
        ("main.dart.js", "text/javascript; charset=utf-8"),
        ("pyodide/pyodide.mjs", "text/javascript; charset=utf-8"),
        ("pyodide/pyodide.asm.wasm", "application/wasm"),
        ("manifest.webmanifest", "application/manifest+json"),
        ("app.zip", "application/zip"),
        ("service-worker.js", "text/javascript; charset=utf-8"),
    ],
)
def test_the_media_type_comes_from_our_own_table(
    client: httpx.Client, name: str, kind: str
) -> None:
    assert client.get(f"/{name}").headers["content-type"] == kind


def test_the_table_does_not_ask_the_system() -> None:
    assert MEDIA_TYPES[".mjs"].startswith("text/javascript")


@pytest.mark.parametrize("name", ["", "page.js", "pyodide/pyodide.asm.wasm", "no-such-file"])
def test_every_answer_carries_the_policy(client: httpx.Client, name: str) -> None:
    answered = client.get(f"/{name}").headers
    assert {name: answered[name] for name in policy.headers()} == policy.headers()


def test_the_policy_names_no_foreign_host_and_no_code_from_text() -> None:
    told = policy.headers()["Content-Security-Policy"]
    assert "://" not in told
    assert "*" not in told
    assert "'unsafe-eval'" not in told
    assert "script-src 'self' 'wasm-unsafe-eval';" in told


def test_what_shrinks_goes_compressed_to_who_accepts_it(client: httpx.Client) -> None:
    packed = client.get("/main.dart.js", headers={"Accept-Encoding": "gzip"})
    plain = client.get("/main.dart.js", headers={"Accept-Encoding": "identity"})
    assert packed.headers["content-encoding"] == "gzip"
    assert "content-encoding" not in plain.headers
    assert packed.content == plain.content
    assert int(packed.headers["content-length"]) < 0.3 * int(plain.headers["content-length"])


def test_the_copy_on_disk_is_what_is_sent(client: httpx.Client) -> None:
    copy = (built() / "page.js.gz").read_bytes()
    assert gzip.decompress(copy) == client.get("/page.js").content


def test_a_copy_asked_for_by_its_name_is_sent_packed(client: httpx.Client) -> None:
    answered = client.get("/page.js.gz")
    assert answered.headers["content-type"] == "application/gzip"
    assert "content-encoding" not in answered.headers
    assert gzip.decompress(answered.content) == client.get("/page.js").content


def test_a_file_that_did_not_change_is_not_sent_again(client: httpx.Client) -> None:
    tag = client.get("/main.dart.js").headers["etag"]
    again = client.get("/main.dart.js", headers={"If-None-Match": tag})
    assert (again.status_code, again.content) == (304, b"")


@pytest.mark.parametrize(
    "name", ["%2e%2e/pyproject.toml", "main.dart.js.gz.gz", "icons/icon-192.png.gz", "pyodide"]
)
def test_only_listed_files_are_handed_out(client: httpx.Client, name: str) -> None:
    assert client.get(f"/{name}").status_code == 404


def test_the_other_name_of_this_computer_leads_to_the_one_origin(client: httpx.Client) -> None:
    other = client.base_url.copy_with(host="127.0.0.1")
    answered = client.get(other.join("/page.js"))
    assert answered.headers["location"] == str(client.base_url.join("/page.js"))


def test_the_root_leads_to_the_base_path() -> None:
    with served(built("/shop/standproud")) as origin:
        assert httpx.get(f"{origin}/").headers["location"] == "/shop/standproud/"


def test_a_taken_port_is_one_clear_line_and_exit_code_2() -> None:
    with socket.create_server(("127.0.0.1", 0)) as other:
        port = other.getsockname()[1]
        ran = run("serve", "--site", str(built()), "--port", str(port))
    assert ran.returncode == 2
    assert ran.stdout == ""
    assert ran.stderr.count("\n") == 1
    assert f"Port {port} is taken" in ran.stderr


def test_a_folder_without_a_site_is_one_clear_line(tmp_path: Path) -> None:
    ran = run("serve", "--site", str(tmp_path), "--port", str(free_port()))
    assert ran.returncode == 2
    assert "holds no site" in ran.stderr


def test_a_calculation_goes_to_the_calculations() -> None:
    ran = run("no-such-command")
    assert ran.returncode == 2
    assert "no-such-command" in ran.stderr


def run(*arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        standproud(*arguments),
        cwd=ROOT,
        env=environment(ROOT),
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
