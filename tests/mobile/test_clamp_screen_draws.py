"""The draws on the screen: in slices, with progress, stopped by a tap or by another entry."""

import asyncio

from core.calc.clamp_draws import QUANTITIES, SLICE
from mobile.app.engine.clamp.draws import Draws
from mobile.app.engine.clamp.entry import ClampEntry
from mobile.app.engine.clamp.model import Clamp
from mobile.app.engine.clamp.told import tell

ENTRY = ClampEntry(
    choices={
        "size": "7/16",
        "thread": "7/16-14",
        "strength": "8",
        "tightened": "preload",
        "around": "fasteners",
        "peak": "pressure",
    },
    texts={
        "preload": "75 %",
        "fasteners": "4.25",
        "cylinders": "4",
        "pressure": "1500 psi",
        "ring": "4.3 in",
        "wire": "41 thou",
        "height": "10.5 thou",
    },
)
TURNS = 8


def test_taps_come_in_between_two_slices() -> None:
    draws, seen = Draws(), []

    async def watch() -> None:
        while draws.running:
            seen.append(draws.done)
            await asyncio.sleep(0)

    async def both() -> None:
        engine = tell(ENTRY).engine
        assert engine is not None
        await asyncio.gather(draws.draw(engine, TURNS * SLICE), watch())

    asyncio.run(both())
    assert len(set(seen)) >= TURNS - 1
    assert seen == sorted(seen)
    assert not draws.running
    assert len(draws.compared) == 4 * len(QUANTITIES)


def test_a_stop_is_heard_at_the_next_slice_and_leaves_nothing() -> None:
    draws = Draws()

    async def stopped() -> None:
        engine = tell(ENTRY).engine
        assert engine is not None
        task = asyncio.create_task(draws.draw(engine, 100 * SLICE))
        while draws.done < 2 * SLICE:
            await asyncio.sleep(0)
        draws.forget()
        await task

    asyncio.run(stopped())
    assert (draws.done, draws.running, draws.compared) == (0, False, ())


def test_another_entry_drops_what_was_drawn_and_looking_elsewhere_does_not() -> None:
    clamp = Clamp(run=lambda task: asyncio.run(task()))
    clamp.restore(ENTRY)
    engine = clamp.told.engine
    assert engine is not None
    asyncio.run(clamp.draws.draw(engine, SLICE))
    clamp.show_part("loads")
    assert clamp.draws.compared
    clamp.open_pad("ring")
    clamp.press("5")
    assert clamp.draws.compared == ()
