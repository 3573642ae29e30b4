"""Heights of single wires from readings on one wire and from readings across two."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from core.calc.chi_square import Agreement, agreement, survival
from core.calc.determined import Group, Tie, groups
from core.calc.least_squares import Fit, solve
from core.calc.straightedge import gap
from core.errors import InputError, fault
from core.source import Source, derived
from core.unit_types import Millimetre, Number
from core.verdict import probability

LEAST_SQUARES: Source = derived("weighted least squares, weights 1/u², straight line between wires")
UNCHECKED = 1.0 - 1e-9
"""Leverage from which nothing checks a reading."""
SUSPECT = 2.0
"""A residual beyond this many of its own standard uncertainties is worth a second look."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One reading: of a wire directly, or under a straightedge across two.

    Parameters
    ----------
    name
        What a person calls it.
    first, second
        Wires read; one alone for a direct reading.
    part
        Place of the leaf along the span, 0 at the first wire and 1 at the second [1].
    value
        Reading [mm].
    u
        Its own standard uncertainty, without the error that all leaves share [mm].
    by_leaves
        Whether it was read with the leaf set, whose leaves err together.
    """

    name: str
    first: str
    second: str | None = None
    part: Fraction = Fraction(0)
    value: Millimetre
    u: Millimetre
    by_leaves: bool = False

    @property
    def tie(self) -> Tie:
        """Wires in the reading, each with its part."""
        if self.second is None or self.second == self.first:
            return ((self.first, Fraction(1)),)
        parts = ((self.first, 1 - self.part), (self.second, self.part))
        return tuple(each for each in parts if each[1])

    @property
    def outside(self) -> bool:
        """Whether the leaf was beyond both wires, where every error grows."""
        return self.second is not None and not 0 <= self.part <= 1


@dataclass(frozen=True, slots=True, kw_only=True)
class WireHeight:
    """Height of one wire, if the readings determine it.

    Parameters
    ----------
    name
        Wire, or place on a wire.
    height, u
        Best value and standard uncertainty; none where the readings do not determine them [mm].
    """

    name: str
    height: Millimetre | None
    u: Millimetre | None

    @property
    def determined(self) -> bool:
        return self.height is not None


@dataclass(frozen=True, slots=True, kw_only=True)
class Undetermined:
    """Wires that no reading pins down.

    Parameters
    ----------
    free
        Each wire with how far it may move, against the first, without any reading noticing.
    """

    free: tuple[tuple[str, Fraction], ...]

    @property
    def names(self) -> tuple[str, ...]:
        return tuple(name for name, _ in self.free)


@dataclass(frozen=True, slots=True, kw_only=True)
class Residual:
    """How far one reading is from what the others say.

    Parameters
    ----------
    reading
        The reading.
    fitted
        What the heights found would read there [mm].
    normalised
        Reading less fitted, over the standard uncertainty of that difference; none where nothing
        checks the reading [1].
    """

    reading: Reading
    fitted: Millimetre
    normalised: Number | None

    @property
    def suspect(self) -> bool:
        return self.normalised is not None and abs(self.normalised) > SUSPECT


@dataclass(frozen=True, slots=True, kw_only=True)
class Heights:
    """What a set of readings tells.

    Parameters
    ----------
    wires
        Every wire, in the order given.
    undetermined
        Wires that are not pinned down, in groups that move together.
    covariance
        Covariance of the determined wires, in their order, shape (k, k) [mm²].
    leaf_error
        Error of the leaf set as the readings show it, and its standard uncertainty; zero and the
        assumed one where no other instrument compares [mm].
    residuals
        One for each reading.
    chi2, dof, p
        Scatter of the readings against their spreads, degrees of freedom, and the probability of
        that much by chance; none where nothing is read twice [1].
    """

    wires: tuple[WireHeight, ...]
    undetermined: tuple[Undetermined, ...]
    covariance: tuple[tuple[float, ...], ...]
    leaf_error: tuple[Millimetre, Millimetre]
    residuals: tuple[Residual, ...]
    chi2: Number
    dof: int
    p: Number | None
    agreement: Agreement

    @property
    def determined(self) -> tuple[str, ...]:
        return tuple(each.name for each in self.wires if each.determined)

    def height(self, name: str) -> WireHeight:
        """Height of one wire."""
        return next(each for each in self.wires if each.name == name)

    def covariance_of(self, first: str, second: str) -> float:
        """Covariance of two determined heights [mm²]."""
        order = self.determined
        return self.covariance[order.index(first)][order.index(second)]

    def correlation(self, first: str, second: str) -> Number:
        """Correlation of two determined heights [1]."""
        variances = (self.covariance_of(each, each) for each in (first, second))
        return self.covariance_of(first, second) / math.sqrt(math.prod(variances))


def heights(
    wires: Sequence[str], readings: Sequence[Reading], leaf_u: Millimetre = 0.0
) -> Heights:
    """Heights of the wires, as far as the readings determine them.

    What is not determined is said and never filled in; whether it is, is decided in exact
    fractions of the span, not by a size of rounding errors.

    Parameters
    ----------
    wires
        Every wire, read or not, each once.
    readings
        One or more.
    leaf_u
        Standard uncertainty of the error that all leaves of the set share [mm].

    Raises
    ------
    InputError
        If a reading names a wire that is not listed or its spread is not above zero.

    Source
    ------
    *derived*: weighted least squares; an error common to many readings is one more unknown, known
    beforehand to be zero within its spread (JCGM 100:2008, 5.2.2).
    """
    _refuse_unusable(wires, readings)
    found = groups(wires, [each.tie for each in readings])
    held = [next(iter(group.free)) for group in found if not group.determined]
    unknowns = [wire for wire in wires if wire not in held]
    compares = leaf_u > 0.0 and any(each.by_leaves for each in readings)
    fit = _fit(unknowns, readings, leaf_u if compares else 0.0)
    return _told(wires, readings, found, unknowns, fit, leaf_u)


def _refuse_unusable(wires: Sequence[str], readings: Sequence[Reading]) -> None:
    faults = []
    for each in readings:
        for wire in (each.first, each.second):
            if wire is not None and wire not in wires:
                faults.append(fault(each.name, "heights.unknown_wire", wire=wire))
        if not each.u > 0.0:
            faults.append(fault(each.name, "heights.no_spread"))
    if faults:
        raise InputError(faults)


def _fit(unknowns: Sequence[str], readings: Sequence[Reading], leaf_u: Millimetre) -> Fit:
    """Fit with one wire of each group that is not determined held at zero."""
    place = {wire: column for column, wire in enumerate(unknowns)}
    size = len(unknowns) + (leaf_u > 0.0)
    rows, values, us = [], [], []
    for each in readings:
        row = [0.0] * size
        for wire, part in each.tie:
            if wire in place:
                row[place[wire]] = float(part)
        if leaf_u and each.by_leaves:
            row[-1] = 1.0
        rows.append(row)
        values.append(each.value)
        us.append(each.u)
    if leaf_u:
        rows.append([0.0] * (size - 1) + [1.0])
        values.append(0.0)
        us.append(leaf_u)
    return solve(rows, values, us)


def _told(
    wires: Sequence[str],
    readings: Sequence[Reading],
    found: Sequence[Group],
    unknowns: Sequence[str],
    fit: Fit,
    leaf_u: Millimetre,
) -> Heights:
    pinned = {wire for group in found if group.determined for wire in group.free}
    columns = [column for column, wire in enumerate(unknowns) if wire in pinned]
    return Heights(
        wires=tuple(_wire_height(wire, wire in pinned, unknowns, fit) for wire in wires),
        undetermined=tuple(
            Undetermined(free=tuple(group.free.items())) for group in found if not group.determined
        ),
        covariance=tuple(tuple(fit.covariance[i][j] for j in columns) for i in columns),
        leaf_error=_leaf_error(unknowns, fit, leaf_u),
        residuals=_residuals(readings, fit),
        chi2=fit.chi2,
        dof=fit.dof,
        p=survival(fit.chi2, fit.dof) if fit.dof else None,
        agreement=agreement(fit.chi2, fit.dof),
    )


def _wire_height(wire: str, pinned: bool, unknowns: Sequence[str], fit: Fit) -> WireHeight:
    if not pinned:
        return WireHeight(name=wire, height=None, u=None)
    column = unknowns.index(wire)
    u = math.sqrt(fit.covariance[column][column])
    return WireHeight(name=wire, height=fit.values[column], u=u)


def _leaf_error(
    unknowns: Sequence[str], fit: Fit, leaf_u: Millimetre
) -> tuple[Millimetre, Millimetre]:
    if len(fit.values) == len(unknowns):
        return 0.0, leaf_u
    return fit.values[-1], math.sqrt(fit.covariance[-1][-1])


def _residuals(readings: Sequence[Reading], fit: Fit) -> tuple[Residual, ...]:
    found = zip(readings, fit.residuals, fit.leverages, strict=False)
    return tuple(
        Residual(
            reading=each,
            fitted=each.value - residual,
            normalised=_normalised(residual, each.u, leverage),
        )
        for each, residual, leverage in found
    )


def _normalised(residual: Millimetre, u: Millimetre, leverage: Number) -> Number | None:
    if leverage >= UNCHECKED:
        return None
    return residual / (u * math.sqrt(1.0 - leverage))


@dataclass(frozen=True, slots=True, kw_only=True)
class PredictedGap:
    """Gap that a leaf should find.

    Parameters
    ----------
    value
        Best value [mm].
    u
        Standard uncertainty [mm].
    """

    value: Millimetre
    u: Millimetre


def predicted_gap(found: Heights, first: str, second: str, part: Number) -> PredictedGap | None:
    """Gap under a straightedge across two wires; none where it is not determined.

    Parameters
    ----------
    part
        Place along the span, 0 at the first wire and 1 at the second [1].

    Source
    ------
    *derived*: line through two points, with the covariance of both heights.
    """
    one, two = (found.height(name).height for name in (first, second))
    if one is None or two is None:
        return None
    variance = (
        (1.0 - part) ** 2 * found.covariance_of(first, first)
        + part**2 * found.covariance_of(second, second)
        + 2.0 * part * (1.0 - part) * found.covariance_of(first, second)
    )
    return PredictedGap(value=gap(one, two, part), u=math.sqrt(max(0.0, variance)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Between:
    """A wire that a straightedge passed over on its way between two others.

    Parameters
    ----------
    over
        The wire passed over.
    margin, u
        How far it stands above the line of the two; best value and standard uncertainty [mm].
    p_above
        Probability that it stands above, so that the straightedge rocks on it and does not touch
        both [1].
    """

    first: str
    second: str
    over: str
    margin: Millimetre
    u: Millimetre
    p_above: Number


def between(
    found: Heights, first: str, second: str, over: str, part: Number
) -> Between | None:
    """Whether a wire between two others lifts the straightedge; none where not determined.

    Parameters
    ----------
    part
        Place of the wire passed over along the span [1].

    Source
    ------
    *derived*: height of the wire less the line through the two others, with their covariance.
    """
    if not all(found.height(name).determined for name in (first, second, over)):
        return None
    weights = {first: part - 1.0, second: -part, over: 1.0}
    margin = math.fsum(w * (found.height(name).height or 0.0) for name, w in weights.items())
    variance = math.fsum(
        weights[a] * weights[b] * found.covariance_of(a, b) for a in weights for b in weights
    )
    u = math.sqrt(max(0.0, variance))
    return Between(first=first, second=second, over=over, margin=margin, u=u,
                   p_above=probability(margin, u))
