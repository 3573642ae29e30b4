"""The command `heights`: a file of readings, what it tells and how it refuses."""

import json
from pathlib import Path

import pytest

from core.command import main
from core.command.program import parser

MID = {"go": "10 thou", "no_go": "11 thou"}


def spanned(first: str, second: str, value: str, u: str = "0.3 thou", **more: object) -> dict:
    return {"across": [first, second], "height": value, "u": u, **more}


def written(folder: Path, content: object) -> str:
    path = folder / "READINGS.json"
    path.write_text(content if isinstance(content, str) else json.dumps(content), "utf-8")
    return str(path)


def wires(*names: str, apart: str | None = None) -> list[dict[str, str]]:
    if apart is None:
        return [{"wire": name} for name in names]
    return [{"wire": name, "at": f"{k * 4.4}in"} for k, name in enumerate(names)]


def told(capsys: pytest.CaptureFixture[str], path: str) -> dict:
    assert main(["heights", path, "--json"]) == 0
    printed = capsys.readouterr()
    assert printed.err == ""
    return json.loads(printed.out)


def table(capsys: pytest.CaptureFixture[str], path: str) -> str:
    assert main(["heights", path]) == 0
    return capsys.readouterr().out


def refused(capsys: pytest.CaptureFixture[str], path: str) -> str:
    assert main(["heights", path]) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert printed.err.count("\n") == 1
    return printed.err


