"""Height against load: what a higher wire takes from the rest of the sheet."""

from dataclasses import dataclass, replace

from core.calc.clamp import CylinderLoads, Joint, Range, bedding_cases
from core.tables.practice import HEIGHT
from core.unit_types import Millimetre, Newton

POINTS = 41
BEYOND = 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class CurvePoint:
    """Loads at one height of the wire.

    Parameters
    ----------
    height
        Height of the wire [mm].
    wire, body
        Load on wire and on the body of the sheet, softest to hardest answer [N].
    """

    height: Millimetre
    wire: Range
    body: Range


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadCurve:
    """A chart of height against load, with its marks.

    Parameters
    ----------
    points
        Rising heights, shape (n,).
    clamp, clamp_range
        Clamp of the cylinder, and its 95 % range [N].
    today
        Height of this wire [mm].
    quarter
        Largest height the sheet takes; none while the sheet is not known [mm].
    slack_height
        Height from which the body is slack, hardest and softest answer; none if no height can
        do it [mm].
    slack_at_low_clamp
        The same by the hardest answer at the low end of the clamp [mm].
    """

    points: tuple[CurvePoint, ...]
    clamp: Newton
    clamp_range: Range
    today: Millimetre
    quarter: Millimetre | None
    slack_height: tuple[Millimetre | None, Millimetre | None]
    slack_at_low_clamp: Millimetre | None


def load_curve(
    joint: Joint, loads: CylinderLoads, sheet: Millimetre | None = None, count: int = POINTS
) -> LoadCurve:
    """Loads of one cylinder over the height of its wire, at its best clamp.

    Parameters
    ----------
    sheet
        Sheet thickness, for the quarter line [mm].
    count
        Points of the curve.

    Source
    ------
    *derived*: `bedding`. Quarter line: *common practice, no source*.
    """
    cylinder = loads.cylinder
    quarter = None if sheet is None else HEIGHT.largest_share * sheet
    top = min(BEYOND * max(cylinder.height, quarter or 0.0, *_known(loads)), cylinder.wire_diameter)
    heights = [top * i / (count - 1) for i in range(count)]
    return LoadCurve(
        points=tuple(_point(joint, loads, height) for height in heights),
        clamp=loads.clamp.value,
        clamp_range=loads.clamp_range,
        today=cylinder.height,
        quarter=quarter,
        slack_height=loads.slack_height,
        slack_at_low_clamp=_slack_at_low_clamp(joint, loads),
    )


def _slack_at_low_clamp(joint: Joint, loads: CylinderLoads) -> Millimetre | None:
    return bedding_cases(joint, loads.cylinder, loads.clamp_range.low)[-1].slack_height


def _known(loads: CylinderLoads) -> list[Millimetre]:
    hardest = loads.slack_height[0]
    return [] if hardest is None else [hardest]


def _point(joint: Joint, loads: CylinderLoads, height: Millimetre) -> CurvePoint:
    cases = bedding_cases(joint, replace(loads.cylinder, height=height), loads.clamp.value)
    return CurvePoint(
        height=height,
        wire=Range(low=cases[0].carried, high=cases[-1].carried),
        body=Range(low=cases[-1].body, high=cases[0].body),
    )
