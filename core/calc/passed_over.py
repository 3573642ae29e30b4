"""Wires that a straightedge passes over between the two it is laid on."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from core.calc.pair_heights import Between, Heights, between
from core.calc.straightedge import part_of_span
from core.unit_types import Millimetre

MORE_LIKELY_THAN_NOT = 0.5


class Outcome(StrEnum):
    """Whether the heights found and the straightedge say the same."""

    CLEAR = "clear"
    LIFTED = "lifted"
    ROCKS = "rocks"
    SHOULD_NOT_ROCK = "should-not-rock"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """A straightedge laid across two wires.

    Parameters
    ----------
    name
        What a person calls the reading.
    rocked
        Whether it rocked there.
    """

    name: str
    first: str
    second: str
    rocked: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Crossing:
    """A wire passed over by a straightedge.

    Parameters
    ----------
    over
        The wire passed over.
    found
        How far it stands above the line of the two; none where that is not determined.
    """

    laid: Laid
    over: str
    found: Between | None

    @property
    def outcome(self) -> Outcome:
        if self.found is None:
            return Outcome.UNKNOWN
        lifts = self.found.p_above > MORE_LIKELY_THAN_NOT
        if self.laid.rocked:
            return Outcome.ROCKS if lifts else Outcome.SHOULD_NOT_ROCK
        return Outcome.LIFTED if lifts else Outcome.CLEAR


def wires_between(
    places: Mapping[str, Millimetre], first: str, second: str
) -> tuple[tuple[str, Fraction], ...]:
    """Wires between two others along a straightedge, each with its part of the span.

    None are known where the place of one of the two is not.

    Parameters
    ----------
    places
        Where wires are crossed, along the straightedge, as far as known [mm].

    Examples
    --------
    >>> wires_between({"1": 0.0, "2": 100.0, "3": 200.0}, "1", "3")
    (('2', Fraction(1, 2)),)
    """
    if not {first, second} <= set(places) or places[first] == places[second]:
        return ()
    parts = (
        (wire, part_of_span(places[first], places[second], at)) for wire, at in places.items()
    )
    return tuple((wire, part) for wire, part in parts if 0 < part < 1)


def crossings(
    found: Heights, laid: Sequence[Laid], places: Mapping[str, Millimetre]
) -> tuple[Crossing, ...]:
    """Every wire passed over, held against the heights found.

    A reading across two wires counts only if no wire between them stands above their line; a
    straightedge that rocks says that one does.

    Parameters
    ----------
    places
        Where wires are crossed, along the straightedge, as far as known [mm].

    Source
    ------
    *derived*: line through two points, with the covariance of the heights.
    """
    return tuple(
        Crossing(
            laid=each, over=over, found=between(found, each.first, each.second, over, float(part))
        )
        for each in laid
        for over, part in wires_between(places, each.first, each.second)
    )
