"""What the browser does inside the tap itself, beyond what the framework brings."""

from dataclasses import dataclass
from typing import Any

import flet as ft
from flet.controls.client_action import ClientAction, action_field, shared_service

TYPES = {"html": "text/html", "csv": "text/csv", "txt": "text/plain"}


@dataclass
class ShareOneFile(ClientAction):
    """Opens the share sheet with one file; only inside a tap does a browser allow it."""

    name: str = action_field()
    data: bytes = action_field()

    def __post_init__(self) -> None:
        file = ft.ShareFile(data=self.data, mime_type=media_type(self.name), name=self.name)
        arguments: dict[str, Any] = {"files": [file], "title": self.name}
        self._bind(shared_service(ft.Share), "share_files", arguments)


def media_type(name: str) -> str:
    """Media type (RFC 2046) of a file by its ending."""
    return TYPES[name.rpartition(".")[2]]


def page_address(data: bytes) -> str:
    """Address under which this browser opens a page made here; it lasts as long as the app."""
    import js
    from pyodide.ffi import to_js

    options = js.Object.fromEntries(to_js([["type", "text/html;charset=utf-8"]]))
    return str(js.URL.createObjectURL(js.Blob.new(to_js([data]), options)))


def forget_address(address: str) -> None:
    """Let the browser drop a page made here."""
    import js

    js.URL.revokeObjectURL(address)
