"""How people spell a unit: spelling to symbol."""

import re

_SIGNS = str.maketrans(
    {"μ": "µ", "\u212a": "K", "²": "2", "³": "3", "º": "°", "⋅": "·", "•": "·", "*": "·"}
)
_PRODUCT = re.compile(" ?[·.-] ?| ")

_STRICT = {
    **{each: each for each in ("m", "N", "K", "MPa")},
    "Nm": "N·m",
    "Nmm": "N·mm",
    "kNm": "kN·m",
    "MPA": "MPa",
}
"""Units whose letters mean something else in another case."""

_ANY_CASE = {
    **{each: each for each in ("thou", "mm", "cm", "cc", "ml", "psi", "ksi", "bar", "lbf")},
    **{each: each for each in ("ft", "rad", "%", "µin", "µm")},
    **dict.fromkeys(("in", "inch", "inches", '"', "″", "”", "''", "’’"), "in"),
    **{each[:2] + "2": each for each in ("in²", "mm²", "cm²")},
    **{each[:2] + "3": each for each in ("in³", "mm³", "cm³")},
    **dict.fromkeys(("°c", "° c", "degc", "deg c", "c", "℃"), "°C"),
    **dict.fromkeys(("°f", "° f", "degf", "deg f", "f", "℉"), "°F"),
    **dict.fromkeys(("°", "deg"), "°"),
    "uin": "µin",
    "um": "µm",
    "kpa": "kPa",
    "kn": "kN",
}
"""Units told apart in any case, by their spelling in small letters."""

_TORQUES = {
    tuple(sorted(each.split("·"))): each for each in ("lbf·ft", "lbf·in", "N·m", "N·mm", "kN·m")
}

_POUNDS = frozenset({"lb", "lbs"})
_TWO_MEANINGS = {
    **dict.fromkeys(_POUNDS, "lbf"),
    **dict.fromkeys(("mil", "mils"), "thou"),
    "mpa": "MPa",
    "nm": "N·m",
}


def symbol_of(spelling: str) -> str | None:
    """Symbol of a unit as typed, none if it is not known.

    A foot-pound is a torque in the trade, so `ft-lb` is one; a pound alone is not taken as a force.

    Examples
    --------
    >>> symbol_of("FT-LBS"), symbol_of("MM"), symbol_of("lb")
    ('lbf·ft', 'mm', None)
    """
    unit = spelling.translate(_SIGNS).removesuffix(".")
    return _single(unit) or _torque(unit)


def meant_by(spelling: str) -> str | None:
    """What to type instead of a spelling that has two meanings in the trade.

    Examples
    --------
    >>> meant_by("mil")
    'thou'
    """
    return _TWO_MEANINGS.get(spelling.lower().removesuffix("."))


def _single(unit: str) -> str | None:
    return _STRICT.get(unit) or _ANY_CASE.get(unit.lower())


def _torque(unit: str) -> str | None:
    return _TORQUES.get(tuple(sorted(_force_or_arm(part) for part in _PRODUCT.split(unit))))


def _force_or_arm(part: str) -> str:
    return "lbf" if part.lower() in _POUNDS else _single(part) or ""
