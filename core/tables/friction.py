"""Torque coefficients as printed for each lubricant: the sources disagree, so none is a default.

`T = K·F·d`. K holds thread, head or nut face, and lubricant together.
"""

from dataclasses import dataclass

from core.source import Source, Trust, published
from core.unit_types import Number

SHIGLEY = published("Shigley's Mechanical Engineering Design, 9th ed., Table 8-15")
BICKFORD = published("Bickford & Nassar, Handbook of Bolts and Bolted Joints")
TRADE = Source(Trust.PRACTICE, "ranges that fastener makers print")


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedFriction:
    """One printed torque coefficient.

    Parameters
    ----------
    low, high
        Ends of the printed range, equal for a single value [1].
    """

    low: Number
    high: Number
    source: Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Lubricant:
    """What is on the thread and under the nut, with everything printed for it."""

    name: str
    printed: tuple[PrintedFriction, ...]

    @property
    def low(self) -> Number:
        """Least friction that any source prints [1]."""
        return min(each.low for each in self.printed)

    @property
    def high(self) -> Number:
        """Greatest friction that any source prints [1]."""
        return max(each.high for each in self.printed)

    @property
    def source(self) -> Source:
        """All sources together; as weak as the weakest of them."""
        sources = list(dict.fromkeys(each.source for each in self.printed))
        weakest = next((each for each in sources if each.trust is not Trust.PUBLISHED), sources[0])
        return Source(weakest.trust, "; ".join(each.where for each in sources))


def _one(value: Number, source: Source) -> PrintedFriction:
    return PrintedFriction(low=value, high=value, source=source)


def _range(low: Number, high: Number) -> PrintedFriction:
    return PrintedFriction(low=low, high=high, source=TRADE)


LUBRICANTS: tuple[Lubricant, ...] = (
    Lubricant(name="dry", printed=(_one(0.30, SHIGLEY), _one(0.20, BICKFORD), _range(0.18, 0.27))),
    Lubricant(name="oil", printed=(_one(0.18, SHIGLEY), _range(0.10, 0.26))),
    Lubricant(name="phosphate-oil", printed=(_range(0.15, 0.22),)),
    Lubricant(
        name="zinc", printed=(_one(0.20, SHIGLEY), _one(0.295, BICKFORD), _range(0.17, 0.35))
    ),
    Lubricant(name="cadmium", printed=(_one(0.16, SHIGLEY),)),
    Lubricant(name="anti-seize", printed=(_one(0.12, SHIGLEY),)),
)


def find_lubricant(name: str) -> Lubricant | None:
    """Row of that name, or none."""
    return next((each for each in LUBRICANTS if each.name == name), None)
