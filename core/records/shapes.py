"""Values of the model as JSON and back, led by the annotations of the model."""

import math
from collections.abc import Callable, Mapping
from dataclasses import MISSING, fields, is_dataclass
from enum import StrEnum
from functools import cache
from types import NoneType, UnionType
from typing import Any, Union, cast, get_args, get_origin, get_type_hints

from core.errors import InputError, refuse
from core.records.event import Json
from core.records.model import JOINED, Entry
from core.texts import text

LONGEST_TEXT = 20_000
LARGEST_COUNT = 10**9
AT = "@"
Read = Callable[[Json], Any]


class UnfitError(ValueError):
    """A kept value that this version cannot read; the value is left as it is."""


def to_json(value: Any) -> Json:
    """JSON of a value of the model; what is empty is left out of a group.

    Examples
    --------
    >>> from core.records.model import Length
    >>> to_json((Length(typed="0.012 in", mm=0.3048),))
    [{'typed': '0.012 in', 'mm': 0.3048}]
    """
    if isinstance(value, StrEnum):
        return value.value
    if isinstance(value, tuple | list):
        return [to_json(each) for each in value]
    if is_dataclass(value):
        pairs = {part.name: getattr(value, part.name) for part in fields(value)}
        return {name: to_json(part) for name, part in pairs.items() if not is_empty(part)}
    return cast(Json, value)


def is_empty(part: Any) -> bool:
    """Whether a part says nothing; zero says something."""
    return part is None or part is False or part in ((), "")


@cache
def entered_fields(kind: type[Entry]) -> Mapping[str, tuple[Any, bool]]:
    """Fields of a kind of record that events may set: annotation, and whether it is by place."""
    hints = get_type_hints(kind)
    found = {}
    for part in fields(kind):
        if part.name == "id" or JOINED in part.metadata:
            continue
        hint = hints[part.name]
        by_place = get_origin(hint) is Mapping
        found[part.name] = (get_args(hint)[1] if by_place else hint, by_place)
    return found


def read_field(kind: type[Entry], field: str, value: Json) -> Any:
    """Value of one field of a kind of record.

    Raises
    ------
    UnfitError
        If this version knows no such field, or the value does not fit it.
    """
    name, at, place = field.partition(AT)
    hint, by_place = entered_fields(cast(Any, kind)).get(name, (None, False))
    if hint is None or by_place != bool(at) or (by_place and not place):
        raise UnfitError(field)
    return reader(hint)(value)


def entered(kind: type[Entry], field: str, value: Any) -> Json:
    """JSON of a value about to be entered, once it is sure that it can be read back.

    Raises
    ------
    InputError
        If the value does not fit the field.
    """
    written = to_json(value)
    if written is None:
        return None
    try:
        read_field(kind, field, written)
    except UnfitError as error:
        raise misfit(field, error) from error
    return written


def misfit(field: str, error: UnfitError) -> InputError:
    """Error that names the field and what is wrong with the value."""
    return refuse(field.replace("_", " "), "records.unfit", reason=str(error))


@cache
def reader(hint: Any) -> Read:
    """Function that reads JSON as a value of an annotation."""
    origin = get_origin(hint)
    if origin in (Union, UnionType):
        (inner,) = (each for each in get_args(hint) if each is not NoneType)
        return reader(inner)
    if origin is tuple:
        return _tuple_reader(reader(get_args(hint)[0]))
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return _word_reader(hint)
    if is_dataclass(hint):
        return _group_reader(hint)
    return _PLAIN[hint]


def _tuple_reader(read: Read) -> Read:
    def read_tuple(value: Json) -> tuple[Any, ...]:
        if not isinstance(value, list):
            raise UnfitError(text("records.want_list"))
        return tuple(read(each) for each in value)

    return read_tuple


def _word_reader(words: type[StrEnum]) -> Read:
    def read_word(value: Json) -> StrEnum:
        try:
            return words(cast(str, value))
        except ValueError as error:
            raise UnfitError(text("records.want_word", words=", ".join(words))) from error

    return read_word


def _group_reader(group: Any) -> Read:
    hints = get_type_hints(group)
    needed = {part.name for part in fields(group) if part.default is MISSING}

    def read_group(value: Json) -> Any:
        if not isinstance(value, dict) or not needed <= set(value) <= set(hints):
            raise UnfitError(text("records.want_group", parts=", ".join(hints)))
        return group(**{name: reader(hints[name])(part) for name, part in value.items()})

    return read_group


def _text(value: Json) -> str:
    if not isinstance(value, str) or len(value) > LONGEST_TEXT:
        raise UnfitError(text("records.want_text", most=LONGEST_TEXT))
    return value


def _flag(value: Json) -> bool:
    if not isinstance(value, bool):
        raise UnfitError(text("records.want_flag"))
    return value


def _count(value: Json) -> int:
    if type(value) is not int or not 0 <= value <= LARGEST_COUNT:
        raise UnfitError(text("records.want_count", most=LARGEST_COUNT))
    return value


def _number(value: Json) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
        raise UnfitError(text("records.want_number"))
    return float(value)


_PLAIN: Mapping[Any, Read] = {str: _text, bool: _flag, int: _count, float: _number}
