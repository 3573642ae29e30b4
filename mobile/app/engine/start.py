"""The Engine way as it was left."""

from collections.abc import Callable
from functools import partial
from typing import Any

from mobile.app.engine.clamp import kept
from mobile.app.engine.clamp.from_check import known
from mobile.app.engine.clamp.model import Clamp, Run
from mobile.app.engine.deck import start as deck_start
from mobile.app.engine.model import Engine
from mobile.app.engine.sheet import entry as sheet_entry
from mobile.app.engine.sheet.basis import basis_of
from mobile.app.engine.sheet.model import SheetChoice
from mobile.app.model import App


def begin(
    app: App, get: Callable[[str], Any], put: Callable[[str, Any], None], run: Run
) -> Engine:
    """Everything that was under way, from the device's own notes."""
    clamp = Clamp(
        keep=partial(put, kept.KEY),
        run=run,
        metric=lambda: app.entry.metric,
        check=lambda: known(app.entry, app.told),
    )
    clamp.restore(kept.from_json(get(kept.KEY)))
    sheet = SheetChoice(
        keep=partial(put, sheet_entry.KEY),
        basis=lambda: basis_of(app.entry, app.told),
        sheet_on=lambda: app.entry.texts.get("gasket", ""),
        leave=lambda: app.go_to("check"),
    )
    sheet.restore(sheet_entry.from_json(get(sheet_entry.KEY)))
    deck = deck_start.begin(get, put, lambda: app.entry.metric, run)
    return Engine(deck=deck, clamp=clamp, sheet=sheet)
