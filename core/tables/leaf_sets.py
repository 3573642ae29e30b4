"""Feeler leaf sets to start with, thinnest leaf first; the user edits them."""

from dataclasses import dataclass

from core.unit_types import INCH, Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafSet:
    """Leaves that are at hand.

    Parameters
    ----------
    leaves
        Thickness of each leaf, thinnest first [mm].
    metric
        Whether the leaves are marked in mm.
    """

    leaves: tuple[Millimetre, ...]
    metric: bool


INCH_SET = LeafSet(
    leaves=tuple(
        thou * INCH / 1000.0 for thou in (1.5, 2.0, 2.5, *(float(whole) for whole in range(3, 26)))
    ),
    metric=False,
)
METRIC_SET = LeafSet(
    leaves=tuple(hundredths / 100.0 for hundredths in (*range(3, 10), *range(10, 75, 5))),
    metric=True,
)
