"""Text with a unit becomes the one number it means, in N, mm, MPa, rad and K, or is refused."""

import itertools
import math
import random
import re
import subprocess
import sys
from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from core.errors import InputError
from core.units import (
    Bare,
    Dimension,
    Field,
    Typed,
    from_unit,
    in_unit,
    read_list,
    read_quantity,
    show_length,
    thou,
)

ROOT = Path(__file__).resolve().parents[2]

HEIGHT = Field(name="--go", dimension=Dimension.LENGTH, low=0.0, high=6.35, bare=Bare.THOU_OR_INCH)
BORE = Field(name="--bore", dimension=Dimension.LENGTH, low=20.0, high=300.0)
SHEET = Field(name="--shelf", dimension=Dimension.LENGTH, low=0.05, high=10.0)
DEPTH = Field(name="depth", dimension=Dimension.LENGTH, low=-1e3, high=1e3, bare=Bare.MILLIMETRE)
AREA = Field(name="area", dimension=Dimension.AREA, low=0.0, high=1e5)
CHAMBER = Field(name="--chamber", dimension=Dimension.VOLUME, low=0.0, high=1e6)
PRESSURE = Field(name="--pressure", dimension=Dimension.PRESSURE, low=0.0, high=1e4)
FORCE = Field(name="--preload", dimension=Dimension.FORCE, low=0.0, high=1e6)
TORQUE = Field(name="--torque", dimension=Dimension.TORQUE, low=0.0, high=1e6)
HOT = Field(name="--hot", dimension=Dimension.TEMPERATURE, low=200.0, high=900.0)
RISE = Field(name="--rise", dimension=Dimension.TEMPERATURE_DIFFERENCE, low=-500.0, high=900.0)
TURN = Field(name="--turn", dimension=Dimension.ANGLE, low=0.0, high=7.0)
VEE = Field(name="--vee", dimension=Dimension.ANGLE, low=0.0, high=3.2, bare=Bare.DEGREE)
SHARE = Field(name="--share", dimension=Dimension.RATIO, low=0.0, high=1.0, bare=Bare.NUMBER)
FIELDS = (
    *(HEIGHT, BORE, SHEET, DEPTH, AREA, CHAMBER, PRESSURE),
    *(FORCE, TORQUE, HOT, RISE, TURN, VEE, SHARE),
)


# NIST Special Publication 811 (2008), Appendix B.8: factor as printed, to the unit in brackets.
# Here in N, mm, MPa, rad and K; the power of ten between the two is the last column.
NIST_SP_811 = [
    ("in", "2.54", 1),  # inch [m] E-02
    ("thou", "2.54", -2),  # mil (0.001 in) [mm] E-02
    ("µin", "2.54", -5),  # microinch [µm] E-02
    ("ft", "3.048", 2),  # foot [m] E-01
    ("in²", "6.4516", 2),  # square inch [m²] E-04
    ("in³", "1.638706", 4),  # cubic inch [m³] E-05
    ("lbf", "4.448222", 0),  # pound-force [N]
    ("lbf·ft", "1.355818", 3),  # pound-force foot [N·m]
    ("lbf·in", "1.129848", 2),  # pound-force inch [N·m] E-01
    ("psi", "6.894757", -3),  # pound-force per square inch [Pa] E+03
    ("ksi", "6.894757", 0),  # kip per square inch [Pa] E+06
    ("bar", "1.0", -1),  # bar [Pa] E+05
    ("°", "1.745329", -2),  # degree of angle [rad] E-02
    ("Δ°F", "5.555556", -1),  # degree Fahrenheit, interval [K] E-01
    ("Δ°C", "1.0", 0),  # degree Celsius, interval [K]
]


@pytest.mark.parametrize(("unit", "printed", "power"), NIST_SP_811)
def test_factors_agree_with_the_published_table(unit: str, printed: str, power: int) -> None:
    half_last_digit = 0.5 * 10.0 ** int(Decimal(printed).as_tuple().exponent)
    assert from_unit(1.0, unit) / 10.0**power == pytest.approx(float(printed), abs=half_last_digit)


