"""A sentence as data: which text, and what fills its places."""

from dataclasses import dataclass, field

from core.texts import text
from core.texts.length import Length


@dataclass(frozen=True, slots=True)
class Sentence:
    """Text `key` with its named places; `str()` gives it in the language in force, in inch."""

    key: str
    values: dict[str, object] = field(default_factory=dict)

    def __str__(self) -> str:
        return text(self.key, **self.values)

    def said(self, *, metric: bool) -> str:
        """The sentence for whoever works in mm, or in inch."""
        values = {name: _in_units(each, metric) for name, each in self.values.items()}
        return text(self.key, **values)


def _in_units(value: object, metric: bool) -> object:
    if isinstance(value, Sentence):
        return value.said(metric=metric)
    return value.shown(metric=metric) if isinstance(value, Length) else value
