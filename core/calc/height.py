"""How high the wire stands, from what was measured, and how sure that is."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from core.calc.leaves import Stack, thickness
from core.errors import refuse
from core.source import ASSUMED, Source, Trust, derived, published
from core.tables.half_widths import HalfWidths
from core.texts import text
from core.uncertain import SQRT3, Explained, Term, coverage_factor, explain, rectangular
from core.unit_types import Millimetre, Number

RANGE_LEVEL = 0.95
LEAST_U = 1e-9
"""A reading said to be exact still has a finite weight in a mean."""
GUM_RECTANGLE = published("JCGM 100:2008 (GUM), 4.3.7")
GUM_REPEATS = published("JCGM 100:2008 (GUM), 4.2 and G.4.1")
WEIGHTED_MEAN = derived("weighted mean of readings, weights 1/u²")
TYPED = Source(Trust.ASSUMED, "as typed")


class Bound(StrEnum):
    """What a reading knows: a value between two leaves, or one side only."""

    BOTH = "both"
    LOWER = "lower"
    UPPER = "upper"


@dataclass(frozen=True, slots=True, kw_only=True)
class Height:
    """Height of the wire over the deck.

    Parameters
    ----------
    bound
        Whether both sides are known. With one side, `value` is that bound.
    low, high
        Range that is shown; none on a side that is not known [mm].
    explained
        Value and spread with their terms.
    disagreement
        How many times more several readings differ than their spreads allow; 1 or more [1].
    """

    bound: Bound
    low: Millimetre | None
    high: Millimetre | None
    explained: Explained
    disagreement: Number = 1.0

    @property
    def value(self) -> Millimetre:
        """Best value, or the side that is known [mm]."""
        return self.explained.value

    @property
    def u(self) -> Millimetre:
        """Standard uncertainty of `value` [mm]."""
        return self.explained.u

    @property
    def dof(self) -> Number:
        """Effective degrees of freedom of `u` [1]."""
        return self.explained.dof


def from_leaves(
    go: Stack | None,
    no_go: Stack | None,
    half_widths: HalfWidths,
    straightedge: Millimetre = 0.0,
) -> Height:
    """Height from the leaf that goes and the leaf that does not; either alone is one side.

    Parameters
    ----------
    go, no_go
        Leaf or stack that goes, and that does not; not both None.
    straightedge
        Half width for the straightedge and the deck under it [mm].

    Raises
    ------
    InputError
        If the leaf that does not go is not the thicker one.

    Source
    ------
    JCGM 100:2008 (GUM), 4.3.7; leaves of one set are fully correlated (5.2.2).
    """
    common = _common_terms(half_widths, straightedge)
    if go is None or no_go is None:
        return _one_side(go, no_go, half_widths, common)
    low = thickness(go, half_widths, text("term.go"))
    high = thickness(no_go, half_widths, text("term.no_go"))
    if low.value >= high.value:
        raise refuse("no-go", "height.crossed")
    between = _zero(text("term.between"), 0.5 * (high.value - low.value))
    explained = explain(
        lambda a, b, *errors: 0.5 * (a + b) + sum(errors),
        (low, high, between, *common),
        unit="mm",
        formula=text("formula.leaves"),
        source=GUM_RECTANGLE,
    )
    widen = _half_width(common)
    return Height(
        bound=Bound.BOTH, low=low.value - widen, high=high.value + widen, explained=explained
    )


def _one_side(
    go: Stack | None, no_go: Stack | None, half_widths: HalfWidths, common: Sequence[Term]
) -> Height:
    known = go or no_go
    assert known is not None
    term = thickness(known, half_widths, text("term.go" if go else "term.no_go"))
    explained = explain(
        lambda leaf, *errors: leaf + sum(errors),
        (term, *common),
        unit="mm",
        formula=text("formula.go" if go else "formula.no_go"),
        source=GUM_RECTANGLE,
    )
    widen = _half_width(common)
    if go:
        return Height(bound=Bound.LOWER, low=term.value - widen, high=None, explained=explained)
    return Height(bound=Bound.UPPER, low=None, high=term.value + widen, explained=explained)


def _common_terms(half_widths: HalfWidths, straightedge: Millimetre) -> tuple[Term, ...]:
    terms = [_common(text("term.leaf_set"), half_widths.leaf)]
    if straightedge:
        terms.append(_common(text("term.straightedge"), straightedge))
    return tuple(terms)


def _half_width(terms: Sequence[Term]) -> Millimetre:
    return SQRT3 * math.fsum(term.u for term in terms)


def _zero(name: str, half_width: Millimetre) -> Term:
    """Error whose best value is zero, within ± `half_width`."""
    return Term(name=name, value=0.0, u=rectangular(half_width), unit="mm", source=ASSUMED)


def _common(name: str, half_width: Millimetre) -> Term:
    """The same for an error that all readings made with one thing share."""
    return replace(_zero(name, half_width), common=True)


def from_snug_leaf(leaf: Stack, half_widths: HalfWidths, straightedge: Millimetre = 0.0) -> Height:
    """Height from one leaf that just drags, with none tried that stops.

    Parameters
    ----------
    straightedge
        Half width for the straightedge and the deck under it [mm].

    Source
    ------
    JCGM 100:2008 (GUM), 4.3.7, over the assumed half widths.
    """
    common = _common_terms(half_widths, straightedge)
    explained = explain(
        lambda marked, *errors: marked + sum(errors),
        (
            thickness(leaf, half_widths, text("term.snug")),
            _zero(text("term.drag"), half_widths.snug),
            *common,
        ),
        unit="mm",
        formula=text("formula.snug"),
        source=GUM_RECTANGLE,
    )
    return _around(explained, half_widths.snug + _half_width(common))


def _around(explained: Explained, widen: Millimetre, disagreement: Number = 1.0) -> Height:
    return Height(
        bound=Bound.BOTH,
        low=explained.value - widen,
        high=explained.value + widen,
        explained=explained,
        disagreement=disagreement,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class DepthInstrument:
    """Something that reads the height directly.

    Parameters
    ----------
    name
        What a person calls it; readings of one name share its error.
    limit
        Limit of error, half width [mm].
    step
        Step of the display; 0 where it is inside the limit [mm].
    zero
        What it reads on the deck; subtracted [mm].
    """

    name: str
    limit: Millimetre
    step: Millimetre = 0.0
    zero: Millimetre = 0.0


def from_depth(
    readings: Sequence[Millimetre], instrument: DepthInstrument, assumptions: Sequence[str] = ()
) -> Height:
    """Height from an indicator, a caliper or a depth rod, read once or several times.

    Parameters
    ----------
    readings
        Repeats at one place, shape (n,) [mm].
    assumptions
        What the way of measuring takes for granted.

    Source
    ------
    JCGM 100:2008 (GUM): 4.2 for repeats, 4.3.7 for the instrument, F.2.2.1 for its step,
    G.4.1 for the degrees of freedom.
    """
    explained = explain(
        lambda mean, *errors: mean - instrument.zero + sum(errors),
        (mean_of(readings), *_instrument_terms(instrument)),
        unit="mm",
        formula=text("formula.depth"),
        source=GUM_REPEATS,
        assumptions=assumptions,
    )
    return _around(explained, coverage_factor(RANGE_LEVEL, explained.dof) * explained.u)


def mean_of(readings: Sequence[Millimetre]) -> Term:
    """Mean of repeats, with the spread that their scatter gives it; one reading tells none.

    Parameters
    ----------
    readings
        Repeats at one place, shape (n,) [mm].

    Source
    ------
    JCGM 100:2008 (GUM), 4.2.
    """
    count = len(readings)
    mean = math.fsum(readings) / count
    if count == 1:
        return Term(name=text("term.reading"), value=mean, u=0.0, unit="mm", source=TYPED)
    scatter = math.fsum((each - mean) ** 2 for each in readings) / (count - 1)
    return Term(
        name=text("term.repeats"),
        value=mean,
        u=math.sqrt(scatter / count),
        unit="mm",
        source=GUM_REPEATS,
        dof=count - 1,
    )


def _instrument_terms(instrument: DepthInstrument) -> tuple[Term, ...]:
    limit = _common(text("term.limit", instrument=instrument.name), instrument.limit)
    if not instrument.step:
        return (limit,)
    return (limit, _zero(text("term.step", instrument=instrument.name), 0.5 * instrument.step))


def as_given(value: Millimetre, u: Millimetre) -> Height:
    """Height that is known already.

    Parameters
    ----------
    value
        Height [mm].
    u
        Its standard uncertainty [mm].

    Source
    ------
    *assumed*: as typed; range at 95 % of a normal distribution, JCGM 100:2008 (GUM), G.2.3.
    """
    term = Term(name=text("term.height"), value=value, u=u, unit="mm", source=TYPED)
    explained = explain(
        lambda h: h, (term,), unit="mm", formula=text("formula.given"), source=TYPED
    )
    return _around(explained, coverage_factor(RANGE_LEVEL, math.inf) * u)


def combine(heights: Sequence[Height]) -> Height:
    """One height from several readings of the same place.

    Readings with both sides are weighted by 1/u², and an error that several of them share counts
    once, whole. If they differ by more than their spreads allow, the spread grows by the Birge
    ratio. A reading with one side must not contradict any of them.

    Raises
    ------
    InputError
        If a leaf contradicts another reading.

    Source
    ------
    Weighted mean with correlated inputs: JCGM 100:2008 (GUM), 5.2.2. Ratio: Birge, Phys. Rev. 40
    (1932) 207, *from memory*.
    """
    full = [each for each in heights if each.bound is Bound.BOTH]
    if not full:
        return _combine_sides(heights)
    for side in heights:
        for each in full:
            _refuse_contradiction(side, each)
    return full[0] if len(full) == 1 else _weighted(full)


def _combine_sides(heights: Sequence[Height]) -> Height:
    """The tightest side where all readings know the same side only."""
    if len({each.bound for each in heights}) > 1:
        raise refuse("go", "height.one_pair")
    tightest = max if heights[0].bound is Bound.LOWER else min
    return tightest(heights, key=lambda each: each.value)


def _weighted(full: Sequence[Height]) -> Height:
    raw = [1.0 / max(each.u, LEAST_U) ** 2 for each in full]
    weights = [each / math.fsum(raw) for each in raw]
    common, slopes = _common_errors(full, weights)
    explained = explain(
        lambda *values: sum(w * v for w, v in zip((*weights, *slopes), values, strict=True)),
        (*(_own(each) for each in full), *common),
        unit="mm",
        formula=text("formula.weighted"),
        source=WEIGHTED_MEAN,
        assumptions=tuple(dict.fromkeys(a for each in full for a in each.explained.assumptions)),
    )
    ratio = _birge_ratio(full, raw, explained.value)
    explained = replace(explained, u=explained.u * ratio)
    widen = coverage_factor(RANGE_LEVEL, explained.dof) * explained.u
    return _around(explained, widen, ratio)


def _own(height: Height) -> Term:
    """A reading with the part of its spread that it shares with no other."""
    told = height.explained
    parts = zip(told.terms, told.shares, strict=True)
    own = math.fsum(share for term, share in parts if not term.common)
    return Term(
        name=told.formula,
        value=told.value,
        u=told.u * math.sqrt(own),
        unit="mm",
        source=told.source,
        dof=told.dof * own**2 if own else math.inf,
    )


def _common_errors(
    full: Sequence[Height], weights: Sequence[Number]
) -> tuple[tuple[Term, ...], tuple[Number, ...]]:
    """Each shared error once, and the weight of all readings that carry it."""
    found: dict[str, tuple[Term, float]] = {}
    for height, weight in zip(full, weights, strict=True):
        for term in height.explained.terms:
            if term.common:
                before = found.get(term.name, (term, 0.0))[1]
                found[term.name] = (term, before + weight)
    return tuple(term for term, _ in found.values()), tuple(slope for _, slope in found.values())


def _birge_ratio(full: Sequence[Height], weights: Sequence[float], mean: Millimetre) -> Number:
    chi2 = math.fsum(w * (each.value - mean) ** 2 for w, each in zip(weights, full, strict=True))
    return max(1.0, math.sqrt(chi2 / (len(full) - 1)))


def _refuse_contradiction(side: Height, full: Height) -> None:
    """The near end of each range counts: only what cannot both be true is refused."""
    if side.bound is Bound.LOWER and (side.low or 0.0) > (full.high or 0.0):
        raise refuse("go", "height.contradicts")
    if side.bound is Bound.UPPER and (side.high or 0.0) < (full.low or 0.0):
        raise refuse("no-go", "height.contradicts")
