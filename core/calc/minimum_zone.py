"""The narrowest zone that holds every reading, found exactly.

The best zone is a linear program. Its dual has one constraint for each unknown and one more, so
that a basis is 3 × 3 for a line and 4 × 4 for a plane however many readings there are; in exact
fractions it ends at the best zone, with ties and readings on one line or not.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from core.unit_types import Number

PER_UNIT = 10**9
"""Numbers are taken to the nearest whole part of this many to the unit: 1 pm in mm."""

Matrix = list[list[Fraction]]


class Collinear(ArithmeticError):
    """The places of the readings do not span the surface."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Zone:
    """Narrowest zone of one slope that holds every reading.

    Parameters
    ----------
    coefficients
        Of the middle of the zone, shape (n,).
    width
        Distance of its two sides, in the direction of the readings.
    weights
        Change of the width with each reading, shape (m,); zero for readings that do not touch a
        side [1].
    """

    coefficients: tuple[float, ...]
    width: float
    weights: tuple[Number, ...]

    @property
    def touching(self) -> tuple[int, ...]:
        """Readings that hold the zone apart."""
        return tuple(k for k, weight in enumerate(self.weights) if weight)


def narrowest_zone(rows: Sequence[Sequence[float]], readings: Sequence[float]) -> Zone:
    """Narrowest zone around readings.

    Parameters
    ----------
    rows
        Coefficients of the unknowns at each reading, shape (m, n).
    readings
        Shape (m,).

    Raises
    ------
    Collinear
        If the rows do not determine the unknowns.

    Source
    ------
    Minimum zone: ISO 12781-1:2011 and ISO 1101; linear program solved by the simplex method on
    its dual, with Bland's rule against cycling (Math. Oper. Res. 2 (1977) 103, *from memory*).

    Examples
    --------
    >>> zone = narrowest_zone([[0.0, 1.0], [1.0, 1.0], [2.0, 1.0]], [0.0, 4.0, 0.0])
    >>> zone.width, zone.touching
    (4.0, (0, 1, 2))
    """
    exact = [[_fraction(each) for each in row] for row in rows]
    values = [_fraction(each) for each in readings]
    program = _Program(exact, values)
    program.run()
    *coefficients, half = program.multipliers()
    return Zone(
        coefficients=tuple(float(each) for each in coefficients),
        width=float(2 * half),
        weights=tuple(float(2 * each) for each in program.weights()),
    )


def _fraction(value: float) -> Fraction:
    return Fraction(round(value * PER_UNIT), PER_UNIT)


class _Program:
    """The dual program: a weight of each reading on the upper and on the lower side.

    A column is known by reading and sign. `inverse` is that of the basis; its last column holds
    the weights of the basis.
    """

    def __init__(self, rows: Matrix, values: list[Fraction]) -> None:
        self.rows, self.values = rows, values
        first, *others = _independent(rows)
        self.basis = [(first, 1), (first, -1), *((other, 1) for other in others)]
        self.inverse = _inverse([self.column(each) for each in self.basis])

    def column(self, side: tuple[int, int]) -> list[Fraction]:
        reading, sign = side
        return [*(sign * each for each in self.rows[reading]), Fraction(1)]

    def multipliers(self) -> list[Fraction]:
        """Coefficients of the middle, and half the width."""
        costs = [sign * self.values[reading] for reading, sign in self.basis]
        return [_dot(costs, column) for column in zip(*self.inverse, strict=True)]

    def weights(self) -> list[Fraction]:
        found = [Fraction(0)] * len(self.rows)
        for (reading, sign), row in zip(self.basis, self.inverse, strict=True):
            found[reading] += sign * row[-1]
        return found

    def run(self) -> None:
        stuck = False
        while (side := self._outside(first_found=stuck)) is not None:
            stuck = not self._enter(side)

    def _outside(self, *, first_found: bool) -> tuple[int, int] | None:
        """A reading beyond the zone: the farthest, or the first where the last step gained none."""
        *middle, half = self.multipliers()
        worst, side = Fraction(0), None
        for k, (row, value) in enumerate(zip(self.rows, self.values, strict=True)):
            residual = value - _dot(middle, row)
            beyond = abs(residual) - half
            if beyond > worst:
                worst, side = beyond, (k, 1 if residual > 0 else -1)
                if first_found:
                    break
        return side

    def _enter(self, side: tuple[int, int]) -> bool:
        """Bring a column into the basis; whether the zone grew by it."""
        column = self.column(side)
        change = [_dot(row, column) for row in self.inverse]
        steps = [
            (row[-1] / each, self.basis[k], k)
            for k, (row, each) in enumerate(zip(self.inverse, change, strict=True))
            if each > 0
        ]
        step, _, leaving = min(steps)
        pivot = [each / change[leaving] for each in self.inverse[leaving]]
        for k, factor in enumerate(change):
            if k != leaving and factor:
                row = self.inverse[k]
                self.inverse[k] = [a - factor * b for a, b in zip(row, pivot, strict=True)]
        self.inverse[leaving] = pivot
        self.basis[leaving] = side
        return step > 0


def _independent(rows: Matrix) -> list[int]:
    """Readings whose rows are independent, as many as there are unknowns."""
    reduced: Matrix = []
    found: list[int] = []
    for k, row in enumerate(rows):
        rest = list(row)
        for pivot in reduced:
            lead = next(j for j, each in enumerate(pivot) if each)
            factor = rest[lead] / pivot[lead]
            rest = [a - factor * b for a, b in zip(rest, pivot, strict=True)]
        if any(rest):
            reduced.append(rest)
            found.append(k)
        if len(found) == len(row):
            return found
    raise Collinear("the places of the readings lie on one line")


def _inverse(columns: Matrix) -> Matrix:
    """Inverse of the matrix with these columns."""
    size = len(columns)
    unit = [[Fraction(int(i == j)) for j in range(size)] for i in range(size)]
    work = [[columns[j][i] for j in range(size)] + unit[i] for i in range(size)]
    for k in range(size):
        swap = next(i for i in range(k, size) if work[i][k])
        work[k], work[swap] = work[swap], work[k]
        work[k] = [each / work[k][k] for each in work[k]]
        for i in range(size):
            if i != k and work[i][k]:
                factor = work[i][k]
                work[i] = [a - factor * b for a, b in zip(work[i], work[k], strict=True)]
    return [row[size:] for row in work]


def _dot(a: Sequence[Fraction], b: Sequence[Fraction]) -> Fraction:
    return sum((x * y for x, y in zip(a, b, strict=True)), Fraction(0))
