"""The unit is in the type, once: one coherent set of N, mm and MPa inside every formula."""

import math
from dataclasses import dataclass
from typing import Annotated


@dataclass(frozen=True, slots=True)
class Unit:
    """Unit symbol carried by an annotation; equal to the `[unit]` of the docstring."""

    symbol: str


Millimetre = Annotated[float, Unit("mm")]
SquareMillimetre = Annotated[float, Unit("mm²")]
CubicMillimetre = Annotated[float, Unit("mm³")]
Newton = Annotated[float, Unit("N")]
NewtonMillimetre = Annotated[float, Unit("N·mm")]
NewtonPerMillimetre = Annotated[float, Unit("N/mm")]
Megapascal = Annotated[float, Unit("MPa")]
Radian = Annotated[float, Unit("rad")]
Kelvin = Annotated[float, Unit("K")]
PerKelvin = Annotated[float, Unit("1/K")]
PerMillimetre = Annotated[float, Unit("1/mm")]
GramPerCubicMillimetre = Annotated[float, Unit("g/mm³")]
Gram = Annotated[float, Unit("g")]
Number = Annotated[float, Unit("1")]

INCH: Millimetre = 25.4
"""The international inch of 1959, exact: NIST SP 811 (2008), appendix B."""
THOU: Millimetre = INCH / 1000.0
CC: CubicMillimetre = 1000.0
DEGREE: Radian = math.radians(1.0)
LBF: Newton = 4.4482216152605
"""Pound-force, *derived*: 0.45359237 kg · 9.80665 m/s², exact."""
KSI: Megapascal = 6.894757293168
"""A thousand pounds-force a square inch, *derived*: 1000 LBF / INCH², rounded."""
