"""Numbers as people type them, read strictly; numbers as people read them, written sensibly."""

import math
import re
from dataclasses import dataclass
from fractions import Fraction

from core.errors import InputError, refuse
from core.texts import text as say

MOST_CHARACTERS = 60
MOST_DIGITS = 15
"""More digits than a float keeps are a slip of the finger, not a measurement."""
THOUSANDS_GROUP = 3

_SIGNS = str.maketrans({"−": "-", "⁄": "/", "∕": "/"})
_SUPERSCRIPTS = "²³"
_FIRST_UNIT_SIGNS = "\"″”'’°℃℉%"
_NUMBER = re.compile(
    r"""(?P<sign>[+-]?)
    (?: (?:(?P<whole>[0-9]+)[ -])? (?P<over>[0-9]+)/(?P<under>[0-9]+)
      | (?P<units>[0-9]+)(?:(?P<separator>[.,])(?P<places>[0-9]+))?
      | (?P<leading>[.,])(?P<only_places>[0-9]+) )
    (?P<rest>.*)""",
    re.VERBOSE,
)
_NOT_FINITE = re.compile(r"[+-]?(nan|inf|∞)", re.IGNORECASE)
_EXPONENT = re.compile(r"[eE][+-]?[0-9]")
_MORE_DIGITS = re.compile(r"[ .,'’_]+[0-9]")
_FROM_UNIT_ON = re.compile(r"[^0-9.,+/⁄∕\s−-].*", re.DOTALL)
_BARE_LIST_COMMA = re.compile(r"[+−-]?[1-9][0-9]*,[0-9]+")
_EMPTY_ENTRY = re.compile(r"|,[^0-9].*|,")


@dataclass(frozen=True, slots=True, kw_only=True)
class SplitNumber:
    """A typed number and the text of its unit.

    Parameters
    ----------
    value
        The number.
    unit
        What followed it, unread; empty for a bare number.
    digits
        The number as understood: decimal point, leading zero, the typed places kept.
    exact
        The number without any rounding.
    """

    value: float
    unit: str
    digits: str
    exact: Fraction


def read_number(text: str, field: str, wanted: str | None = None) -> SplitNumber:
    """Read one number with what follows it.

    Parameters
    ----------
    text
        As typed: decimal point or comma, or an inch fraction such as `1 3/64`.
    field
        Name of the entry, for the sentence.
    wanted
        What to type instead, for the sentence.

    Raises
    ------
    InputError
        If there is no number, or it can be read in two ways.

    Examples
    --------
    >>> read_number(",012 in", "--go").digits
    '0.012'
    >>> read_number("1-3/64in", "--go").value
    1.046875
    """
    wanted = wanted or say("number.wanted")
    typed = " ".join(text.translate(_SIGNS).split())
    _refuse_unreadable(typed, field, wanted)
    match = _NUMBER.fullmatch(typed)
    if match is None:
        key = "number.not_finite" if _NOT_FINITE.match(typed) else "number.none"
        raise refuse(field, key, typed=shown(typed), wanted=wanted)
    _refuse_rest(match, typed, field, wanted)
    return _fraction(match, field) if match["over"] else _decimal(match, field)


def _refuse_unreadable(typed: str, field: str, wanted: str) -> None:
    if not typed:
        raise refuse(field, "number.empty", wanted=wanted)
    if len(typed) > MOST_CHARACTERS:
        raise refuse(field, "number.too_long", most=MOST_CHARACTERS, wanted=wanted)
    if any(c.isnumeric() and not c.isascii() and c not in _SUPERSCRIPTS for c in typed):
        raise refuse(field, "number.foreign_digits", typed=shown(typed), wanted=wanted)


def _refuse_rest(match: re.Match[str], typed: str, field: str, wanted: str) -> None:
    key = _rest_fault(match)
    if key:
        number = typed[: match.start("rest")]
        rest = shown(match["rest"].strip())
        raise refuse(field, key, typed=shown(typed), number=number, rest=rest, wanted=wanted)


def _rest_fault(match: re.Match[str]) -> str | None:
    """Why what follows the number cannot be a unit."""
    rest = match["rest"]
    if _EXPONENT.match(rest):
        return "number.exponent"
    if _MORE_DIGITS.match(rest):
        return "number.separators"
    if not rest or _starts_unit(rest.strip()):
        return None
    return "number.ends" if rest[0] in ".," and not match["over"] else "number.rest"


def _starts_unit(unit: str) -> bool:
    return unit[0].isalpha() or unit[0] in _FIRST_UNIT_SIGNS


def _decimal(match: re.Match[str], field: str) -> SplitNumber:
    units = match["units"] or "0"
    places = match["places"] or match["only_places"] or ""
    number = match["units"] or ""
    if match["separator"] == "," and _groups_thousands(number, places):
        raise _two_ways(number, places, field)
    _refuse_many_digits((units + places).lstrip("0"), field)
    exact = Fraction(int(units + places), 10 ** len(places))
    digits = f"{int(units)}.{places}" if places else str(int(units))
    return _signed(match, exact, digits)


