"""A number is read in the one way it can be read, or refused with a sentence that helps."""

import itertools
import math
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.number_text import fixed, plain, read_number, sensible, split_list

FIELD = "--go"


@pytest.mark.parametrize(
    ("text", "value", "digits", "unit"),
    [
        ("12", 12.0, "12", ""),
        ("12 thou", 12.0, "12", "thou"),
        (".012", 0.012, "0.012", ""),
        (",012", 0.012, "0.012", ""),
        ("0,032", 0.032, "0.032", ""),
        ("0,0125in", 0.0125, "0.0125", "in"),
        ("12,5 mm", 12.5, "12.5", "mm"),
        ("1234,567 mm", 1234.567, "1234.567", "mm"),
        ("4,1250 in", 4.125, "4.1250", "in"),
        ("4.125 in", 4.125, "4.125", "in"),
        ("0.30 mm", 0.3, "0.30", "mm"),
        ("007", 7.0, "7", ""),
        ("3/64 in", 0.046875, "3/64", "in"),
        ("3⁄64in", 0.046875, "3/64", "in"),
        ("1 3/64", 1.046875, "1 3/64", ""),
        ("1-3/64in", 1.046875, "1 3/64", "in"),
        ("-1-3/64 in", -1.046875, "-1 3/64", "in"),
        ("+5", 5.0, "5", ""),
        ("-5", -5.0, "-5", ""),
        ("−5 °C", -5.0, "-5", "°C"),
        ("-0", 0.0, "0", ""),
        ("  12\u00a0 mm ", 12.0, "12", "mm"),
        ("61 cm³", 61.0, "61", "cm³"),
        ('4.125"', 4.125, "4.125", '"'),
    ],
)
def test_a_number_with_one_reading_is_read(text: str, value: float, digits: str, unit: str) -> None:
    number = read_number(text, FIELD)
    assert (number.value, number.digits, number.unit) == (value, digits, unit)
    assert math.copysign(1.0, number.value) == math.copysign(1.0, value)


WANTED = "type a number such as 12, 0.5 or 3/64"


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", f"nothing was typed; {WANTED}"),
        (" \t\n", f"nothing was typed; {WANTED}"),
        ("mm", f"“mm” does not begin with a number; {WANTED}"),
        (".", f"“.” does not begin with a number; {WANTED}"),
        ("--5", f"“--5” does not begin with a number; {WANTED}"),
        ("/64 in", f"“/64 in” does not begin with a number; {WANTED}"),
        ("nan", f"“nan” is not a size that can be measured; {WANTED}"),
        ("-Infinity mm", f"“-Infinity mm” is not a size that can be measured; {WANTED}"),
        ("∞", f"“∞” is not a size that can be measured; {WANTED}"),
        ("1e3", f"“1e3” has an exponent; write the number out: {WANTED}"),
        ("1.2E-3 in", f"“1.2E-3 in” has an exponent; write the number out: {WANTED}"),
        ("12.", f"“12.” ends its number with a separator; {WANTED}"),
        ("12, mm", f"“12, mm” ends its number with a separator; {WANTED}"),
        ("12!", f"“!” after 12 cannot be read; {WANTED}"),
        ("12-13 mm", f"“-13 mm” after 12 cannot be read; {WANTED}"),
        ("12\x00mm", f"“\\x00mm” after 12 cannot be read; {WANTED}"),
        ("1/2/3", f"“/3” after 1/2 cannot be read; {WANTED}"),
        ("1.5/2", f"“/2” after 1.5 cannot be read; {WANTED}"),
        ("4,125 in", "“4,125” could be 4.125 or 4125; type 4.125 with a point, or 4125"),
        ("-12,500", "“12,500” could be 12.500 or 12500; type 12.500 with a point, or 12500"),
        ("1234567890.123456", "more than 15 digits; type the digits that were measured"),
        ("3/0 in", "“3/0” has a zero below the line; type a fraction such as 3/64"),
        (
            "1 5/4 in",
            "in “1 5/4” the fraction after the 1 is not below one; type it such as 1 3/64",
        ),
        (
            "1 4/4 in",
            "in “1 4/4” the fraction after the 1 is not below one; type it such as 1 3/64",
        ),
        ("½ in", f"“½ in” has a figure other than 0 to 9; {WANTED}"),
        ("١٢ mm", f"“١٢ mm” has a figure other than 0 to 9; {WANTED}"),
        ("9" * 61, f"more than 60 characters; {WANTED}"),
        *(
            (
                text,
                f"“{text}” has a thousands separator or more than one number; "
                "type one number with one decimal point, a number such as 12, 0.5 or 3/64",
            )
            for text in ("1,234.5", "1.234,5", "1.2.3", "1,2,3", "1 234 mm", "1'000", "1_000")
        ),
    ],
)
def test_a_number_that_cannot_be_told_is_refused(text: str, sentence: str) -> None:
    with pytest.raises(InputError) as caught:
        read_number(text, FIELD)
    (fault,) = caught.value.faults
    assert fault.field == FIELD
    assert fault.sentence == f"{FIELD}: {sentence}"


