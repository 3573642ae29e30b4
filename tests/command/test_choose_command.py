"""`choose` on a file written by the store of jobs."""

import json
import math
from pathlib import Path
from typing import Any

import pytest

from core.command import main
from core.records.demo import demo_events
from core.records.model import Length
from tests.limited_job import INCH, events_of, write, write_limited_job


@pytest.fixture
def job_file(tmp_path: Path) -> Path:
    return write_limited_job(tmp_path / "job.jsonl")


def answer(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> dict[str, Any]:
    assert main(["choose", *arguments, "--json"]) == 0
    data: dict[str, Any] = json.loads(capsys.readouterr().out)
    return data


def test_windows_of_a_kept_job(job_file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = answer([str(job_file)], capsys)
    windows = {each["part"]: each for each in found["windows"]}
    # The highest place reads 9 goes, 11 not, and 10 goes, 11 not after tapping: 10.5 / 0.25 = 42.
    assert windows["height-to-gasket"]["low"]["at_mm"] == pytest.approx(0.042 * INCH)
    assert windows["height-to-gasket"]["low"]["decided_by"] == "cylinder 3 at 3"
    # The lowest read 9 goes, 10 not: 9.5 / 0.15 = 63.33.
    assert windows["bite"]["high"]["at_mm"] == pytest.approx(9.5 / 0.15 * 0.001 * INCH)
    assert windows["piston-to-head"]["low"]["at_mm"] == pytest.approx(0.035 * INCH)
    # Rise by 30 / 0.863218 = 34.753: 77.753.
    assert windows["intake-faces"]["high"]["at_mm"] == pytest.approx(0.077753 * INCH, abs=2e-5)
    # Ratio of 11.4: Vs / 10.4 = 78.9654 cc, less 64 + 5 + 1.0950 = 8.8704 cc under 8938.2 mm².
    low = windows["ratio"]["low"]["at_mm"]
    assert low == pytest.approx(8870.4 / (math.pi / 4 * (4.2 * INCH) ** 2), abs=2e-5)


def test_rows_and_cards_of_a_kept_job(
    job_file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    found = answer([str(job_file)], capsys)
    rows = {round(each["thickness_mm"] / INCH, 4): each for each in found["sheets"]}
    assert rows[0.032]["verdict"] == "fail"
    assert "height-to-gasket" in rows[0.032]["excluded_by"]
    # A nominal sheet is known to a thou only: of 43.0 the 42.0 leaves the word close.
    assert rows[0.043]["word"] == "run-close"
    assert found["run_mm"] == pytest.approx(0.043 * INCH)
    card = rows[0.05]["card"]
    assert card["rise_mm"] == pytest.approx(0.007 * INCH)
    assert card["ratio"]["now"] == pytest.approx(11.28383, abs=5e-6)
    assert card["intake_mm"]["side_spacer"] == pytest.approx(0.007 * INCH * 1.232803, abs=1e-6)
    assert card["pushrod_mm"] == pytest.approx(0.007 * INCH)
    lacking = {each["part"] for each in found["left_out"]}
    assert {"intake-valve", "exhaust-valve", "preload", "dowels", "threads"} <= lacking


def test_a_job_without_its_shop_takes_the_shelf_from_the_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = write(tmp_path / "one.jsonl", {"job-demo": list(demo_events())})
    found = answer([str(path), "--shelf", "0.043in,0.050in"], capsys)
    assert [round(each["thickness_mm"] / INCH, 4) for each in found["sheets"]] == [0.043, 0.05]
    assert answer([str(path)], capsys)["sheets"] == []


def test_table_for_a_person(job_file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["choose", str(job_file)]) == 0
    table = capsys.readouterr().out
    assert "Run 0.0430 in." in table
    assert "cylinder 3 at 3" in table


def test_whoever_types_mm_is_told_mm(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    metric = events_of([("limits", "sheet_on", Length(typed="1.1 mm", mm=1.1))])
    path = write(tmp_path / "mm.jsonl", {"job-demo": [*demo_events(), *metric]})
    assert main(["choose", str(path), "--shelf", "1.1mm, 1.3mm"]) == 0
    table = capsys.readouterr().out
    assert "1.300 mm" in table
    assert "thou" not in table


def test_what_cannot_be_read_is_refused_in_one_line(
    tmp_path: Path, job_file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    cut = tmp_path / "cut.jsonl"
    cut.write_bytes(job_file.read_bytes()[:-200])
    other = tmp_path / "other.txt"
    other.write_text("a letter\n")
    two = write(
        tmp_path / "two.jsonl", {"job-one": list(demo_events()), "job-two": list(demo_events())}
    )
    for arguments, named in (
        ([str(tmp_path / "none.jsonl")], "JOBFILE: cannot be opened"),
        ([str(cut)], "JOBFILE: "),
        ([str(other)], "JOBFILE: "),
        ([str(two)], "--job: the file holds several jobs; type one of one, two"),
        ([str(job_file), "--job", "nobody"], "--job: the file holds no such job"),
        ([str(job_file), "--shelf", "nan"], "--shelf: "),
    ):
        assert main(["choose", *arguments]) == 2
        printed = capsys.readouterr()
        assert printed.out == ""
        assert printed.err.count("\n") == 1
        assert named in printed.err


def test_a_word_of_no_table_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    wrong = events_of([("limits", "rod", "wood")])
    path = write(tmp_path / "wrong.jsonl", {"job-demo": [*demo_events(), *wrong]})
    assert main(["choose", str(path)]) == 2
    assert "rod: is not known here; type one of steel, aluminium." in capsys.readouterr().err
