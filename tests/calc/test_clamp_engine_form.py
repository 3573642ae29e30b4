"""A whole engine from texts: cylinders, their own heights, and fasteners by number or by place."""

import pytest

from core.calc.engine_clamp import engine_clamp
from core.errors import InputError
from core.forms.clamp_engine_form import ClampEngineForm, read_clamp_engine

MAIN = {
    "thread": "7/16-14",
    "grade": "8",
    "preload": "75%",
    "ring": "4.300in",
    "pressure": "1500psi",
    "wire": "0.041in",
    "height": "0.0105in",
}
ROWS = {"spacing": "4.4in", "between-above": "60mm", "between-below": "60mm"}


def read(**texts: str) -> ClampEngineForm:
    fields = {name.replace("_", "-"): each for name, each in texts.items()}
    return read_clamp_engine({name: [each] for name, each in fields.items()}, lambda name: name)


def test_a_number_of_fasteners_serves_every_cylinder_of_every_bank():
    form = read(**MAIN, fasteners="4.25", cylinders="4", banks="2")
    assert [each.name for each in form.cylinders] == list("12345678")
    assert {each.fasteners.count for each in form.cylinders} == {4.25}
    assert form.pattern is None


def test_rows_of_fasteners_are_shared_by_the_lever_rule():
    form = read(**MAIN, **ROWS, cylinders="4")
    # ends: two of their own and half of two; inside: half of four
    assert [each.fasteners.count for each in form.cylinders] == pytest.approx([3.0, 2.0, 2.0, 3.0])
    beside = read(**MAIN, **ROWS, cylinders="4", beside_above="80mm")
    assert [each.fasteners.count for each in beside.cylinders] == pytest.approx([4, 3, 3, 4])
    assert beside.pattern is not None
    assert len(beside.pattern.fasteners) == 5 + 5 + 4


def test_below_the_line_of_bores_is_the_other_side():
    pattern = read(**MAIN, **ROWS, cylinders="2").pattern
    assert pattern is not None
    assert sorted({each.y for each in pattern.fasteners}) == [-60.0, 60.0]


def test_a_cylinder_may_have_a_height_of_its_own_and_is_then_the_weakest():
    form = read(**MAIN, fasteners="4.25", cylinders="4", height_3="0.020in")
    assert [round(each.height / 25.4, 4) for each in form.cylinders] == [
        0.0105, 0.0105, 0.0200, 0.0105,
    ]  # fmt: skip
    assert engine_clamp(form.joint, form.cylinders).weakest.loads.cylinder.name == "3"


def test_all_faults_come_together_each_with_its_field():
    with pytest.raises(InputError) as refused:
        read(thread="7/16-14", grade="8", torque="65lbf.ft", cylinders="2.5")
    said = str(refused.value)
    for field in ("friction", "cylinders", "fasteners", "ring", "wire", "height", "pressure"):
        assert f"{field}: " in said


def test_rows_need_the_spacing_of_the_bores():
    with pytest.raises(InputError, match="spacing: type the distance"):
        read(**MAIN, cylinders="4", between_above="60mm")
