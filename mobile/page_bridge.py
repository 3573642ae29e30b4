"""What the app and the page around it tell each other.

The page is everything outside the app's own view: service worker, storage permission, the first
picture. Messages are JSON texts over one message port; this is their whole list.

From the page, on every change and in answer to ``ask``:

``{"kind": "state", "offline": …, "newVersion": …, "kept": …, "textScale": …}``
    The fields of `PageState`.

From the app:

``{"kind": "ask"}``
    Tell the state.
``{"kind": "use-new-version"}``
    Change to the version that waits. The page reloads once.
``{"kind": "link-taken"}``
    The link this page was opened with is used up; the address goes back to the plain one.
``{"kind": "last-answer", "height": …, "suggestion": …, "say": …}``
    What the first picture of the next start shows. A copy for the eye, never read as data.
"""

import json
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Literal

Offline = Literal["no", "fetching", "ready", "unavailable"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PageState:
    """How the app stands outside its own view.

    Parameters
    ----------
    offline
        ``ready`` when every file is kept on this device; ``unavailable`` where the browser keeps
        none (no https, or a private window).
    new_version
        A newer version is fetched and waits for the user's word.
    kept
        Whether the browser promised not to clear what is stored; None until it answered.
    text_scale
        What the system multiplies text sizes with.
    """

    offline: Offline = "no"
    new_version: bool = False
    kept: bool | None = None
    text_scale: float = 1.0


class PageBridge:
    """The app's end of the message port.

    Parameters
    ----------
    port
        A message port, as a browser has it.
    on_state
        Called with each state the page tells.
    """

    def __init__(self, port: Any, on_state: Callable[[PageState], None]) -> None:
        self._port = port
        self._on_state = on_state

    def receive(self, message: str) -> None:
        """Take one message of the page."""
        told = json.loads(message)
        self._on_state(
            PageState(
                offline=told["offline"],
                new_version=told["newVersion"],
                kept=told["kept"],
                text_scale=told["textScale"],
            )
        )

    def ask(self) -> None:
        """Have the page tell its state."""
        self._send("ask")

    def use_new_version(self) -> None:
        """Change to the version that waits; the page reloads once."""
        self._send("use-new-version")

    def link_taken(self) -> None:
        """Have the address forget the link."""
        self._send("link-taken")

    def leave_last_answer(self, *, height: str, suggestion: str, say: str) -> None:
        """Leave what the first picture of the next start shows."""
        self._send("last-answer", height=height, suggestion=suggestion, say=say)

    def _send(self, kind: str, **values: str) -> None:
        self._port.postMessage(json.dumps({"kind": kind, **values}))


def connect(on_state: Callable[[PageState], None]) -> PageBridge:
    """Bridge to the page this Python runs in; the state comes at once and on every change."""
    import js
    from pyodide.ffi import create_proxy

    bridge = PageBridge(js.sitePort, on_state)
    js.sitePort.onmessage = create_proxy(lambda event: bridge.receive(event.data))
    bridge.ask()
    return bridge
