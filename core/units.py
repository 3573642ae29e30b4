"""Text with a unit to a float in N, mm, MPa, rad and K, and back: the only module that knows pint.

pint is told the unit alone, once per unit; numbers are read by `core.number_text` and multiplied
here without rounding before the last step, so that 0.041 in, 41 thou and 1.0414 mm are one float.
"""

from dataclasses import dataclass
from enum import Enum, StrEnum, auto
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from core.errors import Fault, InputError, refuse
from core.number_text import SplitNumber, fixed, plain, read_number, shown, split_list
from core.texts import text as say
from core.unit_spellings import meant_by, symbol_of
from core.unit_types import Millimetre

if TYPE_CHECKING:
    import pint

DEFINITIONS = Path(__file__).with_name("units.txt")
BOUND_DIGITS = 4
BOUND_SLACK = 1e-9
"""Relative slack of a bound, so that the bound itself can be typed in any unit."""
LARGE_LENGTH: Millimetre = 105.0
"""A field that takes this much is asked for with a bore as the example, others with a leaf."""


class Dimension(StrEnum):
    """What a unit measures."""

    LENGTH = "length"
    AREA = "area"
    VOLUME = "volume"
    PRESSURE = "pressure"
    FORCE = "force"
    TORQUE = "torque"
    TEMPERATURE = "temperature"
    TEMPERATURE_DIFFERENCE = "temperature_difference"
    ANGLE = "angle"
    RATIO = "ratio"


class Bare(Enum):
    """How a number without a unit is read."""

    REFUSE = auto()
    THOU_OR_INCH = auto()
    INCH = auto()
    MILLIMETRE = auto()
    CUBIC_CENTIMETRE = auto()
    DEGREE = auto()
    CELSIUS = auto()
    FAHRENHEIT = auto()
    NUMBER = auto()


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """What one entry takes.

    Parameters
    ----------
    name
        What a sentence calls it.
    dimension
        What it measures.
    low, high
        Absurd sizes begin beyond these, in the base unit of the dimension.
    bare
        How a number without a unit is read: one or more is thou and less is inch, or as one unit
        always, or as a plain number where a ratio is asked.
    whole
        Whether only whole numbers can be, as of teeth.
    """

    name: str
    dimension: Dimension
    low: float
    high: float
    bare: Bare = Bare.REFUSE
    whole: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Typed:
    """One entry as read.

    Parameters
    ----------
    text
        As typed.
    value
        In the base unit of its dimension: mm, mm², mm³, MPa, N, N·mm, K, rad or 1.
    echo
        The number with the unit that was understood.
    """

    text: str
    value: float
    echo: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Conversion:
    """Base value = number · scale + offset."""

    scale: Fraction
    offset: Fraction


_BARE_SYMBOLS = {
    Bare.INCH: "in",
    Bare.MILLIMETRE: "mm",
    Bare.CUBIC_CENTIMETRE: "cc",
    Bare.DEGREE: "°",
    Bare.CELSIUS: "°C",
    Bare.FAHRENHEIT: "°F",
    Bare.NUMBER: "",
}

_BASES = {
    Dimension.LENGTH: "millimeter",
    Dimension.AREA: "millimeter**2",
    Dimension.VOLUME: "millimeter**3",
    Dimension.PRESSURE: "megapascal",
    Dimension.FORCE: "newton",
    Dimension.TORQUE: "newton*millimeter",
    Dimension.TEMPERATURE: "kelvin",
    Dimension.ANGLE: "radian",
    Dimension.RATIO: "",
}

_DEFINED_AS = {
    "in": "inch",
    "thou": "thou",
    "µin": "microinch",
    "ft": "foot",
    "mm": "millimeter",
    "µm": "micrometer",
    "cm": "centimeter",
    "m": "meter",
    "in²": "inch**2",
    "mm²": "millimeter**2",
    "cm²": "centimeter**2",
    "in³": "inch**3",
    "mm³": "millimeter**3",
    "cm³": "centimeter**3",
    "cc": "milliliter",
    "ml": "milliliter",
    "psi": "psi",
    "ksi": "ksi",
    "bar": "bar",
    "kPa": "kilopascal",
    "MPa": "megapascal",
    "N": "newton",
    "kN": "kilonewton",
    "lbf": "pound_force",
    "lbf·ft": "pound_force*foot",
    "lbf·in": "pound_force*inch",
    "N·m": "newton*meter",
    "N·mm": "newton*millimeter",
    "kN·m": "kilonewton*meter",
    "°C": "degree_Celsius",
    "°F": "degree_Fahrenheit",
    "K": "kelvin",
    "Δ°C": "delta_degree_Celsius",
    "Δ°F": "delta_degree_Fahrenheit",
    "ΔK": "kelvin",
    "°": "degree",
    "rad": "radian",
    "%": "percent",
    "": "",
}
"""Definition in `units.txt` that each symbol stands for; Δ marks a difference of temperatures."""


def read_quantity(text: str, field: Field) -> Typed:
    """Read one entry with its unit.

    Parameters
    ----------
    text
        As typed.
    field
        What the entry takes.

    Raises
    ------
    InputError
        If the number, the unit, what it measures or its size cannot be used; the sentence names
        the field and what to type.

    Examples
    --------
    >>> go = Field(name="--go", dimension=Dimension.LENGTH, low=0, high=6, bare=Bare.THOU_OR_INCH)
    >>> read_quantity("12", go).echo, read_quantity(",012", go).echo
    ('12 thou', '0.012 in')
    """
    number = read_number(text, field.name, _wanted(field))
    symbol = _symbol(number.unit, field) if number.unit else _bare_symbol(number, field)
    meant = _as_meant(symbol, field)
    conversion = _conversion(meant)
    base = number.exact * conversion.scale + conversion.offset
    echo = f"{number.digits} {symbol}".rstrip()
    value = base.numerator / base.denominator
    _refuse_absurd(value, field, meant, echo)
    if field.whole and base.denominator != 1:
        raise refuse(field.name, "number.whole", echo=echo, near=round(value))
    return Typed(text=text.strip(), value=value, echo=echo)