def test_three_wires_from_three_pairs(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    pairs = [("1", "2", "9.5"), ("2", "3", "10.5"), ("1", "3", "11")]
    content = {
        "wires": wires("1", "2", "3"),
        "readings": [spanned(a, b, f"{value} thou") for a, b, value in pairs],
    }
    answer = told(capsys, written(tmp_path, content))
    heights = [each["height_mm"] / 0.0254 for each in answer["heights"]]
    assert heights == pytest.approx([10.0, 9.0, 12.0])
    assert answer["heights"][0]["u_mm"] / 0.0254 == pytest.approx(0.519615, abs=5e-7)
    assert answer["correlation"]["matrix"][0][1] == pytest.approx(-1 / 3)
    assert answer["scatter"]["probability"] is None
    assert answer["assumed"] == []


def test_square_of_four_is_undetermined(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    content = {
        "wires": wires("1", "2", "3", "4", "5"),
        "readings": [
            *({"across": pair, **MID} for pair in (["1", "2"], ["2", "3"], ["3", "4"], ["4", "1"])),
            {"wire": "5", "height": "0.26mm", "with": "indicator"},
        ],
    }
    path = written(tmp_path, content)
    answer = told(capsys, path)
    assert [each["status"] for each in answer["heights"]] == ["undetermined"] * 4 + ["determined"]
    assert answer["undetermined"][0]["free"] == {"1": 1.0, "2": -1.0, "3": 1.0, "4": -1.0}
    assert all("height_mm" not in each for each in answer["heights"][:4])
    said = table(capsys, path)
    assert said.count("undetermined") == 4
    assert "One direct reading on any of them settles all." in said


def test_middle_part_and_place_are_one_reading(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    single = {"wire": "1", "height": "10 thou", "u": "0.1 thou"}
    answers = []
    for where in ({}, {"part": "1/2"}, {"part": "50%"}, {"at": "2.2in"}):
        content = {
            "wires": wires("1", "2", apart="4.4in"),
            "readings": [single, {"across": ["1", "2"], **MID, **where}],
        }
        answers.append(told(capsys, written(tmp_path, content))["heights"])
    assert all(each == answers[0] for each in answers)


def test_rocking_straightedge_names_what_it_rocks_on_and_is_held_against_the_heights(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    singles = [
        {"wire": name, "height": f"{value} thou", "u": "0.2 thou"}
        for name, value in (("1", 10), ("2", 12), ("3", 10))
    ]
    content = {
        "wires": wires("1", "2", "3", apart="4.4in"),
        "readings": [*singles, {"across": ["1", "3"], "rocks": True, "name": "long edge"},
                     spanned("1", "3", "12 thou")],
    }
    path = written(tmp_path, content)
    answer = told(capsys, path)
    assert answer["rocked"][0]["over"] == ["2"]
    assert [each["outcome"] for each in answer["passed_over"]] == ["lifted", "rocks"]
    assert "rocks: 2 stands above their line" in table(capsys, path)


def test_leaf_beyond_both_wires_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    content = {
        "wires": wires("1", "2", apart="4.4in"),
        "readings": [{"across": ["1", "2"], "at": "5.5in", **MID}],
        "leaf": "0.0001in",
        "straightedge": "0in",
    }
    path = written(tmp_path, content)
    answer = told(capsys, path)
    assert answer["readings"][0]["outside_span"]
    assert answer["readings"][0]["u_mm"] / 0.0254 == pytest.approx(0.288675, abs=5e-7)
    assert answer["assumed"] == []
    assert "read beyond both wires" in table(capsys, path)


def test_contradicting_readings_are_told_with_the_suspect(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    singles = [{"wire": n, "height": "10 thou", "u": "0.3 thou"} for n in "123"]
    content = {"wires": wires("1", "2", "3"),
               "readings": [*singles, spanned("1", "3", "14 thou", name="long edge")]}
    path = written(tmp_path, content)
    assert told(capsys, path)["scatter"]["agreement"] == "disagree"
    assert "long edge reads 0.0140 in" in table(capsys, path)


@pytest.mark.parametrize(
    ("reading", "said"),
    [
        ({"wire": "9", **MID}, "reading 1: wire 9 is not in the list"),
        ({"wire": "1", "go": "10 thou"}, "reading 1 no_go: a leaf on one side alone"),
        ({"wire": "1", "go": "11 thou", "no_go": "10 thou"}, "reading 1 no_go: "),
        ({"wire": "1", "height": 3}, "reading 1 height: type it in quotes"),
        ({"wire": "1", "height": "10 thou"}, 'reading 1: "height" needs its "u"'),
        ({"wire": "1", "height": "10 thou", "with": "thumb"}, "reading 1 with: known are caliper"),
        ({"wire": "1", "height": "10 thou", "u": "0 thou"}, "reading 1 u"),
        ({"wire": "1", **MID, "u": "1 thou"}, "reading 1: the spread follows"),
        ({"wire": "1"}, 'reading 1: say "go" and "no_go"'),
        ({"wire": "1", "across": ["1", "2"], **MID}, 'reading 1: say "wire"'),
        ({"across": ["1", "1"], **MID}, "reading 1: name one wire"),
        ({"across": "12", **MID}, "reading 1: name one wire"),
        ({"across": ["1", "2"], **MID, "at": "1in", "part": "1/2"}, "not by both"),
        ({"across": ["1", "2"], **MID, "at": "1in"}, "needs the place of both wires"),
        ({"across": ["1", "2"], **MID, "part": "9"}, "reading 1 part"),
        ({"across": ["1", "2"], "rocks": True}, 'say "at" for both wires'),
        ({"across": ["1", "2"], "rocks": False}, "a straightedge that rocks is"),
        ({"wire": "1", **MID, "leaf": "x"}, '"leaf" is not known here'),
        ({"wire": "1", "go": "NaN", "no_go": "11 thou"}, "reading 1 go"),
        ("10 thou", "reading 1: must be an object"),
    ],
)
def test_each_fault_names_its_entry(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], reading: object, said: str
) -> None:
    content = {"wires": wires("1", "2"), "readings": [reading]}
    assert said in refused(capsys, written(tmp_path, content))


@pytest.mark.parametrize(
    ("content", "said"),
    [
        ("", "not JSON at line 1"),
        ("[]", "must be one object"),
        ("{}", "wires: a list of wires is needed"),
        ('{"wires": [], "wires": []}', "wires: this key stands twice"),
        ('{"leaf": NaN}', "NaN is no size"),
        ("[" * 100_000, "nested too deeply"),
        ('{"wires": [{"wire": "1"}, {"wire": "1"}, {"wire": 2}, 3], "readings": []}',
         "wire 2 of the list: wire 1 stands in the list already"),
        ('{"wires": [{"wire": "1", "at": "0in"}, {"wire": "2", "at": "0in"}], "readings":'
         ' [{"across": ["1", "2"], "at": "1in", "go": "10 thou", "no_go": "11 thou"}]}',
         "reading 1: two wires at one place"),
        (" " * 1_000_001, "more than 1000000 characters"),
    ],
)
def test_each_fault_of_the_file_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], content: str, said: str
) -> None:
    assert said in refused(capsys, written(tmp_path, content))


def test_every_fault_is_told_at_once(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    content = {"wires": wires("1", "2"), "readings": [{"wire": "9", **MID}, {"wire": "1"}, 7]}
    said = refused(capsys, written(tmp_path, content))
    assert all(f"reading {number}: " in said for number in (1, 2, 3))


def test_file_that_cannot_be_read_is_named(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert "cannot be read" in refused(capsys, str(tmp_path / "none.json"))
    assert "cannot be read" in refused(capsys, str(tmp_path))
    path = tmp_path / "latin.json"
    path.write_bytes(b'{"wires": "\xe9"}')
    assert "not text in UTF-8" in refused(capsys, str(path))


def test_help_shows_a_file_that_can_be_read(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit):
        parser().parse_args(["heights", "--help"])
    shown = capsys.readouterr().out
    example = shown[shown.index("\n  {") : shown.index("\n  }") + 4]
    answer = told(capsys, written(tmp_path, example))
    assert [each["status"] for each in answer["heights"]] == ["determined"] * 2
