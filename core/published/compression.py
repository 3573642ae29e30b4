"""Compression ratio: derived cases, worked apart from this program; no printed source is known."""

from core.calc.clearances import piston_to_head
from core.calc.compression import CylinderVolumes, compression, sheet_for_ratio
from core.published.case import Case
from core.source import derived
from core.unit_types import CC, INCH

WORKED = derived("volumes of cylinders, worked apart from this program")

EIGHT = CylinderVolumes(
    bore=4.125 * INCH,
    stroke=3.750 * INCH,
    chamber=64.0 * CC,
    dish=5.0 * CC,
    deck=0.005 * INCH,
    gasket_bore=4.200 * INCH,
)
PROUD = CylinderVolumes(
    bore=86.0, stroke=86.0, chamber=45.0 * CC, dome=3.0 * CC, deck=-0.10, gasket_bore=87.5
)


def _part(cylinder: CylinderVolumes, part: str, sheet: float, printed: str) -> Case:
    return Case(
        topic="compression",
        name=f"{part}, sheet {sheet:.4f} mm",
        source=WORKED,
        compute=lambda: getattr(compression(cylinder, sheet), part) / CC,
        printed=printed,
        unit="cc",
    )


def _ratio(cylinder: CylinderVolumes, sheet: float, printed: str) -> Case:
    return Case(
        topic="compression",
        name=f"ratio, sheet {sheet:.4f} mm",
        source=WORKED,
        compute=lambda: compression(cylinder, sheet).ratio.value,
        printed=printed,
        unit="1",
    )


CASES: tuple[Case, ...] = (
    _part(EIGHT, "swept", 0.043 * INCH, "821.2402"),
    _part(EIGHT, "deck", 0.043 * INCH, "1.0950"),
    _part(EIGHT, "gasket", 0.021 * INCH, "4.7677"),
    _part(EIGHT, "clearance", 0.021 * INCH, "74.8627"),
    _ratio(EIGHT, 0.021 * INCH, "11.96995"),
    _part(EIGHT, "gasket", 0.043 * INCH, "9.7624"),
    _part(EIGHT, "clearance", 0.043 * INCH, "79.8574"),
    _ratio(EIGHT, 0.043 * INCH, "11.28383"),
    _part(EIGHT, "gasket", 0.062 * INCH, "14.0761"),
    _part(EIGHT, "clearance", 0.062 * INCH, "84.1711"),
    _ratio(EIGHT, 0.062 * INCH, "10.75680"),
    _part(EIGHT, "gasket", 0.080 * INCH, "18.1627"),
    _part(EIGHT, "clearance", 0.080 * INCH, "88.2577"),
    _ratio(EIGHT, 0.080 * INCH, "10.30503"),
    Case(
        topic="compression",
        name="change of the ratio for a thou of sheet, at 0.043 in",
        source=WORKED,
        compute=lambda: compression(EIGHT, 0.043 * INCH).slope * 0.001 * INCH,
        printed="-0.029237",
        unit="1",
    ),
    Case(
        topic="compression",
        name="ratio with 0.044 in less ratio with 0.043 in",
        source=WORKED,
        compute=lambda: compression(EIGHT, 0.044 * INCH).ratio.value
        - compression(EIGHT, 0.043 * INCH).ratio.value,
        printed="-0.029154",
        unit="1",
    ),
    Case(
        topic="compression",
        name="sheet for a ratio of 10",
        source=WORKED,
        compute=lambda: sheet_for_ratio(EIGHT, 10.0) / INCH,
        printed="0.093175",
        unit="in",
    ),
    _part(PROUD, "swept", 1.10, "499.5572"),
    _part(PROUD, "gasket", 1.10, "6.6145"),
    _part(PROUD, "deck", 1.10, "-0.5809"),
    _part(PROUD, "clearance", 1.10, "48.0336"),
    _ratio(PROUD, 1.10, "11.40015"),
    Case(
        topic="clearances",
        name="piston 0.005 in below deck, sheet 0.043 in",
        source=WORKED,
        compute=lambda: piston_to_head(0.005 * INCH, 0.043 * INCH) / INCH,
        printed="0.048",
        unit="in",
    ),
    Case(
        topic="clearances",
        name="piston 0.10 mm proud, sheet 1.10 mm",
        source=WORKED,
        compute=lambda: piston_to_head(-0.10, 1.10),
        printed="1.00",
        unit="mm",
    ),
)
