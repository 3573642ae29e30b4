"""What is assumed about cylinder pressure."""

from core.source import Source, Trust
from core.unit_types import Megapascal, Number

ATMOSPHERE: Megapascal = 0.101325
ENTERED_HALF_WIDTH: Number = 0.10
"""Entered peak pressure, half width, relative: cycles differ and gauges err."""
ENTERED_SOURCE = Source(Trust.ASSUMED, "peak pressure as typed, 10 %")
COMPRESSION_INDEX: Number = 1.30
"""Low end of the usual indices, so that the estimate stays a floor."""
COMPRESSION_SOURCE = Source(
    Trust.MEMORY,
    "polytropic compression, index 1.30; Heywood, Internal Combustion Engine Fundamentals",
)
