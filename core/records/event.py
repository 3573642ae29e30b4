"""One thing a person entered; the only thing that is ever kept."""

from dataclasses import dataclass
from typing import TypeAlias

from core.records.stamp import Stamp, read_stamp

Json: TypeAlias = bool | int | float | str | list["Json"] | dict[str, "Json"] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """One value entered for one field of one record.

    Parameters
    ----------
    id
        Stamp of the action it belongs to, and its place in that action.
    at
        What the device's own clock said [ms since 1970, UTC].
    who
        Name given to the device or the person.
    record
        What it is about: kind and key, such as ``cylinder/3fa90c11d2e4``.
    field
        Which field; ``name@place`` for a field that has a value at each place.
    value
        The value; `None` says that there is none (any more).
    replaces
        The values of this field that its author saw.
    undoes
        Action that this one takes back, if any.
    restores
        Event whose value it brings back by that, if there was one.
    """

    id: str
    at: int
    who: str
    record: str
    field: str
    value: Json
    replaces: tuple[str, ...] = ()
    undoes: str = ""
    restores: str = ""

    @property
    def origin(self) -> str:
        """Event that entered this value first: its own id, or that of what it brings back."""
        return self.restores or self.id

    @property
    def action(self) -> str:
        """Events entered by one tap share their action."""
        return self.id.rpartition(".")[0]

    @property
    def stamp(self) -> Stamp:
        """When and where it was entered."""
        return read_stamp(self.action)

    @property
    def device(self) -> str:
        """Device it was entered on, whatever the sitting."""
        return self.id.split(".")[2].partition("-")[0]


def kind_of(record: str) -> str:
    """Kind of a record, from its id."""
    return record.partition("/")[0]
