"""The unit is in the type, once: one coherent set of N, mm and MPa inside every formula."""

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