def read_list(text: str, field: Field) -> tuple[Typed, ...]:
    """Read the entries of a list, apart by a semicolon, or by a comma after a unit.

    Raises
    ------
    InputError
        If the list cannot be told apart, or else with every fault of its entries.
    """
    entries: list[Typed] = []
    faults: list[Fault] = []
    for each in split_list(text, field.name):
        try:
            entries.append(read_quantity(each, field))
        except InputError as error:
            faults.extend(error.faults)
    if faults:
        raise InputError(faults)
    return tuple(entries)


def in_unit(value: float, unit: str) -> float:
    """Base value expressed in `unit`; a difference of temperatures in `Δ°C` or `Δ°F`.

    Raises
    ------
    ValueError
        If the unit is not known.

    Examples
    --------
    >>> in_unit(25.4, "in"), in_unit(1.0, "thou") == 1.0 / 0.0254
    (1.0, True)
    """
    scale, offset = _floats(unit)
    return (value - offset) / scale


def from_unit(value: float, unit: str) -> float:
    """Value in `unit` expressed in the base unit of its dimension.

    Raises
    ------
    ValueError
        If the unit is not known.

    Examples
    --------
    >>> from_unit(1.0, "in"), from_unit(0.0, "°C")
    (25.4, 273.15)
    """
    scale, offset = _floats(unit)
    return value * scale + offset


def thou(length: Millimetre) -> float:
    """Length in thousandths of an inch.

    Parameters
    ----------
    length
        Length [mm].
    """
    return in_unit(length, "thou")


def show_length(length: Millimetre) -> str:
    """Length in inch and millimetre, side by side.

    Parameters
    ----------
    length
        Length [mm].

    Examples
    --------
    >>> show_length(0.3048)
    '0.0120 in · 0.305 mm'
    """
    return f"{fixed(in_unit(length, 'in'), 4)} in · {fixed(length, 3)} mm"


@cache
def _registry() -> "pint.UnitRegistry[Fraction]":
    import pint  # import takes longer than the rest of core together

    return pint.UnitRegistry(DEFINITIONS, cache_folder=None, non_int_type=Fraction)


@cache
def _dimension(symbol: str) -> Dimension:
    if symbol.startswith("Δ"):
        return Dimension.TEMPERATURE_DIFFERENCE
    unit = _registry().Unit(_DEFINED_AS[symbol])
    return next(each for each, base in _BASES.items() if unit.is_compatible_with(base))


@cache
def _conversion(symbol: str) -> _Conversion:
    dimension = _dimension(symbol)
    difference = dimension is Dimension.TEMPERATURE_DIFFERENCE
    base = _BASES[Dimension.TEMPERATURE if difference else dimension]
    none, one = (
        _registry().Quantity(Fraction(count), _DEFINED_AS[symbol]).to(base).magnitude
        for count in (0, 1)
    )
    return _Conversion(scale=Fraction(one - none), offset=Fraction(none))


@cache
def _floats(unit: str) -> tuple[float, float]:
    symbol = unit if unit in _DEFINED_AS else symbol_of(unit)
    if symbol is None:
        raise ValueError(f"{unit!r} is not a unit known here")
    conversion = _conversion(symbol)
    return float(conversion.scale), float(conversion.offset)


def _symbol(spelling: str, field: Field) -> str:
    symbol = symbol_of(spelling)
    if symbol is not None:
        return symbol
    instead = meant_by(spelling)
    if instead is not None:
        raise refuse(field.name, "number.unit_two_ways", unit=shown(spelling), instead=instead)
    raise refuse(field.name, "number.unit_unknown", unit=shown(spelling), wanted=_wanted(field))


def _bare_symbol(number: SplitNumber, field: Field) -> str:
    match field.bare:
        case Bare.THOU_OR_INCH:
            return "thou" if abs(number.exact) >= 1 or not number.exact else "in"
        case Bare.REFUSE:
            wanted = _wanted(field)
            raise refuse(field.name, "number.unit_missing", number=number.digits, wanted=wanted)
        case unit:
            return _BARE_SYMBOLS[unit]


def _as_meant(symbol: str, field: Field) -> str:
    """The unit as the field means it: a temperature, or a difference of temperatures."""
    meant = symbol
    if field.dimension is Dimension.TEMPERATURE_DIFFERENCE and f"Δ{symbol}" in _DEFINED_AS:
        meant = f"Δ{symbol}"
    found = _dimension(meant)
    if found is field.dimension:
        return meant
    kind = say(f"number.is_{found}")
    raise refuse(field.name, "number.unit_wrong", unit=symbol, kind=kind, wanted=_wanted(field))


def _wanted(field: Field) -> str:
    small = field.dimension is Dimension.LENGTH and field.high < LARGE_LENGTH
    return say(f"number.wanted_{'small_length' if small else field.dimension}")


def _refuse_absurd(value: float, field: Field, meant: str, echo: str) -> None:
    slack = BOUND_SLACK * max(abs(field.low), abs(field.high))
    if field.low - slack <= value <= field.high + slack:
        return
    low, high = (_bound(each, meant) for each in (field.low, field.high))
    key = "number.too_small" if value < field.low else "number.too_large"
    raise refuse(field.name, key, echo=echo, low=low, high=high)


def _bound(value: float, meant: str) -> str:
    return f"{plain(in_unit(value, meant), BOUND_DIGITS)} {meant.removeprefix('Δ')}".rstrip()
