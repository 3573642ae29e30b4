"""A printed value, what it was printed for, and whether we meet it."""

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal

from core.source import Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One printed value, or one printed word.

    Parameters
    ----------
    topic
        Module of `core.calc`, `core.tables` or `core` that is checked.
    name
        What is computed, in the words of the source.
    source
        Where the printed value stands.
    compute
        Computes the value in `unit`, or the word, from what is given.
    printed
        The value as printed; its last digit sets the tolerance. A word must be met exactly.
    unit
        Unit of the printed value.
    """

    topic: str
    name: str
    source: Source
    compute: Callable[[], float | str]
    printed: str
    unit: str

    def tolerance(self) -> float:
        """Half a unit of the last printed digit."""
        exponent = Decimal(self.printed).as_tuple().exponent
        return 0.5 * 10.0 ** int(exponent)

    def met(self) -> bool:
        """Whether the computed value or word agrees with the printed one."""
        found = self.compute()
        if isinstance(found, str):
            return found == self.printed
        slack = 1e-9 * abs(float(self.printed))
        return abs(found - float(self.printed)) <= self.tolerance() + slack