# Exact by definition: NIST SP 811 (2008), App. B.8, factors printed in bold.
EXACT = [
    ("in", 25.4),
    ("thou", 0.0254),
    ("ft", 304.8),
    ("in²", 645.16),
    ("in³", 16387.064),
    ("lbf", 4.4482216152605),
    ("cc", 1000.0),
    ("bar", 0.1),
    ("kPa", 0.001),
    ("kN", 1000.0),
    ("N·m", 1000.0),
    ("%", 0.01),
]


@pytest.mark.parametrize(("unit", "factor"), EXACT)
def test_exact_factors_are_the_nearest_float(unit: str, factor: float) -> None:
    assert from_unit(1.0, unit) == factor
    assert in_unit(factor, unit) == 1.0


@pytest.mark.parametrize(
    ("unit", "factor"),
    [
        ("in", constants.inch * 1e3),
        ("thou", constants.mil * 1e3),
        ("ft", constants.foot * 1e3),
        ("µm", constants.micron * 1e3),
        ("lbf", constants.lbf),
        ("psi", constants.psi * 1e-6),
        ("ksi", constants.psi * 1e-3),
        ("bar", constants.bar * 1e-6),
        ("lbf·ft", constants.lbf * constants.foot * 1e3),
        ("lbf·in", constants.lbf * constants.inch * 1e3),
        ("in³", constants.inch**3 * 1e9),
        ("ml", constants.liter * 1e6),
        ("°", constants.degree),
        ("Δ°F", constants.degree_Fahrenheit),
    ],
)
def test_factors_agree_with_scipy(unit: str, factor: float) -> None:
    assert from_unit(1.0, unit) == pytest.approx(factor, rel=4e-16, abs=0.0)


@given(st.floats(-200.0, 2000.0), st.sampled_from([("°C", "Celsius"), ("°F", "Fahrenheit")]))
def test_temperatures_agree_with_scipy(value: float, unit: tuple[str, str]) -> None:
    symbol, name = unit
    theirs = float(constants.convert_temperature(value, name, "Kelvin"))
    assert from_unit(value, symbol) == pytest.approx(theirs, rel=1e-14, abs=1e-12)
    assert in_unit(theirs, symbol) == pytest.approx(value, rel=1e-12, abs=1e-11)


ANY_UNIT = st.sampled_from([row[0] for row in (*NIST_SP_811, *EXACT)])


@given(st.floats(1e-9, 1e9))
def test_inch_to_millimetre_and_back_is_within_one_ulp(inches: float) -> None:
    back = in_unit(from_unit(inches, "in"), "in")
    assert abs(back - inches) <= math.ulp(inches)


@given(st.floats(1e-9, 1e9), ANY_UNIT)
def test_every_unit_goes_there_and_back(value: float, unit: str) -> None:
    assert in_unit(from_unit(value, unit), unit) == pytest.approx(value, rel=4.5e-16, abs=0.0)


@given(st.integers(0, 250_000))
def test_one_length_is_one_float_in_every_unit(microinches: int) -> None:
    inches = Decimal(microinches).scaleb(-6)
    texts = (
        f"{inches:f} in",
        f"{inches * 1000:f} thou",
        f"{inches * Decimal('25.4'):f} mm",
        f"{inches * 25400:f} µm",
        f"{microinches} µin",
        f"{inches:f} in".replace(".", ","),
    )
    readings = {read_quantity(text, DEPTH).value for text in texts if "," not in text}
    assert readings == {float(inches * Decimal("25.4"))}


def test_check_values_of_the_inch() -> None:
    """1 in = 25.4 mm exactly (international inch of 1959)."""
    assert read_quantity("0.041 in", SHEET).value == 1.0414
    assert read_quantity("41 thou", SHEET).value == 1.0414
    assert read_quantity("1041.4 µm", SHEET).value == 1.0414
    assert read_quantity("0.0216 in", SHEET).value == 0.54864
    assert round(thou(0.05), 9) == 1.968503937
    assert round(in_unit(0.1 * 25.4, "in"), 15) == 0.1
    assert round(from_unit(0.1, "in") * 1e6) == 2_540_000


