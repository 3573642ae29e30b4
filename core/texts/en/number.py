"""Why a typed number or unit was refused, and what to type."""

TEXTS: dict[str, str] = {
    "number.empty": "nothing was typed; type {wanted}",
    "number.too_long": "more than {most} characters; type {wanted}",
    "number.none": "“{typed}” does not begin with a number; type {wanted}",
    "number.not_finite": "“{typed}” is not a size that can be measured; type {wanted}",
    "number.foreign_digits": "“{typed}” has a figure other than 0 to 9; type {wanted}",
    "number.exponent": "“{typed}” has an exponent; write the number out: type {wanted}",
    "number.separators": (
        "“{typed}” has a thousands separator or more than one number; "
        "type one number with one decimal point, {wanted}"
    ),
    "number.ends": "“{typed}” ends its number with a separator; type {wanted}",
    "number.rest": "“{rest}” after {number} cannot be read; type {wanted}",
    "number.two_ways": (
        "“{number}” could be {point} or {whole}; type {point} with a point, or {whole}"
    ),
    "number.many_digits": "more than {most} digits; type the digits that were measured",
    "number.zero_below": "“{typed}” has a zero below the line; type a fraction such as 3/64",
    "number.top_heavy": (
        "in “{typed}” the fraction after the {whole} is not below one; type it such as 1 3/64"
    ),
    "number.list_empty": (
        "an entry of the list is empty; type one value between separators, "
        "such as 0.032 in, 0.040 in"
    ),
    "number.list_commas": (
        "the commas in “{typed}” could be decimal or between values; "
        "type a unit after each value, such as 0.032 in, 0.040 in, or separate them by semicolons"
    ),
    "number.unit_missing": "{number} has no unit; type {wanted}",
    "number.unit_unknown": "“{unit}” is not a unit known here; type {wanted}",
    "number.unit_two_ways": "“{unit}” can be read in two ways; type {instead}",
    "number.unit_wrong": "{unit} is {kind}; type {wanted}",
    "number.too_small": "{echo} is too small; type a value from {low} to {high}",
    "number.too_large": "{echo} is too large; type a value from {low} to {high}",
    "number.is_length": "a length",
    "number.is_area": "an area",
    "number.is_volume": "a volume",
    "number.is_pressure": "a pressure",
    "number.is_force": "a force",
    "number.is_torque": "a torque",
    "number.is_temperature": "a temperature",
    "number.is_temperature_difference": "a difference of temperatures",
    "number.is_angle": "an angle",
    "number.is_ratio": "a share",
    "number.wanted": "a number such as 12, 0.5 or 3/64",
    "number.wanted_length": "a length such as 4.125 in or 105 mm",
    "number.wanted_small_length": "a length such as 12 thou, 0.012 in or 0.30 mm",
    "number.wanted_area": "an area such as 13.5 in² or 8700 mm²",
    "number.wanted_volume": "a volume such as 64 cc or 3.9 in³",
    "number.wanted_pressure": "a pressure such as 1500 psi, 100 bar or 10 MPa",
    "number.wanted_force": "a force such as 14000 lbf or 62 kN",
    "number.wanted_torque": "a torque such as 80 lbf·ft or 110 N·m",
    "number.wanted_temperature": "a temperature such as 200 °F or 93 °C",
    "number.wanted_temperature_difference": (
        "a difference of temperatures such as 130 °F, 72 °C or 72 K"
    ),
    "number.whole": "{echo} is not a whole number; type {near}, or what was counted.",
    "number.wanted_angle": "an angle such as 23°",
    "number.wanted_ratio": "a share such as 25 % or 0.25",
}
