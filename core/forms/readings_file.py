"""A file of readings: which wires, where, and what was read on one or across two.

The form is described by the text `heights.file.form`; every size is text with its unit, as it is
typed elsewhere. Every fault is found before one is told, and names its entry.
"""

import json
import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Any, NoReturn, TypeVar

from core.calc.pair_heights import Reading
from core.calc.passed_over import Laid
from core.calc.straightedge import FINEST_PART, part_of_span
from core.errors import Fault, InputError, fault, refuse
from core.tables.half_widths import ASSUMED_HALF_WIDTHS, HalfWidths
from core.texts import text
from core.texts.length import Length
from core.texts.sentence import Sentence
from core.uncertain import rectangular
from core.unit_types import INCH, Millimetre
from core.units import Bare, Dimension, Field, read_quantity

T = TypeVar("T")
MOST_CHARACTERS = 1_000_000
HALF = Fraction(1, 2)

HEIGHT_FIELD = Field(name="", dimension=Dimension.LENGTH, low=-0.05 * INCH, high=0.25 * INCH,
                     bare=Bare.THOU_OR_INCH)
SPREAD_FIELD = Field(name="", dimension=Dimension.LENGTH, low=1e-6 * INCH, high=0.05 * INCH,
                     bare=Bare.THOU_OR_INCH)
ALLOWANCE_FIELD = replace(SPREAD_FIELD, low=0.0)
PLACE_FIELD = Field(name="", dimension=Dimension.LENGTH, low=-200.0 * INCH, high=200.0 * INCH)
PART_FIELD = Field(name="", dimension=Dimension.RATIO, low=-2.0, high=3.0, bare=Bare.NUMBER)

TOP_KEYS = ("wires", "readings", "leaf", "straightedge")
WIRE_KEYS = ("wire", "at")
READING_KEYS = (
    "name", "wire", "across", "at", "part", "go", "no_go", "height", "u", "with", "rocks",
)
INSTRUMENTS = ("caliper", "indicator")


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingsFile:
    """What a file of readings says.

    Parameters
    ----------
    wires
        Every wire, in the order of the file.
    places
        Where wires are crossed, along the straightedge, as far as known [mm].
    rocked
        Straightedges that rocked.
    leaf_u
        Standard uncertainty of the error that all leaves share [mm].
    assumed
        What was taken from the table of assumed limits of error.
    """

    wires: tuple[str, ...]
    places: Mapping[str, Millimetre]
    readings: tuple[Reading, ...]
    rocked: tuple[Laid, ...]
    leaf_u: Millimetre
    assumed: tuple[Sentence, ...]

    @property
    def laid(self) -> tuple[Laid, ...]:
        """Every straightedge laid, those that rocked last."""
        across = (
            Laid(name=each.name, first=each.first, second=each.second)
            for each in self.readings
            if each.second is not None
        )
        return (*across, *self.rocked)


def read_readings(content: str, half_widths: HalfWidths = ASSUMED_HALF_WIDTHS) -> ReadingsFile:
    """Read a whole file.

    Raises
    ------
    InputError
        With every fault of the file, each naming its entry.
    """
    return _File(_object(content), half_widths).read()


def _object(content: str) -> dict[str, Any]:
    if len(content) > MOST_CHARACTERS:
        raise refuse("file", "heights.file.too_long", most=MOST_CHARACTERS)
    try:
        found = json.loads(
            content, object_pairs_hook=_no_key_twice, parse_constant=_no_constant
        )
    except json.JSONDecodeError as error:
        raise refuse("file", "heights.file.not_json", line=error.lineno,
                     column=error.colno) from None
    except RecursionError:
        raise refuse("file", "heights.file.nested") from None
    if not isinstance(found, dict):
        raise refuse("file", "heights.file.not_object")
    return found


