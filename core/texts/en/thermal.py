"""Wire and groove when hot."""

TEXTS: dict[str, str] = {
    "thermal.not_positive": "must be more than zero; type the measured size.",
}
