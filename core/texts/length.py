"""A length that prints itself inside a sentence."""

THOU_MM = 0.0254


class Length(float):
    """Length in mm; `{x:thou}`, `{x:in}` and `{x:mm}` choose how a sentence shows it.

    Examples
    --------
    >>> f"{Length(0.3175):thou} thou, {Length(0.3175):in} in, {Length(0.3175):mm} mm"
    '12.5 thou, 0.0125 in, 0.318 mm'
    """

    def __format__(self, spec: str) -> str:
        if spec == "thou":
            return _plain(self / THOU_MM, 1)
        if spec == "in":
            return f"{self / (1000 * THOU_MM):.4f}"
        if spec == "mm":
            return f"{self:.3f}"
        return super().__format__(spec)


def _plain(value: float, places: int) -> str:
    """Fixed places without trailing zeros."""
    text = f"{value:.{places}f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
