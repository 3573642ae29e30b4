"""What was typed into a form, read field by field, with every fault kept until the end."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from typing import TypeVar

from core.errors import Fault, InputError, fault, refuse
from core.units import Field, Typed, read_list, read_quantity

T = TypeVar("T")


class Entries:
    """Texts by field, and the faults found so far.

    Parameters
    ----------
    texts
        What was typed, one text or several a field; a missing or blank field is not typed.
    name
        How a sentence names a field.

    Attributes
    ----------
    echoes
        How each size that was read was understood, by field.
    """

    def __init__(self, texts: Mapping[str, Sequence[str]], name: Callable[[str], str]) -> None:
        self._texts = {
            field: [each.strip() for each in several if each.strip()]
            for field, several in texts.items()
        }
        self._name = name
        self._faults: list[Fault] = []
        self.echoes: dict[str, str] = {}

    def name_of(self, field: str) -> str:
        """How a sentence names a field."""
        return self._name(field)

    def typed(self, field: str) -> bool:
        """Whether anything stands in a field."""
        return bool(self._texts.get(field))

    def text(self, field: str) -> str | None:
        """The text of a field, if one was typed."""
        texts = self._texts.get(field)
        return texts[0] if texts else None

    def read(self, field: str, reader: Callable[[str, str], T]) -> T | None:
        """Text of a field through `reader(text, name)`; none where nothing or a fault stands."""
        text = self.text(field)
        return None if text is None else self._kept(lambda: reader(text, self._name(field)))

    def quantity(self, field: str, kind: Field) -> Typed | None:
        """One quantity."""
        typed = self.read(field, lambda text, name: read_quantity(text, replace(kind, name=name)))
        if typed is not None:
            self.echoes[field] = typed.echo
        return typed

    def value(self, field: str, kind: Field) -> float | None:
        """One size in its base unit, if one was typed."""
        typed = self.quantity(field, kind)
        return None if typed is None else typed.value

    def quantities(self, field: str, kind: Field) -> tuple[Typed, ...]:
        """A field that may be given several times."""
        named = replace(kind, name=self._name(field))
        several = [
            self._kept(partial(read_quantity, each, named)) for each in self._texts.get(field, [])
        ]
        read = tuple(each for each in several if each is not None)
        if read:
            self.echoes[field] = ", ".join(each.echo for each in read)
        return read

    def list_of(self, field: str, kind: Field) -> tuple[Typed, ...]:
        """A list in one field."""
        several = self.read(field, lambda text, name: read_list(text, replace(kind, name=name)))
        if several:
            self.echoes[field] = ", ".join(each.echo for each in several)
        return several or ()

    def sum_of(self, field: str, kind: Field, most: int) -> tuple[Typed, ...]:
        """Up to `most` sizes laid on each other: `0.010in + 0.0025in`."""
        several = self.read(
            field, lambda text, name: read_sum(text, replace(kind, name=name), most)
        )
        if several:
            self.echoes[field] = " + ".join(each.echo for each in several)
        return several or ()

    def add_fault(self, field: str, key: str, **values: object) -> None:
        """Note a fault that lies between fields."""
        self._faults.append(fault(self._name(field), key, **values))

    def attempt(self, make: Callable[[], T]) -> T | None:
        """Result of a calculation whose refusal counts as a fault of the form."""
        return self._kept(make)

    def finish(self) -> None:
        """Raise every fault at once, if there is any."""
        if self._faults:
            raise InputError(self._faults)

    def _kept(self, make: Callable[[], T]) -> T | None:
        try:
            return make()
        except InputError as error:
            self._faults.extend(self._renamed(each) for each in error.faults)
            return None

    def _renamed(self, each: Fault) -> Fault:
        """A refusal from a calculation names the field by its key; a person knows its name."""
        if each.field in self._texts:
            return Fault(
                field=self._name(each.field),
                sentence=each.sentence.replace(each.field, self._name(each.field), 1),
            )
        return each


def read_sum(text: str, kind: Field, most: int) -> tuple[Typed, ...]:
    """Sizes laid on each other, such as `0.010in + 0.0025in`.

    Raises
    ------
    InputError
        If there are more than `most`, or one cannot be read.
    """
    parts = text.split("+")
    if len(parts) > most:
        raise refuse(kind.name, "height.most_leaves", most=most)
    return tuple(read_quantity(part, kind) for part in parts)
