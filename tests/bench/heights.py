"""Heights of 16 rings from 40 readings, beside numpy on the same numbers."""

import random
from collections.abc import Iterator
from fractions import Fraction

import numpy as np

from core.calc.pair_heights import Reading, heights
from tests.measured import Row, median_seconds

RINGS = tuple(str(k) for k in range(1, 17))
READINGS = 40
SETS = 60
PARTS = (Fraction(1, 4), Fraction(1, 2), Fraction(3, 4))


def rows() -> Iterator[Row]:
    sets = [readings(random.Random(seed)) for seed in range(SETS)]
    yield Row(
        what=f"{len(RINGS)} rings from {READINGS} readings, with covariance, rank and residuals,"
        f" median of {SETS} sets",
        value=1e3 * median_seconds(lambda each: heights(RINGS, each, 0.003), sets),
        unit="ms",
        goal=20.0,
        peer="numpy.linalg.lstsq with inverse for the covariance",
        peer_value=1e3 * median_seconds(by_numpy, sets),
    )


def readings(rng: random.Random) -> list[Reading]:
    found = [single(ring, rng) for ring in rng.sample(RINGS, 4)]
    while len(found) < READINGS:
        first, second = rng.sample(RINGS, 2)
        found.append(
            Reading(
                name=f"{first}-{second}",
                first=first,
                second=second,
                part=rng.choice(PARTS),
                value=rng.uniform(0.22, 0.31),
                u=0.0073,
                by_leaves=True,
            )
        )
    return found


def single(ring: str, rng: random.Random) -> Reading:
    return Reading(name=ring, first=ring, value=rng.uniform(0.22, 0.31), u=0.005)


def by_numpy(given: list[Reading]) -> object:
    matrix = np.zeros((len(given), len(RINGS)))
    for row, each in zip(matrix, given, strict=True):
        for ring, part in each.tie:
            row[RINGS.index(ring)] = part
    weights = np.array([1.0 / each.u for each in given])
    weighted = matrix * weights[:, None]
    right = np.array([each.value for each in given]) * weights
    return np.linalg.lstsq(weighted, right, rcond=None), np.linalg.pinv(weighted.T @ weighted)
