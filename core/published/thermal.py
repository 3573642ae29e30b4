"""Heat: handbook coefficients, and derived cases worked apart from this program."""

from core.calc.thermal import Heated, HeatedRing, butted_stress, growth, heated, slides
from core.published.case import Case
from core.source import derived
from core.tables.expansion import EXPANSION, STAINLESS_MODULUS, Metal
from core.unit_types import INCH

WORKED = derived("free linear expansion, worked apart from this program")
MICRO = 1e6


def _ring(block: Metal) -> Heated:
    return heated(
        HeatedRing(
            wire=0.041 * INCH,
            groove_width=0.040 * INCH,
            groove_depth=0.030 * INCH,
            ring=4.25 * INCH,
            warmer=80.0,
            block=block,
        )
    )


def _change(block: Metal, part: str, printed: str) -> Case:
    return Case(
        topic="thermal",
        name=f"{part.replace('_', ' ')}, 0.041 in wire, 80 K, {block} block",
        source=WORKED,
        compute=lambda: getattr(_ring(block), part).change / INCH,
        printed=printed,
        unit="in",
    )


def _coefficient(metal: Metal, printed: str) -> Case:
    return Case(
        topic="expansion",
        name=f"coefficient of {metal}",
        source=EXPANSION[metal].source,
        compute=lambda: EXPANSION[metal].coefficient * MICRO,
        printed=printed,
        unit="µm/(m·K)",
    )


CASES: tuple[Case, ...] = (
    _coefficient(Metal.STAINLESS_304, "17.3"),
    _coefficient(Metal.ALUMINIUM_356, "21.5"),
    _coefficient(Metal.COPPER, "17.0"),
    Case(
        topic="expansion",
        name="grey iron, 6.0 µin/(in·°F), for each kelvin",
        source=EXPANSION[Metal.GREY_IRON].source,
        compute=lambda: EXPANSION[Metal.GREY_IRON].coefficient * MICRO / 1.8,
        printed="6.0",
        unit="µin/(in·°F)",
    ),
    _change(Metal.GREY_IRON, "interference", "2.2184e-05"),
    _change(Metal.GREY_IRON, "height", "3.0824e-05"),
    _change(Metal.GREY_IRON, "radius", "0.001105"),
    _change(Metal.GREY_IRON, "joint_gap", "-0.006943"),
    _change(Metal.ALUMINIUM_356, "interference", "-1.2056e-05"),
    _change(Metal.ALUMINIUM_356, "height", "5.1440e-06"),
    _change(Metal.ALUMINIUM_356, "radius", "-0.000714"),
    _change(Metal.ALUMINIUM_356, "joint_gap", "0.004486"),
    Case(
        topic="thermal",
        name="butted ends in iron, 193 GPa",
        source=WORKED,
        compute=lambda: butted_stress(17.3e-6 - 10.8e-6, 80.0, STAINLESS_MODULUS),
        printed="100.36",
        unit="MPa",
    ),
    Case(
        topic="thermal",
        name="copper sheet 0.043 in, 80 K",
        source=WORKED,
        compute=lambda: growth(0.043 * INCH, Metal.COPPER, 80.0).change / INCH,
        printed="5.848e-05",
        unit="in",
    ),
    Case(
        topic="thermal",
        name="aluminium head over iron block at a radius of 2.125 in, 80 K",
        source=WORKED,
        compute=lambda: slides(2.125 * INCH, Metal.ALUMINIUM_356, Metal.GREY_IRON, 80.0).change
        / INCH,
        printed="0.001819",
        unit="in",
    ),
)
