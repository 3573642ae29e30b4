"""A length that prints itself inside a sentence."""

THOU_MM = 0.0254


class Length(float):
    """Length in mm.

    `{x:thou}`, `{x:in}` and `{x:mm}` choose how a sentence shows it; `{x:small}` and `{x:size}`
    show thou and inch, or both as mm to whoever works in mm.

    Examples
    --------
    >>> f"{Length(0.3175):thou} thou, {Length(0.3175):in} in, {Length(0.3175):mm} mm"
    '12.5 thou, 0.0125 in, 0.318 mm'
    >>> f"{Length(0.3175):small}, {Length(1.27):size}, {Length(1.27).shown(metric=True):size}"
    '12.5 thou, 0.0500 in, 1.270 mm'
    """

    metric: bool = False

    def shown(self, *, metric: bool) -> "Length":
        """The same length for whoever works in mm, or in inch."""
        same = Length(self)
        same.metric = metric
        return same

    def __format__(self, spec: str) -> str:
        if spec in {"small", "size"}:
            unit = "mm" if self.metric else {"small": "thou", "size": "in"}[spec]
            return f"{self:{unit}} {unit}"
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