def _two_ways(units: str, places: str, field: str) -> InputError:
    typed, point, whole = f"{units},{places}", f"{units}.{places}", f"{units}{places}"
    return refuse(field, "number.two_ways", number=typed, point=point, whole=whole)


def _groups_thousands(units: str, places: str) -> bool:
    return (
        len(places) == THOUSANDS_GROUP
        and len(units) <= THOUSANDS_GROUP
        and not units.startswith("0")
    )


def _fraction(match: re.Match[str], field: str) -> SplitNumber:
    whole, over, under = match["whole"] or "0", match["over"], match["under"]
    typed = f"{match['whole']} {over}/{under}" if match["whole"] else f"{over}/{under}"
    _refuse_many_digits(whole.lstrip("0") + over + under, field)
    if int(under) == 0:
        raise refuse(field, "number.zero_below", typed=typed)
    if match["whole"] and int(over) >= int(under):
        raise refuse(field, "number.top_heavy", typed=typed, whole=whole)
    return _signed(match, int(whole) + Fraction(int(over), int(under)), typed)


def _refuse_many_digits(digits: str, field: str) -> None:
    if len(digits) > MOST_DIGITS:
        raise refuse(field, "number.many_digits", most=MOST_DIGITS)


def _signed(match: re.Match[str], exact: Fraction, digits: str) -> SplitNumber:
    below_zero = match["sign"] == "-" and exact
    exact = -exact if below_zero else exact
    return SplitNumber(
        value=exact.numerator / exact.denominator,
        unit=match["rest"].strip(),
        digits=f"-{digits}" if below_zero else digits,
        exact=exact,
    )


def shown(typed: str) -> str:
    """Typed text fit for one line of a sentence."""
    return typed if typed.isprintable() else typed.encode("unicode_escape").decode("ascii")


def split_list(text: str, field: str) -> tuple[str, ...]:
    """Entries of a list: apart by a semicolon anywhere, or by a comma once a unit has begun.

    Raises
    ------
    InputError
        If an entry is empty, or a comma could be a decimal comma or a separator.

    Examples
    --------
    >>> split_list("0,032in,0,040in; 1,1 mm", "--shelf")
    ('0,032in', '0,040in', '1,1 mm')
    """
    entries = tuple(entry for part in text.split(";") for entry in _at_commas(part))
    for entry in entries:
        if _EMPTY_ENTRY.fullmatch(entry):
            raise refuse(field, "number.list_empty")
        if _comma_unclear(entry, alone=";" not in text):
            raise refuse(field, "number.list_commas", typed=shown(entry))
    return entries


def _at_commas(part: str) -> list[str]:
    entries = [""]
    for character in part:
        if character == "," and _unit_begun(entries[-1]):
            entries.append("")
        else:
            entries[-1] += character
    return [entry.strip() for entry in entries]


def _unit_begun(entry: str) -> bool:
    return _FROM_UNIT_ON.search(entry) is not None


def _comma_unclear(entry: str, *, alone: bool) -> bool:
    number = _FROM_UNIT_ON.sub("", entry)
    if number.count(",") > 1 or ", " in number or ("," in number and "." in number):
        return True
    return alone and _BARE_LIST_COMMA.fullmatch(entry) is not None


def fixed(value: float, places: int) -> str:
    """Value with so many decimals, never a negative zero.

    Examples
    --------
    >>> fixed(-0.0004, 3)
    '0.000'
    """
    if not math.isfinite(value):
        raise ValueError(f"{value} cannot be shown")
    return f"{value:z.{places}f}"


def plain(value: float, digits: int) -> str:
    """Value to so many significant digits, written out, without trailing zeros.

    Examples
    --------
    >>> plain(152.4, 3), plain(0.00012, 3)
    ('152', '0.00012')
    """
    if value == 0.0:
        return "0"
    text = _to_place(value, digits - 1 - _exponent(value, digits))
    return text.rstrip("0").rstrip(".") if "." in text else text


def sensible(value: float, u: float) -> str:
    """Value rounded to the place of the second significant digit of its spread.

    Source
    ------
    JCGM 100:2008 (GUM), 7.2.6.

    Examples
    --------
    >>> sensible(0.30481, 0.00733)
    '0.3048'
    """
    return _to_place(value, 1 - _exponent(u, 2)) if u > 0.0 else plain(value, MOST_DIGITS)


def _exponent(value: float, digits: int) -> int:
    return int(f"{value:.{digits - 1}e}".partition("e")[2])


def _to_place(value: float, place: int) -> str:
    return fixed(round(value, place), max(0, place))
