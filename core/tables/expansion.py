"""How much the metals of an engine grow with heat, and how stiff a wire is."""

from dataclasses import dataclass
from enum import StrEnum

from core.source import MEMORY, Source, published
from core.unit_types import Megapascal, PerKelvin


class Metal(StrEnum):
    STAINLESS_304 = "stainless-304"
    GREY_IRON = "grey-iron"
    ALUMINIUM_356 = "aluminium-356"
    COPPER = "copper"
    STEEL = "steel"


@dataclass(frozen=True, slots=True, kw_only=True)
class Expansion:
    """Mean coefficient of linear expansion.

    Parameters
    ----------
    coefficient
        Growth of a length for each kelvin, as a part of it [1/K].
    source
        Where it stands, with its range of temperature.
    """

    coefficient: PerKelvin
    source: Source


EXPANSION: dict[Metal, Expansion] = {
    Metal.STAINLESS_304: Expansion(
        coefficient=17.3e-6,
        source=published("data sheet of AISI 304, mean of 0 to 100 °C; 17.8 to 315 °C"),
    ),
    Metal.GREY_IRON: Expansion(
        coefficient=10.8e-6,
        source=published("handbook value 6.0 µin/(in·°F); 11.4 µm/(m·K) is published too"),
    ),
    Metal.ALUMINIUM_356: Expansion(
        coefficient=21.5e-6,
        source=published("Callister, Fundamentals of Materials Science, 3rd ed., Table B.6"),
    ),
    Metal.COPPER: Expansion(
        coefficient=17.0e-6,
        source=published("Callister, Fundamentals of Materials Science, 3rd ed., Table B.6"),
    ),
    Metal.STEEL: Expansion(coefficient=11.5e-6, source=MEMORY),
}

STAINLESS_MODULUS: Megapascal = 193_000.0
STAINLESS_MODULUS_SOURCE: Source = published("data sheet of AISI 304")
