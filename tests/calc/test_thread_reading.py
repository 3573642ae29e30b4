"""Threads as people write them, and the row of the standard that belongs to each."""

import pytest

from core.calc.fasteners import Grip, own_fastener, read_thread, standard_fastener, stud_stiffness
from core.errors import InputError
from core.source import ASSUMED


@pytest.mark.parametrize("typed", ["7/16-14", "7/16 - 14", '7/16"-14', "0.4375-14 UNC", ",4375-14"])
def test_an_inch_thread_is_read_in_every_spelling(typed: str) -> None:
    thread = read_thread(typed, "thread")
    assert (thread.diameter, thread.pitch) == (11.1125, 25.4 / 14)


@pytest.mark.parametrize("typed", ["M12x1.75", "m12×1,75", "M 12 x 1.75", "M12"])
def test_a_metric_thread_is_read_in_every_spelling(typed: str) -> None:
    thread = read_thread(typed, "thread")
    assert (thread.name, thread.diameter, thread.pitch) == ("M12x1.75", 12.0, 1.75)


@pytest.mark.parametrize(
    "typed", ["", "bolt", "M", "M0x1", "7/0-14", "7/16-0", "M12x9", "9-4", "M200x6"]
)
def test_what_is_no_thread_of_a_head_is_refused(typed: str) -> None:
    with pytest.raises(InputError, match="thread"):
        read_thread(typed, "thread")


@pytest.mark.parametrize(
    ("thread", "grade", "proof"),
    [("M16x2", "8.8", 580.0), ("M18x2.5", "8.8", 600.0), ("M12", "9.8", 650.0)],
)
def test_the_size_chooses_the_row_of_the_class(thread: str, grade: str, proof: float) -> None:
    assert standard_fastener(read_thread(thread, "t"), grade, "grade").proof_strength == proof


@pytest.mark.parametrize(("thread", "grade"), [("M12", "8"), ("7/16-14", "8.8"), ("M20", "9.8")])
def test_a_grade_of_another_standard_or_size_is_refused(thread: str, grade: str) -> None:
    with pytest.raises(InputError, match="grade"):
        standard_fastener(read_thread(thread, "t"), grade, "grade")


def test_a_stud_with_a_plain_shank_is_stiffer_and_both_parts_act_in_series() -> None:
    stud = own_fastener(read_thread("7/16-14", "t"), 1000.0, ASSUMED)
    threaded, shanked = (
        stud_stiffness(stud, Grip(length=101.6, shank=shank)) for shank in (0.0, 101.6)
    )
    half = stud_stiffness(stud, Grip(length=101.6, shank=50.8))
    # E·A/L = 30e6 psi · 0.106308 in² / 4 in = 797 310 lbf/in
    assert threaded / 4.4482216152605 * 25.4 == pytest.approx(797310.0, rel=1e-5)
    assert 2.0 / half == pytest.approx(1.0 / threaded + 1.0 / shanked)
