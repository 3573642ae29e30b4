"""The numbers of a job as the screen has them, and what a change of them writes into the job."""

from typing import Any

from core.errors import InputError
from core.forms.kept_engine import kept_choice
from core.forms.kept_heights import measured_size, size_at
from core.forms.limits_form import CYLINDER, KINDS, TWO_AS_ONE, WORDS, texts_of, value_of
from core.records.model import CLOCK_PLACES, Cylinder, Job, Limits, Shop
from core.records.view import live
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.texts import text
from mobile.app.engine.sheet.basis import Basis
from mobile.app.engine.sheet.entry import FIRST, SheetEntry, show_cylinder
from mobile.app.engine.sheet.fields import OF_A_CYLINDER
from mobile.app.state.sizes_form import SizesForm

Written = list[tuple[str, str, Any]]
SHARED = tuple(name for name in (*KINDS, *WORDS, TWO_AS_ONE) if name not in CYLINDER)
TOP = CLOCK_PLACES[0]


def limits_in(job: Job) -> Limits | None:
    """The job's limits; none before the first one is entered."""
    return next(iter(live(job.limits)), None)


def entry_of(job: Job) -> SheetEntry:
    """What the job keeps, ready to be shown."""
    cylinders = live(job.cylinders)
    own = {
        each.number: {
            name: typed for name, typed in texts_of(each).items() if name in OF_A_CYLINDER
        }
        for each in cylinders
    }
    limits = limits_in(job)
    shared = texts_of(limits) if limits else {}
    for name, field in (("bore", "bore"), ("centre-diameter", "centre_diameter")):
        sizes = [getattr(each, field) for each in cylinders if getattr(each, field)]
        shared |= {name: sizes[0].typed} if sizes else {}
    first = next(iter(own), FIRST)
    entry = SheetEntry(form=SizesForm(texts=shared), cylinders=own or {FIRST: {}}, cylinder=first)
    return show_cylinder(entry, first)


def basis_of_job(job: Job, shop: Shop, check: Basis) -> Basis:
    """Wire heights and shelf of the job; the check's shelf where the shop has none."""
    cylinders = live(job.cylinders)
    wired = next((each for each in cylinders if each.wire), Cylinder(id=""))
    limits = ASSUMED_HALF_WIDTHS
    try:
        kept, trouble = kept_choice(job, shop), ""
    except InputError as error:
        kept, trouble = None, str(error)
    return Basis(
        metric=check.metric,
        shelf=(kept.shelf if kept else ()) or check.shelf,
        rings=kept.engine.rings if kept else (),
        receiver=kept.engine.receiver if kept else 0.0,
        wire=measured_size(wired.wire, limits.wire_measured),
        groove_width=measured_size(size_at(wired.groove_width, TOP), limits.groove_width),
        groove_depth=measured_size(size_at(wired.groove_depth, TOP), limits.groove_depth),
        job=job.title or job.engine or text("sheet.a_job"),
        trouble=trouble,
    )


def written(job: Job, entry: SheetEntry, limits: str) -> Written:
    """What differs from the job, as it goes into its records.

    Parameters
    ----------
    limits
        Record of the limits, an own one where the job has none yet.
    """
    before = entry_of(job)
    now, then = before.form.texts, entry.form.texts
    changes: Written = [
        (limits, name.replace("-", "_"), value_of(name, then.get(name, "")))
        for name in SHARED
        if now.get(name, "") != then.get(name, "")
    ]
    for each in live(job.cylinders):
        changes += _of_cylinder(each, before, entry)
    return changes


def _of_cylinder(cylinder: Cylinder, before: SheetEntry, entry: SheetEntry) -> Written:
    now = before.cylinders.get(cylinder.number, {})
    then = entry.cylinders.get(cylinder.number, {})
    changes: Written = [
        (cylinder.id, name.replace("-", "_"), value_of(name, then.get(name, "")))
        for name in OF_A_CYLINDER
        if now.get(name, "") != then.get(name, "")
    ]
    old, new = before.form.texts.get("bore", ""), entry.form.texts.get("bore", "")
    was = cylinder.bore.typed if cylinder.bore else ""
    if old != new and was in ("", old):
        changes.append((cylinder.id, "bore", value_of("bore", new)))
    return changes
