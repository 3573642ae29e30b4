"""The command `cut`: what it prints, and how it refuses."""

import json
import math

import pytest

from core.command import main

USUAL = ("cut", "--wire", "0.041in", "--gasket", "0.050in")


def told(capsys: pytest.CaptureFixture[str], *words: str) -> dict:
    assert main([*words, "--json"]) == 0
    printed = capsys.readouterr()
    assert printed.err == ""
    return json.loads(printed.out)


def refused(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(list(words)) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert printed.err.count("\n") == 1
    return printed.err


def test_groove_for_the_usual_wire_and_sheet(capsys: pytest.CaptureFixture[str]) -> None:
    answer = told(capsys, *USUAL)
    assert answer["groove_width_mm"] == pytest.approx({"low": 1.00838, "target": 1.016,
                                                       "high": 1.02362})
    depth = answer["groove_depth_mm"]
    assert depth["high"] - depth["target"] == pytest.approx(0.0127)
    assert answer["height_mm"]["target"] == pytest.approx(0.3048)
    assert answer["share"]["target"] == pytest.approx(0.24)
    assert answer["share"]["low"] < 0.24 < answer["share"]["high"]
    assert "wire_length_mm" not in answer


def test_wire_of_one_ring_and_of_the_engine(capsys: pytest.CaptureFixture[str]) -> None:
    answer = told(capsys, *USUAL, "--ring", "4.25in", "--cylinders", "8")
    assert answer["wire_length_mm"] / 25.4 == pytest.approx(13.351769, abs=5e-7)
    assert answer["wire_mass_g"] / 453.59237 == pytest.approx(0.005094, abs=1e-6)
    assert answer["engine_wire"]["length_mm"] == pytest.approx(8 * answer["wire_length_mm"])
    assert answer["engine_wire"]["mass_g"] == pytest.approx(8 * answer["wire_mass_g"])
    assert answer["wire_cut_length_mm"] > answer["wire_length_mm"]


def test_inch_and_metric_give_one_groove(capsys: pytest.CaptureFixture[str]) -> None:
    inch = told(capsys, *USUAL)
    metric = told(capsys, "cut", "--wire", "1.0414mm", "--gasket", "1,27mm")
    assert inch == metric


def test_place_on_the_deck_with_lands_and_joints(capsys: pytest.CaptureFixture[str]) -> None:
    answer = told(
        capsys, *USUAL, "--cylinders", "8", "--bank", "4", "--bore", "4.125in",
        "--spacing", "4.6in", "--bolt-offset", "2.4in", "--bolt-hole", "0.53in",
    )
    centre = answer["centre_diameter_mm"]
    assert centre["suggested"] / 25.4 == pytest.approx(4.125 + 0.2 + 0.04)
    assert not any(land["tight"] for land in answer["lands"])
    assert len(answer["joints"]) == 4
    assert answer["engine_wire"]["rings"] == 8
    assert answer["wire_length_mm"] == pytest.approx(math.pi * centre["suggested"])


def test_bank_without_room_says_between_what(capsys: pytest.CaptureFixture[str]) -> None:
    words = (*USUAL, "--cylinders", "4", "--bore", "4.125in", "--spacing", "4.2in")
    centre = told(capsys, *words)["centre_diameter_mm"]
    assert centre["suggested"] is None
    assert main(list(words)) == 0
    assert "No centre diameter leaves enough metal" in capsys.readouterr().out
    assert main([*words, "--ring", "4.25in"]) == 0
    assert "Tight: cylinders 1 and 2: groove to groove" in capsys.readouterr().out


def test_receiver_is_undecided_with_both_grooves(capsys: pytest.CaptureFixture[str]) -> None:
    answer = told(capsys, *USUAL, "--head-face", "receiver:0.003in")
    assert "groove_depth_mm" not in answer
    assert len(answer["undecided"]) == 2
    assert answer["standpoints"][0]["verdict"] == "undecided"


def test_spool_piece_and_deck_cut(capsys: pytest.CaptureFixture[str]) -> None:
    words = (*USUAL, "--ring", "4.25in", "--cylinders", "8", "--spool", "100ft", "--piece",
             "30in", "--deck-cut", "0.005in")
    answer = told(capsys, *words)
    assert answer["spool"]["engines"] == 10
    assert answer["piece"]["rings"] == 2
    assert answer["after_deck_cut"]["deeper_mm"] == pytest.approx(0.127)
    assert main(list(words)) == 0
    table = capsys.readouterr().out
    for said in ("The spool makes", "The piece makes", "After 0.0050 in off the deck", "8 rings"):
        assert said in table
    assert main([*words[:-1], "0.04in"]) == 0
    assert "no groove is left" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("cut",), r"--wire: type its size, such as 0.041in.*--gasket: type its size"),
        ((*USUAL, "--cylinders", "2.5"), "--cylinders: type a whole number"),
        ((*USUAL, "--cylinders", "4", "--bank", "8", "--bore", "4in", "--spacing", "5in"),
         "--bank: a bank cannot have more"),
        ((*USUAL, "--bolt-hole", "0.5in"), "--bolt-hole: this needs --bolt-offset"),
        ((*USUAL, "--cylinders", "4", "--bore", "4in"), "--bore: this needs --spacing"),
        ((*USUAL, "--cylinders", "2", "--bore", "5in", "--spacing", "4in"), "overlaps"),
        ((*USUAL, "--material", "brass"), "--material: type stainless-304"),
        ((*USUAL, "--head-face", "round"), "--head-face: "),
        (("cut", "--wire", "0.020in", "--gasket", "0.093in"), "--wire: this wire is too thin"),
        (("cut", "--wire", "x", "--gasket", "-"), r"--wire: .*--gasket: "),
    ],
)
def test_each_fault_names_its_option(
    capsys: pytest.CaptureFixture[str], words: tuple[str, ...], said: str
) -> None:
    import re

    assert re.search(said, refused(capsys, *words))
