"""The deck screens as they were left."""

import time
from collections.abc import Awaitable, Callable
from functools import partial
from typing import Any

import flet as ft

from mobile.app.engine.deck.kept import KEY, from_json
from mobile.app.engine.deck.model import Deck


def begin(
    get: Callable[[str], Any],
    put: Callable[[str, Any], None],
    metric: Callable[[], bool],
    run: Callable[[Callable[[], Awaitable[None]]], object],
) -> Deck:
    """What was under way, from the device's own notes."""
    deck = Deck(keep=partial(put, KEY), run=run, metric=metric, today=_today, save=_save)
    deck.restore(from_json(get(KEY)))
    return deck


def _today() -> str:
    return time.strftime("%Y-%m-%d")


async def _save(name: str, data: bytes) -> None:
    await ft.FilePicker().save_file(file_name=name, src_bytes=data)
