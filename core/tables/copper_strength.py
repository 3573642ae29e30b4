"""How hard copper sheet resists a wire: yield and hardness by condition."""

from dataclasses import dataclass
from enum import StrEnum

from core.source import Source, Trust, published
from core.unit_types import KSI, Megapascal, Number

SMITHELLS = published("Smithells Metals Reference Book, 8th ed., Table 22.7")
B370_COLD_ROLLED = published("ASTM B370, temper H00: yield 20 ksi minimum, as restated")
EN_1652 = Source(Trust.MEMORY, "EN 1652, condition H065: 65 to 95 HV, upper end")
EN_1652_HARD = Source(Trust.MEMORY, "EN 1652, condition H110: 110 HV and more")


class Temper(StrEnum):
    """Condition of the sheet when the head is pulled down."""

    ANNEALED = "annealed"
    COLD_ROLLED = "cold-rolled"
    HARD = "hard"


@dataclass(frozen=True, slots=True, kw_only=True)
class CopperStrength:
    """Strength of one condition.

    Parameters
    ----------
    yield_strength
        0.2 % proof stress or yield [MPa].
    hardness
        Vickers hardness number [1].
    """

    yield_strength: Megapascal
    hardness: Number
    yield_source: Source
    hardness_source: Source


COPPER: dict[Temper, CopperStrength] = {
    Temper.ANNEALED: CopperStrength(
        yield_strength=54.0, hardness=51.0, yield_source=SMITHELLS, hardness_source=SMITHELLS
    ),
    Temper.COLD_ROLLED: CopperStrength(
        yield_strength=20.0 * KSI,
        hardness=95.0,
        yield_source=B370_COLD_ROLLED,
        hardness_source=EN_1652,
    ),
    Temper.HARD: CopperStrength(
        yield_strength=270.0, hardness=120.0, yield_source=SMITHELLS, hardness_source=EN_1652_HARD
    ),
}