def _no_key_twice(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    names = [name for name, _ in pairs]
    for name in names:
        if names.count(name) > 1:
            raise refuse(name, "heights.file.twice")
    return dict(pairs)


def _no_constant(name: str) -> NoReturn:
    raise refuse("file", "heights.file.constant", typed=name)


@dataclass(slots=True)
class _File:
    """One file while it is read, with the faults found so far."""

    content: dict[str, Any]
    half_widths: HalfWidths
    faults: list[Fault] = field(default_factory=list)
    places: dict[str, Millimetre] = field(default_factory=dict)
    leaves_used: bool = False
    straightedge_used: bool = False
    instruments: set[str] = field(default_factory=set)

    def read(self) -> ReadingsFile:
        self._refuse_unknown(self.content, TOP_KEYS, "file")
        wires = self._wires()
        leaf = self._size(self.content, "leaf", ALLOWANCE_FIELD, "file")
        straightedge = self._size(self.content, "straightedge", ALLOWANCE_FIELD, "file")
        allowance = self.half_widths.straightedge if straightedge is None else straightedge
        read = [
            self._reading(entry, name, wires, allowance)
            for entry, name in self._entries("readings", "heights.file.reading")
        ]
        if self.faults:
            raise InputError(self.faults)
        leaf_half = self.half_widths.leaf if leaf is None else leaf
        return ReadingsFile(
            wires=wires,
            places=self.places,
            readings=tuple(each for each in read if isinstance(each, Reading)),
            rocked=tuple(each for each in read if isinstance(each, Laid)),
            leaf_u=rectangular(leaf_half) if self.leaves_used else 0.0,
            assumed=self._assumed(leaf is None, straightedge is None),
        )

    def _assumed(self, leaf: bool, straightedge: bool) -> tuple[Sentence, ...]:
        limits = self.half_widths
        used = (
            ("leaf", limits.leaf, leaf and self.leaves_used),
            ("straightedge", limits.straightedge, straightedge and self.straightedge_used),
            ("caliper", limits.caliper, "caliper" in self.instruments),
            ("indicator", limits.indicator, "indicator" in self.instruments),
        )
        return tuple(
            Sentence(f"heights.assumed.{name}", {"half": Length(half)})
            for name, half, holds in used
            if holds
        )

    def _entries(self, key: str, label: str) -> list[tuple[dict[str, Any], str]]:
        """Objects of a list, each with the name that a fault calls it by."""
        several = self.content.get(key)
        if not isinstance(several, list) or not several:
            self._add(key, f"heights.file.no_{key}")
            return []
        found = []
        for number, entry in enumerate(several, start=1):
            name = text(label, number=number)
            if isinstance(entry, dict):
                found.append((entry, name))
            else:
                self._add(name, "heights.file.not_entry")
        return found

    def _wires(self) -> tuple[str, ...]:
        wires: list[str] = []
        for entry, name in self._entries("wires", "heights.file.wire"):
            self._refuse_unknown(entry, WIRE_KEYS, name)
            wire = entry.get("wire")
            if not isinstance(wire, str) or not wire.strip():
                self._add(name, "heights.file.wire_name")
                continue
            if wire in wires:
                self._add(name, "heights.file.wire_twice", wire=wire)
                continue
            wires.append(wire)
            at = self._size(entry, "at", PLACE_FIELD, name)
            if at is not None:
                self.places[wire] = at
        return tuple(wires)

    def _reading(
        self, entry: dict[str, Any], name: str, wires: Sequence[str], straightedge: Millimetre
    ) -> Reading | Laid | None:
        self._refuse_unknown(entry, READING_KEYS, name)
        on = self._on(entry, name, wires)
        if on is None:
            return None
        called = str(entry.get("name") or name)
        if "rocks" in entry:
            return self._rocked(entry, name, called, on)
        part = self._part(entry, name, on) if len(on) > 1 else Fraction(0)
        value = self._value(entry, name, straightedge if len(on) > 1 else 0.0)
        if part is None or value is None:
            return None
        height, u, by_leaves = value
        return Reading(name=called, first=on[0], second=on[1] if len(on) > 1 else None, part=part,
                       value=height, u=u, by_leaves=by_leaves)

    def _on(
        self, entry: dict[str, Any], name: str, wires: Sequence[str]
    ) -> tuple[str, ...] | None:
        if ("wire" in entry) == ("across" in entry):
            self._add(name, "heights.file.wire_or_across")
            return None
        on = [entry["wire"]] if "wire" in entry else entry["across"]
        wanted = 1 if "wire" in entry else 2
        if not isinstance(on, list) or len(on) != wanted or len({str(w) for w in on}) != wanted:
            self._add(name, "heights.file.across")
            return None
        unknown = [wire for wire in on if wire not in wires]
        for wire in unknown:
            self._add(name, "heights.unknown_wire", wire=wire)
        return None if unknown else tuple(on)

    def _rocked(
        self, entry: dict[str, Any], name: str, called: str, on: tuple[str, ...]
    ) -> Laid | None:
        others = sorted(set(entry) - {"rocks", "across", "name"})
        if len(on) == 1 or entry["rocks"] is not True or others:
            self._add(name, "heights.file.rocks")
            return None
        if not set(on) <= set(self.places):
            self._add(name, "heights.file.rocks_where")
            return None
        return Laid(name=called, first=on[0], second=on[1], rocked=True)

    def _part(self, entry: dict[str, Any], name: str, on: tuple[str, ...]) -> Fraction | None:
        """Where along the span the leaf was; the middle unless said."""
        if "at" in entry and "part" in entry:
            self._add(name, "heights.file.at_or_part")
            return None
        if "part" in entry:
            part = self._size(entry, "part", PART_FIELD, name)
            return None if part is None else Fraction(part).limit_denominator(FINEST_PART)
        if "at" not in entry:
            return HALF
        at = self._size(entry, "at", PLACE_FIELD, name)
        if not set(on) <= set(self.places):
            self._add(name, "heights.file.at_where")
            return None
        if at is None:
            return None
        return self._kept(
            lambda: part_of_span(self.places[on[0]], self.places[on[1]], at), name
        )

    def _value(
        self, entry: dict[str, Any], name: str, straightedge: Millimetre
    ) -> tuple[Millimetre, Millimetre, bool] | None:
        """Reading, its own standard uncertainty, and whether it was read with leaves."""
        leaves = {"go", "no_go"} & set(entry)
        if bool(leaves) == ("height" in entry):
            self._add(name, "heights.file.leaves_or_height")
            return None
        if leaves:
            return self._bracket(entry, name, straightedge)
        return self._direct(entry, name)

    def _bracket(
        self, entry: dict[str, Any], name: str, straightedge: Millimetre
    ) -> tuple[Millimetre, Millimetre, bool] | None:
        for missing in sorted({"go", "no_go"} - set(entry)):
            self._add(f"{name} {missing}", "heights.file.one_side")
        if {"u", "with"} & set(entry):
            self._add(name, "heights.file.spread_of_leaves")
        go = self._size(entry, "go", HEIGHT_FIELD, name)
        no_go = self._size(entry, "no_go", HEIGHT_FIELD, name)
        if go is None or no_go is None:
            return None
        if go >= no_go:
            self._add(f"{name} no_go", "height.crossed")
            return None
        self.leaves_used = True
        self.straightedge_used = self.straightedge_used or straightedge > 0.0
        u = math.hypot(rectangular(0.5 * (no_go - go)), rectangular(straightedge))
        return 0.5 * (go + no_go), u, True

    def _direct(
        self, entry: dict[str, Any], name: str
    ) -> tuple[Millimetre, Millimetre, bool] | None:
        height = self._size(entry, "height", HEIGHT_FIELD, name)
        if ("u" in entry) == ("with" in entry):
            self._add(name, "heights.file.u_or_with")
            return None
        if "u" in entry:
            u = self._size(entry, "u", SPREAD_FIELD, name)
        else:
            u = self._instrument_u(entry["with"], name)
        return None if height is None or u is None else (height, u, False)

    def _instrument_u(self, instrument: object, name: str) -> Millimetre | None:
        if instrument not in INSTRUMENTS:
            self._add(f"{name} with", "heights.file.with", known=", ".join(INSTRUMENTS))
            return None
        self.instruments.add(str(instrument))
        if instrument == "indicator":
            return rectangular(self.half_widths.indicator)
        step = rectangular(0.5 * self.half_widths.caliper_step)
        return math.hypot(rectangular(self.half_widths.caliper), step)

    def _size(
        self, entry: Mapping[str, Any], key: str, kind: Field, name: str
    ) -> float | None:
        if key not in entry:
            return None
        called = f"{name} {key}"
        if not isinstance(entry[key], str):
            self._add(called, "heights.file.not_text")
            return None
        typed = self._kept(lambda: read_quantity(entry[key], replace(kind, name=called)), called)
        return None if typed is None else typed.value

    def _refuse_unknown(
        self, entry: Mapping[str, Any], known: Sequence[str], name: str
    ) -> None:
        for key in entry:
            if key not in known:
                self._add(name, "heights.file.unknown", entry=key, known=", ".join(known))

    def _kept(self, make: Callable[[], T], name: str) -> T | None:
        try:
            return make()
        except InputError as error:
            self.faults += [
                Fault(field=name, sentence=each.sentence.replace("across", name, 1))
                if each.field == "across"
                else each
                for each in error.faults
            ]
            return None

    def _add(self, name: str, key: str, **values: object) -> None:
        self.faults.append(fault(name, key, **values))
