"""A job in a few words: to read back on the phone, to send, to stamp on the block."""

from collections.abc import Iterator, Sequence
from statistics import median

from core.calc.choice import reasons
from core.calc.say import spoken
from core.forms.kept_verdicts import Finding, JudgedRing, ReadPlace
from core.forms.kept_words import place_words
from core.records.model import Cylinder, Length
from core.records.view import live
from core.report.account import ON_THE_SHEET, Account
from core.report.plain import one_line
from core.texts import text
from core.texts.length import Length as Shown
from core.texts.share import Sureness
from core.unit_types import Millimetre
from core.verdict import Verdict

MOST_TROUBLES = 3


def sentence(account: Account) -> str:
    """What to say of a job on the phone."""
    return " ".join((*_heights(account), *_troubles(account), *_sheet(account), *_face(account)))


def _heights(account: Account) -> Iterator[str]:
    read = account.read
    if not read:
        yield text("report.say.unread")
        return
    unread = sum(not ring.places for ring in account.rings)
    yield text("report.say.rings", n=len(account.rings) - unread)
    if unread:
        yield text("report.say.unread_rings", n=unread)
    yield _place("report.say.highest", *read[-1], account.metric)
    if len(read) > 1:
        yield _place("report.say.lowest", *read[0], account.metric)


def _place(key: str, ring: JudgedRing, place: ReadPlace, metric: bool) -> str:
    assert place.height
    return text(
        key,
        cylinder=one_line(ring.cylinder.number),
        place=one_line(place_words(place.place)),
        height=spoken(place.height.value, metric),
    )


def _troubles(account: Account) -> Iterator[str]:
    found = [
        each
        for ring in account.rings
        for each in ring.findings
        if each.verdict is Verdict.FAIL and each.id not in ON_THE_SHEET
    ]
    yield from (_trouble(each) for each in found[:MOST_TROUBLES])
    if len(found) > MOST_TROUBLES:
        yield text("report.say.more", n=len(found) - MOST_TROUBLES)


def _trouble(finding: Finding) -> str:
    where = (
        text("report.say.at", place=one_line(place_words(finding.place))) if finding.place else ""
    )
    return text(
        "report.say.trouble",
        cylinder=one_line(finding.cylinder),
        where=where,
        name=text(f"check.{finding.id}").lower(),
        word=text(f"word.{finding.word}").lower(),
    )


def _sheet(account: Account) -> Iterator[str]:
    if account.sheet is None:
        if account.choice:
            yield from (each.said(metric=account.metric) for each in reasons(account.choice))
        return
    on = account.on_sheet
    sheet = spoken(account.sheet.mm, account.metric)
    if on is None:
        yield text("report.say.sheet_alone", sheet=sheet)
        return
    yield text("report.say.sheet", sheet=sheet, word=text(f"word.{on.word}").lower())
    known = on.check.probability if on.check else None
    if known is not None and on.word == "run-close":
        yield text("say.sure", sure=Sureness(known))


def _face(account: Account) -> Iterator[str]:
    if account.job.head_face is None and account.sheet is not None:
        yield text("say.flat")


def stamp_line(account: Account) -> str:
    """What to stamp on the block: wire, groove depth, sheet and date, in signs that punches have.

    Examples
    --------
    A line reads ``WIRE .041 DEPTH .0308-.0311 SHEET .050 IN 2026-01-05``.
    """
    unit = "MM" if account.metric else "IN"
    cylinders = live(account.job.cylinders)
    parts = [
        ("wire", [each.wire.mm for each in cylinders if each.wire]),
        ("depth", _depths(cylinders)),
        ("sheet", [account.sheet.mm] if account.sheet else []),
    ]
    told = [
        text(f"report.stamp.{name}", size=_stamped(sizes, account.metric))
        for name, sizes in parts
        if sizes
    ]
    decided = max((each.at for each in live(account.job.decisions)), default=account.printed.at)
    return " ".join([*told, *([unit] if told else []), account.printed.day(decided)])


def _depths(cylinders: Sequence[Cylinder]) -> list[Millimetre]:
    return [depth.mm for each in cylinders for depth in each.groove_depth.values()]


def _stamped(sizes: Sequence[Millimetre], metric: bool) -> str:
    ends = dict.fromkeys(_punched(size, metric) for size in (min(sizes), max(sizes)))
    return "-".join(ends)


def _punched(size: Millimetre, metric: bool) -> str:
    if metric:
        return f"{Shown(size):mm}".rstrip("0").rstrip(".")
    return f"{Shown(size):in}".lstrip("0").removesuffix("0")


def summary(account: Account) -> str:
    """The job as a message: plain text, a line a fact."""
    job, printed = account.job, account.printed
    identity = (
        (name, one_line(getattr(job, name))) for name in ("engine", "owner", "block", "head")
    )
    lines = [
        one_line(job.title) or text("kept.untitled"),
        *(f"{text(f'kept.field.{name}')}: {value}" for name, value in identity if value),
        sentence(account),
        *(_ring_line(ring, account.metric) for ring in account.rings if ring.places),
        *_decision_lines(account),
        text("report.stamp", line=stamp_line(account)),
        text("report.made", at=printed.minute(printed.at), zone=printed.zone_name),
        text("caution.main"),
    ]
    return "\n".join(lines)


def _ring_line(ring: JudgedRing, metric: bool) -> str:
    heights = [each.height.value for each in ring.places if each.height]
    worst = ring.worst
    return text(
        "report.ring",
        cylinder=one_line(ring.cylinder.number),
        heights=", ".join(spoken(each, metric) for each in heights) or text("kept.value.none"),
        middle=spoken(median(heights), metric) if heights else "",
        word=text(f"word.{worst.word}").lower() if worst else text("report.open"),
    )


def _decision_lines(account: Account) -> Iterator[str]:
    for each in live(account.job.decisions):
        yield text(
            "report.decision",
            about=one_line(each.about) or text("kept.kind.decision"),
            chosen=one_line(chosen_words(each.chosen, each.sheet)),
            reason=one_line(each.reason),
            who=one_line(each.who) or text("kept.somebody"),
            day=account.printed.day(each.at),
        )


def chosen_words(chosen: str, sheet: Length | None) -> str:
    """What was decided: the sheet, or the words."""
    return ", ".join(filter(None, (sheet.typed if sheet else "", chosen)))
