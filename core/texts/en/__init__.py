"""English, one file an area; a key starts with the name of its area."""

from core.texts.en import number, records

TEXTS: dict[str, str] = {**number.TEXTS, **records.TEXTS}