@pytest.mark.parametrize(
    ("text", "field", "value", "echo"),
    [
        ("12", HEIGHT, 0.3048, "12 thou"),
        ("10,5", HEIGHT, 0.2667, "10.5 thou"),
        ("1", HEIGHT, 0.0254, "1 thou"),
        (".012", HEIGHT, 0.3048, "0.012 in"),
        (",012", HEIGHT, 0.3048, "0.012 in"),
        ("0", HEIGHT, 0.0, "0 thou"),
        ("3/64", HEIGHT, 1.190625, "3/64 in"),
        ("0.30 mm", HEIGHT, 0.3, "0.30 mm"),
        ("0.25", HEIGHT, 6.35, "0.25 in"),
        ("250 THOU", HEIGHT, 6.35, "250 thou"),
        ("305 µm", HEIGHT, 0.305, "305 µm"),
        ("305 μm", HEIGHT, 0.305, "305 µm"),
        ("305um", HEIGHT, 0.305, "305 µm"),
        ("7", DEPTH, 7.0, "7 mm"),
        ("4 1/8 IN", BORE, 104.775, "4 1/8 in"),
        ("4.125”", BORE, 104.775, "4.125 in"),
        ("4.125 inches", BORE, 104.775, "4.125 in"),
        ("105MM", BORE, 105.0, "105 mm"),
        ("10,5 cm", BORE, 105.0, "10.5 cm"),
        ("64 cc", CHAMBER, 64000.0, "64 cc"),
        ("64 cm3", CHAMBER, 64000.0, "64 cm³"),
        ("64 mL", CHAMBER, 64000.0, "64 ml"),
        ("4 in³", CHAMBER, 65548.256, "4 in³"),
        ("2 in2", AREA, 1290.32, "2 in²"),
        ("100 bar", PRESSURE, 10.0, "100 bar"),
        ("10 MPa", PRESSURE, 10.0, "10 MPa"),
        ("10 MPA", PRESSURE, 10.0, "10 MPa"),
        ("10000 kpa", PRESSURE, 10.0, "10000 kPa"),
        ("62 kN", FORCE, 62000.0, "62 kN"),
        ("10000 lbf", FORCE, 44482.216152605, "10000 lbf"),
        ("110 N·m", TORQUE, 110000.0, "110 N·m"),
        ("110Nm", TORQUE, 110000.0, "110 N·m"),
        ("110 N.m", TORQUE, 110000.0, "110 N·m"),
        ("80 ft-lb", TORQUE, 108465.43586651204, "80 lbf·ft"),
        ("80 lbf*ft", TORQUE, 108465.43586651204, "80 lbf·ft"),
        ("80 ft·lbf", TORQUE, 108465.43586651204, "80 lbf·ft"),
        ("20 °C", HOT, 293.15, "20 °C"),
        ("68 degF", HOT, 293.15, "68 °F"),
        ("−40 f", HOT, 233.15, "-40 °F"),
        ("293.15 K", HOT, 293.15, "293.15 K"),
        ("18 °F", RISE, 10.0, "18 °F"),
        ("10 °C", RISE, 10.0, "10 °C"),
        ("10 K", RISE, 10.0, "10 K"),
        ("90°", TURN, math.pi / 2, "90 °"),
        ("90 deg", TURN, math.pi / 2, "90 °"),
        ("90", VEE, math.pi / 2, "90 °"),
        ("25 %", SHARE, 0.25, "25 %"),
        ("0,25", SHARE, 0.25, "0.25"),
    ],
)
def test_an_entry_is_read_and_echoed(text: str, field: Field, value: float, echo: str) -> None:
    assert read_quantity(text, field) == Typed(text=text, value=value, echo=echo)


