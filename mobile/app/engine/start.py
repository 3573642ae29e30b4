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
from mobile.app.engine.sheet.source import Source
from mobile.app.model import App

Get = Callable[[str], Any]
Put = Callable[[str, Any], None]


def begin(app: App, get: Get, put: Put, run: Run) -> Engine:
    """Everything that was under way, from the device's own notes."""
    clamp = Clamp(
        keep=partial(put, kept.KEY),
        run=run,
        metric=lambda: app.entry.metric,
        check=lambda: known(app.entry, app.told),
    )
    clamp.restore(kept.from_json(get(kept.KEY)))
    sheet, check_sheet = _sheet(app, get, put)
    deck = deck_start.begin(get, put, lambda: app.entry.metric, run)
    return Engine(deck=deck, clamp=clamp, sheet=sheet, check_sheet=check_sheet)


def _sheet(app: App, get: Get, put: Put) -> tuple[SheetChoice, Callable[[], None]]:
    """The choice of a sheet as the check left it, and how the check comes back to it."""
    check = Source(
        basis=lambda: basis_of(app.entry, app.told),
        keep=lambda entry: put(sheet_entry.KEY, sheet_entry.as_json(entry)),
        leave=lambda: app.go_to("check"),
    )
    sheet = SheetChoice(source=check)
    sheet.restore(sheet_entry.from_json(get(sheet_entry.KEY)))

    def start() -> None:
        if sheet.source is not check:
            sheet.start(check, sheet_entry.from_json(get(sheet_entry.KEY)))
        sheet.take(sheet_entry.from_check(sheet.entry, app.entry.texts.get("gasket", "")))

    return sheet, start
