"""Wire heights from the readings that a job keeps."""

from collections.abc import Iterable, Mapping

from core.calc.engine import Ring
from core.calc.fit import Measured, seat
from core.calc.gasket import Face, HeadFace, standing
from core.calc.height import DepthInstrument, Height, from_depth, from_leaves
from core.calc.leaves import Stack
from core.records.model import (
    Cylinder,
    HeadFaceKind,
    Instrument,
    Job,
    Length,
    Place,
    Reading,
    ReadingKind,
)
from core.records.model import Measured as Kept
from core.records.view import live
from core.tables.half_widths import HalfWidths
from core.texts import text
from core.verdict import Verdict

FACES = {HeadFaceKind.FLAT: Face.FLAT, HeadFaceKind.PRINTED: Face.PRINTED}
BY_LEAVES = (ReadingKind.LEAVES, ReadingKind.GAUGED)


def head_face(job: Job) -> HeadFace:
    """Head face of a job; a flat one, not answered, until somebody says so."""
    kept = job.head_face
    if kept is None:
        return HeadFace()
    face = FACES.get(kept.kind, Face.RECEIVER)
    return HeadFace(face=face, depth=kept.depth.mm if kept.depth else 0.0, answered=True)


def rings(
    cylinder: Cylinder,
    face: HeadFace,
    instruments: Mapping[str, Instrument],
    half_widths: HalfWidths,
) -> tuple[Ring, ...]:
    """The highest and the lowest place of a ring as it stands now; one place is both.

    Each place counts with its last reading.
    """
    found = {
        place: height_of(reading, instruments, half_widths)
        for place, reading in last_readings(cylinder.readings).items()
    }
    heights = {place: height for place, height in found.items() if height is not None}
    if not heights:
        return ()
    highest = max(heights, key=lambda place: heights[place].value)
    lowest = min(heights, key=lambda place: heights[place].value)
    return tuple(
        _ring(cylinder, place, heights[place], face, half_widths)
        for place in dict.fromkeys((highest, lowest))
    )


def last_readings(readings: Iterable[Reading]) -> dict[Place, Reading]:
    """The reading that counts at each place: the last one that was not deleted."""
    ordered = sorted(live(readings), key=lambda each: (each.at, each.id))
    return {each.measured.place: each for each in ordered if each.measured}


def height_of(
    reading: Reading, instruments: Mapping[str, Instrument], half_widths: HalfWidths
) -> Height | None:
    """Height that a reading says; none where it says none, as a straightedge that rocks.

    Raises
    ------
    InputError
        If its leaves contradict each other.
    """
    kept = reading.measured
    if kept is None:
        return None
    if kept.kind in BY_LEAVES:
        if kept.go is None and kept.no_go is None:
            return None
        return from_leaves(_stack(kept.go), _stack(kept.no_go), half_widths)
    if not kept.values:
        return None
    instrument = _instrument(kept, instruments.get(kept.instrument), half_widths)
    return from_depth([each.mm for each in kept.values], instrument)


def _stack(leaf: Length | None) -> Stack | None:
    return None if leaf is None else Stack((leaf.mm,))


def _instrument(kept: Kept, known: Instrument | None, half_widths: HalfWidths) -> DepthInstrument:
    on_a_bridge = kept.kind is ReadingKind.INDICATOR
    limit = half_widths.indicator if on_a_bridge else half_widths.caliper
    step = 0.0 if on_a_bridge else half_widths.caliper_step
    name = text("instrument.indicator" if on_a_bridge else "instrument.caliper")
    if known is None:
        return DepthInstrument(name=name, limit=limit, step=step)
    return DepthInstrument(
        name=known.name or name,
        limit=known.tolerance.mm if known.tolerance else limit,
        step=known.resolution.mm if known.resolution else step,
    )


def _ring(
    cylinder: Cylinder, place: Place, height: Height, face: HeadFace, half_widths: HalfWidths
) -> Ring:
    wire = measured_size(cylinder.wire, half_widths.wire_measured)
    width = measured_size(size_at(cylinder.groove_width, place), half_widths.groove_width)
    depth = measured_size(size_at(cylinder.groove_depth, place), half_widths.groove_depth)
    down = True
    if wire and width and depth:
        down = seat(height, wire, width, depth).check.verdict is Verdict.PASS
    return Ring(
        name=text("choose.ring", cylinder=cylinder.number, place=place),
        standing=standing(height, face, half_widths.print_depth),
        down=down,
        interference=wire.value - width.value if wire and width else None,
    )


def size_at(sizes: Mapping[Place, Length], place: Place) -> Length | None:
    """Size at a place, or the first that was measured where that place was not."""
    return sizes.get(place) or next(iter(sizes.values()), None)


def measured_size(size: Length | None, half_width: float) -> Measured | None:
    """A kept size with its limit of error [mm]."""
    return None if size is None else Measured(value=size.mm, half_width=half_width)