@pytest.mark.parametrize(
    ("text", "field", "sentence"),
    [
        (
            "",
            HEIGHT,
            "--go: nothing was typed; type a length such as 12 thou, 0.012 in or 0.30 mm",
        ),
        ("4.125 psi", BORE, "--bore: psi is a pressure; type a length such as 4.125 in or 105 mm"),
        ("5 mm", PRESSURE, "--pressure: mm is a length; type a pressure such as 1500 psi, "),
        ("5 N", TORQUE, "--torque: N is a force; type a torque such as 80 lbf·ft or 110 N·m"),
        ("5 N·m", FORCE, "--preload: N·m is a torque; type a force such as 14000 lbf or 62 kN"),
        ("5 in2", CHAMBER, "--chamber: in² is an area; type a volume such as 64 cc or 3.9 in³"),
        ("5 cc", AREA, "area: cc is a volume; type an area such as 13.5 in² or 8700 mm²"),
        ("5 °", SHARE, "--share: ° is an angle; type a share such as 25 % or 0.25"),
        ("5 %", TURN, "--turn: % is a share; type an angle such as 23°"),
        ("5 °C", BORE, "--bore: °C is a temperature; type a length such as 4.125 in or 105 mm"),
        ("5 in", RISE, "--rise: in is a length; type a difference of temperatures such as "),
        ("5 in", HOT, "--hot: in is a length; type a temperature such as 200 °F or 93 °C"),
        ("105", BORE, "--bore: 105 has no unit; type a length such as 4.125 in or 105 mm"),
        ("4 furlong", BORE, "--bore: “furlong” is not a unit known here; type a length such as "),
        ("4 mm 5", BORE, "--bore: “mm 5” is not a unit known here; type a length such as "),
        ("4 in\x07", BORE, "--bore: “in\\x07” is not a unit known here; type a length such as "),
        ("4 M", BORE, "--bore: “M” is not a unit known here; type a length such as "),
        ("4 n", FORCE, "--preload: “n” is not a unit known here; type a force such as "),
        ("12 mil", HEIGHT, "--go: “mil” can be read in two ways; type thou"),
        ("12 mils", HEIGHT, "--go: “mils” can be read in two ways; type thou"),
        ("90 lb", FORCE, "--preload: “lb” can be read in two ways; type lbf"),
        ("9 mPa", PRESSURE, "--pressure: “mPa” can be read in two ways; type MPa"),
        ("9 nm", TORQUE, "--torque: “nm” can be read in two ways; type N·m"),
        ("12 mm", HEIGHT, "--go: 12 mm is too large; type a value from 0 mm to 6.35 mm"),
        ("0.5", HEIGHT, "--go: 0.5 in is too large; type a value from 0 in to 0.25 in"),
        ("-5", HEIGHT, "--go: -5 thou is too small; type a value from 0 thou to 250 thou"),
        ("0.1 in", BORE, "--bore: 0.1 in is too small; type a value from 0.7874 in to 11.81 in"),
        ("5000 F", HOT, "--hot: 5000 °F is too large; type a value from -99.67 °F to 1160 °F"),
        ("5000 F", RISE, "--rise: 5000 °F is too large; type a value from -900 °F to 1620 °F"),
        ("25", SHARE, "--share: 25 is too large; type a value from 0 to 1"),
        ("4,125 in", BORE, "--bore: “4,125” could be 4.125 or 4125; type 4.125 with a point, "),
    ],
)
def test_an_entry_that_cannot_be_used_says_what_to_type(
    text: str, field: Field, sentence: str
) -> None:
    with pytest.raises(InputError) as caught:
        read_quantity(text, field)
    assert str(caught.value).startswith(sentence)


@pytest.mark.parametrize("field", FIELDS, ids=lambda field: field.name)
def test_what_a_sentence_asks_for_can_be_typed(field: Field) -> None:
    with pytest.raises(InputError) as caught:
        read_quantity("", field)
    examples = str(caught.value).partition("such as ")[2]
    for example in re.split(r", | or ", examples):
        assert read_quantity(example, field).echo.replace(" ", "") == example.replace(" ", "")


