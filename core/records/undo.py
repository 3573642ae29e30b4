"""What can be taken back and done again, read off the events themselves.

An action that takes another back names it, so the two stacks are the same after the app was closed
and opened again.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from core.records.event import Event
from core.records.fold import Fold, distinct


@dataclass(frozen=True, slots=True, kw_only=True)
class Action:
    """Events entered by one tap."""

    id: str
    undoes: str
    events: tuple[Event, ...]


class UndoStacks:
    """Actions of one device that can be taken back, and those that can be done again."""

    def __init__(self, device: str) -> None:
        self._device = device
        self._done: list[Action] = []
        self._undone: list[Action] = []

    def saw(self, events: Iterable[Event]) -> None:
        """Take in events in the order in which they were kept."""
        for action in actions(event for event in events if event.device == self._device):
            self._saw(action)

    def next_undo(self, fold: Fold) -> Action | None:
        """Last action of which something still stands."""
        return _last_standing(self._done, fold)

    def next_redo(self, fold: Fold) -> Action | None:
        """Last action taken back of which something still stands."""
        return _last_standing(self._undone, fold)

    def _saw(self, action: Action) -> None:
        if not action.undoes:
            self._done.append(action)
            self._undone.clear()
        elif _drop(self._done, action.undoes):
            self._undone.append(action)
        elif _drop(self._undone, action.undoes):
            self._done.append(action)


def actions(events: Iterable[Event]) -> tuple[Action, ...]:
    """Events gathered into actions, in their order."""
    gathered: dict[str, list[Event]] = {}
    for event in events:
        gathered.setdefault(event.action, []).append(event)
    return tuple(
        Action(id=key, undoes=group[0].undoes, events=tuple(group))
        for key, group in gathered.items()
    )


@dataclass(frozen=True, slots=True)
class TakenBack:
    """One value to bring back: the event that had it, if any, and the events it replaces."""

    record: str
    field: str
    restored: Event | None
    replaces: tuple[str, ...]


def taken_back(action: Action, fold: Fold) -> tuple[TakenBack, ...]:
    """What taking an action back brings back, for all of it that still stands.

    A value that was replaced and brought back stands for itself again. Where the action settled
    rivals, each of them comes back.
    """
    found: dict[tuple[str, str, str], TakenBack] = {}
    for event in action.events:
        standing = fold.standing(event.record, event.field)
        replaces = tuple(each.id for each in standing if each.origin == event.origin)
        if not replaces:
            continue
        known = [each for each in map(fold.get, event.replaces) if each]
        for before in distinct(known) or (None,):
            key = event.record, event.field, before.origin if before else ""
            also = found[key].replaces if key in found else ()
            every = tuple(dict.fromkeys((*also, *replaces)))
            found[key] = TakenBack(event.record, event.field, before, every)
    return tuple(found.values())


def _last_standing(stack: Sequence[Action], fold: Fold) -> Action | None:
    return next((each for each in reversed(stack) if taken_back(each, fold)), None)


def _drop(stack: list[Action], id_: str) -> bool:
    for index in reversed(range(len(stack))):
        if stack[index].id == id_:
            del stack[index:]
            return True
    return False
