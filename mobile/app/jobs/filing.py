"""Taps that fill in forms: sizes, words, choices; each goes to the disk when it is done."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from core.records import Book
from core.records.event import kind_of
from core.records.model import (
    SHOP_KINDS,
    Decision,
    Entry,
    Evidence,
    HeadFace,
    HeadFaceKind,
    JobState,
    Length,
    Spool,
    Squeeze,
)
from core.records.starts import template_of
from core.records.steps import Step
from core.records.view import JOB, live
from core.texts import text
from core.texts.length import Length as Shown
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state import size_sheet
from mobile.app.jobs.state.desk import Layout, Words
from mobile.app.jobs.state.size_sheet import KINDS, Size
from mobile.app.state import sizes_form as forms
from mobile.app.state.sizes_form import SizesForm

THINGS = ("spools", "cutters", "test_grooves", "instruments")
SAME_FOR_ALL = ("bore", "centre_diameter", "wire", "spool")


@dataclass(frozen=True, slots=True, kw_only=True)
class Form:
    """The sizes of one record on the screen.

    Parameters
    ----------
    write
        Puts a size on the disk where that is no field of a record of its own.
    """

    sizes: tuple[Size, ...]
    record: str = ""
    entry: Any
    ledger: str = "job"
    write: Callable[[str], bool] | None = None

    def size(self, name: str) -> Size:
        """A size by its name on the form."""
        return next(each for each in self.sizes if each.name == name)


# ---- which form is on the screen ----


def form(jobs: Jobs) -> Form | None:
    """The form of the screen in front."""
    made = _FORMS.get(jobs.screen())
    return made(jobs) if made else None


def _of_cylinder(jobs: Jobs) -> Form | None:
    cylinder = jobs.cylinder
    if cylinder is None:
        return None
    sizes = (*size_sheet.CYLINDER, *size_sheet.GROOVE)
    return Form(sizes=sizes, record=cylinder.id, entry=cylinder)


def _of_evidence(jobs: Jobs) -> Form | None:
    found = evidence(jobs)
    return Form(sizes=size_sheet.EVIDENCE, record=found.id, entry=found) if found else None


def _of_squeeze(jobs: Jobs) -> Form | None:
    found = squeeze(jobs)
    return Form(sizes=size_sheet.SQUEEZE, record=found.id, entry=found) if found else None


def _of_thing(jobs: Jobs) -> Form | None:
    found = thing(jobs)
    if found is None:
        return None
    sizes = size_sheet.SHOP[kind_of(found.id)]
    return Form(sizes=sizes, record=found.id, entry=found, ledger="shop")


def _of_face(jobs: Jobs) -> Form | None:
    face = jobs.the_job.head_face
    if face is None or face.kind is HeadFaceKind.FLAT:
        return None
    return Form(sizes=size_sheet.FACE, entry=face, write=lambda typed: choose_depth(jobs, typed))


def _of_decision(jobs: Jobs) -> Form | None:
    empty = Decision(id="")
    return Form(
        sizes=size_sheet.DECISION, entry=empty, write=lambda typed: decide_sheet(jobs, typed)
    )


_FORMS: dict[str, Callable[[Jobs], Form | None]] = {
    "identity": _of_face,
    "sheet": _of_decision,
    "sizes": _of_cylinder,
    "evidence": _of_evidence,
    "squeeze": _of_squeeze,
    "thing": _of_thing,
}


def evidence(jobs: Jobs) -> Evidence | None:
    """The evidence in hand; an empty one until something is entered."""
    cylinder = jobs.cylinder
    if cylinder is None:
        return None
    found = next((each for each in cylinder.evidence if each.id == jobs.desk.record), None)
    return found or Evidence(id=jobs.desk.record, cylinder=cylinder.id)


def squeeze(jobs: Jobs) -> Squeeze | None:
    """The trial squeeze in hand; an empty one until something is entered."""
    found = next((each for each in jobs.the_job.squeezes if each.id == jobs.desk.record), None)
    return found or Squeeze(id=jobs.desk.record)


def things(jobs: Jobs) -> Iterator[Entry]:
    """Spools, cutters, test grooves and instruments of the shop."""
    assert jobs.book is not None
    for name in THINGS:
        yield from getattr(jobs.book.shop.shop, name)


def thing(jobs: Jobs) -> Any:
    """The thing of the shop in hand; an empty one until something is entered."""
    record = jobs.desk.record
    if not record:
        return None
    found = next((each for each in things(jobs) if each.id == record), None)
    return found or SHOP_KINDS[kind_of(record)](id=record)


# ---- sizes by the number pad ----


def current(jobs: Jobs, made: Form) -> SizesForm:
    """The form as it stands: what is kept, and over it what is being typed."""
    typing = jobs.desk.sizes
    texts = size_sheet.shown(made.entry, made.sizes)
    kept = replace(typing, texts=texts, metric=jobs.app.entry.metric)
    if typing.open_field is None:
        return kept
    return forms.put(kept, typing.open_field, typing.texts.get(typing.open_field, ""))


def change(jobs: Jobs, step: Callable[[SizesForm], SizesForm]) -> None:
    """Apply a tap; a field that is left goes to the disk first, and stays open if it did not."""
    made = form(jobs)
    assert made is not None
    before = current(jobs, made)
    after = step(before)
    leaves = before.open_field is not None and after.open_field != before.open_field
    if not leaves or settle(jobs, made, before):
        jobs.move(replace(jobs.desk, sizes=after))


def settle(jobs: Jobs, made: Form, before: SizesForm) -> bool:
    """Put a typed size on the disk; what does not read changes nothing."""
    name = before.open_field or ""
    if before.typing and forms.understood(before, KINDS) is None:
        jobs.trouble = forms.told(before, KINDS)
        return False
    typed = before.texts.get(name, "")
    if typed == size_sheet.shown(made.entry, made.sizes).get(name, ""):
        return True
    if made.write:
        return made.write(typed)
    entry = size_sheet.entered(made.record, made.size(name), typed, made.entry)
    return jobs.enter([*_belongs(made), entry], made.ledger)


def _belongs(made: Form) -> list[tuple[str, str, Any]]:
    """What a record that is new needs besides: the cylinder it is about."""
    cylinder = made.entry.cylinder if isinstance(made.entry, Evidence | Squeeze) else ""
    return [(made.record, "cylinder", cylinder)] if cylinder else []


def open_new(jobs: Jobs, screen: str, kind: str, ledger: str = "job", **changes: Any) -> None:
    """A form for a record that begins with its first entry."""
    jobs.go(screen, record=jobs.ledger(ledger).new(kind), **changes)


# ---- words ----


def ask_words(
    jobs: Jobs, record: str, field: str, title: str, kept: str, ledger: str = "job"
) -> None:
    """Type a text on a screen of its own."""
    asked = Words(record=record, field=field, title=title, text=kept, ledger=ledger)
    jobs.go("words", came_from=jobs.desk.screen, words=asked)


def type_words(jobs: Jobs, typed: str) -> None:
    """What stands there so far."""
    assert jobs.desk.words is not None
    jobs.move(replace(jobs.desk, words=replace(jobs.desk.words, text=typed)))


def keep_words(jobs: Jobs) -> None:
    """Put the text on the disk and go back."""
    words = jobs.desk.words
    assert words is not None
    if words.ledger == "device":
        done = jobs.attempt(lambda: jobs.book and jobs.book.name_device(words.text.strip()))
    else:
        entry = (words.record, words.field, words.text.strip() or None)
        done = jobs.enter([*_owner(jobs, words.record), entry], words.ledger)
    if done:
        jobs.go(jobs.desk.came_from, words=None)


def _owner(jobs: Jobs, record: str) -> list[tuple[str, str, Any]]:
    """The cylinder that a new evidence is about."""
    cylinder = jobs.cylinder if kind_of(record) == "evidence" and jobs.job else None
    return [(record, "cylinder", cylinder.id)] if cylinder else []


# ---- choices ----


def choose_state(jobs: Jobs, state: JobState) -> None:
    """How far the job has come."""
    jobs.enter([(JOB, "state", state)])


def choose_face(jobs: Jobs, kind: HeadFaceKind) -> None:
    """What the wire meets in the head; a depth typed before stays."""
    before = jobs.the_job.head_face
    depth = before.depth if before and kind is not HeadFaceKind.FLAT else None
    jobs.enter([(JOB, "head_face", HeadFace(kind=kind, depth=depth))])


def choose_depth(jobs: Jobs, typed: str) -> bool:
    """How deep the print or the receiver is."""
    before = jobs.the_job.head_face
    assert before is not None
    depth = size_sheet.length_of(size_sheet.FACE[0], typed)
    return jobs.enter([(JOB, "head_face", replace(before, depth=depth))])


def decide_sheet(jobs: Jobs, typed: str) -> bool:
    """Which sheet is run, as a decision with who and when."""
    sheet = size_sheet.length_of(size_sheet.DECISION[0], typed)
    record = jobs.ledger().new("decision")
    about = text("jobs.decision.sheet")
    saved = jobs.enter([(record, "about", about), (record, "sheet", sheet)])
    if saved:
        jobs.told = text("jobs.decision.saved", sheet=typed)
    return saved


def tick(jobs: Jobs, step: Step, done: bool) -> None:
    """Tick a step, or take the tick off."""
    jobs.enter([(step.record, "done", done)])


def choose_joint(jobs: Jobs, place: str) -> None:
    """Where the joint of this ring is; the same again takes it away."""
    cylinder = jobs.cylinder
    assert cylinder is not None
    jobs.enter([(cylinder.id, "joint", None if cylinder.joint == place else place)])


def add_cylinder(jobs: Jobs) -> None:
    """One more cylinder at the end of the last bank, with the next number."""
    banks = live(jobs.the_job.banks)
    ledger = jobs.ledger()
    bank = banks[-1].id if banks else ledger.new("bank")
    named = [] if banks else [(bank, "name", text("jobs.bank.only"))]
    numbers = [int(each.number) for each in jobs.live_cylinders() if each.number.isdecimal()]
    cylinder = ledger.new("cylinder")
    number = str(max(numbers, default=0) + 1)
    jobs.enter([*named, (cylinder, "bank", bank), (cylinder, "number", number)])


def choose_spool(jobs: Jobs, spool: Spool) -> None:
    """Which spool the wire is from; its miked size is the wire's."""
    cylinder = jobs.cylinder
    assert cylinder is not None
    size = spool_size(spool)
    wire = [(cylinder.id, "wire", size)] if size else []
    jobs.enter([(cylinder.id, "spool", spool.id), *wire])