@pytest.mark.parametrize("field", FIELDS, ids=lambda field: field.name)
def test_the_bounds_themselves_can_be_typed(field: Field) -> None:
    unit = {"length": "mm", "area": "mm²", "volume": "mm³", "pressure": "MPa", "force": "N"}
    more = {"torque": "N·mm", "angle": "rad", "ratio": ""}
    base = {**unit, **more}.get(field.dimension, "K")
    for bound in (field.low, field.high):
        assert read_quantity(f"{bound:f} {base}", field).value == bound


def test_a_list_reports_every_fault_of_its_entries() -> None:
    with pytest.raises(InputError) as caught:
        read_list("0.032 in; 5 psi, 9 furlong; 1,1 mm", SHEET)
    assert [fault.sentence.partition(";")[0] for fault in caught.value.faults] == [
        "--shelf: psi is a pressure",
        "--shelf: “furlong” is not a unit known here",
    ]


def test_a_list_of_sheets_is_read() -> None:
    sheets = read_list("0,032in,0,040in; 1,1 mm", SHEET)
    assert [each.value for each in sheets] == [0.8128, 1.016, 1.1]
    assert [each.echo for each in sheets] == ["0.032 in", "0.040 in", "1.1 mm"]


def test_a_length_is_shown_in_both_systems() -> None:
    assert show_length(0.3048) == "0.0120 in · 0.305 mm"
    assert show_length(-1e-9) == "0.0000 in · 0.000 mm"


@pytest.mark.parametrize("unit", ["furlong", "mil", "in*in", "__import__('os')", "lb"])
def test_an_unknown_unit_in_the_program_is_an_error(unit: str) -> None:
    with pytest.raises(ValueError, match="not a unit known here"):
        in_unit(1.0, unit)


