"""The swap card line by line: what is, what will be, and what each part says to it."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from core.calc.choice import SheetRow
from core.calc.swap import Fit, Moved, SwapCard
from core.texts import text
from core.texts.share import Share
from core.verdict import Verdict
from mobile.app.engine.sheet.shown import size, small

SIZES = {
    "piston_to_head": "piston-to-head",
    "intake_valve": "intake-valve",
    "exhaust_valve": "exhaust-valve",
    "preload": "preload",
    "dowel": "dowels",
    "thread": "threads",
}
"""Part of the engine that judges each size of a card."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapLine:
    """One thing that moves with the head.

    Parameters
    ----------
    name
        What it is, for the screen's own use.
    now
        With the sheet on now; empty where only the change counts.
    verdict
        What the part says; None where nothing limits it.
    """

    name: str
    what: str
    now: str
    then: str
    verdict: Verdict | None = None

    @property
    def phrase(self) -> str:
        """The line in words."""
        kind = "moved" if self.now else "change"
        told = text(f"sheet.line.{kind}", what=self.what, now=self.now, then=self.then)
        return f"{told}, {text(f'verdict.{self.verdict}')}" if self.verdict else told


def swap_lines(now: SheetRow, then: SheetRow, metric: bool) -> tuple[SwapLine, ...]:
    """From the sheet on now of the engine as measured to another, with what is moved.

    Parameters
    ----------
    now
        The other sheet on the engine as measured: its card knows what is there now.
    then
        The same with what is moved.
    """
    if now.card is None or then.card is None:
        return ()
    return tuple(_lines(now.card, then.card, then, metric))


def _lines(now: SwapCard, then: SwapCard, row: SheetRow, metric: bool) -> Iterator[SwapLine]:
    verdicts = {each.part: each.verdict for each in row.parts}
    if now.fit_now and then.fit:
        yield SwapLine(
            name="wire",
            what=text("sheet.line.wire"),
            now=_fit(now.fit_now),
            then=_fit(then.fit),
            verdict=then.fit.verdict,
        )
    for field, part in SIZES.items():
        before: Moved | None = getattr(now, field)
        after: Moved | None = getattr(then, field)
        if before and after:
            yield SwapLine(
                name=part,
                what=text(f"swap.{field}"),
                now=size(before.now, metric).partition(" ")[0],
                then=size(after.then, metric),
                verdict=verdicts.get(part),
            )
    if now.ratio and then.ratio:
        yield SwapLine(
            name="ratio",
            what=text("windows.name.ratio"),
            now=f"{now.ratio.now:.2f}",
            then=f"{then.ratio.then:.2f}",
            verdict=verdicts.get("ratio"),
        )
    yield from _changes(then, verdicts, metric)


def _fit(fit: Fit) -> str:
    return f"{Share(fit.share)} {text(f'word.{fit.word}')}"


def _changes(
    card: SwapCard, verdicts: dict[str, Verdict], metric: bool
) -> Iterator[SwapLine]:
    """What has no size of its own, only a change."""
    if card.pushrod is not None:
        yield _change("preload", "pushrod", small(card.pushrod, metric), verdicts)
    if card.intake is not None:
        for what, much in (
            ("spacer", card.intake.side_spacer),
            ("rail", card.intake.rail_gap),
            ("offset", card.intake.riding_offset),
        ):
            yield _change("intake-faces", what, small(much, metric), verdicts)
    if card.cam is not None:
        degrees = f"{math.degrees(card.cam.crank):.2f}°"
        yield _change("cam-timing", "cam", degrees, verdicts)


def _change(part: str, what: str, then: str, verdicts: dict[str, Verdict]) -> SwapLine:
    return SwapLine(
        name=what, what=text(f"sheet.line.{what}"), now="", then=then, verdict=verdicts.get(part)
    )
