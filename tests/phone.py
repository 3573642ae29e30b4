"""A phone in the hand: a real Chromium with a profile that outlives it."""

import contextlib
import json
import os
import signal
from collections.abc import Callable
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, ConsoleMessage, Error, Page, Playwright

from tests.chromium import FLAGS, find

LONG = 60_000


class Phone:
    """A browser with one profile; closed and opened again, it has what it kept.

    Parameters
    ----------
    profile
        Folder of the profile; a new one is a new phone.
    address
        Where the site is, base path included.
    arguments
        Further arguments of the browser.
    options
        Options of Playwright's persistent context.
    """

    def __init__(
        self,
        playwright: Playwright,
        profile: Path,
        address: str,
        *,
        arguments: tuple[str, ...] | list[str] = (),
        **options: Any,
    ) -> None:
        self._playwright = playwright
        self._profile = profile
        self.address = address
        self._arguments = [*FLAGS, *arguments]
        self._options = {"viewport": {"width": 390, "height": 844}, **options}
        self._context: BrowserContext | None = None
        self.tab = 0
        self.said: list[ConsoleMessage] = []
        self.page_errors: list[str] = []

    # ---- the browser ----

    def open(self, route: str = "", *, offline: bool = False) -> Page:
        """Start the browser and go to the app, or to a route such as ``#/check?go=0.011in``."""
        self.launch()
        self.context.set_offline(offline)
        self.page.goto(self.address + route)
        return self.page

    def launch(self) -> None:
        """Start the browser, with nothing opened yet."""
        if self._context is None:
            self._context = self._start()

    def _start(self) -> BrowserContext:
        context = self._playwright.chromium.launch_persistent_context(
            self._profile, executable_path=find(), args=self._arguments, **self._options
        )
        context.add_init_script(PHRASE_OF)
        context.on("console", lambda message: self.said.append(message))
        context.on("weberror", lambda error: self.page_errors.append(str(error.error)))
        return context

    @property
    def context(self) -> BrowserContext:
        assert self._context is not None, "the browser is closed"
        return self._context

    @property
    def page(self) -> Page:
        return self.context.pages[self.tab]

    def close(self) -> None:
        if self._context is not None:
            self._context.close()
            self._context = None

    def kill(self) -> None:
        """SIGKILL to every process of this profile, as when the battery is pulled out."""
        kill(self.processes())
        with contextlib.suppress(Error):
            self.close()
        self._context = None

    def processes(self) -> list[int]:
        """Every process of this browser."""
        return processes_of(self._profile)

    def troubles(self) -> list[str]:
        """Errors in the console and on the page."""
        said = [message.text for message in self.said if message.type == "error"]
        return [*said, *self.page_errors]

    def forgive(self) -> None:
        """Forget the troubles so far: the test wanted them."""
        self.said.clear()
        self.page_errors.clear()

    # ---- the page around the app ----

    def wait_for_view(self) -> None:
        """Wait until the app's own view stands on the screen."""
        self.page.wait_for_function(
            "() => document.body && !document.getElementById('first-picture')", timeout=LONG
        )

    def wait_until_ready_for_offline(self) -> None:
        self.page.wait_for_function("() => state.offline === 'ready'", timeout=LONG)

    def page_state(self) -> dict[str, Any]:
        """What the page last told the app; `mobile.page_bridge` has the meaning."""
        state: dict[str, Any] = json.loads(self.page.evaluate("() => JSON.stringify(state)"))
        return state

    # ---- the app ----

    def read_aloud(self) -> None:
        """Have the screen's engine describe what it paints, as it does for a screen reader."""
        self.wait_for_view()
        self.page.wait_for_selector(
            "flt-semantics-placeholder, flt-semantics", state="attached", timeout=LONG
        )
        placeholder = self.page.locator("flt-semantics-placeholder")
        if placeholder.count():
            placeholder.dispatch_event("click")
        self.page.wait_for_selector("flt-semantics", state="attached", timeout=LONG)

    def phrase(self, identifier: str, *, holding: str = "") -> str:
        """Phrase of the node with this identifier, once it holds a text."""
        self.page.wait_for_function(
            "([id, text]) => window.phraseOf(id)?.includes(text)",
            arg=[identifier, holding],
            timeout=LONG,
        )
        phrase: str = self.page.evaluate("(id) => window.phraseOf(id)", identifier)
        return phrase

    def new_phrase(self, identifier: str, before: str) -> str:
        """Phrase of a node once it is no longer the one from before a tap."""
        self.page.wait_for_function(
            "([id, before]) => ![null, before].includes(window.phraseOf(id))",
            arg=[identifier, before],
            timeout=LONG,
        )
        return self.phrase(identifier)

    def tap(self, identifier: str) -> None:
        """Tap the middle of the node with this identifier, once it stands still."""
        box = self.box(identifier)
        self.page.mouse.click(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)

    def box(self, identifier: str) -> dict[str, float]:
        """Where a node is on the screen, once it stands still."""
        self.page.wait_for_function("(id) => window.nodeOf(id)", arg=identifier, timeout=LONG)
        box: dict[str, float] = self.page.evaluate("(id) => window.stillBoxOf(id)", identifier)
        return box

    def python(self, code: str) -> Any:
        """Run code in the app's own Python; gives the value of its last expression."""
        worker = self.page.workers[0]
        return worker.evaluate(RUN_PYTHON, code)


def processes_of(profile: Path) -> list[int]:
    """Every process of the browser that was started with this profile."""
    found = []
    for entry in Path("/proc").glob("[0-9]*"):
        with contextlib.suppress(OSError):
            if str(profile).encode() in (entry / "cmdline").read_bytes():
                found.append(int(entry.name))
    return found


def kill(processes: list[int]) -> None:
    """SIGKILL, at once."""
    for process in processes:
        with contextlib.suppress(ProcessLookupError):
            os.kill(process, signal.SIGKILL)


NewPhone = Callable[..., Phone]

RUN_PYTHON = """(code) => {
  pyodide.runPython("import gc; gc.unfreeze()"); // so that a test finds what it looks for
  return pyodide.runPythonAsync(code).then((value) => value?.toJs?.() ?? value);
}"""
PHRASE_OF = """
window.nodeOf = (id) =>
  document.querySelector(`[flt-semantics-identifier="${CSS.escape(id)}"]`);
const frame = () => new Promise(requestAnimationFrame);
window.stillBoxOf = async (id) => {
  const box = () => JSON.stringify(nodeOf(id)?.getBoundingClientRect());
  for (let before, same = 0, now = box(); same < 4; before = now, now = box()) {
    same = now === before ? same + 1 : 0;
    await frame();
  }
  return JSON.parse(box());
};
window.phraseOf = (id) => {
  const node = nodeOf(id);
  if (!node) return null;
  const inner = [...node.querySelectorAll("[aria-label]")].map((each) => each.ariaLabel);
  return [node.ariaLabel, ...inner, node.textContent].filter(Boolean).join(" ");
};
"""