def test_pint_is_not_loaded_before_a_unit_is_asked_for() -> None:
    program = "import sys, core.units; print('pint' in sys.modules)"
    run = [sys.executable, "-c", program]
    done = subprocess.run(run, cwd=ROOT, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


# A second reader, slow and built the other way round: it tries every place where the number could
# end, takes a number only if a pattern of valid numbers covers it whole, and a unit only if it is
# in a written-out list. It knows no reasons for refusing.

INCH = Fraction(254, 10)
POUND = Fraction("4.4482216152605")
DEGREE = Fraction("3.14159265358979323846264338327950288") / 180
ANY_CASE: dict[str, tuple[str, Fraction]] = {
    **dict.fromkeys(["in", "inch", "inches", '"', "″", "”", "''", "’’"], ("length", INCH)),
    "thou": ("length", INCH / 1000),
    **dict.fromkeys(["µin", "uin"], ("length", INCH / 10**6)),
    "ft": ("length", INCH * 12),
    "mm": ("length", Fraction(1)),
    **dict.fromkeys(["µm", "um"], ("length", Fraction(1, 1000))),
    "cm": ("length", Fraction(10)),
    **dict.fromkeys(["in2", "in²"], ("area", INCH**2)),
    **dict.fromkeys(["mm2", "mm²"], ("area", Fraction(1))),
    **dict.fromkeys(["cm2", "cm²"], ("area", Fraction(100))),
    **dict.fromkeys(["in3", "in³"], ("volume", INCH**3)),
    **dict.fromkeys(["mm3", "mm³"], ("volume", Fraction(1))),
    **dict.fromkeys(["cm3", "cm³", "cc", "ml"], ("volume", Fraction(1000))),
    "psi": ("pressure", POUND / INCH**2),
    "ksi": ("pressure", POUND / INCH**2 * 1000),
    "bar": ("pressure", Fraction(1, 10)),
    "kpa": ("pressure", Fraction(1, 1000)),
    "lbf": ("force", POUND),
    "kn": ("force", Fraction(1000)),
    "rad": ("angle", Fraction(1)),
    **dict.fromkeys(["°", "º", "deg"], ("angle", DEGREE)),
    "%": ("ratio", Fraction(1, 100)),
}
STRICT_CASE: dict[str, tuple[str, Fraction]] = {
    "m": ("length", Fraction(1000)),
    "N": ("force", Fraction(1)),
    "MPa": ("pressure", Fraction(1)),
    "MPA": ("pressure", Fraction(1)),
    "Nm": ("torque", Fraction(1000)),
    "Nmm": ("torque", Fraction(1)),
    "kNm": ("torque", Fraction(10**6)),
}
TEMPERATURES = {
    **dict.fromkeys(["c", "degc", "deg c", "°c", "° c", "ºc", "º c", "℃"], (Fraction(1), "273.15")),
    **dict.fromkeys(["f", "degf", "deg f", "°f", "° f", "ºf", "º f", "℉"], (Fraction(5, 9), None)),
}
FORCES = {"lbf": POUND, "lb": POUND, "lbs": POUND}
ARMS = {"in": INCH, "inch": INCH, "inches": INCH, "ft": 12 * INCH, '"': INCH, "″": INCH}
ARMS.update(dict.fromkeys(["”", "''", "’’"], INCH))
TIMES = re.compile(" ?[·⋅•*.−-] ?| ")

NUMBERS = [
    re.compile(r"[0-9]+"),
    re.compile(r"[0-9]*\.[0-9]+"),
    re.compile(r"(0[0-9]*)?,[0-9]+"),
    re.compile(r"[1-9][0-9]*,([0-9]{1,2}|[0-9]{4,})"),
    re.compile(r"[1-9][0-9]{3,},[0-9]{3}"),
]
FRACTION = re.compile(r"(?:([0-9]+)[ -])?([0-9]+)[/⁄∕]([0-9]+)")


def slow_number(text: str) -> Fraction | None:
    text = text.replace("−", "-")
    sign = -1 if text.startswith("-") else 1
    body = text[1:] if text[:1] in ("-", "+") else text
    if found := FRACTION.fullmatch(body):
        whole, over, under = (int(part or 0) for part in found.groups())
        written = str(int(found[1] or "0")).lstrip("0") + found[2] + found[3]
        good = under and len(written) <= 15 and (found[1] is None or over < under)
        return sign * (whole + Fraction(over, under)) if good else None
    if not any(pattern.fullmatch(body) for pattern in NUMBERS):
        return None
    exact = Decimal(body.replace(",", "."))
    digits = "".join(c for c in body if c.isdigit()).lstrip("0")
    return sign * Fraction(exact) if len(digits) <= 15 else None


def slow_torque(unit: str) -> Fraction | None:
    parts = TIMES.split(unit)
    if len(parts) != 2:
        return None
    for force, arm in (parts, parts[::-1]):
        if force.lower() in FORCES and arm.lower() in ARMS:
            return FORCES[force.lower()] * ARMS[arm.lower()]
        if force == "N" and (arm == "m" or arm.lower() == "mm"):
            return Fraction(1000 if arm == "m" else 1)
        if force.lower() == "kn" and arm == "m":
            return Fraction(10**6)
    return None


def slow_unit(unit: str, dimension: str) -> tuple[Fraction, Fraction] | None:
    """Factor and offset of a unit of this dimension."""
    unit = unit.removesuffix(".").replace("\u212a", "K").replace("μ", "µ")
    if dimension.startswith("temperature"):
        difference = dimension != "temperature"
        if unit == "K":
            return Fraction(1), Fraction(0)
        if unit.lower() not in TEMPERATURES:
            return None
        factor, zero = TEMPERATURES[unit.lower()]
        offset = Fraction(zero) if zero else Fraction("459.67") * Fraction(5, 9)
        return factor, Fraction(0) if difference else offset
    if dimension == "torque" and (torque := slow_torque(unit)):
        return torque, Fraction(0)
    found = STRICT_CASE.get(unit) or ANY_CASE.get(unit.lower())
    return (found[1], Fraction(0)) if found and found[0] == dimension else None


def slow_bare(number: Fraction, bare: Bare) -> Fraction | None:
    factors = {
        Bare.REFUSE: None,
        Bare.THOU_OR_INCH: INCH / 1000 if number == 0 or abs(number) >= 1 else INCH,
        Bare.MILLIMETRE: Fraction(1),
        Bare.DEGREE: DEGREE,
        Bare.NUMBER: Fraction(1),
    }
    return factors[bare]


def slow_readings(text: str, field: Field) -> Iterator[float]:
    text = " ".join(text.split())
    if len(text) > 60:
        return
    for end in range(1, len(text) + 1):
        number, unit = slow_number(text[:end]), text[end:].strip()
        if number is None:
            continue
        if unit:
            known = slow_unit(unit, field.dimension)
        else:
            factor = slow_bare(number, field.bare)
            known = (factor, Fraction(0)) if factor is not None else None
        if known:
            value = float(number * known[0] + known[1])
            if field.low <= value <= field.high:
                yield value


def slow_reading(text: str, field: Field) -> float | None:
    """The one reading of a text, none where it has none."""
    readings = list(slow_readings(text, field))
    assert len(readings) <= 1, f"{text!r} has two readings"
    return readings[0] if readings else None


VALID = [
    *((text, HEIGHT) for text in ("12", ".012", ",012", "0,0125", "3/64", "10 1/2", "0.30 mm")),
    *((text, HEIGHT) for text in ("12 thou", "0.012 in", "305 µm", "12000 uin", "−0")),
    *((text, BORE) for text in ("4.125 in", '4 1/8"', "4-1/8in", "105 MM", "10,5 cm", "0.105 m")),
    *((text, SHEET) for text in ("0,032in", "1,1 mm", "0.0646 in.", "64.6 thou")),
    *((text, DEPTH) for text in ("1234,567 µm", "-0.5", "12,5", "1 3/64 in", "1234,5678 thou")),
    *((text, AREA) for text in ("13.5 in²", "8700 mm2", "87 cm²")),
    *((text, CHAMBER) for text in ("64 cc", "3.9 in³", "64,5 cm3", "64 ml", "64000 mm³")),
    *((text, PRESSURE) for text in ("1500 psi", "100 bar", "10 MPa", "150 kPa", "65,3 ksi")),
    *((text, FORCE) for text in ("14000 lbf", "62 kN", "62000 N")),
    *((text, TORQUE) for text in ("80 lbf·ft", "80 ft-lb", "960 lbf.in", "110 N·m", "110Nm")),
    *((text, TORQUE) for text in ("80 lbf*ft", "0.11 kN·m", "110 N.m", "80 ft lbf")),
    *((text, HOT) for text in ("200 °F", "93 °C", "366.5 K", "93 degC", "200F", "93 deg C")),
    *((text, RISE) for text in ("130 °F", "72 K", "-72,5 °C")),
    *((text, TURN) for text in ("23°", "90 deg", "1.5 rad")),
    *((text, VEE) for text in ("90", "45,5", "90 °", "1.2 rad")),
    *((text, SHARE) for text in ("25 %", "0,25", "1/4", ".25")),
]
STRANGE = [
    *"0123456789.,;:/-+−⁄ eExX'_\"″”’µμm²³·•*°º℃%NMKkPaIinfFtlb()[]{}\\|!?~^=",
    *("\u00a0", "\u2009", "\u200b", "\u202e", "\t", "\n", "\x00", "\x7f", "\ud800", "\u212a"),
    *("٣", "３", "½", "Ⅷ", "①", "π", "é", "😀", "十", "İ", "ſ", "ﬁ", "∞"),
    *("nan", "inf", "1e9", "00", ",000", ".000", "mil", " mm", " in", "in,", "%s", "{0}"),
]


def mutated(text: str, dice: random.Random) -> str:
    for _ in range(dice.choice((1, 1, 1, 2, 2, 3, 5))):
        at = dice.randrange(len(text) + 1)
        match dice.randrange(5):
            case 0:
                text = text[:at] + dice.choice(STRANGE) + text[at:]
            case 1:
                text = text[:at] + text[at + 1 :]
            case 2:
                text = text[:at] + dice.choice(STRANGE) + text[at + 1 :]
            case 3:
                text = text[:at] + text[at + 1 : at + 2] + text[at : at + 1] + text[at + 2 :]
            case _:
                text = text[:at] + text[at : at + 1].swapcase() + text[at:]
    return text


def refused_well(error: InputError, field: Field) -> bool:
    """Whether every fault is a whole sentence in one line that says what to type."""
    return all(
        fault.field == field.name
        and fault.sentence.startswith(f"{field.name}: ")
        and "type " in fault.sentence
        and fault.sentence.isprintable()
        for fault in error.faults
    )


def fast_reading(text: str, field: Field) -> float | None:
    """What the reader under test makes of a text, none where it refuses."""
    try:
        return read_quantity(text, field).value
    except InputError as error:
        if refused_well(error, field):
            return None
        raise


@pytest.mark.parametrize(("text", "field"), VALID)
def test_both_readers_read_what_is_valid(text: str, field: Field) -> None:
    assert slow_reading(text, field) is not None
    assert fast_reading(text, field) == slow_reading(text, field)


def test_ten_thousand_mutated_texts_are_read_alike_or_refused() -> None:
    dice = random.Random(20251125)
    read = refused = 0
    for _ in range(10_000):
        text, field = dice.choice(VALID)
        text = mutated(text, dice)
        expected = slow_reading(text, field)
        assert fast_reading(text, field) == expected, f"{text!r} for {field.name}"
        read, refused = read + (expected is not None), refused + (expected is None)
    assert min(read, refused) > 2_000


@given(st.text(max_size=70), st.sampled_from(FIELDS))
def test_any_text_is_read_alike_or_refused(text: str, field: Field) -> None:
    assert fast_reading(text, field) == slow_reading(text, field)


@pytest.mark.parametrize(("text", "field"), VALID)
def test_an_echo_reads_as_the_same_value(text: str, field: Field) -> None:
    typed = read_quantity(text, field)
    again = read_quantity(typed.echo, field)
    assert (again.value, again.echo) == (typed.value, typed.echo)


def slow_lists(text: str, field: Field) -> Iterator[tuple[float, ...]]:
    """Every way to part a text at semicolons and at some of its commas that reads throughout."""
    parts = re.split("([,;])", text)
    entries, marks = parts[::2], parts[1::2]
    choices = [(";",) if mark == ";" else (",", ";") for mark in marks]
    for chosen in itertools.product(*choices):
        joined = "".join(itertools.chain(*zip(entries, [*chosen, ""], strict=True)))
        values = [slow_reading(entry, field) for entry in joined.split(";")]
        if None not in values:
            yield tuple(value for value in values if value is not None)


def fast_list(text: str, field: Field) -> tuple[float, ...] | None:
    try:
        return tuple(typed.value for typed in read_list(text, field))
    except InputError as error:
        if refused_well(error, field):
            return None
        raise


def test_mutated_lists_are_read_the_only_way_they_can_be() -> None:
    dice = random.Random(811)
    entries = ["0,032in", "0.040 in", "1,1 mm", "64.6 thou", ".05in", "3/64 in", '0.08"']
    read = refused = 0
    for _ in range(4_000):
        chosen = dice.choices(entries, k=dice.randint(1, 4))
        text = mutated(dice.choice([",", ", ", ";", "; "]).join(chosen), dice)
        ways = list(slow_lists(text, SHEET))
        assert len(ways) <= 1, f"{text!r} can be parted in two ways"
        assert fast_list(text, SHEET) == (ways[0] if ways else None), repr(text)
        read, refused = read + bool(ways), refused + (not ways)
    assert min(read, refused) > 300
