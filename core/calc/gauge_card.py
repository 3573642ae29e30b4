"""Gauging instead of measuring: the leaf that must go, and the leaf that must not."""

from collections.abc import Sequence
from dataclasses import dataclass

from core.calc.gasket import Sheet, largest_height, least_height
from core.calc.leaves import Stack, largest_not_above, smallest_not_below
from core.tables.leaf_sets import LeafSet
from core.tables.practice import HeightPractice
from core.unit_types import Millimetre
from core.verdict import TIE


@dataclass(frozen=True, slots=True, kw_only=True)
class Gauge:
    """Leaves for one sheet; none where the set has no such leaf, or the sheet takes no height.

    Parameters
    ----------
    must_go
        Thinnest leaf that proves the bite when it goes.
    must_not_go
        Thickest leaf that proves the height is within the limit when it does not go.
    largest, least
        The heights behind them [mm].
    """

    sheet: Sheet
    must_go: Stack | None
    must_not_go: Stack | None
    largest: Millimetre
    least: Millimetre

    @property
    def takes_any(self) -> bool:
        """Whether there is a height that bites in this sheet and does not hold the head off it."""
        return self.least <= self.largest + TIE


def gauge_card(
    shelf: Sequence[Sheet], leaf_set: LeafSet, practice: HeightPractice
) -> tuple[Gauge, ...]:
    """Gauges of every sheet, thinnest first.

    Source
    ------
    *common practice, no source*: often they gauge instead of measuring.
    """
    ordered = sorted(shelf, key=lambda sheet: sheet.thickness)
    return tuple(_gauge(sheet, leaf_set, practice) for sheet in ordered)


def _gauge(sheet: Sheet, leaf_set: LeafSet, practice: HeightPractice) -> Gauge:
    largest, least = largest_height(sheet, practice), least_height(sheet, practice)
    takes_any = least <= largest + TIE
    return Gauge(
        sheet=sheet,
        must_go=smallest_not_below(leaf_set, least) if takes_any else None,
        must_not_go=largest_not_above(leaf_set, largest) if takes_any else None,
        largest=largest,
        least=least,
    )
