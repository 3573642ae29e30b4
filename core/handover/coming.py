"""What taking a hand-over would change, in words, before anything changes."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from core.forms.kept_words import field_words, record_names, record_words, value_words
from core.records.book import Incoming
from core.records.event import Event, kind_of
from core.records.fold import Fold
from core.records.model import JOB_KINDS, SHOP_KINDS
from core.records.parcel import SHOP
from core.records.shapes import UnfitError, read_field
from core.records.view import job_view
from core.texts import text

KINDS = {**JOB_KINDS, **SHOP_KINDS}


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """One field that is not the same here and there.

    Parameters
    ----------
    about
        Record and field in words.
    here
        Value here now.
    there
        What comes, and who entered it.
    both
        Whether both would stand until somebody settles it; else what comes takes the place.
    """

    about: str
    here: str
    there: str
    both: bool

    @property
    def words(self) -> str:
        """The difference as a sentence."""
        key = "handover.both" if self.both else "handover.replaced"
        return text(key, about=self.about, here=self.here, there=self.there)


@dataclass(frozen=True, slots=True, kw_only=True)
class Coming:
    """One ledger of a hand-over, ready to be shown.

    Parameters
    ----------
    title
        Of the job; of the shop where it is not one.
    headline
        Whether it is new here, known, or brings something.
    new
        What comes that is not here, kind by kind.
    differences
        Fields with a value here that is not the one that comes.
    """

    title: str
    headline: str
    new: tuple[str, ...]
    differences: tuple[Difference, ...]

    @property
    def nothing(self) -> bool:
        """Whether taking it changes nothing."""
        return not self.new and not self.differences


def coming(incoming: Incoming) -> Coming:
    """What one ledger would bring."""
    is_shop = incoming.ledger == SHOP
    title = text("handover.shop") if is_shop else incoming.title or text("kept.untitled")
    return Coming(
        title=title,
        headline=_headline(incoming),
        new=tuple(_new(incoming)),
        differences=tuple(_differences(incoming, is_shop)),
    )


def _headline(incoming: Incoming) -> str:
    if not incoming.new:
        return text("handover.known", n=incoming.known)
    if not len(incoming.before):
        return text("handover.all_new", n=incoming.new)
    return text("handover.some_new", n=incoming.new, known=incoming.known)


def _new(incoming: Incoming) -> Iterator[str]:
    """How many records of each kind begin with it."""
    begun = [each for each in incoming.after.records() if not incoming.before.current(each)]
    counts = Counter(map(kind_of, begun))
    for kind, count in counts.items():
        name = text(f"kept.kind.{kind}" if kind in KINDS else "kept.kind.other")
        yield text("handover.count", kind=name, n=count)
    if incoming.clashing:
        yield text("handover.clashing", n=len(incoming.clashing))


def _differences(incoming: Incoming, is_shop: bool) -> Iterator[Difference]:
    names = {} if is_shop else record_names(job_view(incoming.after))
    rivals = set(incoming.differs)
    for record in incoming.before.records():
        for field, here in incoming.before.current(record).items():
            others = _others(incoming.after, here)
            if others and ((record, field) in rivals or here.id not in _ids(incoming.after, here)):
                yield Difference(
                    about=f"{record_words(record, names)}, {field_words(field)}",
                    here=_value(here, names),
                    there=" · ".join(_signed(each, names) for each in others),
                    both=(record, field) in rivals,
                )


def _others(after: Fold, here: Event) -> tuple[Event, ...]:
    standing = after.standing(here.record, here.field)
    return tuple(each for each in standing if each.id != here.id and each.value != here.value)


def _ids(after: Fold, here: Event) -> Iterable[str]:
    return [each.id for each in after.standing(here.record, here.field)]


def _signed(event: Event, names: Mapping[str, str]) -> str:
    who = event.who or text("kept.somebody")
    return text("handover.signed", value=_value(event, names), who=who)


def _value(event: Event, names: Mapping[str, str]) -> str:
    return value_words(_read(event), names)


def _read(event: Event) -> Any:
    """A value as this version understands it, or as it was kept."""
    kind = KINDS.get(kind_of(event.record))
    if kind is None or event.value is None:
        return event.value
    try:
        return read_field(kind, event.field, event.value)
    except UnfitError:
        return event.value
