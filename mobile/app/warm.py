"""What is made once is made while nobody waits, so that the first tap is as quick as the next."""

import asyncio
import gc

from mobile.app.state.entry import Entry
from mobile.app.state.told import tell

PAUSE = 0.05
"""Time for a tap to come in between [s]."""
SIZES = {
    "gasket": "40 thou",
    "wire": "1 mm",
    "groove-width": "0.040 in",
    "groove-depth": "0.030 in",
    "shelf": "0.050 in",
}
READINGS = (
    {"go": "0.011 in", "no-go": "0.013 in", **SIZES},
    {"go": "0.011 in", "shelf": "0.050 in"},
    {"no-go": "0.30 mm", "shelf": "0.050 in"},
)


async def warm() -> None:
    """Import what a check needs and judge one of each kind, for nobody.

    What stands by then stays for good, so the collector need not look at it with later taps.
    """
    for texts in READINGS:
        await asyncio.sleep(PAUSE)
        tell(Entry(texts=texts, metric=texts.get("no-go", "").endswith("mm")))
    await asyncio.sleep(PAUSE)
    gc.collect()
    gc.freeze()
