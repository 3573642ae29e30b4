"""Between a job and the quick check: a place of a ring as an entry, and an entry as a reading."""

from collections.abc import Mapping

from core.forms.kept_heights import size_at
from core.forms.kept_verdicts import decided_sheet
from core.records.model import (
    Cylinder,
    HeadFaceKind,
    Job,
    Length,
    Measured,
    Place,
    Reading,
    ReadingKind,
    Tapped,
)
from core.units import read_quantity
from mobile.app.state.entry import KEPT_FOR_THE_NEXT, Entry, thickness_of
from mobile.app.state.typing import KINDS, WIRE_FIELD

INSTRUMENTS = {
    ReadingKind.CALIPER: "caliper",
    ReadingKind.DEPTH_MICROMETER: "caliper",
    ReadingKind.INDICATOR: "indicator",
}
"""Field of the check that takes a value of this kind; a depth micrometer is judged as a caliper."""


def entry_at(
    job: Job, cylinder: Cylinder, place: Place, own: Entry, reading: Reading | None
) -> Entry:
    """A quick check of one place of a ring, with the user's own shelf and leaves."""
    texts = {name: each for name, each in own.texts.items() if name in KEPT_FOR_THE_NEXT}
    texts |= _known(job, cylinder, place)
    texts |= _read(reading.measured if reading else None)
    return Entry(texts=texts, metric=own.metric)


def _known(job: Job, cylinder: Cylinder, place: Place) -> dict[str, str]:
    face = job.head_face
    known = {
        "wire": _typed(cylinder.wire),
        "groove-width": _typed(size_at(cylinder.groove_width, place)),
        "groove-depth": _typed(size_at(cylinder.groove_depth, place)),
        "gasket": _typed(decided_sheet(job)),
        "face": face.kind.value if face else "",
        "face-depth": _typed(face.depth) if face and face.kind is not HeadFaceKind.FLAT else "",
    }
    return {name: typed for name, typed in known.items() if typed}


def _read(measured: Measured | None) -> dict[str, str]:
    if measured is None:
        return {}
    read = {"go": _typed(measured.go), "no-go": _typed(measured.no_go)}
    if measured.values:
        read[INSTRUMENTS.get(measured.kind, "caliper")] = _typed(measured.values[0])
    return {name: typed for name, typed in read.items() if typed}


def _typed(size: Length | None) -> str:
    return size.typed if size else ""


def measured_of(texts: Mapping[str, str], cylinder: str, place: Place) -> Measured | None:
    """The reading that a quick check holds; none without a leaf."""
    go, no_go = (leaf_length(texts.get(side)) for side in ("go", "no-go"))
    if go is None and no_go is None:
        return None
    return Measured(
        cylinder=cylinder,
        kind=ReadingKind.LEAVES,
        place=place,
        tapped=Tapped.BEFORE,
        go=go,
        no_go=no_go,
    )


def leaf_length(typed: str | None) -> Length | None:
    """Leaves as a kept length."""
    thickness = thickness_of(typed)
    return None if thickness is None or not typed else Length(typed=typed, mm=thickness)


SIZES = {"wire": "wire", "groove-width": "groove_width", "groove-depth": "groove_depth"}


def sizes_of(texts: Mapping[str, str], cylinder: Cylinder, place: Place) -> dict[str, Length]:
    """Sizes that a quick check knows and the cylinder does not, by field of its record."""
    found = {}
    for name, kept in SIZES.items():
        by_place = name != "wire"
        if texts.get(name) and not getattr(cylinder, kept):
            typed = read_quantity(texts[name], KINDS.get(name, WIRE_FIELD))
            field = f"{kept}@{place}" if by_place else kept
            found[field] = Length(typed=typed.echo, mm=typed.value)
    return found
