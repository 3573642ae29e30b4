"""One book of events: enter, correct, take back, look up who said what."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from core.records.codec import same
from core.records.event import Event, Json, kind_of
from core.records.fold import Fold
from core.records.model import Entry
from core.records.shapes import UnfitError, entered, read_field
from core.records.stamp import DAY, NOTABLE_JUMP, Clock
from core.records.store import EventStore
from core.records.undo import Action, UndoStacks, taken_back
from core.texts.sentence import Sentence

KEY_BYTES = 6
MINUTE = 60_000
DELETED = "deleted"


@dataclass(frozen=True, slots=True, kw_only=True)
class Device:
    """The device in hand: a key that never changes, and the name it was given."""

    id: str
    name: str


@dataclass(slots=True, kw_only=True)
class Pen:
    """Who writes, when, and where new keys come from; one for the whole book.

    The device may be given another name while the book is open; nothing else changes.

    Parameters
    ----------
    randomness
        Gives that many random bytes.
    """

    device: Device
    clock: Clock
    randomness: Callable[[int], bytes]

    def new_record(self, kind: str) -> str:
        """Id for a new record of a kind."""
        return f"{kind}/{self.randomness(KEY_BYTES).hex()}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One value a field had, who entered it and when [ms since 1970, UTC].

    Parameters
    ----------
    value
        The value; where this version cannot read it, as it was kept.
    stands
        Whether nobody has replaced it.
    undoes
        Whether it came by taking something back or doing it again.
    """

    event: str
    record: str
    field: str
    value: Any
    who: str
    at: int
    stands: bool
    undoes: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Rivals:
    """A field with several standing values: the one shown, and the others."""

    record: str
    field: str
    shown: Change
    others: tuple[Change, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Saved:
    """What is on the disk now, and what the person should hear about it."""

    events: tuple[Event, ...]
    told: tuple[Sentence, ...] = ()

    @property
    def record(self) -> str:
        """Record of the first entry; empty if everything stood so already."""
        return self.events[0].record if self.events else ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Merged:
    """What a merge brought.

    Parameters
    ----------
    new, known
        Events taken in, and events that were here already.
    clashing
        Ids that are here with another body; what was here stays.
    """

    new: tuple[Event, ...]
    known: int
    clashing: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Draft:
    """An event that has no stamp yet."""

    record: str
    field: str
    value: Json
    replaces: tuple[str, ...]
    restores: str = ""


class Ledger:
    """Events of one job or of the shop, on the disk and as current values.

    Parameters
    ----------
    store
        Where the events are kept.
    pen
        Who writes.
    kinds
        Kinds of record that may be entered.
    """

    def __init__(self, store: EventStore, pen: Pen, kinds: Mapping[str, type[Entry]]) -> None:
        self._store, self._pen, self._kinds = store, pen, kinds
        self._fold = Fold()
        self._stacks = UndoStacks(pen.device.id)
        self._listeners: list[Callable[[], None]] = []
        self._learn(store.events())
        self.told = (*store.told, *self._from_the_future())

    def __len__(self) -> int:
        return len(self._fold)

    def new(self, kind: str) -> str:
        """Id for a new record; nothing is entered yet."""
        return self._pen.new_record(kind)

    def add(self, kind: str, /, **fields: Any) -> str:
        """Enter a new record of a kind; returns its id when it is saved."""
        record = self.new(kind)
        self.enter(record, **fields)
        return record

    def enter(self, record: str, /, **fields: Any) -> Saved:
        """Enter values for one record; see `enter_all`."""
        return self.enter_all((record, name, value) for name, value in fields.items())

    def enter_all(self, entries: Iterable[tuple[str, str, Any]]) -> Saved:
        """Enter values for several records as one action; saved when this returns.

        Parameters
        ----------
        entries
            Record, field (``name@place`` where it has places) and value; `None` clears a field.

        Raises
        ------
        InputError
            If a value does not fit its field; nothing was entered.
        NotSaved
            If the disk did not take it; nothing was entered.
        """
        written = [
            (record, field, entered(self._kinds[kind_of(record)], field, value))
            for record, field, value in entries
        ]
        return self._keep(self._write(written))

    def delete(self, *records: str) -> Saved:
        """Mark records as deleted."""
        return self.enter_all((record, DELETED, True) for record in records)

    def restore(self, *records: str) -> Saved:
        """Take the mark off again."""
        return self.enter_all((record, DELETED, False) for record in records)

    def undo(self) -> Saved | None:
        """Take back the last action of this device that still stands; None if there is none."""
        return self._take_back(self._stacks.next_undo(self._fold))

    def redo(self) -> Saved | None:
        """Do again what was taken back last; None if there is nothing."""
        return self._take_back(self._stacks.next_redo(self._fold))

    @property
    def can_undo(self) -> bool:
        """Whether there is something to take back."""
        return self._stacks.next_undo(self._fold) is not None

    @property
    def can_redo(self) -> bool:
        """Whether there is something to do again."""
        return self._stacks.next_redo(self._fold) is not None

    def history(self, record: str, field: str) -> tuple[Change, ...]:
        """Every value a field had, oldest first."""
        return tuple(map(self._change, self._fold.history(record, field)))

    def changes(self, record: str) -> tuple[Change, ...]:
        """Everything ever entered for a record, in the order in which it was kept here."""
        return tuple(map(self._change, self._store.of(record)))

    def rivals(self) -> tuple[Rivals, ...]:
        """Fields on which people disagree."""
        return tuple(
            Rivals(
                record=record,
                field=field,
                shown=self._change(standing[0]),
                others=tuple(map(self._change, standing[1:])),
            )
            for (record, field), standing in self._fold.rivals().items()
        )

    def settle(self, choice: Change) -> Saved:
        """Let one of several standing values stand alone; the others stay in the history."""
        event = self._fold.get(choice.event)
        if event is None:
            raise KeyError(choice.event)
        standing = self._fold.standing(event.record, event.field)
        replaces = tuple(each.id for each in standing)
        draft = _Draft(event.record, event.field, event.value, replaces)
        return self._keep(self._stamped([draft]))

    def merge(self, events: Iterable[Event]) -> Merged:
        """Take in events from another device; what is known changes nothing.

        Raises
        ------
        NotSaved
            If the disk did not take them; nothing was taken in.
        """
        new: dict[str, Event] = {}
        known, clashing = 0, []
        for event in events:
            here = self._fold.get(event.id) or new.get(event.id)
            if here is None:
                new[event.id] = event
            elif alike(here, event):
                known += 1
            else:
                clashing.append(event.id)
        if new:
            self._keep(tuple(new.values()))
        return Merged(new=tuple(new.values()), known=known, clashing=tuple(clashing))

    def when_changed(self, listener: Callable[[], None]) -> None:
        """Have a function called after each change."""
        self._listeners.append(listener)

    def close(self) -> None:
        """Let go of the file."""
        self._store.close()

    @property
    def fold(self) -> Fold:
        """Every event and the current values; to be read only."""
        return self._fold

    def _write(self, entries: Iterable[tuple[str, str, Json]]) -> tuple[Event, ...]:
        """Events for what is not so already."""
        drafts = []
        last_said = {(record, field): value for record, field, value in entries}
        for (record, field), value in last_said.items():
            standing = self._fold.standing(record, field)
            says_so = standing and all(same(each.value, value) for each in standing)
            if not says_so and (standing or value is not None):
                replaces = tuple(each.id for each in standing)
                drafts.append(_Draft(record, field, value, replaces))
        return self._stamped(drafts)

    def _stamped(self, drafts: Sequence[_Draft], undoes: str = "") -> tuple[Event, ...]:
        if not drafts:
            return ()
        stamp, at = self._pen.clock.tick(), self._pen.clock.latest
        return tuple(
            Event(
                id=f"{stamp}.{index:x}",
                at=at,
                who=self._pen.device.name,
                record=draft.record,
                field=draft.field,
                value=draft.value,
                replaces=draft.replaces,
                undoes=undoes,
                restores=draft.restores,
            )
            for index, draft in enumerate(drafts)
        )

    def _take_back(self, action: Action | None) -> Saved | None:
        if action is None:
            return None
        drafts = [
            _Draft(
                each.record,
                each.field,
                each.restored.value if each.restored else None,
                each.replaces,
                each.restored.origin if each.restored else "",
            )
            for each in taken_back(action, self._fold)
        ]
        return self._keep(self._stamped(drafts, undoes=action.id))

    def _keep(self, events: tuple[Event, ...]) -> Saved:
        if events:
            self._store.insert(events)
            self._learn(events)
            for listener in self._listeners:
                listener()
        return Saved(events=events, told=self._clock_notices() if events else ())

    def _learn(self, events: tuple[Event, ...]) -> None:
        for event in events:
            self._fold.add(event)
        self._stacks.saw(events)
        if events:
            self._pen.clock.saw(max(event.stamp for event in events))

    def _clock_notices(self) -> tuple[Sentence, ...]:
        back = self._pen.clock.went_back
        if back < NOTABLE_JUMP:
            return ()
        return (Sentence("records.clock_went_back", {"minutes": round(back / MINUTE)}),)

    def _from_the_future(self) -> tuple[Sentence, ...]:
        limit = self._pen.clock.now() + DAY
        names = sorted({event.who for event in self._fold if event.at > limit})
        someone = Sentence("records.unnamed_device")
        return tuple(Sentence("records.from_the_future", {"who": n or someone}) for n in names)

    def _change(self, event: Event) -> Change:
        standing = self._fold.standing(event.record, event.field)
        return Change(
            event=event.id,
            record=event.record,
            field=event.field,
            value=self._readable(event),
            who=event.who,
            at=event.at,
            stands=event in standing,
            undoes=bool(event.undoes),
        )

    def _readable(self, event: Event) -> Any:
        kind = self._kinds.get(kind_of(event.record))
        if kind is None or event.value is None:
            return event.value
        try:
            return read_field(kind, event.field, event.value)
        except UnfitError:
            return event.value


def alike(one: Event, other: Event) -> bool:
    """Whether two events of one id have the same body."""
    return one == other and same(one.value, other.value)
