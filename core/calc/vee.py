"""A V engine whose heads move along their deck normals: where intake faces, ports and rail go.

Cross-section: the deck normal of a bank stands half the bank angle from the vertical, the intake
face `face_lean` from the vertical. A face angle inside the head, between deck face and intake face,
gives the lean as 90° + bank angle / 2 - face angle.
"""

import math
from dataclasses import dataclass

from core.errors import Fault, InputError, fault
from core.source import Source, derived
from core.unit_types import Millimetre, Number, Radian

SOURCE: Source = derived("both heads moved along their deck normals, manifold and block rigid")
RIGHT_ANGLE = 0.5 * math.pi
NEARLY_LEVEL = math.radians(1.0)
"""Closer than this to level, a spacer on an intake face moves its ports no more than sideways."""


@dataclass(frozen=True, slots=True, kw_only=True)
class VeeGeometry:
    """Angles of a V engine, alike on both banks.

    Parameters
    ----------
    bank_angle
        Between the banks [rad].
    face_angle
        Between deck face and intake face, inside the head [rad].
    """

    bank_angle: Radian
    face_angle: Radian

    @property
    def half_bank(self) -> Radian:
        """Deck normal from the vertical [rad]."""
        return 0.5 * self.bank_angle

    @property
    def face_lean(self) -> Radian:
        """Intake face from the vertical [rad]."""
        return RIGHT_ANGLE + self.half_bank - self.face_angle


@dataclass(frozen=True, slots=True, kw_only=True)
class VeeFactors:
    """Movements for each unit of rise; see `VeeShift`.

    Parameters
    ----------
    face_gap, port_offset, manifold_lift, riding_offset, side_spacer, rail_gap
        As in `VeeShift`, divided by the rise [1].
    """

    face_gap: Number
    port_offset: Number
    manifold_lift: Number
    riding_offset: Number
    side_spacer: Number
    rail_gap: Number


@dataclass(frozen=True, slots=True, kw_only=True)
class VeeShift:
    """What a rise of both heads does on the intake side; a negative rise is a lower head.

    Parameters
    ----------
    face_gap
        Manifold left where it was: gap at each intake face; negative, the faces interfere [mm].
    port_offset
        Manifold left where it was: ports of the head higher along the face [mm].
    manifold_lift
        Manifold riding on both faces with the old intake gaskets: how far it rises, which is how
        far the rail gap opens [mm].
    riding_offset
        Manifold riding on both faces: ports of the head higher along the face [mm].
    side_spacer
        Ports and bolt holes back in line: more thickness at each intake face [mm].
    rail_gap
        Ports back in line: how far the rail gap opens [mm].
    """

    face_gap: Millimetre
    port_offset: Millimetre
    manifold_lift: Millimetre
    riding_offset: Millimetre
    side_spacer: Millimetre
    rail_gap: Millimetre


def vee_factors(vee: VeeGeometry) -> VeeFactors:
    """Movements for each unit of rise.

    Raises
    ------
    InputError
        If no manifold sits between such faces, or if they are level, so that spacers cannot bring
        ports back in line.

    Source
    ------
    *derived*: plane geometry of one bank, the other its mirror image.

    Examples
    --------
    >>> right = math.radians(90.0)
    >>> f"{vee_factors(VeeGeometry(bank_angle=right, face_angle=right)).rail_gap:.6f}"
    '1.414214'
    """
    if faults := vee_faults(vee):
        raise InputError(faults)
    bank, lean = vee.half_bank, vee.face_lean
    return VeeFactors(
        face_gap=math.sin(bank - lean),
        port_offset=math.cos(bank - lean),
        manifold_lift=math.sin(lean - bank) / math.sin(lean),
        riding_offset=math.sin(bank) / math.sin(lean),
        side_spacer=math.sin(bank) / math.cos(lean),
        rail_gap=math.cos(bank - lean) / math.cos(lean),
    )


def vee_shift(vee: VeeGeometry, rise: Millimetre) -> VeeShift:
    """What a rise of both heads does on the intake side.

    Parameters
    ----------
    rise
        How far both heads go up along their deck normals; negative is down [mm].

    Raises
    ------
    InputError
        As `vee_factors`.

    Source
    ------
    *derived*.
    """
    factors = vee_factors(vee)
    return VeeShift(
        face_gap=rise * factors.face_gap,
        port_offset=rise * factors.port_offset,
        manifold_lift=rise * factors.manifold_lift,
        riding_offset=rise * factors.riding_offset,
        side_spacer=rise * factors.side_spacer,
        rail_gap=rise * factors.rail_gap,
    )


def vee_faults(vee: VeeGeometry) -> tuple[Fault, ...]:
    """Angles that cannot be solved, each by its field."""
    if not 0.0 < vee.bank_angle < math.pi:
        return (fault("bank-angle", "vee.bank_angle"),)
    level = RIGHT_ANGLE - vee.face_lean
    if abs(level) < NEARLY_LEVEL:
        sideways = math.sin(vee.half_bank)
        return (fault("face-angle", "vee.level", level=_degrees(vee.half_bank), sideways=sideways),)
    if vee.face_lean < NEARLY_LEVEL or level < 0.0:
        low, high = _degrees(vee.half_bank), _degrees(vee.half_bank + RIGHT_ANGLE)
        return (fault("face-angle", "vee.face_angle", low=low, high=high),)
    return ()


def _degrees(angle: Radian) -> float:
    return math.degrees(angle)
