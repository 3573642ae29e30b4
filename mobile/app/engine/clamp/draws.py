"""Ten thousand drawn engines, a slice at a time, so that a tap is never kept waiting."""

import asyncio
from dataclasses import dataclass
from random import Random

import flet as ft

from core.calc.clamp_draws import DRAWS, Compared, cross_check
from core.calc.engine_clamp import EngineClamp

SEED = 1
"""The same draws every time: a second look shows the same figures."""


@ft.observable
@dataclass
class Draws:
    """How far the draws are.

    Parameters
    ----------
    done
        Engines drawn so far.
    running
        Whether more are being drawn.
    compared
        Both spreads of every load, once all are drawn.
    """

    done: int = 0
    running: bool = False
    compared: tuple[Compared, ...] = ()

    async def draw(self, engine: EngineClamp, draws: int = DRAWS) -> None:
        """Draw to the end, or until stopped."""
        self.forget()
        mine = self._run = object()
        self.running = True
        for progress in cross_check(engine, Random(SEED), draws):
            await asyncio.sleep(0)
            if self._run is not mine:
                return
            self.done, self.compared = progress.done, progress.compared or ()
        self.running = False

    def forget(self) -> None:
        """Stop, and drop what was drawn: it belongs to another engine."""
        self._run: object = None
        self.done, self.running, self.compared = 0, False, ()
