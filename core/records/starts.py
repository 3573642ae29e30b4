"""How a job begins: from a template of the shop, or from the job before."""

from collections.abc import Callable, Mapping
from typing import Any

from core.records.model import Cylinder, Job, JobState, Template, TemplateBank
from core.records.view import JOB, live

Entries = list[tuple[str, str, Any]]
NewRecord = Callable[[str], str]
SAME_ENGINE = ("title", "engine", "owner", "block", "head")
STAYS_IN_THE_BLOCK = ("number", "bore", "centre_diameter", "wire", "spool", "joint")
STAYS_BY_PLACE = ("groove_width", "groove_depth")
SAME_FOR_ALL = ("bore", "centre_diameter", "wire")


def from_template(template: Template, new: NewRecord) -> Entries:
    """Entries that lay out a job as a template says."""
    entries: Entries = [
        (JOB, "engine", template.engine),
        (JOB, "state", JobState.PLANNED),
        (JOB, "head_face", template.head_face),
    ]
    for order, bank in enumerate(template.banks):
        entries += lay_out_bank(bank, order, _values(template, SAME_FOR_ALL), new)
    return entries


def lay_out_bank(
    bank: TemplateBank, order: int, common: Mapping[str, Any], new: NewRecord
) -> Entries:
    """Entries for one bank and its cylinders."""
    record = new("bank")
    entries: Entries = [(record, "name", bank.name), (record, "order", order)]
    for number in bank.cylinders:
        cylinder = new("cylinder")
        entries += [(cylinder, "bank", record), (cylinder, "number", number)]
        entries += [(cylinder, name, value) for name, value in common.items()]
    return entries


def from_job(job: Job, job_id: str, new: NewRecord) -> Entries:
    """Entries that start the next job on the same engine.

    What stays in the block is taken over: bores, grooves and wire, for a ring once in stays for
    good. What has to be found anew is not: head face (it carries a print now), readings, ticks,
    decisions, evidence.
    """
    entries: Entries = [(JOB, name, value) for name, value in _values(job, SAME_ENGINE).items()]
    entries += [(JOB, "state", JobState.PLANNED), (JOB, "copied_from", job_id)]
    for bank in live(job.banks):
        record = new("bank")
        entries += [(record, "name", bank.name), (record, "order", bank.order)]
        for cylinder in live(bank.cylinders):
            entries += _same_cylinder(cylinder, record, new("cylinder"))
    return entries


def template_of(job: Job) -> Mapping[str, Any]:
    """Fields of a template that lays out a job like this one."""
    banks = tuple(
        TemplateBank(name=bank.name, cylinders=tuple(each.number for each in live(bank.cylinders)))
        for bank in live(job.banks)
    )
    first = next(iter(live(job.cylinders)), None)
    common = _values(first, SAME_FOR_ALL) if first else {}
    return {"name": job.engine or job.title, "engine": job.engine, "banks": banks, **common}


def _same_cylinder(cylinder: Cylinder, bank: str, record: str) -> Entries:
    entries: Entries = [(record, "bank", bank)]
    entries += [
        (record, name, value) for name, value in _values(cylinder, STAYS_IN_THE_BLOCK).items()
    ]
    entries += [
        (record, f"{name}@{place}", length)
        for name in STAYS_BY_PLACE
        for place, length in getattr(cylinder, name).items()
    ]
    return entries


def _values(thing: object, names: tuple[str, ...]) -> dict[str, Any]:
    values = {name: getattr(thing, name) for name in names}
    return {name: value for name, value in values.items() if value not in (None, "")}
