"""What can go wrong, as one tree.

::

    StandproudError
    ├── InputError          entries that cannot be calculated: every fault at once, each by field
    └── RecordError         a kept file or record that cannot be used
        ├── NewerFormat     written by a newer version; refused whole and left untouched
        ├── DamagedFile     not what was written; says where
        ├── StoreBusy       another window holds the book
        └── NotSaved        the disk did not take it; nothing was shown as saved
"""

from collections.abc import Iterable
from dataclasses import dataclass

from core.texts import text


class StandproudError(Exception):
    """Anything this program raises on purpose."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One entry that cannot be used, and the sentence that says what to type instead."""

    field: str
    sentence: str


def fault(field: str, key: str, **values: object) -> Fault:
    """Fault of `field` whose sentence is the text `key`; the sentence starts with the field."""
    return Fault(field=field, sentence=f"{field}: {text(key, **values)}")


class InputError(StandproudError):
    """Entries that cannot be calculated.

    Parameters
    ----------
    faults
        One fault or more, in the order of the form.
    """

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__(" ".join(each.sentence for each in self.faults))


def refuse(field: str, key: str, **values: object) -> InputError:
    """Error for a single entry, ready to be raised."""
    return InputError([fault(field, key, **values)])


class RecordError(StandproudError):
    """A kept file or record that cannot be used."""


class NewerFormat(RecordError):
    """Written by a newer version; refused whole and left untouched."""


class DamagedFile(RecordError):
    """Not what was written."""


class StoreBusy(RecordError):
    """Another window holds the book."""


class NotSaved(RecordError):
    """The disk did not take it."""
