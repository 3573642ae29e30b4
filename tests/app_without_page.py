"""The app without a browser: taps go to its state, and what it keeps can be read."""

import json
from collections.abc import Callable, Iterator
from typing import Any

import flet as ft
from flet.components.component import Component, Renderer
from flet.controls.context import _context_page

from mobile.app.jobs.model import Jobs
from mobile.app.model import App
from mobile.app.state.leaf_pad import PadWindow, pad_leaves
from mobile.app.views.root import root


class AppWithoutPage:
    """The app's state, with a disk that takes everything unless told otherwise.

    Parameters
    ----------
    keep
        What the disk does with a draft.
    """

    def __init__(self, keep: Callable[[Any], None] | None = None) -> None:
        self.kept: list[Any] = []
        self.answers: list[dict[str, str]] = []
        self.links_taken = 0
        self.app = App(
            keep=keep or self._keep,
            address="http://localhost/",
            use_new_version=lambda: None,
            leave_last_answer=lambda **answer: self.answers.append(answer),
            link_taken=self._take_link,
        )

    def _keep(self, draft: Any) -> None:
        self.kept.append(json.loads(json.dumps(draft)))

    def _take_link(self) -> None:
        self.links_taken += 1

    def tap_leaf(self, side: str, thou: float) -> None:
        leaves = pad_leaves(self.app.entry, self.app.told)
        nearest = min(leaves, key=lambda leaf: abs(leaf.stack.marked - thou * 0.0254))
        self.app.tap_leaf(side, nearest.stack, PadWindow())

    def type(self, field: str, keys: str) -> None:
        self.app.open_pad(field)
        self.app.clear_field()
        for key in keys:
            self.app.press(key)
        self.app.close_pad()


class NoPage:
    """What controls ask of a page while they are made."""

    @property
    def _services(self) -> "NoPage":
        return self

    def register_service(self, service: ft.Service) -> None:
        """Nothing runs here."""


def drawn(app: App) -> ft.Control:
    """What the whole window shows, components inside it drawn too."""
    token = _context_page.set(NoPage())
    try:
        return Renderer().render(root.__component_impl__, app, jobs_not_open(app))
    finally:
        _context_page.reset(token)


def jobs_not_open(app: App) -> Jobs:
    """The jobs before the book was opened."""
    missing: Any = None
    return Jobs(
        app=app,
        run=missing,
        home=missing,
        now=missing,
        notes=missing,
        windows=missing,
        picker=missing,
    )


def controls(node: Any) -> Iterator[ft.Control]:
    """Every control of a tree, a component's own included."""
    if isinstance(node, (list, tuple)):
        for each in node:
            yield from controls(each)
    elif isinstance(node, Component):
        yield from controls(Renderer().render(node.fn, *node.args, **node.kwargs))
    elif isinstance(node, ft.BaseControl):
        yield node
        for name in ("controls", "content", "shapes"):
            yield from controls(getattr(node, name, None))


def named(app: App) -> dict[str, ft.Semantics]:
    found = [
        each for each in controls(drawn(app)) if isinstance(each, ft.Semantics) and each.identifier
    ]
    names = [each.identifier for each in found]
    assert sorted(names) == sorted(set(names)), "two controls have one name"
    return {each.identifier: each for each in found}
