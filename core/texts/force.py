"""A force that prints itself inside a sentence."""

import math

NEWTON_PER_LBF = 4.4482216152605
FIGURES = 3


class Force(float):
    """Force in N; `{x:lbf}` and `{x:kN}` show it to three figures.

    Examples
    --------
    >>> f"{Force(180876.5):lbf} lbf, {Force(180876.5):kN} kN"
    '40700 lbf, 181 kN'
    """

    def __format__(self, spec: str) -> str:
        if spec == "lbf":
            return f"{_rounded(self / NEWTON_PER_LBF):.0f}"
        if spec == "kN":
            return f"{_rounded(self / 1000.0):.3g}"
        return super().__format__(spec)


def _rounded(value: float) -> float:
    """Value to three figures."""
    if not value:
        return 0.0
    return round(value, FIGURES - 1 - math.floor(math.log10(abs(value))))
