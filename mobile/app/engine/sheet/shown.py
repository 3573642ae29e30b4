"""Lengths and other sizes as this screen writes them, in inch or in millimetre."""

from core.calc.windows import LeftOut
from core.errors import Fault
from core.texts import text
from core.texts.length import Length
from mobile.app.engine.sheet.fields import NAMED_BY


def size(length: float, metric: bool) -> str:
    """A size with its unit."""
    return f"{Length(length).shown(metric=metric):size}"


def small(length: float, metric: bool) -> str:
    """A small change with its unit: thou, or mm."""
    return f"{Length(length).shown(metric=metric):small}"


def mark(thickness: float, metric: bool) -> str:
    """A sheet as the shelf is marked, without its unit."""
    return f"{Length(thickness):{'mm' if metric else 'in'}}".removesuffix("0")


def left_out(each: LeftOut) -> str:
    """Why a part is left out; a field that is refused is called as the screen calls it."""
    if not each.faults:
        return each.because
    part = text(f"windows.name.{each.part}")
    return text("sheet.refused", what=part, why=" ".join(map(named, each.faults)))


def named(fault: Fault) -> str:
    """What is wrong with a field, called as the screen calls it."""
    field = text(f"field.{NAMED_BY.get(fault.field, fault.field)}")
    return fault.sentence.replace(fault.field, field, 1)
