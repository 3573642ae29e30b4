"""The form of a deck or head face: lines with leaves, a grid of readings, finish."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from core.calc.finish import Roughness, RoughnessParameter
from core.calc.flatness import FacePoint, Line, LineReading
from core.forms.entries import Entries
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.uncertain import rectangular
from core.unit_types import INCH, Millimetre
from core.units import Bare, Dimension, Field

GAP_FIELD = Field(
    name="", dimension=Dimension.LENGTH, low=1e-5 * INCH, high=0.1 * INCH, bare=Bare.THOU_OR_INCH
)
READING_FIELD = replace(GAP_FIELD, low=-0.25 * INCH, high=0.25 * INCH)
COORDINATE_FIELD = Field(
    name="", dimension=Dimension.LENGTH, low=0.0, high=100.0 * INCH, bare=Bare.INCH
)
FINISH_FIELD = Field(
    name="", dimension=Dimension.LENGTH, low=1e-7 * INCH, high=0.002 * INCH, bare=Bare.REFUSE
)


@dataclass(frozen=True, slots=True, kw_only=True)
class GridText:
    """One place of a grid as typed."""

    x: str
    y: str
    z: str


def read_lines(
    goes: Mapping[str, str], stops: Mapping[str, str], name: Callable[[str], str]
) -> tuple[LineReading, ...]:
    """Leaves tried under a straightedge, by line.

    Raises
    ------
    InputError
        With every fault, each naming its line.
    """
    went = Entries({line: [each] for line, each in goes.items()}, name)
    stopped = Entries({line: [each] for line, each in stops.items()}, name)
    read = [
        LineReading(line=line, goes=_gap(went, line), stops=_gap(stopped, line))
        for line in Line
        if went.typed(line) or stopped.typed(line)
    ]
    went.finish()
    stopped.finish()
    return tuple(read)


def _gap(entries: Entries, line: str) -> Millimetre | None:
    typed = entries.quantity(line, GAP_FIELD)
    return None if typed is None else typed.value


def read_grid(points: Sequence[GridText], name: Callable[[str], str]) -> tuple[FacePoint, ...]:
    """Readings of an indicator on a grid.

    Raises
    ------
    InputError
        With every fault of one point, each naming its field.
    """
    return tuple(_point(point, name) for point in points)


def _point(point: GridText, name: Callable[[str], str]) -> FacePoint:
    entries = Entries({"grid-x": [point.x], "grid-y": [point.y], "grid-z": [point.z]}, name)
    kinds = (("grid-x", COORDINATE_FIELD), ("grid-y", COORDINATE_FIELD), ("grid-z", READING_FIELD))
    x, y, z = (entries.quantity(field, kind) for field, kind in kinds)
    entries.finish()
    return FacePoint(
        x=x.value if x else 0.0,
        y=y.value if y else 0.0,
        z=z.value if z else 0.0,
        u=rectangular(ASSUMED_HALF_WIDTHS.indicator),
    )


def read_finish(typed: str, parameter: str, name: Callable[[str], str]) -> Roughness:
    """A roughness with its parameter.

    Raises
    ------
    InputError
        If it does not read.
    """
    entries = Entries({"finish": [typed]}, name)
    value = entries.quantity("finish", FINISH_FIELD)
    entries.finish()
    return Roughness(
        parameter=RoughnessParameter(parameter), value=value.value if value else 0.0
    )
