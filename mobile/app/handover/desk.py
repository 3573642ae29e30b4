"""What is ready to be given away and what waits to be taken in, and what a tap does to it."""

import asyncio
from dataclasses import replace
from typing import Any

import flet as ft

from core.errors import RecordError, StandproudError
from core.records import Parcel
from core.texts import text
from mobile.app.handover.actions import forget_address, page_address
from mobile.app.handover.giving import codes_of, ready
from mobile.app.handover.state import HandOver
from mobile.app.handover.taking import WAITING, Taken, is_hand_over, take
from mobile.app.jobs import passing
from mobile.app.jobs.model import Jobs

FIRST_PICTURE = 0.05
"""Time for the screen to say that something is being made [s]."""


# ---- giving ----


async def give(jobs: Jobs) -> None:
    """Make the job in hand ready, and show the ways out."""
    jobs.go("give")
    _forget(jobs)
    await asyncio.sleep(FIRST_PICTURE)
    if jobs.book is None or jobs.job is None:
        return
    try:
        made = await ready(jobs.book, jobs.job, jobs.now(), jobs.app.address)
    except StandproudError as error:
        jobs.trouble = str(error)
        return
    jobs.hand = HandOver(ready=made, address=page_address(made.page))


def _forget(jobs: Jobs) -> None:
    if jobs.hand.address:
        forget_address(jobs.hand.address)
    jobs.hand = HandOver()


async def save(jobs: Jobs, name: str, data: bytes) -> None:
    """Have the browser save a file."""
    await ft.FilePicker().save_file(file_name=name, src_bytes=data)
    jobs.told = text("jobs.out.saved", name=name)


def show_codes(jobs: Jobs) -> None:
    """The job as codes, the first one on the screen."""
    assert jobs.job is not None
    jobs.go("codes")
    jobs.hand = replace(jobs.hand, codes=codes_of(jobs.job, jobs.app.address), number=0)


def turn(jobs: Jobs, step: int) -> None:
    """The next code, or the one before; after the last comes the first."""
    hand = jobs.hand
    jobs.hand = replace(hand, number=(hand.number + step) % max(1, len(hand.codes)))


# ---- taking ----


def paste(jobs: Jobs, typed: str) -> None:
    """What stands in the field for links."""
    jobs.hand = replace(jobs.hand, pasted=typed)


async def take_pasted(jobs: Jobs) -> None:
    """Look into the pasted text."""
    await look_into(jobs, text("taking.pasted"), jobs.hand.pasted.encode("utf-8"))


async def follow(jobs: Jobs, route: str) -> None:
    """Open a link that carries a job; any other is left alone."""
    if is_hand_over(route):
        jobs.app.link_taken()
        jobs.app.go_to("jobs")
        await look_into(jobs, text("taking.link"), route.encode("utf-8"))


async def open_and_follow(jobs: Jobs, route: str) -> None:
    """Open the book, then the link that started the app."""
    await jobs.open()
    await follow(jobs, route)


async def picked(jobs: Jobs, files: list[Any]) -> None:
    """A file was picked: a picture on the evidence, else jobs."""
    file = next(iter(files), None)
    if file is None or file.bytes is None:
        return
    if jobs.screen() == "evidence":
        await passing.add_picture(jobs, bytes(file.bytes))
    else:
        await look_into(jobs, file.name, bytes(file.bytes))


async def look_into(jobs: Jobs, name: str, data: bytes) -> None:
    """Show what a text or file would bring, or which part is missing; nothing changes."""
    try:
        taken = take(data, jobs.notes.get(WAITING))
        jobs.notes.put(WAITING, list(taken.waiting))
    except StandproudError as error:
        _told_in_vain(jobs, str(error))
        return
    if taken.parcel is None:
        _told_in_vain(jobs, taken.line)
    elif jobs.book is None:
        _told_in_vain(jobs, text("taking.no_book"))
    else:
        await _preview(jobs, name, taken.parcel, taken)


def _told_in_vain(jobs: Jobs, line: str) -> None:
    """Nothing can be shown yet: say why, where more can be pasted."""
    if jobs.book is not None:
        jobs.go("take")
    jobs.trouble = line


async def _preview(jobs: Jobs, name: str, parcel: Parcel, taken: Taken) -> None:
    try:
        await passing.show_incoming(jobs, name, parcel)
    except RecordError as error:
        jobs.trouble = str(error)
        return
    jobs.hand = replace(jobs.hand, pasted="")
    jobs.trouble = taken.line


def waiting(jobs: Jobs) -> tuple[str, ...]:
    """Parts that wait for the rest."""
    kept: Any = jobs.notes.get(WAITING)
    return tuple(map(str, kept)) if isinstance(kept, list) else ()


def drop_waiting(jobs: Jobs) -> None:
    """Forget parts that never became a whole."""
    jobs.attempt(lambda: jobs.notes.put(WAITING, None))
