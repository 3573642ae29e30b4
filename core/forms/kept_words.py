"""What is kept, in words: records, fields, places and values as a person names them."""

from collections.abc import Callable, Mapping
from enum import StrEnum
from typing import Any

from core.records.event import kind_of
from core.records.model import (
    Amount,
    Evidence,
    HeadFace,
    HeadFaceKind,
    Job,
    Length,
    Measured,
    Place,
    Reading,
    TemplateBank,
)
from core.records.shapes import AT
from core.records.steps import STEPS
from core.texts import text
from core.texts.en import TEXTS

PICTURES = "pictures"


def place_words(place: Place) -> str:
    """A place as it is said.

    Examples
    --------
    >>> place_words("3"), place_words("joint before")
    ("3 o'clock", 'before the joint')
    """
    if place.isdecimal():
        return text("kept.place.clock", hour=place)
    known = {"bridge", "joint before", "joint after"}
    return text(f"kept.place.{_key(place)}") if place in known else place


def state_words(state: str) -> str:
    """How far a job has come."""
    return text(f"kept.state.{_key(state)}")


def reading_words(measured: Measured) -> str:
    """What was read at one place."""
    if measured.rocks:
        return text("kept.read.rocks")
    if measured.values:
        values = ", ".join(each.typed for each in measured.values)
        return text("kept.read.value", value=values, by=text(f"kept.by.{_key(measured.kind)}"))
    leaves = {
        "go": measured.go.typed if measured.go else "",
        "no_go": measured.no_go.typed if measured.no_go else "",
    }
    return text(f"kept.read.{_sides(measured)}", **leaves)


def _sides(measured: Measured) -> str:
    if measured.go and measured.no_go:
        return "both"
    if measured.go:
        return "goes"
    return "stops" if measured.no_go else "nothing"


def face_words(face: HeadFace | None) -> str:
    """What the wire meets in the head."""
    if face is None:
        return text("kept.face.unanswered")
    depth = f" {face.depth.typed}" if face.depth and face.kind is not HeadFaceKind.FLAT else ""
    return text(f"kept.face.{face.kind}") + depth


def field_words(field: str) -> str:
    """Name of a field, with its place; one that only a newer version knows keeps its own.

    Examples
    --------
    >>> field_words("groove_width@3"), field_words("colour")
    ("groove width at 3 o'clock", 'colour')
    """
    base, at, place = field.partition(AT)
    known = f"kept.field.{base}"
    name = text(known) if known in TEXTS else base
    if base == PICTURES or not at:
        return name
    return text("kept.field_at", name=name, place=place_words(place))


def value_words(value: Any, names: Mapping[str, str] | None = None) -> str:
    """A value of any field in words.

    Parameters
    ----------
    names
        What records are called, for a value that refers to one.
    """
    if isinstance(value, str) and not isinstance(value, StrEnum):
        return (names or {}).get(value, value)
    for kind, words in _WORDS:
        if isinstance(value, kind):
            return words(value)
    return str(value)


def record_names(job: Job) -> dict[str, str]:
    """What each record of a job is called."""
    names = {job.id: text("kept.record.job"), "limits": text("kept.record.limits")}
    names |= {step.record: text("kept.record.step", step=step.words) for step in STEPS}
    for bank in job.banks:
        names[bank.id] = text("kept.record.bank", name=bank.name)
        for cylinder in bank.cylinders:
            own = text("kept.record.cylinder", number=cylinder.number)
            names[cylinder.id] = own
            names |= {each.id: _reading(each, own) for each in cylinder.readings}
            names |= {each.id: _of("evidence", own) for each in cylinder.evidence}
    names |= {each.id: _reading(each, "") for each in job.unplaced}
    names |= {each.id: _of("squeeze", names.get(each.cylinder, "")) for each in job.squeezes}
    names |= {each.id: _of("decision", each.about) for each in job.decisions}
    return names


def record_words(record: str, names: Mapping[str, str]) -> str:
    """What a record is called; its kind where it has no name."""
    kind = kind_of(record)
    return names.get(record) or text(f"kept.kind.{kind}" if kind in KINDS else "kept.kind.other")


KINDS = (
    "job", "bank", "cylinder", "reading", "evidence", "step", "squeeze", "decision", "limits",
    "sheet", "leaf_set", "instrument", "spool", "cutter", "test_groove", "template",
)  # fmt: skip


def evidence_fields(evidence: Evidence) -> tuple[tuple[str, Mapping[Place, Any]], ...]:
    """What one cylinder showed, by field and place; pictures apart."""
    by_place = ("print_depth", "soot", "water", "wire_again")
    return tuple((name, getattr(evidence, name)) for name in by_place if getattr(evidence, name))


def _reading(reading: Reading, cylinder: str) -> str:
    place = place_words(reading.measured.place) if reading.measured else ""
    return text("kept.record.reading", cylinder=cylinder, place=place).strip(", ")


def _of(kind: str, whose: str) -> str:
    return text(f"kept.record.{kind}", whose=whose).strip(", ")


def _key(word: str) -> str:
    return word.replace(" ", "-")


def _several(value: tuple[Any, ...]) -> str:
    return ", ".join(map(value_words, value)) or text("kept.value.none")


_WORDS: tuple[tuple[type, Callable[[Any], str]], ...] = (
    (type(None), lambda _value: text("kept.value.none")),
    (bool, lambda value: text("kept.value.yes" if value else "kept.value.no")),
    (Length, lambda value: value.typed),
    (Amount, lambda value: value.typed),
    (Measured, reading_words),
    (HeadFace, face_words),
    (TemplateBank, lambda value: f"{value.name}: {', '.join(value.cylinders)}"),
    (tuple, _several),
)
