"""From current values to the frozen job and shop that a screen shows.

A value that this version cannot read stays kept and is named in `unread`: a newer phone may have
entered it.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any, TypeVar, cast

from core.records.event import Event, kind_of
from core.records.fold import Fold
from core.records.model import (
    JOB_KINDS,
    SHOP_KINDS,
    Bank,
    Cutter,
    Cylinder,
    Decision,
    Entry,
    Evidence,
    Instrument,
    Job,
    LeafSet,
    Limits,
    Reading,
    Sheet,
    Shop,
    Spool,
    Squeeze,
    StepTick,
    Template,
    TestGroove,
)
from core.records.shapes import AT, UnfitError, read_field

AnyEntry = TypeVar("AnyEntry", bound=Entry)
JOB = "job"
MEASURED = "measured"
LAST = 10**9
SIGNED = (Reading, Evidence, StepTick, Squeeze, Decision, TestGroove)


@dataclass(slots=True)
class _Entries:
    """Entries of one fold by kind, and the events that could not be read."""

    by_kind: dict[type[Entry], list[Entry]] = field(default_factory=lambda: defaultdict(list))
    unread: list[Event] = field(default_factory=list)

    def of(self, kind: type[AnyEntry]) -> tuple[AnyEntry, ...]:
        return tuple(cast(list[AnyEntry], self.by_kind[kind]))


def job_view(fold: Fold) -> Job:
    """Job as it stands; deleted parts are in it, marked."""
    entries = _read(fold, JOB_KINDS)
    readings = _grouped(entries.of(Reading), _cylinder_of)
    evidence = _grouped(entries.of(Evidence), lambda each: each.cylinder)
    on_bank = _grouped(sorted(entries.of(Cylinder), key=_in_order), lambda each: each.bank)
    banks = {each.id: each for each in entries.of(Bank)}
    for unknown in on_bank.keys() - banks.keys():
        banks[unknown] = Bank(id=unknown, order=LAST)
    known = {each.id for each in entries.of(Cylinder)}
    return replace(
        next(iter(entries.of(Job)), Job(id=JOB)),
        banks=tuple(
            replace(bank, cylinders=_with_findings(on_bank[bank.id], readings, evidence))
            for bank in sorted(banks.values(), key=lambda bank: (bank.order, bank.id))
        ),
        steps=entries.of(StepTick),
        squeezes=entries.of(Squeeze),
        decisions=entries.of(Decision),
        limits=entries.of(Limits),
        unplaced=tuple(each for key in readings.keys() - known for each in readings[key]),
        unread=tuple(entries.unread),
    )


def _with_findings(
    cylinders: Iterable[Cylinder],
    readings: Mapping[str, tuple[Reading, ...]],
    evidence: Mapping[str, tuple[Evidence, ...]],
) -> tuple[Cylinder, ...]:
    return tuple(
        replace(each, readings=readings[each.id], evidence=evidence[each.id]) for each in cylinders
    )


def _cylinder_of(reading: Reading) -> str:
    return reading.measured.cylinder if reading.measured else ""


def _in_order(cylinder: Cylinder) -> tuple[int, str, str]:
    number = int(cylinder.number) if cylinder.number.isdecimal() else LAST
    return number, cylinder.number, cylinder.id


def shop_view(fold: Fold) -> Shop:
    """What the jobs share, as it stands; deleted entries are in it, marked."""
    entries = _read(fold, SHOP_KINDS)
    return Shop(
        shelf=entries.of(Sheet),
        leaf_sets=entries.of(LeafSet),
        instruments=entries.of(Instrument),
        spools=entries.of(Spool),
        cutters=entries.of(Cutter),
        test_grooves=entries.of(TestGroove),
        templates=entries.of(Template),
        unread=tuple(entries.unread),
    )


def live(entries: Iterable[AnyEntry]) -> tuple[AnyEntry, ...]:
    """Entries that are not deleted."""
    return tuple(entry for entry in entries if not entry.deleted)


def _read(fold: Fold, kinds: Mapping[str, type[Entry]]) -> _Entries:
    entries = _Entries()
    for record in fold.records():
        kind = kinds.get(kind_of(record))
        current = {name: e for name, e in fold.current(record).items() if e.value is not None}
        if kind is None:
            entries.unread.extend(current.values())
            continue
        values, signed_by = _values(kind, current, entries.unread)
        if values:
            entry = kind(id=record, **values)
            entries.by_kind[kind].append(_sign(entry, signed_by, fold))
    return entries


def _values(
    kind: type[Entry], current: Mapping[str, Event], unread: list[Event]
) -> tuple[dict[str, Any], Event | None]:
    values: dict[str, Any] = {}
    signed_by: Event | None = None
    for name, event in current.items():
        try:
            value = read_field(kind, name, event.value)
        except UnfitError:
            unread.append(event)
            continue
        base, at, place = name.partition(AT)
        if at:
            values.setdefault(base, {})[place] = value
        else:
            values[base] = value
        if name != "deleted":
            signed_by = max(signed_by or event, event, key=lambda each: each.id)
    return values, signed_by


def _sign(entry: Entry, event: Event | None, fold: Fold) -> Entry:
    if not isinstance(entry, SIGNED) or event is None:
        return entry
    if not isinstance(entry, Reading):
        return replace(entry, who=event.who, at=event.at)
    measured = fold.standing(entry.id, MEASURED)
    if not measured:
        return entry
    corrected = measured[0].value != fold.history(entry.id, MEASURED)[0].value
    return replace(entry, who=measured[0].who, at=measured[0].at, corrected=corrected)


def _grouped(
    entries: Iterable[AnyEntry], key: Callable[[AnyEntry], str]
) -> Mapping[str, tuple[AnyEntry, ...]]:
    groups: dict[str, tuple[AnyEntry, ...]] = defaultdict(tuple)
    for entry in entries:
        groups[key(entry)] += (entry,)
    return groups
