"""Two banks of four with 64 places redrawn, and 16 rings from 40 readings, in a real browser."""

import json
import statistics
import tempfile
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import sync_playwright

from tests.measured import Row
from tests.phone import Phone
from tests.served_site import built, served

MAP = """
import json, time
from mobile.app.engine.deck.entry import DeckEntry
from mobile.app.engine.deck.paint import painted
from mobile.app.engine.deck.picture import picture
from mobile.app.engine.deck.told import tell
from mobile.app.theme import LIGHT
texts = {"cylinders": "8", "banks": "2", "bore": "4.5 in", "spacing": "4.9 in",
         "bolt-offset": "2.6 in", "bolt-hole": "0.53 in"}
for cylinder in range(1, 9):
    for hour in (12, 1, 3, 4, 6, 7, 9, 10):
        texts[f"height:{cylinder}/{hour}"] = f"{0.010 + 0.0001 * ((cylinder * hour) % 7):.4f} in"
entry = DeckEntry(texts=texts, part="map", zoom=3)
told = tell(entry)
draws = []
for _ in range(41):
    start = time.perf_counter()
    seen = picture(entry, told, 360.0, 520.0, 12.0, False)
    shapes = [painted(shape, LIGHT) for shape in seen.shapes]
    draws.append(time.perf_counter() - start)
tells = []
for _ in range(11):
    start = time.perf_counter()
    tell(entry)
    tells.append(time.perf_counter() - start)
json.dumps([draws, tells, len(shapes)])
"""
SOLVE = """
import json, random, time
from fractions import Fraction
from core.calc.pair_heights import Reading, heights
rings = tuple(str(k) for k in range(1, 17))
rng = random.Random(1)
times = []
for _ in range(15):
    found = [Reading(name=r, first=r, value=rng.uniform(0.22, 0.31), u=0.005)
             for r in rng.sample(rings, 4)]
    while len(found) < 40:
        a, b = rng.sample(rings, 2)
        found.append(Reading(name=a + b, first=a, second=b, part=Fraction(1, 2),
                             value=rng.uniform(0.22, 0.31), u=0.0073, by_leaves=True))
    start = time.perf_counter()
    heights(rings, found, 0.003)
    times.append(time.perf_counter() - start)
json.dumps(times)
"""


def rows() -> Iterator[Row]:
    with (
        tempfile.TemporaryDirectory() as place,
        sync_playwright() as playwright,
        served(built()) as origin,
    ):
        phone = Phone(playwright, Path(place), f"{origin}/")
        phone.open()
        phone.read_aloud()
        draws, tells, shapes = json.loads(phone.python(MAP))
        solves = json.loads(phone.python(SOLVE))
        phone.close()
    yield Row(
        what=f"real browser: 8 rings with 64 places to {shapes} shapes, median of {len(draws)}",
        value=1e3 * statistics.median(draws),
        unit="ms",
        goal=30.0,
    )
    yield Row(
        what=f"real browser: reading and judging that entry, median of {len(tells)}",
        value=1e3 * statistics.median(tells),
        unit="ms",
    )
    yield Row(
        what=f"real browser: 16 rings from 40 readings, median of {len(solves)} sets",
        value=1e3 * statistics.median(solves),
        unit="ms",
        goal=100.0,
    )
