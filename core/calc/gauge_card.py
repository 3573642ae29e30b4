"""Gauging instead of measuring: the leaf that must go, and the leaf that must not."""

from collections.abc import Sequence
from dataclasses import dataclass

from core.calc.gasket import Sheet, largest_height, least_height
from core.calc.leaves import Stack, largest_not_above, smallest_not_below
from core.tables.leaf_sets import LeafSet
from core.tables.practice import HeightPractice
from core.unit_types import Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class Gauge:
    """Leaves for one sheet; none where the set has no such leaf.

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


def gauge_card(
    shelf: Sequence[Sheet], leaf_set: LeafSet, practice: HeightPractice
) -> tuple[Gauge, ...]:
    """Gauges of every sheet, thinnest first."""
    ordered = sorted(shelf, key=lambda sheet: sheet.thickness)
    return tuple(_gauge(sheet, leaf_set, practice) for sheet in ordered)


def _gauge(sheet: Sheet, leaf_set: LeafSet, practice: HeightPractice) -> Gauge:
    largest, least = largest_height(sheet, practice), least_height(sheet, practice)
    return Gauge(
        sheet=sheet,
        must_go=smallest_not_below(leaf_set, least),
        must_not_go=largest_not_above(leaf_set, largest),
        largest=largest,
        least=least,
    )
