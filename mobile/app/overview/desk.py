"""What is chosen of the list, what was read for it, and which job is compared."""

import asyncio
from dataclasses import replace

from core.errors import RecordError
from core.records import JobLine
from core.report.compared import compared
from core.report.page import comparison_page
from core.texts import text
from mobile.app.handover.actions import forget_address, page_address
from mobile.app.handover.giving import told_of
from mobile.app.jobs.model import Jobs
from mobile.app.overview.narrowed import Narrowed, facts_of, lacking, narrow

STEPS = {"Arrow Down": 1, "Arrow Up": -1}
JOBS_A_BREATH = 10
"""Jobs read between two chances for the screen to answer."""


def lines(jobs: Jobs) -> tuple[JobLine, ...]:
    """Jobs of the list: those that hold the words typed, narrowed."""
    view = jobs.overview
    return narrow(jobs.lines(), view.chosen, view.facts, jobs.now())


def choose(jobs: Jobs, **changes: str) -> None:
    """Choose; the same again lets everything through."""
    now = jobs.overview.chosen
    undone = {name: "" if getattr(now, name) == each else each for name, each in changes.items()}
    jobs.overview = replace(jobs.overview, chosen=replace(now, **undone))


def choose_all(jobs: Jobs) -> None:
    """Let everything through."""
    jobs.overview = replace(jobs.overview, chosen=Narrowed())


async def open_choices(jobs: Jobs) -> None:
    """Show what can be chosen, and read the jobs for verdicts and people."""
    jobs.go("narrow")
    await read_facts(jobs)


async def read_facts(jobs: Jobs) -> None:
    """Read every job of which the verdict or the people are not known."""
    assert jobs.book is not None
    found = dict(jobs.overview.facts)
    to_read = lacking(jobs.book.jobs(), found)
    for number, line in enumerate(to_read):
        try:
            fold = await jobs.book.events_of(line.id)
        except RecordError:
            continue
        found[line.id] = facts_of(line.stamp, fold, jobs.book.shop.shop)
        if number % JOBS_A_BREATH == 0:
            jobs.overview = replace(jobs.overview, facts=dict(found), to_read=len(to_read) - number)
            await asyncio.sleep(0)
    jobs.overview = replace(jobs.overview, facts=found, to_read=0)


def open_comparison(jobs: Jobs) -> None:
    """Ask which job the one in hand is held against."""
    if jobs.overview.address:
        forget_address(jobs.overview.address)
    jobs.overview = replace(jobs.overview, with_job="", rows=(), address="")
    jobs.go("compare")


async def compare(jobs: Jobs, other: str) -> None:
    """Hold the job in hand against another one."""
    assert jobs.book is not None
    assert jobs.job is not None
    here = other in jobs.book.open_jobs
    try:
        book = await jobs.book.open_job(other)
        mine, theirs = [await told_of(jobs.book, each, jobs.now()) for each in (jobs.job, book)]
    except RecordError as error:
        jobs.trouble = str(error)
        return
    if not here:
        jobs.book.leave(other)
    title = theirs.job.title or text("kept.untitled")
    jobs.overview = replace(
        jobs.overview,
        with_job=title,
        rows=compared(mine, theirs),
        address=page_address(comparison_page(mine, theirs).encode("utf-8")),
    )


def strike(jobs: Jobs, key: str) -> None:
    """A key of a real keyboard: Escape leads back, the arrows go through the list."""
    if jobs.book is None:
        return
    if key == "Escape" and jobs.screen() != "list":
        jobs.back()
    elif key in STEPS and jobs.screen() in ("list", "job"):
        _open_beside(jobs, STEPS[key])


def _open_beside(jobs: Jobs, step: int) -> None:
    """The job after the one in hand, or before it; without one the first or the last."""
    shown = [each.id for each in lines(jobs)]
    if not shown:
        return
    here = shown.index(jobs.desk.job) if jobs.desk.job in shown else None
    at = (0 if step > 0 else -1) if here is None else min(max(here + step, 0), len(shown) - 1)
    if shown[at] != jobs.desk.job:
        jobs.leave_job()
        jobs.run(jobs.open_job, shown[at])
