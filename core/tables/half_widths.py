"""Limits of error that every probability rests on: assumed, editable, marked wherever they act."""

from dataclasses import dataclass

from core.unit_types import INCH, Millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class HalfWidths:
    """Half widths of rectangular distributions, common practice or from memory, no source.

    Parameters
    ----------
    leaf
        One feeler leaf; all leaves of a set err together [mm].
    snug
        How far a single snug leaf may be from the height, besides its own error [mm].
    film_per_interface
        Two leaves stacked stand this much apart at most; half of it is added [mm].
    straightedge
        Straightedge and the deck under it [mm].
    caliper, caliper_step
        Limit of error and step of a caliper's tail rod [mm].
    indicator
        Indicator on a bridge, zeroed on the deck [mm].
    sheet_measured, sheet_nominal
        Sheet thickness [mm].
    wire_measured, wire_label
        Wire diameter [mm].
    groove_width, groove_depth
        Groove [mm].
    print_depth
        Depth of a wire's print or of a receiver groove in the head [mm].
    """

    leaf: Millimetre = 0.0002 * INCH
    snug: Millimetre = 0.0005 * INCH
    film_per_interface: Millimetre = 0.0003 * INCH
    straightedge: Millimetre = 0.0003 * INCH
    caliper: Millimetre = 0.02
    caliper_step: Millimetre = 0.01
    indicator: Millimetre = 0.0003 * INCH
    sheet_measured: Millimetre = 0.0005 * INCH
    sheet_nominal: Millimetre = 0.001 * INCH
    wire_measured: Millimetre = 0.0002 * INCH
    wire_label: Millimetre = 0.0008 * INCH
    groove_width: Millimetre = 0.0003 * INCH
    groove_depth: Millimetre = 0.0005 * INCH
    print_depth: Millimetre = 0.0005 * INCH


ASSUMED_HALF_WIDTHS = HalfWidths()
