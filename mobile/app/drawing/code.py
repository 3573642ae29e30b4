"""A matrix code as shapes: dark bars on a light ground, to whole pixels."""

from collections.abc import Iterator, Sequence
from itertools import groupby

from mobile.app.drawing.shapes import Bars, Polygon, Shape

QUIET_ZONE = 4
"""Modules left light around a code (ISO/IEC 18004, 6.3.8)."""


def module_size(rows: Sequence[Sequence[bool]], side: float) -> int:
    """Pixels a module, as many as fit into a square of `side` [px]; at least one."""
    return max(1, int(side // (len(rows) + 2 * QUIET_ZONE)))


def draw_code(rows: Sequence[Sequence[bool]], side: float) -> tuple[Shape, ...]:
    """The ground, and every run of dark modules as one bar."""
    size = module_size(rows, side)
    edge = float(size * (len(rows) + 2 * QUIET_ZONE))
    ground = Polygon(role="code_ground", points=((0, 0), (edge, 0), (edge, edge), (0, edge)))
    return ground, Bars(role="code_ink", width=float(size), bars=tuple(_bars(rows, size)))


def _bars(rows: Sequence[Sequence[bool]], size: int) -> Iterator[tuple[float, float, float]]:
    for number, row in enumerate(rows):
        y = (QUIET_ZONE + number + 0.5) * size
        at = QUIET_ZONE
        for dark, run in groupby(row):
            length = len(list(run))
            if dark:
                yield float(at * size), float((at + length) * size), y
            at += length
