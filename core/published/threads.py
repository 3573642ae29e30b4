"""Stress areas and proof loads as the standards print them."""

from core.calc.fasteners import Fastener, read_thread, standard_fastener, stress_area
from core.published.case import Case
from core.source import Source, derived, published
from core.unit_types import INCH, LBF

ISO_898 = published("ISO 898-1:2013, stress areas and proof loads, coarse thread")
SHIGLEY_TABLE = published("Shigley's Mechanical Engineering Design, 9th ed., examples 8-3 and 8-5")
WORKED = derived("formula of the standard, worked apart from this program")


def _metric_area(name: str, printed: str, source: Source) -> Case:
    return Case(
        topic="fasteners",
        name=f"stress area {name}",
        source=source,
        compute=lambda: stress_area(read_thread(name, "thread")),
        printed=printed,
        unit="mm²",
    )


def _inch_area(name: str, printed: str, source: Source) -> Case:
    return Case(
        topic="fasteners",
        name=f"stress area {name}",
        source=source,
        compute=lambda: stress_area(read_thread(name, "thread")) / INCH**2,
        printed=printed,
        unit="in²",
    )


def _printed_proof_load(grade: str, printed: str) -> Case:
    """The standard multiplies its own rounded area, 84.3 mm²."""
    thread = read_thread("M12", "thread")
    row = standard_fastener(thread, grade, "grade")
    rounded = Fastener(
        thread=thread, area=84.3, proof_strength=row.proof_strength, source=row.source
    )
    return Case(
        topic="fasteners",
        name=f"proof load M12 {grade}",
        source=ISO_898,
        compute=lambda: rounded.proof_load / 1000.0,
        printed=printed,
        unit="kN",
    )


def _proof_load(name: str, grade: str, printed: str, unit: str, scale: float) -> Case:
    return Case(
        topic="fasteners",
        name=f"proof load {name} grade {grade}",
        source=WORKED,
        compute=lambda: (
            standard_fastener(read_thread(name, "thread"), grade, "grade").proof_load / scale
        ),
        printed=printed,
        unit=unit,
    )


CASES: tuple[Case, ...] = (
    _metric_area("M10", "58.0", ISO_898),
    _metric_area("M12", "84.3", ISO_898),
    _metric_area("M14", "115", ISO_898),
    _inch_area("3/4-16", "0.373", SHIGLEY_TABLE),
    _inch_area("5/8-11", "0.226", SHIGLEY_TABLE),
    _printed_proof_load("8.8", "48.9"),
    _printed_proof_load("10.9", "70.0"),
    _printed_proof_load("12.9", "81.8"),
    _inch_area("3/8-16", "0.077490", WORKED),
    _inch_area("7/16-14", "0.106308", WORKED),
    _inch_area("7/16-20", "0.118716", WORKED),
    _inch_area("1/2-13", "0.141898", WORKED),
    _inch_area("1/2-20", "0.159953", WORKED),
    _inch_area("5/8-11", "0.226002", WORKED),
    _metric_area("M8x1.25", "36.6085", WORKED),
    _metric_area("M10x1.5", "57.9895", WORKED),
    _metric_area("M10x1.25", "61.1985", WORKED),
    _metric_area("M11x1.5", "72.2723", WORKED),
    _metric_area("M11x1.25", "75.8497", WORKED),
    _metric_area("M12x1.75", "84.2664", WORKED),
    _metric_area("M12x1.25", "92.0717", WORKED),
    _metric_area("M14x2", "115.4391", WORKED),
    _proof_load("7/16-14", "5", "9036.19", "lbf", LBF),
    _proof_load("7/16-14", "8", "12756.97", "lbf", LBF),
    _proof_load("M11x1.5", "8.8", "41.9179", "kN", 1000.0),
    _proof_load("M11x1.5", "10.9", "59.9860", "kN", 1000.0),
    _proof_load("M12x1.75", "8.8", "48.8745", "kN", 1000.0),
    _proof_load("M12x1.75", "10.9", "69.9411", "kN", 1000.0),
    _proof_load("M12x1.75", "12.9", "81.7384", "kN", 1000.0),
)
