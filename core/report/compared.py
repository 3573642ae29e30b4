"""Two jobs side by side: what is the same, and what is not."""

from collections.abc import Iterator
from dataclasses import dataclass

from core.calc.say import spoken
from core.forms.kept_verdicts import JudgedRing
from core.forms.kept_words import face_words, place_words, state_words
from core.records.model import Length
from core.records.view import live
from core.report.account import Account
from core.report.say import chosen_words
from core.texts import text
from core.texts.length import Length as Shown

IDENTITY = ("title", "engine", "owner", "block", "head")


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """One line of a comparison."""

    what: str
    left: str
    right: str

    @property
    def same(self) -> bool:
        """Whether both say the same."""
        return self.left == self.right


def compared(left: Account, right: Account) -> tuple[Compared, ...]:
    """Everything worth comparing, in the order of the work; what neither has is left out."""
    both = (dict(_lines(left)), dict(_lines(right)))
    order = dict.fromkeys((*both[0], *both[1]))
    rows = [
        Compared(what=what, left=both[0].get(what, ""), right=both[1].get(what, ""))
        for what in order
    ]
    return tuple(row for row in rows if row.left or row.right)


def _lines(account: Account) -> Iterator[tuple[str, str]]:
    job = account.job
    yield from ((text(f"kept.field.{name}"), getattr(job, name)) for name in IDENTITY)
    yield text("kept.field.state"), state_words(job.state)
    yield text("kept.field.head_face"), face_words(job.head_face)
    yield text("compare.sheet"), account.sheet.typed if account.sheet else ""
    yield from _decisions(account)
    yield text("kept.field.wire"), _range([each.wire for each in live(job.cylinders)], account)
    yield (
        text("kept.field.groove_depth"),
        _range(
            [size for each in live(job.cylinders) for size in each.groove_depth.values()], account
        ),
    )
    yield from _ends(account)
    for ring in account.rings:
        yield text("kept.record.cylinder", number=ring.cylinder.number), _ring(ring, account)


def _decisions(account: Account) -> Iterator[tuple[str, str]]:
    for each in live(account.job.decisions):
        chosen = chosen_words(each.chosen, each.sheet)
        yield (
            each.about or text("kept.kind.decision"),
            " · ".join(filter(None, (chosen, each.reason))),
        )


def _range(sizes: list[Length | None], account: Account) -> str:
    found = sorted(each.mm for each in sizes if each)
    ends = dict.fromkeys(f"{Shown(mm).shown(metric=account.metric):size}" for mm in found)
    return " – ".join(dict.fromkeys((*list(ends)[:1], *list(ends)[-1:])))


def _ends(account: Account) -> Iterator[tuple[str, str]]:
    for key, end in (("compare.highest", account.read[-1:]), ("compare.lowest", account.read[:1])):
        for ring, place in end:
            assert place.height
            height = spoken(place.height.value, account.metric)
            where = place_words(place.place)
            yield (
                text(key),
                text("compare.at", height=height, cylinder=ring.cylinder.number, place=where),
            )


def _ring(ring: JudgedRing, account: Account) -> str:
    middle = "" if ring.median is None else spoken(ring.median, account.metric)
    word = text(f"word.{ring.worst.word}").lower() if ring.worst else text("report.open")
    return text("compare.ring", middle=middle, word=word) if middle else word
