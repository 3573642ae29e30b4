"""Intake side of a V engine against plane geometry drawn point by point."""

import math
import random

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import brentq

from core.calc.vee import VeeGeometry, vee_shift
from core.errors import InputError

CASES = 1000
Point = NDArray[np.float64]


class Bank:
    """Right-hand bank in the plane across the engine: x outward, y up."""

    def __init__(self, vee: VeeGeometry) -> None:
        half, face = vee.bank_angle / 2, vee.face_angle
        self.normal = np.array([math.sin(half), math.cos(half)])
        into_valley = np.array([-math.cos(half), math.sin(half)])
        # The intake face starts at the inner edge of the deck face and turns from it, through the
        # metal of the head, by the face angle.
        outward = -into_valley
        self.up_face = math.cos(face) * outward + math.sin(face) * self.normal
        self.up_face *= math.copysign(1.0, self.up_face[1])
        out_of_head = np.array([-self.up_face[1], self.up_face[0]])
        self.out_of_head = out_of_head * math.copysign(1.0, float(out_of_head @ into_valley))
        self.port = np.array([40.0, 100.0])


def random_vee(rng: random.Random) -> VeeGeometry:
    while True:
        bank, face = rng.uniform(20.0, 150.0), rng.uniform(40.0, 130.0)
        lean = 90.0 + bank / 2 - face
        if 5.0 < lean < 85.0:
            return VeeGeometry(bank_angle=math.radians(bank), face_angle=math.radians(face))


def random_cases(seed: int) -> list[tuple[VeeGeometry, float]]:
    rng = random.Random(seed)
    return [(random_vee(rng), rng.uniform(-2.0, 2.0)) for _ in range(CASES)]


def test_manifold_left_where_it_was() -> None:
    for vee, rise in random_cases(1):
        bank, shift = Bank(vee), vee_shift(vee, rise)
        moved = rise * bank.normal
        # The face of the manifold stays on the old line; the head's face moves away from it.
        assert shift.face_gap == pytest.approx(-float(moved @ bank.out_of_head), abs=1e-12)
        assert shift.port_offset == pytest.approx(float(moved @ bank.up_face), abs=1e-12)


def test_manifold_riding_on_both_faces() -> None:
    for vee, rise in random_cases(2):
        bank, shift = Bank(vee), vee_shift(vee, rise)
        head_port = bank.port + rise * bank.normal

        def clearance(lift: float, bank: Bank = bank, head_port: Point = head_port) -> float:
            manifold_port = bank.port + np.array([0.0, lift])
            return float((manifold_port - head_port) @ bank.out_of_head)

        lift = brentq(clearance, -100.0, 100.0, xtol=1e-13)
        assert shift.manifold_lift == pytest.approx(lift, abs=1e-9)
        manifold_port = bank.port + np.array([0.0, lift])
        offset = float((head_port - manifold_port) @ bank.up_face)
        assert shift.riding_offset == pytest.approx(offset, abs=1e-9)


def test_ports_back_in_line() -> None:
    for vee, rise in random_cases(3):
        bank, shift = Bank(vee), vee_shift(vee, rise)
        head_port = bank.port + rise * bank.normal
        # The manifold, rigid and held in the middle, can only rise; a spacer fills the gap square
        # to the face. Ports are in line when head port - manifold port has no part along the face.
        axes = np.column_stack([[0.0, 1.0], -bank.out_of_head])
        lift, spacer = np.linalg.solve(axes, head_port - bank.port)
        assert shift.rail_gap == pytest.approx(lift, abs=1e-9)
        assert shift.side_spacer == pytest.approx(spacer, abs=1e-9)


def test_twice_the_rise_is_twice_the_shift_and_down_is_the_other_way() -> None:
    for vee, rise in random_cases(4):
        once, twice, down = (vee_shift(vee, each) for each in (rise, 2 * rise, -rise))
        assert twice.side_spacer == pytest.approx(2 * once.side_spacer)
        assert down.rail_gap == pytest.approx(-once.rail_gap)


@pytest.mark.parametrize(
    ("bank", "face", "named"),
    [
        (0.0, 80.0, "bank-angle"),
        (180.0, 80.0, "bank-angle"),
        (90.0, 45.0, "face-angle.*level.*0.707 of the rise"),
        (90.0, 44.0, "face-angle"),
        (60.0, 30.0, "face-angle.*level.*0.500 of the rise"),
        (90.0, 135.0, "face-angle"),
        (90.0, 30.0, "face-angle"),
    ],
)
def test_angles_that_cannot_be_solved_are_refused_by_field(
    bank: float, face: float, named: str
) -> None:
    vee = VeeGeometry(bank_angle=math.radians(bank), face_angle=math.radians(face))
    with pytest.raises(InputError, match=named):
        vee_shift(vee, 0.5)
