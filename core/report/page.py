"""The report as one page of HTML that needs nothing else; the only jinja2 module.

Every value is escaped where it is put in, and the page itself forbids scripts, frames and anything
from elsewhere, so that what somebody typed into a field stays text.
"""

import base64
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, fields
from functools import cache
from itertools import groupby
from pathlib import Path
from typing import Any

from jinja2 import DictLoader, Environment, StrictUndefined

from core.calc.choice import SheetRow, reasons
from core.calc.gauge_card import Gauge
from core.calc.leaves import Stack
from core.calc.say import marks
from core.forms.kept_verdicts import Finding, JudgedBank, JudgedRing, worst
from core.forms.kept_words import (
    evidence_fields,
    face_words,
    field_words,
    place_words,
    reading_words,
    record_names,
    record_words,
    state_words,
    value_words,
)
from core.records.ledger import Change
from core.records.model import Cylinder, Evidence, Limits
from core.records.shapes import AT
from core.records.steps import STEPS
from core.records.view import live
from core.report.account import Account
from core.report.compared import compared
from core.report.plain import one_line, seen
from core.report.rings_picture import draw_ring
from core.report.say import chosen_words, sentence, stamp_line
from core.source import Source
from core.texts import text
from core.texts.length import Length
from core.texts.share import Share, Sureness
from core.verdict import Check

HERE = Path(__file__).resolve().parent
FILES = ("page.html", "comparison.html", "page.css")
KINDS_OF_PICTURE = (
    (b"\xff\xd8\xff", "image/jpeg"),
    (b"\x89PNG\r\n\x1a\n", "image/png"),
    (b"RIFF", "image/webp"),
)
"""First bytes and media type (RFC 2046) of what is shown; anything else is only named."""
CAUTIONS = ("main", "water", "sharp", "torque", "machinery")
QUESTIONS = (
    "interference", "held", "rocks", "seated", "tapped", "even-ring", "height-to-gasket", "bite",
)  # fmt: skip
"""Order of the columns: the order of the work."""
IDENTITY = ("engine", "owner", "block", "head")


def report_page(account: Account) -> str:
    """The whole page."""
    page = _templates().get_template("page.html")
    return page.render(account=account, job=account.job, printed=account.printed)


def comparison_page(left: Account, right: Account) -> str:
    """Two jobs side by side, as a page of its own."""
    page = _templates().get_template("comparison.html")
    return page.render(left=left, right=right, rows=compared(left, right))


