"""A sentence as data: which text, and what fills its places."""

from dataclasses import dataclass, field

from core.texts import text


@dataclass(frozen=True, slots=True)
class Sentence:
    """Text `key` with its named places; `str()` gives it in the language in force."""

    key: str
    values: dict[str, object] = field(default_factory=dict)

    def __str__(self) -> str:
        return text(self.key, **self.values)
