"""Copper sheet sold by weight: thickness and how thin it may come."""

from dataclasses import dataclass

from core.source import Source, published
from core.unit_types import INCH, Millimetre, Number

SAME = 0.00005 * INCH
"""Half a unit of the last printed digit of the table [mm]."""

SOURCE: Source = published("ASTM B370, thickness by weight per square foot")


@dataclass(frozen=True, slots=True, kw_only=True)
class WeighedSheet:
    """Sheet of one weight.

    Parameters
    ----------
    ounces
        Weight of a square foot, in ounces [1].
    nominal
        Nominal thickness [mm].
    thinnest
        Least thickness at any place [mm].
    """

    ounces: Number
    nominal: Millimetre
    thinnest: Millimetre

    @property
    def tolerance(self) -> Millimetre:
        """Nominal less thinnest, taken as a limit to both sides [mm].

        Source
        ------
        ASTM B370; the same limit above nominal is *assumed*, the standard gives only the lower.
        """
        return self.nominal - self.thinnest


def _sheet(ounces: float, nominal_inch: float, thinnest_inch: float) -> WeighedSheet:
    return WeighedSheet(
        ounces=ounces, nominal=nominal_inch * INCH, thinnest=thinnest_inch * INCH
    )


WEIGHED_SHEETS = (
    _sheet(6, 0.0081, 0.0071),
    _sheet(8, 0.0108, 0.0097),
    _sheet(10, 0.0135, 0.0124),
    _sheet(12, 0.0162, 0.0150),
    _sheet(16, 0.0216, 0.0204),
    _sheet(20, 0.0270, 0.0258),
    _sheet(24, 0.0323, 0.0308),
    _sheet(32, 0.0431, 0.0411),
    _sheet(48, 0.0646, 0.0621),
)


def weighed_sheet(nominal: Millimetre) -> WeighedSheet | None:
    """Sheet of the table whose nominal thickness this is, to its last printed digit.

    Parameters
    ----------
    nominal
        Thickness as sold [mm].

    Source
    ------
    ASTM B370.

    Examples
    --------
    >>> weighed_sheet(0.0431 * 25.4).ounces
    32
    >>> weighed_sheet(1.27) is None
    True
    """
    return next((each for each in WEIGHED_SHEETS if abs(each.nominal - nominal) <= SAME), None)