def spool_size(spool: Spool) -> Length | None:
    """Mean of what the micrometer said; else what the label says."""
    if not spool.miked:
        return spool.nominal
    mean = sum(each.mm for each in spool.miked) / len(spool.miked)
    metric = spool.miked[0].typed.endswith("mm")
    typed = f"{Shown(mean):mm} mm" if metric else f"{Shown(mean):in} in"
    return Length(typed=typed, mm=mean)


def same_for_all(jobs: Jobs) -> None:
    """Give every cylinder of the job this one's bore, centre diameter, wire and spool."""
    own = jobs.cylinder
    assert own is not None
    values = {name: getattr(own, name) for name in SAME_FOR_ALL if getattr(own, name)}
    others = [each.id for each in jobs.live_cylinders() if each.id != own.id]
    entries = [(each, name, value) for each in others for name, value in values.items()]
    if jobs.enter(entries):
        jobs.told = text("jobs.same_for_all.done", n=len(others))


def enter_thing(jobs: Jobs, **fields: Any) -> None:
    """A choice on the form of a thing of the shop."""
    jobs.enter([(jobs.desk.record, name, value) for name, value in fields.items()], "shop")


def count_annealed(jobs: Jobs, more: int) -> None:
    """How often the sheet was annealed."""
    found = evidence(jobs)
    assert found is not None
    count = max(0, (found.sheet_annealed or 0) + more)
    jobs.enter([(found.id, "cylinder", found.cylinder), (found.id, "sheet_annealed", count)])


