"""All windows, rows and cards of an engine with everything entered, and one step of a what-if."""

import math
import random
from collections.abc import Iterator
from dataclasses import replace

from core.calc.choice import choose
from core.calc.engine import Engine
from core.calc.gasket import Sheet
from tests.forward import allows, complete_engine
from tests.measured import Row, median_seconds

THOU = 0.0254
CYLINDERS = 8
SHEETS = 12
RUNS = 60
GRID_RUNS = 3
GRID = 0.1 * THOU
SPAN = 120 * THOU


def rows() -> Iterator[Row]:
    engines = [complete_engine(random.Random(seed), cylinders=CYLINDERS) for seed in range(RUNS)]
    shelf = [Sheet(thickness=(15 + 7 * step) * THOU, half_width=0.01) for step in range(SHEETS)]
    yield Row(
        what=f"all windows and cards, {CYLINDERS} cylinders × {SHEETS} sheets, median of {RUNS}",
        value=1e3 * median_seconds(lambda engine: choose(engine, shelf), engines),
        unit="ms",
        goal=10.0,
        peer="the overlap alone by trying every tenth of a thou",
        peer_value=1e3 * median_seconds(by_trying, engines[:GRID_RUNS]),
    )
    yield Row(
        what="the same with every pair of sheets taken as one",
        value=1e3 * median_seconds(lambda engine: choose(engine, shelf, pairs=True), engines),
        unit="ms",
    )
    yield Row(
        what="one step of a what-if: a chamber moved, everything again",
        value=1e3 * median_seconds(lambda engine: choose(moved(engine), shelf), engines),
        unit="ms",
        goal=10.0,
    )


def moved(engine: Engine) -> Engine:
    cylinder = engine.ratio.cylinder
    assert cylinder is not None
    larger = replace(cylinder, chamber=cylinder.chamber + 1.0)
    return replace(engine, ratio=replace(engine.ratio, cylinder=larger))


def by_trying(engine: Engine) -> list[float]:
    steps = math.ceil(SPAN / GRID)
    tried = (GRID * (1 + step) for step in range(steps))
    return [thickness for thickness in tried if all(allows(engine, thickness).values())]
