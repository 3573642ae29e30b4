"""Weighted least squares with covariance, without any library: the phone has none."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from core.unit_types import Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """Solution of a weighted least-squares problem.

    Parameters
    ----------
    values
        Fitted unknowns, shape (n,).
    covariance
        Covariance of the unknowns, shape (n, n).
    residuals
        Reading less fitted, shape (m,).
    leverages
        Part of each residual's variance that the fit takes away, shape (m,); 1 where nothing
        checks the reading [1].
    chi2
        Sum of squared residuals, each over its standard uncertainty [1].
    dof
        Readings less unknowns.
    """

    values: tuple[float, ...]
    covariance: tuple[tuple[float, ...], ...]
    residuals: tuple[float, ...]
    leverages: tuple[Number, ...]
    chi2: Number
    dof: int


def solve(
    rows: Sequence[Sequence[float]], readings: Sequence[float], us: Sequence[float]
) -> Fit:
    """Unknowns that fit readings best.

    Parameters
    ----------
    rows
        Coefficients of the unknowns in each reading, shape (m, n), of full column rank.
    readings
        Shape (m,).
    us
        Standard uncertainty of each reading, above zero, shape (m,).

    Raises
    ------
    ArithmeticError
        If the columns are not independent.

    Source
    ------
    Householder triangularisation: Golub & Van Loan, Matrix Computations, 5.3.2; covariance:
    JCGM 100:2008 (GUM), H.3, *from memory*.

    Examples
    --------
    >>> fit = solve([[1.0], [1.0]], [10.2, 10.6], [0.3, 0.2])
    >>> f"{fit.values[0]:.6f} {fit.covariance[0][0] ** 0.5:.6f} {fit.chi2:.6f}"
    '10.476923 0.166410 1.230769'
    """
    weighted = [[each / u for each in row] for row, u in zip(rows, us, strict=True)]
    right = [reading / u for reading, u in zip(readings, us, strict=True)]
    triangle, rotated = _triangularised(weighted, right)
    inverse = _inverse_of_triangle(triangle)
    values = tuple(_dot(row, rotated) for row in inverse)
    residuals = tuple(y - _dot(row, values) for row, y in zip(rows, readings, strict=True))
    return Fit(
        values=values,
        covariance=tuple(tuple(_dot(a, b) for b in inverse) for a in inverse),
        residuals=residuals,
        leverages=tuple(_leverage(row, inverse) for row in weighted),
        chi2=math.fsum((r / u) ** 2 for r, u in zip(residuals, us, strict=True)),
        dof=len(rows) - len(values),
    )


def _triangularised(
    matrix: Sequence[Sequence[float]], right: Sequence[float]
) -> tuple[list[list[float]], list[float]]:
    """Upper triangle of the matrix and the right side, after the same reflections."""
    columns = [list(column) for column in zip(*matrix, strict=True)]
    size = len(columns)
    columns.append(list(right))
    if len(right) < size:
        raise ArithmeticError("fewer readings than unknowns")
    for k in range(size):
        _reflect(columns, k)
    triangle = [[columns[j][i] if j >= i else 0.0 for j in range(size)] for i in range(size)]
    return triangle, columns[size][:size]


def _reflect(columns: list[list[float]], k: int) -> None:
    """Householder reflection that clears column k below its diagonal, in place."""
    column = columns[k]
    norm = math.hypot(*column[k:])
    if norm <= 1e-12 * math.hypot(*column):
        raise ArithmeticError(f"column {k} depends on the others")
    mirror = column[k:]
    mirror[0] += math.copysign(norm, mirror[0])
    scale = 2.0 / _dot(mirror, mirror)
    for other in columns[k:]:
        factor = scale * _dot(mirror, other[k:])
        other[k:] = [value - factor * part for value, part in zip(other[k:], mirror, strict=True)]


def _inverse_of_triangle(triangle: Sequence[Sequence[float]]) -> list[list[float]]:
    size = len(triangle)
    inverse = [[0.0] * size for _ in range(size)]
    for j in range(size):
        inverse[j][j] = 1.0 / triangle[j][j]
        for i in range(j - 1, -1, -1):
            known = sum(triangle[i][k] * inverse[k][j] for k in range(i + 1, j + 1))
            inverse[i][j] = -known / triangle[i][i]
    return inverse


def _leverage(row: Sequence[float], inverse: Sequence[Sequence[float]]) -> float:
    parts = (_dot(row, column) for column in zip(*inverse, strict=True))
    return min(1.0, math.fsum(part * part for part in parts))


def _dot(a: Sequence[float], b: Sequence[float]) -> float:
    return sum(x * y for x, y in zip(a, b, strict=True))