# ---- how a job begins ----


def begin_laid_out(jobs: Jobs) -> None:
    """A new job with banks and cylinders as chosen."""
    layout = jobs.desk.layout

    async def make(book: Book) -> Any:
        job = await book.new_job(title=text("jobs.untitled"))
        for name, numbers in zip(bank_names(layout), layout.numbers(), strict=True):
            job.add_bank(name, numbers)
        return job

    jobs.run(jobs.begin, make)


def bank_names(layout: Layout) -> tuple[str, ...]:
    """What the decks of a new job are called."""
    if layout.banks == 1:
        return (text("jobs.bank.only"),)
    return (text("jobs.bank.first"), text("jobs.bank.second"))


def begin_from(jobs: Jobs, template: str) -> None:
    """A new job laid out as a template of the shop says."""
    assert jobs.book is not None
    found = next(each for each in jobs.book.shop.shop.templates if each.id == template)
    title = found.name or text("jobs.untitled")
    jobs.run(jobs.begin, lambda book: book.new_job(template=found, title=title))


def begin_next(jobs: Jobs) -> None:
    """The next job on the engine in hand."""
    title = text("jobs.next_title", title=jobs.the_job.title)
    job_id = jobs.desk.job
    jobs.run(jobs.begin, lambda book: book.duplicate(job_id, title=title))


def open_demo(jobs: Jobs) -> None:
    """The demo job."""
    jobs.run(jobs.begin, lambda book: book.add_demo())


def keep_template(jobs: Jobs) -> None:
    """Keep the job's layout as a template of the shop."""
    shop = jobs.ledger("shop")
    fields = template_of(jobs.the_job)
    record = shop.new("template")
    if jobs.enter([(record, name, value) for name, value in fields.items()], "shop"):
        jobs.told = text("jobs.template.saved", name=fields["name"])


def drop_template(jobs: Jobs, template: str) -> None:
    """Take a template away; undo of the shop brings it back."""
    jobs.delete(template, ledger="shop")


def templates(jobs: Jobs) -> tuple[Any, ...]:
    """Templates of the shop."""
    assert jobs.book is not None
    return live(jobs.book.shop.shop.templates)
