"""`ratio` and `vee` as typed."""

import json
import re

import pytest

from core.command import main

EIGHT = (
    "ratio --bore 4.125in --stroke 3.75in --chamber 64cc --dish 5cc --deck 0.005in "
    "--gasket-bore 4.2in"
)


def answer(line: str, capsys: pytest.CaptureFixture[str]) -> dict[str, object]:
    assert main([*line.split(), "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert isinstance(data, dict)
    return data


def refusal(line: str, capsys: pytest.CaptureFixture[str]) -> str:
    """The one line on standard error; nothing else is printed."""
    assert main(line.split()) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert printed.err.count("\n") == 1
    return printed.err


def test_ratio_of_a_worked_cylinder(capsys: pytest.CaptureFixture[str]) -> None:
    found = answer(f"{EIGHT} --gasket 0.043in", capsys)
    assert found["ratio"] == pytest.approx(11.28383, abs=5e-6)
    assert found["swept_cc"] == pytest.approx(821.2402, abs=5e-5)
    assert found["clearance_cc"] == pytest.approx(79.8574, abs=5e-5)
    assert found["per_thou"] == pytest.approx(-0.029237, abs=5e-7)
    assert "gasket_mm" not in found
    assert found["left_out"]


def test_sheet_for_a_ratio(capsys: pytest.CaptureFixture[str]) -> None:
    found = answer(f"{EIGHT} --for-ratio 10.0", capsys)
    assert found["gasket_mm"] == pytest.approx(0.093175 * 25.4, abs=2e-5)
    assert "ratio" not in found


def test_proud_piston_and_dome(capsys: pytest.CaptureFixture[str]) -> None:
    found = answer(
        "ratio --bore 86mm --stroke 86mm --chamber 45cc --dome 3cc --deck -0.10mm "
        "--gasket-bore 87.5mm --gasket 1.10mm",
        capsys,
    )
    assert found["ratio"] == pytest.approx(11.40015, abs=5e-6)
    assert found["piston_to_head_mm"] == pytest.approx(1.0)


def test_table_for_a_person(capsys: pytest.CaptureFixture[str]) -> None:
    assert main([*EIGHT.split(), "--gasket", "0.043in"]) == 0
    table = capsys.readouterr().out
    assert "11.28" in table
    assert "Not in these figures" in table


@pytest.mark.parametrize(
    ("line", "named"),
    [
        (EIGHT, ("--gasket:",)),
        (f"{EIGHT} --for-ratio 60", ("--for-ratio: no sheet gives this ratio",)),
        (f"{EIGHT} --gasket 0.043 --dome 900cc", ("--dome: leaves no volume",)),
        (
            "ratio --bore 4.125 --chamber 64 --deck x --gasket-bore 4.2in --gasket 0.043in",
            ("--bore: 4.125 has no unit", "--stroke: nothing was typed", "--chamber:", "--deck:"),
        ),
        (
            "ratio --bore 4.125in --stroke 3.75in --chamber 64cc --deck 0 --gasket-bore 4in "
            "--gasket 0.043in",
            ("--gasket-bore: is smaller than the bore",),
        ),
        (f"{EIGHT} --gasket nan", ("--gasket:",)),
        (f"{EIGHT} --for-ratio 0.5", ("--for-ratio:",)),
    ],
)
def test_what_cannot_be_is_refused_by_option(
    line: str, named: tuple[str, ...], capsys: pytest.CaptureFixture[str]
) -> None:
    said = refusal(line, capsys)
    assert all(each in said for each in named), said


def test_vee_of_a_worked_engine(capsys: pytest.CaptureFixture[str]) -> None:
    found = answer("vee --bank-angle 90 --face-angle 80 --raise 0.0315in", capsys)
    worked = {
        "face_gap_mm": -0.005470,
        "port_offset_mm": 0.031021,
        "side_spacer_mm": 0.038833,
        "rail_gap_mm": 0.054084,
    }
    for name, inches in worked.items():
        assert found[name] == pytest.approx(inches * 25.4, abs=5e-7 * 25.4)


def test_heads_that_come_down_move_everything_the_other_way(
    capsys: pytest.CaptureFixture[str],
) -> None:
    up = answer("vee --bank-angle 90 --face-angle 80 --raise 0.5mm", capsys)
    down = answer("vee --bank-angle 90 --face-angle 80 --raise -0.5mm", capsys)
    for name in ("face_gap_mm", "port_offset_mm", "side_spacer_mm", "rail_gap_mm"):
        assert down[name] == pytest.approx(-float(str(up[name])))


@pytest.mark.parametrize(
    ("line", "named"),
    [
        ("vee --bank-angle 90 --face-angle 45 --raise 0.5mm", "--face-angle: .*level"),
        ("vee --bank-angle 190 --face-angle 80 --raise 0.5mm", "--bank-angle: "),
        ("vee --bank-angle 90 --face-angle 20 --raise 0.5mm", "--face-angle: "),
        ("vee --bank-angle 90 --raise 0.5psi", "--face-angle: .*--raise: "),
    ],
)
def test_angles_that_cannot_be_solved_are_refused_by_option(
    line: str, named: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert re.search(named, refusal(line, capsys))
