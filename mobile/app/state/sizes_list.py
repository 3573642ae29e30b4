"""A list of sizes kept as one text, as the command line takes it."""

from core.forms.check_form import HEIGHT_FIELD, SHEET_FIELD
from core.units import read_quantity

FIELD_OF = {"shelf": SHEET_FIELD}


def parts_of(text: str) -> tuple[str, ...]:
    """The sizes of a list."""
    return tuple(part.strip() for part in text.split(";") if part.strip())


def with_size(text: str, field: str, size: str) -> str:
    """The list with one more size, thinnest first; a size that is there already stays once."""
    sizes = {_value(field, each): each for each in (size, *parts_of(text))}
    return "; ".join(sizes[value] for value in sorted(sizes))


def without_size(text: str, size: str) -> str:
    """The list with one size taken away."""
    return "; ".join(part for part in parts_of(text) if part != size)


def _value(field: str, size: str) -> float:
    return round(read_quantity(size, FIELD_OF.get(field, HEIGHT_FIELD)).value, 6)
