"""Events as JSON and back, without loss and without trust."""

import json
import math
import re
from typing import Any, cast

from core.records.event import Event, Json
from core.records.stamp import PATTERN

FORMAT = 1
"""Format that this version writes; it reads every earlier one."""
EVENT_ID = re.compile(PATTERN.pattern + r"\.[0-9a-f]{1,4}")
RECORD = re.compile(r"[a-z_]{1,32}(/[a-z0-9_.-]{1,64})?")
FIELD = re.compile(r"[a-z_]{1,48}(@[^\x00-\x1f]{1,64})?")
LATEST = 0xFFFFFFFFFFF
LONGEST_NAME = 200


def to_bytes(value: Json | dict[str, Any] | list[Any]) -> bytes:
    """Shortest JSON of a value; NaN and infinity never pass.

    Raises
    ------
    ValueError
        If a number is not finite.
    """
    written = json.dumps(value, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    return written.encode("utf-8")


def from_bytes(data: bytes) -> Json:
    """Value from its JSON.

    Raises
    ------
    ValueError
        If it is not JSON, too deep, or holds a number that is not finite.
    """
    try:
        return cast(Json, json.loads(data, parse_constant=_refuse, parse_float=_finite))
    except RecursionError as error:
        raise ValueError("nested too deep") from error


def same(one: Json, other: Json) -> bool:
    """Whether two values would be written alike (1, 1.0 and true differ)."""
    return json.dumps(one, sort_keys=True) == json.dumps(other, sort_keys=True)


def event_to_json(event: Event) -> dict[str, Json]:
    """Document of an event; what is empty is left out."""
    document: dict[str, Json] = {
        "id": event.id,
        "at": event.at,
        "who": event.who,
        "record": event.record,
        "field": event.field,
        "value": event.value,
    }
    if event.replaces:
        document["replaces"] = list(event.replaces)
    if event.undoes:
        document["undoes"] = event.undoes
    if event.restores:
        document["restores"] = event.restores
    return document


def event_from_json(document: Json) -> Event:
    """Event from its document.

    Raises
    ------
    ValueError
        If it is no event.
    """
    if not isinstance(document, dict):
        raise ValueError("not an event")
    parts: dict[str, Any] = dict(document)
    if isinstance(parts.get("replaces"), list):
        parts["replaces"] = tuple(parts["replaces"])
    try:
        event = Event(**parts)
    except TypeError as error:
        raise ValueError("not the parts of an event") from error
    _check(event)
    return event


def _check(event: Event) -> None:
    _fits("id", EVENT_ID, event.id)
    _fits("record", RECORD, event.record)
    _fits("field", FIELD, event.field)
    if type(event.at) is not int or not 0 <= event.at <= LATEST:
        raise ValueError("at")
    if not isinstance(event.who, str) or len(event.who) > LONGEST_NAME:
        raise ValueError("who")
    if not isinstance(event.replaces, tuple):
        raise ValueError("replaces")
    for each in event.replaces:
        _fits("replaces", EVENT_ID, each)
    if event.undoes:
        _fits("undoes", PATTERN, event.undoes)
    if event.restores:
        _fits("restores", EVENT_ID, event.restores)


def _fits(part: str, pattern: re.Pattern[str], value: object) -> None:
    if not isinstance(value, str) or not pattern.fullmatch(value):
        raise ValueError(part)


def _refuse(constant: str) -> float:
    raise ValueError(constant)


def _finite(written: str) -> float:
    number = float(written)
    if not math.isfinite(number):
        raise ValueError(written)
    return number
