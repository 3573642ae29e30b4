"""Heights and prints round the rings, from what a job keeps."""

from collections.abc import Mapping

from core.forms.kept_heights import height_of, last_readings
from core.records.model import Cylinder, Instrument, Job, Squeeze
from core.records.view import live
from core.tables.half_widths import ASSUMED_HALF_WIDTHS, HalfWidths
from core.unit_types import Millimetre

HOURS = tuple(str(hour) for hour in range(1, 13))


def kept_places(
    job: Job,
    instruments: Mapping[str, Instrument],
    half_widths: HalfWidths = ASSUMED_HALF_WIDTHS,
) -> dict[str, Millimetre]:
    """Height at each clock place of each ring, by `CYLINDER/HOUR`; places without an hour stay out.

    Raises
    ------
    InputError
        If the leaves of a reading contradict each other.
    """
    return {
        f"{cylinder.number}/{hour}": height
        for cylinder in job.cylinders
        for hour, height in _heights(cylinder, instruments, half_widths).items()
    }


def _heights(
    cylinder: Cylinder, instruments: Mapping[str, Instrument], half_widths: HalfWidths
) -> dict[str, Millimetre]:
    found = {
        place: height_of(reading, instruments, half_widths)
        for place, reading in last_readings(cylinder.readings).items()
        if place in HOURS
    }
    return {place: height.value for place, height in found.items() if height is not None}


def kept_prints(job: Job) -> dict[str, Millimetre]:
    """Depth of the print of the last trial squeeze, by `CYLINDER/HOUR`."""
    numbers = {cylinder.id: cylinder.number for cylinder in job.cylinders}
    last: dict[str, Squeeze] = {each.cylinder: each for each in live(job.squeezes)}
    return {
        f"{numbers[cylinder]}/{hour}": depth.mm
        for cylinder, squeeze in last.items()
        if cylinder in numbers
        for hour, depth in squeeze.print_depth.items()
        if hour in HOURS
    }
