"""Screw threads to choose from: sizes, pitches, and the factor of the stress area."""

from enum import StrEnum

from core.source import MEMORY, Source, Trust, published
from core.unit_types import Millimetre


class ThreadForm(StrEnum):
    """Which standard the thread follows."""

    INCH = "inch"
    METRIC = "metric"


STRESS_AREA_FACTOR: dict[ThreadForm, float] = {
    ThreadForm.INCH: 0.9743,
    ThreadForm.METRIC: 0.9382,
}
"""Pitches that the stress diameter lies under the nominal diameter, as the standards print it."""

STRESS_AREA_SOURCE: dict[ThreadForm, Source] = {
    ThreadForm.INCH: published("ASME B1.1, tensile stress area, first form"),
    ThreadForm.METRIC: published("ISO 898-1:2013, nominal stress area"),
}

INCH_THREADS: dict[str, tuple[int, ...]] = {
    "1/4": (20, 28),
    "5/16": (18, 24),
    "3/8": (16, 24),
    "7/16": (14, 20),
    "1/2": (13, 20),
    "9/16": (12, 18),
    "5/8": (11, 18),
    "3/4": (10, 16),
    "7/8": (9, 14),
    "1": (8, 12),
}
"""Threads per inch of each size, coarse first."""
INCH_THREADS_SOURCE = Source(Trust.MEMORY, "ASME B1.1, UNC and UNF series")

METRIC_PITCHES: dict[Millimetre, tuple[Millimetre, ...]] = {
    6.0: (1.0, 0.75),
    8.0: (1.25, 1.0),
    10.0: (1.5, 1.25, 1.0),
    11.0: (1.5, 1.25, 1.0),
    12.0: (1.75, 1.5, 1.25),
    14.0: (2.0, 1.5, 1.25),
    16.0: (2.0, 1.5),
    18.0: (2.5, 2.0, 1.5),
    20.0: (2.5, 2.0, 1.5),
    22.0: (2.5, 2.0, 1.5),
    24.0: (3.0, 2.0, 1.5),
}
"""Pitches of each size, coarse first."""
METRIC_PITCHES_SOURCE = Source(MEMORY.trust, "ISO 261:1998; M11x1.25 is in use beside it")
