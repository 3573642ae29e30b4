"""What all jobs share: spools, cutters, what holds in which groove, instruments."""

from typing import Any

import flet as ft

from core.calc.fit import Measured, interference_check
from core.forms.kept_verdicts import found
from core.records.event import kind_of
from core.records.model import Instrument, ReadingKind, Spool, TestGroove
from core.records.view import live
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.texts import text
from core.texts.length import Length
from mobile.app.jobs import filing
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state.size_sheet import SHOP
from mobile.app.jobs.state.told import label_of
from mobile.app.jobs.views.findings import finding_row
from mobile.app.jobs.views.frame import (
    Screen,
    chips,
    history_key,
    quiet,
    title,
    way,
    wide_button,
)
from mobile.app.jobs.views.sizes import spool_label
from mobile.app.views.look import Look
from mobile.app.views.sizes_form import size_buttons

KINDS = {
    "spool": "spools",
    "cutter": "cutters",
    "test_groove": "test_grooves",
    "instrument": "instruments",
}
BY = (ReadingKind.CALIPER, ReadingKind.INDICATOR, ReadingKind.DEPTH_MICROMETER)
HOLDS = {"yes": True, "no": False}


def shop_screen(jobs: Jobs, look: Look) -> Screen:
    """Each kind with what is there of it, and a new one."""
    body = [part for kind in KINDS for part in _kind(jobs, kind, look)]
    return Screen(title=text("jobs.shop"), body=body)


def _kind(jobs: Jobs, kind: str, look: Look) -> list[ft.Control]:
    assert jobs.book is not None
    there = live(getattr(jobs.book.shop.shop, KINDS[kind]))
    plain = kind.replace("_", "-")
    return [
        title(look, text(f"jobs.shop.{plain}")),
        *(
            way(
                look,
                f"{plain}-{number}",
                text(f"jobs.shop.{plain}.one"),
                thing_line(jobs, each),
                lambda record=each.id: jobs.go("thing", record=record),
            )
            for number, each in enumerate(there, 1)
        ),
        wide_button(
            look,
            f"new-{plain}",
            text(f"jobs.shop.{plain}.new"),
            lambda: filing.open_new(jobs, "thing", kind, ledger="shop"),
            icon=ft.Icons.ADD,
        ),
    ]


def thing_line(jobs: Jobs, thing: Any) -> str:
    """What a thing of the shop is, in one line."""
    if isinstance(thing, Spool):
        return spool_label(thing) or text("field.empty")
    if isinstance(thing, TestGroove):
        return groove_line(jobs, thing)
    return thing.name or text("field.empty")


def groove_line(jobs: Jobs, groove: TestGroove) -> str:
    """This spool with this cutter: whether it holds, and by how much."""
    spool, cutter = _named(jobs, groove.spool), _named(jobs, groove.cutter)
    key = {True: "holds", False: "loose", None: "untold"}[groove.holds]
    much = groove.interference.typed if groove.interference else "–"
    return text(f"jobs.groove.{key}", spool=spool or "–", cutter=cutter or "–", much=much)


def _named(jobs: Jobs, record: str) -> str:
    return next((each.name for each in filing.things(jobs) if each.id == record), "")


def thing_screen(jobs: Jobs, look: Look) -> Screen:
    """One thing: its name, its sizes, and what belongs to it."""
    thing, made = filing.thing(jobs), filing.form(jobs)
    assert made is not None
    kind = kind_of(thing.id)
    form = filing.current(jobs, made)
    names = [size.name for size in SHOP[kind]]
    return Screen(
        title=text(f"jobs.shop.{kind.replace('_', '-')}.one"),
        body=[
            *_name(jobs, thing, look),
            *_parts(jobs, thing, look),
            *size_buttons(form, names, lambda step: filing.change(jobs, step), look),
            *_told(jobs, thing, look),
            history_key(jobs, thing.id, look),
            wide_button(
                look,
                "delete-thing",
                text("jobs.restore" if thing.deleted else "jobs.delete"),
                lambda: _drop(jobs, thing),
                icon=ft.Icons.DELETE_OUTLINE,
            ),
        ],
    )


def _drop(jobs: Jobs, thing: Any) -> None:
    (jobs.restore if thing.deleted else jobs.delete)(thing.id, ledger="shop")


def _name(jobs: Jobs, thing: Any, look: Look) -> list[ft.Control]:
    if isinstance(thing, TestGroove):
        return []
    label = label_of("name")
    return [
        way(
            look,
            "words-name",
            label,
            thing.name or text("field.empty"),
            lambda: filing.ask_words(jobs, thing.id, "name", label, thing.name, ledger="shop"),
            icon=ft.Icons.EDIT,
        )
    ]


def _of_instrument(jobs: Jobs, instrument: Instrument, look: Look) -> list[ft.Control]:
    kinds = [(each.value, text(f"kept.by.{each.replace(' ', '-')}")) for each in BY]
    chosen = instrument.kind.value if instrument.kind else ""
    return chips(
        look, "kind", kinds, chosen, lambda to: filing.enter_thing(jobs, kind=ReadingKind(to))
    )


def _of_groove(jobs: Jobs, groove: TestGroove, look: Look) -> list[ft.Control]:
    assert jobs.book is not None
    shop = jobs.book.shop.shop
    holds = [(key, text(f"jobs.holds.{key}")) for key in HOLDS]
    told = next((key for key, value in HOLDS.items() if value is groove.holds), "")
    return [
        quiet(look, text("jobs.groove.how")),
        *_pick(jobs, "spool", live(shop.spools), groove.spool, look),
        *_pick(jobs, "cutter", live(shop.cutters), groove.cutter, look),
        *chips(
            look,
            "holds",
            holds,
            told,
            lambda to: filing.enter_thing(jobs, holds=HOLDS[to]),
            columns=2,
        ),
    ]


def _pick(
    jobs: Jobs, field: str, things: tuple[Any, ...], chosen: str, look: Look
) -> list[ft.Control]:
    by_number = {str(number): each.id for number, each in enumerate(things, 1)}
    labels = [(str(n), each.name or text("field.empty")) for n, each in enumerate(things, 1)]
    here = next((number for number, record in by_number.items() if record == chosen), "")
    return chips(
        look, field, labels, here, lambda to: filing.enter_thing(jobs, **{field: by_number[to]})
    )


def _parts(jobs: Jobs, thing: Any, look: Look) -> list[ft.Control]:
    """What is chosen rather than typed."""
    if isinstance(thing, Instrument):
        return _of_instrument(jobs, thing, look)
    if isinstance(thing, TestGroove):
        return _of_groove(jobs, thing, look)
    return [quiet(look, text("jobs.spool.three"))] if isinstance(thing, Spool) else []


def _told(jobs: Jobs, thing: Any, look: Look) -> list[ft.Control]:
    """Whether the groove holds this spool's wire by the sizes alone."""
    if not isinstance(thing, TestGroove) or thing.width is None:
        return []
    spool = next((each for each in filing.things(jobs) if each.id == thing.spool), None)
    size = filing.spool_size(spool) if isinstance(spool, Spool) else None
    if size is None:
        return []
    wire = Measured(value=size.mm, half_width=ASSUMED_HALF_WIDTHS.wire_measured)
    width = Measured(value=thing.width.mm, half_width=ASSUMED_HALF_WIDTHS.groove_width)
    line = text("jobs.groove.by_sizes", much=Length(size.mm - thing.width.mm))
    return [quiet(look, line), finding_row(found(interference_check(wire, width)), look)]
