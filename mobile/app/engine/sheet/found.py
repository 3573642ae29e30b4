"""What the numbers come to: windows, the sheets against them, and the one that is looked at."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from core.calc.choice import Choice, SheetRow, choose
from core.calc.engine import Engine
from core.calc.gasket import Sheet
from core.calc.what_if import Moves, moved
from core.errors import Fault, InputError
from core.forms.kept_engine import engine_of
from core.forms.limits_form import TWO_AS_ONE, cylinder_of, limits_of
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.verdict import TIE
from mobile.app.engine.sheet.basis import Basis
from mobile.app.engine.sheet.entry import SheetEntry


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """Everything the screen shows.

    Parameters
    ----------
    as_it_is, as_moved
        The engine as measured, and with what is moved.
    now
        Every sheet against the engine as measured.
    choice
        The same with what is moved.
    row, row_now
        The sheet looked at, in each of the two; None without a shelf.
    faults
        What cannot be read.
    """

    basis: Basis
    as_it_is: Engine
    as_moved: Engine
    pairs: bool
    now: Choice
    choice: Choice
    row: SheetRow | None
    row_now: SheetRow | None
    faults: tuple[Fault, ...] = ()


def find(entry: SheetEntry, basis: Basis) -> Found:
    """Judge every sheet with everything that was entered."""
    engine, faults = engine_entered(entry, basis)
    pairs = TWO_AS_ONE in entry.form.texts
    now = choose(engine, basis.shelf, pairs=pairs)
    other = with_moves(engine, entry.moves)
    choice = choose(other, basis.shelf, pairs=pairs) if entry.moves else now
    row = looked_at(other, choice, entry.picked)
    return Found(
        basis=basis,
        as_it_is=engine,
        as_moved=other,
        pairs=pairs,
        now=now,
        choice=choice,
        row=row,
        row_now=None if row is None else looked_at(engine, now, row.candidate.sheet.thickness),
        faults=faults,
    )


def engine_entered(entry: SheetEntry, basis: Basis) -> tuple[Engine, tuple[Fault, ...]]:
    """The engine as measured, and what could not be read of it."""
    texts, faults = entry.form.texts, ()
    bore = {"bore": texts["bore"]} if "bore" in texts else {}
    try:
        cylinders = [cylinder_of(name, {**own, **bore}) for name, own in entry.cylinders.items()]
        engine = engine_of(cylinders, limits_of(texts))
    except InputError as error:
        engine, faults = Engine(), error.faults
    with_wire = replace(engine, rings=basis.rings, receiver=basis.receiver, rule=basis.rule)
    return with_wire, faults


def with_moves(engine: Engine, moves: Mapping[str, float]) -> Engine:
    """The engine with what the sliders moved."""
    return moved(engine, Moves(**{name.replace("-", "_"): much for name, much in moves.items()}))


def looked_at(engine: Engine, choice: Choice, picked: float | None) -> SheetRow | None:
    """The sheet that was picked, on the shelf or not; else the one that comes nearest to run."""
    if picked is None:
        return choice.run or choice.unchecked or _nearest(choice)
    same = (row for row in choice.rows if abs(row.candidate.sheet.thickness - picked) <= TIE)
    return next(same, None) or choose(engine, [any_sheet(picked)]).rows[0]


def _nearest(choice: Choice) -> SheetRow | None:
    return min(choice.rows, key=lambda row: len(row.excluded_by), default=None)


def any_sheet(thickness: float) -> Sheet:
    """A sheet that is not on the shelf."""
    return Sheet(thickness=thickness, half_width=ASSUMED_HALF_WIDTHS.sheet_measured)