@cache
def _templates() -> Environment:
    files = {name: (HERE / name).read_text("utf-8") for name in FILES}
    environment = Environment(
        loader=DictLoader(files),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=lambda value: seen(value) if type(value) is str else value,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.globals |= {**ASKED, "text": text}
    environment.filters |= FILTERS
    return environment


def amount(value: float, unit: str) -> str:
    """A value with its unit, in both systems where it is a length."""
    return f"{Share(value)}" if unit == "1" else text("amount.length", length=Length(value))


def identity(account: Account) -> Iterator[tuple[str, str]]:
    """Name and value of what the job is."""
    job = account.job
    for name in IDENTITY:
        if getattr(job, name):
            yield text(f"kept.field.{name}"), getattr(job, name)
    yield text("kept.field.head_face"), face_words(job.head_face)
    yield text("kept.field.state"), state_words(job.state)
    yield from _note(job.note)


def _note(note: str) -> Iterator[tuple[str, str]]:
    if note:
        yield text("kept.field.note"), note


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingRow:
    """One reading as a row."""

    cylinder: str
    place: str
    tapped: str
    read: str
    height: str
    over: str
    counts: bool
    corrected: bool
    who: str
    at: str


def reading_rows(account: Account, ring: JudgedRing) -> Iterator[ReadingRow]:
    """Every reading of a ring, those that count with their height."""
    places = {each.reading.id: each for each in ring.places}
    for reading in live(ring.cylinder.readings):
        kept, place = reading.measured, places.get(reading.id)
        if kept is None:
            continue
        height = place.height if place else None
        over = place.over_median if place else None
        yield ReadingRow(
            cylinder=ring.cylinder.number,
            place=place_words(kept.place),
            tapped=text(f"kept.tapped.{kept.tapped}"),
            read=reading_words(kept),
            height=text(f"report.height.{height.bound}", value=Length(height.value))
            if height
            else (place.trouble if place else ""),
            over="" if over is None else f"{Length(over).shown(metric=account.metric):small}",
            counts=place is not None,
            corrected=reading.corrected,
            who=_who(reading.who),
            at=account.printed.minute(reading.at),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class VerdictHead:
    """One question: its name, the rule it is judged by and the number of its source."""

    name: str
    rule: str
    source: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class VerdictCell:
    """One answer: verdict, word, what was compared, and how sure that is."""

    verdict: str
    word: str
    against: str
    sure: str


@dataclass(frozen=True, slots=True, kw_only=True)
class VerdictTable:
    """Verdicts of a bank: a row a ring, a column a question, and how even the rings are."""

    heads: tuple[VerdictHead, ...]
    rows: tuple[tuple[str, tuple[VerdictCell | None, ...]], ...]
    across: tuple[VerdictHead, VerdictCell] | None


def verdict_table(account: Account, bank: JudgedBank) -> VerdictTable:
    """Every verdict of a bank."""
    rings = [(ring.cylinder.number, _by_question(ring)) for ring in bank.rings]
    asked: dict[str, Finding] = {}
    for _, answers in rings:
        asked = {**answers, **asked}
    order = [each for each in QUESTIONS if each in asked]
    order += [each for each in asked if each not in QUESTIONS]
    across = bank.across
    return VerdictTable(
        heads=tuple(_head(asked[each], account) for each in order),
        rows=tuple(
            (number, tuple(_cell(answers.get(each), account) for each in order))
            for number, answers in rings
        ),
        across=(_head(across, account), _answer(across, account)) if across else None,
    )


def _by_question(ring: JudgedRing) -> dict[str, Finding]:
    """The finding that decides each question."""
    every = sorted((*ring.findings, *ring.hammer), key=lambda each: each.id)
    groups = groupby(every, key=lambda each: each.id)
    return {name: found for name, group in groups if (found := worst(group))}


def _head(finding: Finding, account: Account) -> VerdictHead:
    check = finding.check
    return VerdictHead(
        name=text(f"check.{finding.id}"),
        rule=text(f"rule.{check.rule}") if check else "",
        source=source_lines(account).index(str(check.source)) + 1 if check else None,
    )


def _cell(finding: Finding | None, account: Account) -> VerdictCell | None:
    return None if finding is None else _answer(finding, account)


def _answer(finding: Finding, account: Account) -> VerdictCell:
    check = finding.check
    sure = check.probability if check else None
    place = text("report.say.at", place=place_words(finding.place)) if finding.place else ""
    return VerdictCell(
        verdict=finding.verdict.value,
        word=text(f"word.{finding.word}"),
        against=f"{_against(check, account)}{place}".strip() if check else place.strip(),
        sure="" if sure is None else text("report.sure", sure=Sureness(sure)),
    )


def _against(check: Check, account: Account) -> str:
    return text(
        "table.against",
        value=_short(check.value, check.unit, account.metric),
        limit=_short(check.limit, check.unit, account.metric),
    )


def _short(value: float, unit: str, metric: bool) -> str:
    """A value in the one unit of the report."""
    return f"{Share(value)}" if unit == "1" else f"{Length(value).shown(metric=metric):small}"


def groove_rows(cylinder: Cylinder) -> Iterator[tuple[str, str]]:
    """Sizes of a cylinder's wire and groove, name and value."""
    for name in ("bore", "centre_diameter", "wire"):
        size = getattr(cylinder, name)
        if size:
            yield text(f"kept.field.{name}"), size.typed
    for name in ("groove_width", "groove_depth"):
        sizes = getattr(cylinder, name)
        if sizes:
            told = (f"{size.typed} ({place_words(place)})" for place, size in sizes.items())
            yield text(f"kept.field.{name}"), " · ".join(told)
    if cylinder.joint:
        yield text("kept.field.joint"), place_words(cylinder.joint)


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetLine:
    """One sheet of the shelf as a row."""

    size: str
    verdict: str
    word: str
    excluded: str
    head: str
    run: bool


def sheet_lines(account: Account) -> Iterator[SheetLine]:
    """Every sheet against everything that limits it."""
    choice = account.choice
    for row in choice.rows if choice else ():
        yield _sheet_line(row, account)


def _sheet_line(row: SheetRow, account: Account) -> SheetLine:
    word = text(f"word.{row.fit.word}") if row.fit else text("word.undecided")
    share = f"{row.fit.share:.0%} " if row.fit else ""
    excluded = (text(f"windows.name.{part}") for part in row.excluded_by)
    return SheetLine(
        size=amount(row.candidate.sheet.thickness, "mm"),
        verdict=row.verdict.value,
        word=f"{share}{word}",
        excluded=", ".join(excluded),
        head=row.card.head.said(metric=account.metric) if row.card else "",
        run=account.choice is not None and row is account.choice.run,
    )


def reason_lines(account: Account) -> Iterator[str]:
    """What the readings and limits say to do, every window, and what was left out."""
    choice = account.choice
    if choice is None:
        yield account.choice_trouble
        return
    yield from (each.said(metric=account.metric) for each in reasons(choice))
    yield from (each.sentence.said(metric=account.metric) for each in choice.windows)
    yield from (each.because for each in choice.left_out)


def decision_rows(account: Account) -> Iterator[tuple[str, str, str, str]]:
    """What was decided, chosen, why, by whom and when."""
    for each in live(account.job.decisions):
        signed = f"{_who(each.who)}, {account.printed.minute(each.at)}"
        yield each.about, chosen_words(each.chosen, each.sheet), each.reason, signed


def limit_rows(account: Account) -> Iterator[tuple[str, str]]:
    """What limits the sheet besides the wire, as entered."""
    for limits in live(account.job.limits):
        for part in fields(Limits):
            value = getattr(limits, part.name)
            if part.name not in ("id", "deleted", "note") and value not in (None, "", False):
                yield text(f"kept.field.{part.name}"), value_words(value)


def evidence_rows(evidence: Evidence) -> Iterator[tuple[str, str]]:
    """What one cylinder showed, name and value at each place."""
    for name, by_place in evidence_fields(evidence):
        told = (f"{value_words(value)} ({place_words(place)})" for place, value in by_place.items())
        yield text(f"kept.field.{name}"), " · ".join(told)
    if evidence.sheet_annealed is not None:
        yield text("kept.field.sheet_annealed"), str(evidence.sheet_annealed)
    yield from _note(evidence.note)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A picture; without an address it is only named."""

    caption: str
    address: str


def pictures_of(account: Account, evidence: Evidence) -> Iterator[Shown]:
    """Pictures of one cylinder, each inside the page itself."""
    for name, caption in evidence.pictures.items():
        yield Shown(caption=caption, address=_inside(account.pictures.get(name)))


def _inside(data: bytes | None) -> str:
    for start, kind in KINDS_OF_PICTURE:
        if data and data.startswith(start):
            return f"data:{kind};base64,{base64.b64encode(data).decode()}"
    return ""


def step_rows(account: Account) -> Iterator[tuple[str, bool, str]]:
    """Every step, whether it was done, by whom and when."""
    ticks = {each.id: each for each in live(account.job.steps)}
    for step in STEPS:
        tick = ticks.get(step.record)
        done = tick is not None and tick.done
        signed = f"{_who(tick.who)}, {account.printed.minute(tick.at)}" if tick and done else ""
        yield step.words, done, signed


def squeeze_rows(account: Account) -> Iterator[tuple[str, str, str]]:
    """Trial squeezes: cylinder, sheet and print, by whom and when."""
    numbers = {each.id: each.number for each in account.job.cylinders}
    for each in live(account.job.squeezes):
        prints = ", ".join(
            f"{size.typed} ({place_words(place)})" for place, size in each.print_depth.items()
        )
        sheet = each.sheet.typed if each.sheet else ""
        whose = text("kept.record.cylinder", number=numbers.get(each.cylinder, ""))
        signed = f"{_who(each.who)}, {account.printed.minute(each.at)}"
        yield whose, text("report.squeeze", sheet=sheet, prints=prints), signed


def gauge_row(gauge: Gauge, account: Account) -> tuple[str, str, str]:
    """Sheet, leaf that must go, leaf that must not."""
    size = amount(gauge.sheet.thickness, "mm")
    if not gauge.takes_any:
        return size, text("table.takes_none"), ""
    metric = account.leaf_set.metric
    return size, _leaves(gauge.must_go, metric), _leaves(gauge.must_not_go, metric)


def _leaves(stack: Stack | None, metric: bool) -> str:
    return text("table.no_leaf") if stack is None else " + ".join(marks(stack, metric))


@dataclass(frozen=True, slots=True, kw_only=True)
class HistoryLine:
    """What one tap entered."""

    at: str
    who: str
    what: str


def history(account: Account) -> Iterator[HistoryLine]:
    """Everything that was entered, tap by tap."""
    names = record_names(account.job)
    for _, tap in groupby(account.changes, key=lambda each: each.event.rpartition(".")[0]):
        changes = list(tap)
        yield HistoryLine(
            at=account.printed.minute(changes[0].at),
            who=_who(changes[0].who),
            what=" · ".join(_of_records(changes, names)),
        )


def _of_records(changes: Sequence[Change], names: Mapping[str, str]) -> Iterator[str]:
    for record, group in groupby(changes, key=lambda each: each.record):
        told = [_entered(each, names) for each in group if each.field != "bank"]
        yield f"{record_words(record, names)}: {', '.join(told)}"


def _entered(change: Change, names: Mapping[str, str]) -> str:
    base = change.field.partition(AT)[0]
    value = text("report.picture") if base == "pictures" else value_words(change.value, names)
    key = "report.entered" if change.value is not None else "report.taken_out"
    key = "report.undone" if change.undoes else key
    return text(key, field=field_words(change.field), value=value)


def rival_rows(account: Account) -> Iterator[tuple[str, str, str]]:
    """Where entries disagree: what it is about, the value shown, the others."""
    names = record_names(account.job)
    for each in account.rivals:
        about = f"{record_words(each.record, names)}, {field_words(each.field)}"
        yield (
            about,
            _said(each.shown, names),
            " · ".join(_said(other, names) for other in each.others),
        )


def _said(change: Change, names: Mapping[str, str]) -> str:
    return f"{value_words(change.value, names)} ({_who(change.who)})"


def source_lines(account: Account) -> tuple[str, ...]:
    """Sources of every verdict and window, each once; verdicts name them by their number."""
    found: list[Source] = [
        each.check.source
        for bank in account.banks
        for each in (*_findings(bank), *([bank.across] if bank.across else []))
        if each.check
    ]
    found += [each.source for each in account.choice.windows] if account.choice else []
    return tuple(dict.fromkeys(map(str, found)))


def _findings(bank: JudgedBank) -> Iterator[Finding]:
    for ring in bank.rings:
        yield from (*ring.findings, *ring.hammer)


def _who(who: str) -> str:
    return one_line(who) or text("kept.somebody")


ASKED: dict[str, Any] = {
    "CAUTIONS": CAUTIONS,
    "decision_rows": decision_rows,
    "draw_ring": draw_ring,
    "evidence_rows": evidence_rows,
    "gauge_row": gauge_row,
    "groove_rows": groove_rows,
    "history": history,
    "identity": identity,
    "limit_rows": limit_rows,
    "live": live,
    "pictures_of": pictures_of,
    "reading_rows": reading_rows,
    "reason_lines": reason_lines,
    "rival_rows": rival_rows,
    "sentence": sentence,
    "sheet_lines": sheet_lines,
    "source_lines": source_lines,
    "squeeze_rows": squeeze_rows,
    "stamp_line": stamp_line,
    "step_rows": step_rows,
    "verdict_table": verdict_table,
}
"""What the page asks; it calculates nothing itself."""
FILTERS: dict[str, Any] = {"one_line": one_line}