@given(st.decimals(allow_nan=False, allow_infinity=False, places=5, min_value=0, max_value=10**6))
def test_point_and_comma_read_the_same(number: Decimal) -> None:
    assert read_number(f"{number} mm", FIELD).exact == Fraction(number)
    assert read_number(f"{number} mm".replace(".", ","), FIELD).exact == Fraction(number)


@given(st.integers(0, 99), st.integers(1, 6), st.data())
def test_an_inch_fraction_is_read_exactly(whole: int, power: int, data: st.DataObject) -> None:
    under = 2**power
    over = data.draw(st.integers(0, under - 1))
    for text in (f"{whole} {over}/{under} in", f"{whole}-{over}/{under}in"):
        assert read_number(text, FIELD).value == whole + over / under


@pytest.mark.parametrize(
    ("text", "entries"),
    [
        ("0,032in,0,040in", ("0,032in", "0,040in")),
        ("0.032in, 0.040 in; 1,1mm", ("0.032in", "0.040 in", "1,1mm")),
        ("0,032;0,040", ("0,032", "0,040")),
        ("10,5; 12", ("10,5", "12")),
        ("61 cm3,62 cm3", ("61 cm3", "62 cm3")),
        ('0.032",0.040"', ('0.032"', '0.040"')),
        ("0,032", ("0,032",)),
        ("0.032 in", ("0.032 in",)),
    ],
)
def test_a_list_is_split_after_units(text: str, entries: tuple[str, ...]) -> None:
    assert split_list(text, "--shelf") == entries


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("0,032,0,040", "commas in “0,032,0,040” could be"),
        ("0,032,5", "commas in “0,032,5” could be"),
        ("0.032,0.040", "commas in “0.032,0.040” could be"),
        ("0.032, 0.040 in", "commas in “0.032, 0.040 in” could be"),
        ("10,12", "commas in “10,12” could be"),
        ("0.032 in,, 0.040 in", "an entry of the list is empty"),
        ("0.032 in,", "an entry of the list is empty"),
        ("", "an entry of the list is empty"),
    ],
)
def test_a_list_that_cannot_be_told_apart_is_refused(text: str, part: str) -> None:
    with pytest.raises(InputError, match="type") as caught:
        split_list(text, "--shelf")
    sentence = str(caught.value)
    assert sentence.startswith("--shelf: ")
    assert part in sentence
    assert "such as 0.032 in, 0.040 in" in sentence


ENTRY = st.builds(
    "{}{}{}".format,
    st.sampled_from(["0,032", "0.040", ".05", "12", "3/64", "1 3/64", "12,5", "-5"]),
    st.sampled_from(["", " "]),
    st.sampled_from(["in", "mm", "thou", '"', "cm3", "lbf·ft", "°C"]),
)


@given(st.lists(ENTRY, min_size=1, max_size=6), st.data())
def test_entries_with_units_come_back_from_their_list(
    entries: list[str], data: st.DataObject
) -> None:
    apart = st.sampled_from([",", ", ", ";", "; ", " ,"])
    gaps = [data.draw(apart) for _ in entries[1:]]
    text = "".join(itertools.chain(*zip(entries, [*gaps, ""], strict=True)))
    assert split_list(text, "--shelf") == tuple(entries)


@given(st.floats(-1e9, 1e9), st.integers(0, 6))
def test_fixed_is_never_a_negative_zero(value: float, places: int) -> None:
    shown = fixed(value, places)
    assert abs(Decimal(shown) - Decimal(value)) <= Decimal("0.5000001") * Decimal(10) ** -places
    assert not (shown.startswith("-") and float(shown) == 0.0)


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_what_is_not_finite_is_never_shown(value: float) -> None:
    with pytest.raises(ValueError, match="cannot be shown"):
        fixed(value, 3)


@pytest.mark.parametrize(
    ("value", "u", "shown"),
    [
        (10.05762, 0.027, "10.058"),  # JCGM 100:2008 (GUM), 7.2.6: R = 10.057 62 ohm, u = 27 mohm
        (100.02147, 0.00035, "100.02147"),  # JCGM 100:2008 (GUM), 7.2.2: m_S, u = 0.35 mg
        (0.30481, 0.0996, "0.30"),  # the spread itself rounds up to 0.10
        (0.30481, 0.00994, "0.3048"),
        (1234.0, 51.0, "1234"),
        (123456.0, 5100.0, "123500"),
        (-0.0004, 0.5, "0.00"),
        (0.0, 0.0, "0"),
        (0.25, 0.0, "0.25"),
    ],
)
def test_a_value_is_rounded_to_its_spread(value: float, u: float, shown: str) -> None:
    assert sensible(value, u) == shown


@given(st.floats(1e-6, 1e9), st.integers(1, 12))
def test_plain_keeps_its_significant_digits(value: float, digits: int) -> None:
    shown = plain(value, digits)
    assert "e" not in shown
    assert math.isclose(float(shown), value, rel_tol=0.50001 * 10.0 ** (1 - digits))
