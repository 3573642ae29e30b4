"""What the choice starts from: the wire as it stands, the shelf, and how lengths are shown."""

from dataclasses import dataclass

from core.calc.engine import PLAIN_HEIGHT_RULE, Ring
from core.calc.fit import Measured
from core.calc.gasket import Face, HeightRule, Sheet, standing
from core.calc.height import Height
from core.calc.quick_check import Answer
from core.errors import InputError
from core.forms.check_form import SHEET_FIELD
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.texts import text
from core.units import read_list
from core.verdict import Verdict
from mobile.app.state.entry import Entry
from mobile.app.state.told import Told


@dataclass(frozen=True, slots=True, kw_only=True)
class Basis:
    """Where the choice of a sheet starts from.

    Parameters
    ----------
    height
        What was read; None without a reading.
    receiver
        Depth of a receiver groove in the head; 0 without one [mm].
    wire, groove_width, groove_depth
        As far as entered.
    job
        Title of the job it comes from; empty for the check.
    trouble
        Why the job's readings cannot be used.
    """

    metric: bool
    shelf: tuple[Sheet, ...] = ()
    height: Height | None = None
    rings: tuple[Ring, ...] = ()
    receiver: float = 0.0
    rule: HeightRule = PLAIN_HEIGHT_RULE
    wire: Measured | None = None
    groove_width: Measured | None = None
    groove_depth: Measured | None = None
    job: str = ""
    trouble: str = ""


def basis_of(entry: Entry, told: Told) -> Basis:
    """What a quick check knows; without a reading, its shelf."""
    if told.answer is None:
        return Basis(metric=entry.metric, shelf=_shelf(entry.texts.get("shelf", "")))
    asked = told.answer.asked
    return Basis(
        metric=entry.metric,
        shelf=asked.shelf,
        height=asked.height,
        rings=(_ring(told.answer),),
        receiver=asked.face.depth if asked.face.face is Face.RECEIVER else 0.0,
        rule=asked.rule,
        wire=asked.wire,
        groove_width=asked.groove_width,
        groove_depth=asked.groove_depth,
    )


def _ring(answer: Answer) -> Ring:
    asked = answer.asked
    wire, width = asked.wire, asked.groove_width
    seated = next((each for each in answer.checks if each.id == "seated"), None)
    return Ring(
        name=text("sheet.ring"),
        standing=standing(asked.height, asked.face, asked.half_widths.print_depth),
        down=seated is None or seated.verdict is Verdict.PASS,
        interference=wire.value - width.value if wire and width else None,
    )


def _shelf(sizes: str) -> tuple[Sheet, ...]:
    try:
        read = read_list(sizes, SHEET_FIELD) if sizes else ()
    except InputError:
        return ()
    half_width = ASSUMED_HALF_WIDTHS.sheet_measured
    return tuple(
        Sheet(thickness=each, half_width=half_width)
        for each in sorted({typed.value for typed in read})
    )
