"""From events to current values: what nobody replaced.

Adding is a set union: order, repeats and gaps are harmless. Where two people replaced the same
value without seeing each other, both values stand; one is shown, the others are offered.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from core.records.codec import same
from core.records.event import Event


@dataclass(slots=True)
class _Values:
    """Every value one field ever had."""

    all: dict[str, Event] = field(default_factory=dict)
    replaced: set[str] = field(default_factory=set)

    def add(self, event: Event) -> None:
        self.all[event.id] = event
        self.replaced.update(event.replaces)

    def standing(self) -> tuple[Event, ...]:
        """Values that nobody replaced, the one shown first."""
        standing = [event for id_, event in self.all.items() if id_ not in self.replaced]
        # Ids that name each other in a circle leave none: no honest device writes such, but
        # nothing may vanish, so then the newest is shown.
        standing = standing or [max(self.all.values(), key=lambda event: event.id)]
        return tuple(sorted(standing, key=lambda event: event.id, reverse=True))


class Fold:
    """Current values of every field of every record."""

    def __init__(self, events: Iterable[Event] = ()) -> None:
        self._events: dict[str, Event] = {}
        self._records: dict[str, dict[str, _Values]] = defaultdict(dict)
        self._first: dict[str, str] = {}
        for event in events:
            self.add(event)

    def __len__(self) -> int:
        return len(self._events)

    def __iter__(self) -> Iterator[Event]:
        return iter(self._events.values())

    def add(self, event: Event) -> bool:
        """Take an event in; whether it was new. One that is known already changes nothing."""
        if event.id in self._events:
            return False
        self._events[event.id] = event
        self._first[event.record] = min(event.id, self._first.get(event.record, event.id))
        self._records[event.record].setdefault(event.field, _Values()).add(event)
        return True

    def get(self, event_id: str) -> Event | None:
        """Event of that id, if known."""
        return self._events.get(event_id)

    def standing(self, record: str, field: str) -> tuple[Event, ...]:
        """Events nobody replaced, the one shown first; empty if the field was never entered."""
        values = self._records.get(record, {}).get(field)
        return values.standing() if values else ()

    def current(self, record: str) -> Mapping[str, Event]:
        """Event shown for each field of a record."""
        fields = self._records.get(record, {})
        return {name: fields[name].standing()[0] for name in sorted(fields)}

    def records(self) -> tuple[str, ...]:
        """Every record, in the order in which they were begun."""
        return tuple(sorted(self._first, key=lambda record: (self._first[record], record)))

    def history(self, record: str, field: str) -> tuple[Event, ...]:
        """Every value a field ever had, oldest first."""
        values = self._records.get(record, {}).get(field)
        return tuple(sorted(values.all.values(), key=lambda event: event.id)) if values else ()

    def rivals(self) -> dict[tuple[str, str], tuple[Event, ...]]:
        """Fields that have several standing values which differ."""
        contested = {}
        for record, fields in self._records.items():
            for name, values in fields.items():
                standing = distinct(values.standing())
                if len(standing) > 1:
                    contested[record, name] = standing
        return contested


def distinct(events: Iterable[Event]) -> tuple[Event, ...]:
    """Events without those whose value was there already."""
    kept: list[Event] = []
    for event in events:
        if not any(same(event.value, other.value) for other in kept):
            kept.append(event)
    return tuple(kept)
