"""A round wire pressed in a rectangular groove: how high it stands once it is on the floor."""

import math
from dataclasses import dataclass

from core.errors import InputError, fault
from core.source import Source, derived
from core.unit_types import Millimetre, SquareMillimetre

FLANK_MODEL: Source = derived(
    "the two circular segments beyond the walls move to the free top over the groove width"
)
FLANK_FORMULA = "h = d − g + 2·A(segment)/w"
SEATED_ASSUMPTIONS = (
    "groove.assume.floor",
    "groove.assume.walls",
    "groove.assume.plane",
)
"""Text keys of what the expected height takes for granted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PressedWire:
    """A wire and the groove it is pressed in.

    Parameters
    ----------
    wire
        Wire diameter [mm].
    width
        Groove width [mm].
    depth
        Groove depth [mm].

    Raises
    ------
    InputError
        If one of the three is not above zero.
    """

    wire: Millimetre
    width: Millimetre
    depth: Millimetre

    def __post_init__(self) -> None:
        sizes = (("wire", self.wire), ("groove-width", self.width), ("groove-depth", self.depth))
        faults = [fault(field, "groove.no_size") for field, size in sizes if not size > 0.0]
        if faults:
            raise InputError(faults)

    @property
    def interference(self) -> Millimetre:
        """Wire diameter less groove width; below zero the wire is loose."""
        return self.wire - self.width

    @property
    def widest_point_below_deck(self) -> Millimetre:
        """How deep the widest point of a wire on the floor lies; below zero it is above deck."""
        return self.depth - 0.5 * self.wire

    @property
    def loose(self) -> bool:
        return self.interference < 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ExpectedHeight:
    """Height over the deck of a wire that is on the floor.

    Parameters
    ----------
    floor
        The wire keeps its height, only its flanks give [mm].
    best
        What its flanks lose goes up: the best estimate [mm].
    ceiling
        The whole wire turns into an ellipse: no seated wire stands higher [mm].
    """

    floor: Millimetre
    best: Millimetre
    ceiling: Millimetre


def expected_height(pressed: PressedWire) -> ExpectedHeight:
    """Range and best estimate of the height of a wire on the floor of its groove.

    Without interference all three are equal.

    Parameters
    ----------
    pressed
        Wire and groove.

    Source
    ------
    *derived*: plane strain, area kept, wall rigid, floor flat, nothing shaved off, no springback.

    Examples
    --------
    >>> height = expected_height(PressedWire(wire=0.041, width=0.040, depth=0.030))
    >>> f"{height.floor:.6f} {height.best:.8f} {height.ceiling:.8f}"
    '0.011000 0.01115037 0.01202500'
    """
    floor = pressed.wire - pressed.depth
    return ExpectedHeight(
        floor=floor,
        best=floor + 2.0 * squeezed_segment(pressed) / pressed.width,
        ceiling=floor + _ellipse_rise(pressed),
    )


def squeezed_segment(pressed: PressedWire) -> SquareMillimetre:
    """Area of wire that one wall displaces [mm²]; none where the wire is loose.

    Source
    ------
    *derived*: circular segment of height half the interference.
    """
    if pressed.interference <= 0.0:
        return 0.0
    return segment_area(0.5 * pressed.wire, 0.5 * pressed.interference)


def segment_area(radius: Millimetre, height: Millimetre) -> SquareMillimetre:
    """Area of a circular segment [mm²].

    Parameters
    ----------
    radius
        Radius of the circle [mm].
    height
        Height of the segment, from 0 to the diameter [mm].

    Source
    ------
    *derived*: sector less triangle.

    Examples
    --------
    >>> f"{segment_area(1.0, 1.0):.9f}"
    '1.570796327'
    """
    half_angle = 2.0 * math.asin(math.sqrt(0.5 * height / radius))
    return 0.5 * radius * radius * (2.0 * half_angle - math.sin(2.0 * half_angle))


def _ellipse_rise(pressed: PressedWire) -> Millimetre:
    wire, width = pressed.wire, pressed.width
    return wire * max(0.0, pressed.interference) / width


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """Whether the wire below the deck finds room in the groove.

    Parameters
    ----------
    wire_below_deck
        Area of the wire that lies below the deck [mm²].
    groove
        Groove width times depth [mm²].
    """

    wire_below_deck: SquareMillimetre
    groove: SquareMillimetre

    @property
    def enough(self) -> bool:
        return self.wire_below_deck <= self.groove


def room(pressed: PressedWire) -> Room:
    """Wire below the deck against the groove it must fit in.

    Source
    ------
    *derived*: round wire on the floor, cut at deck level.

    Examples
    --------
    >>> found = room(PressedWire(wire=0.041, width=0.040, depth=0.030))
    >>> f"{found.wire_below_deck:.8f} {found.groove:.4f} {found.enough}"
    '0.00103520 0.0012 True'
    """
    radius = 0.5 * pressed.wire
    proud = min(max(pressed.wire - pressed.depth, 0.0), pressed.wire)
    below = math.pi * radius * radius - segment_area(radius, proud)
    return Room(wire_below_deck=below, groove=pressed.width * pressed.depth)
