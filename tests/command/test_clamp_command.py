"""The command `clamp`: what it prints, in inch and in metric, and how it refuses."""

import json

import pytest

from core.command import main

LBF = 4.4482216152605
INCH_ENGINE = {
    "--thread": "7/16-14",
    "--grade": "8",
    "--preload": "75%",
    "--fasteners": "4.25",
    "--ring": "4.300in",
    "--pressure": "1500psi",
    "--wire": "0.041in",
    "--height": "0.0105in",
}
DIESEL = {
    "--thread": "M12x1.75",
    "--grade": "10.9",
    "--torque": "100N.m",
    "--friction": "0.18",
    "--fasteners": "4",
    "--ring": "90mm",
    "--pressure": "120bar",
    "--wire": "1.04mm",
    "--height": "0.25mm",
}


def words(options: dict[str, str | None]) -> list[str]:
    return [
        "clamp",
        *(word for name, value in options.items() if value is not None for word in (name, value)),
    ]


def data(capsys: pytest.CaptureFixture[str], options: dict[str, str | None]) -> dict:
    assert main([*words(options), "--json"]) == 0
    printed = capsys.readouterr()
    assert printed.err == ""
    return json.loads(printed.out)


def refusal(capsys: pytest.CaptureFixture[str], options: dict[str, str | None]) -> str:
    assert main(words(options)) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert printed.err.count("\n") == 1
    return printed.err


def test_a_share_of_proof_gives_the_loads_worked_apart(capsys: pytest.CaptureFixture[str]) -> None:
    told = data(capsys, INCH_ENGINE)
    assert told["clamp_n"]["value"] / LBF == pytest.approx(40662.8, abs=0.1)
    assert told["clamp_n"]["low"] < told["clamp_n"]["value"] < told["clamp_n"]["high"]
    assert told["gas_n"] / LBF == pytest.approx(21783.0, abs=0.1)
    assert told["separation"] == pytest.approx(1.8667, abs=5e-5)
    assert told["proof_share"]["value"] == pytest.approx(0.75)
    assert told["wire_n"]["high"] / LBF == pytest.approx(35072.3, abs=0.1)
    assert told["body_n"]["low"] / LBF == pytest.approx(5590.5, abs=0.2)
    by_model = {each["model"]: each for each in told["wire_n"]["models"]}
    assert by_model["slip-line-mises"]["carried_n"] / LBF == pytest.approx(11241.0, abs=0.1)
    assert by_model["slip-line-mises"]["body_n"] / LBF == pytest.approx(29421.9, abs=0.1)
    assert told["beds"] == "pass"


def test_a_torque_and_a_friction_give_the_preload(capsys: pytest.CaptureFixture[str]) -> None:
    torque = INCH_ENGINE | {"--preload": None, "--torque": "65lbf.ft", "--friction": "0.18"}
    assert data(capsys, torque)["preload_n"]["value"] / LBF == pytest.approx(9904.76, abs=0.01)


def test_metric_and_inch_are_one_engine(capsys: pytest.CaptureFixture[str]) -> None:
    metric = INCH_ENGINE | {
        "--ring": "109.22mm",
        "--wire": "1.0414mm",
        "--height": "0.2667mm",
        "--pressure": "10.342135939752 MPa",
    }
    one, other = data(capsys, INCH_ENGINE), data(capsys, metric)
    for key in ("clamp_n", "left_n", "wire_n", "body_n"):
        assert one[key]["low"] == pytest.approx(other[key]["low"], rel=1e-9)
    assert data(capsys, DIESEL)["preload_n"]["value"] == pytest.approx(100e3 / (0.18 * 12.0))


def test_a_load_share_is_used_both_ways(capsys: pytest.CaptureFixture[str]) -> None:
    told = data(capsys, INCH_ENGINE | {"--load-share": "0.2"})
    assert told["separation"] == pytest.approx(2.3334, abs=5e-5)
    assert told["left_n"]["value"] / LBF == pytest.approx(23236.4, abs=0.1)
    assert told["proof_share_at_peak"]["value"] == pytest.approx(0.8304, abs=5e-5)


def test_every_verdict_has_its_rule_reason_and_source_and_the_caution_is_there(
    capsys: pytest.CaptureFixture[str],
) -> None:
    told = data(capsys, INCH_ENGINE)
    assert [each["id"] for each in told["verdicts"]] == [
        "clamp-to-proof",
        "fastener-at-peak",
        "separation",
        "beds",
    ]
    for each in told["verdicts"]:
        assert each["source"]
        assert each["because"]
        assert each["rule"] in {"plain", "guarded"}
        assert each["verdict"] in {"pass", "fail", "undecided"}
        assert each["settle"] or each["verdict"] != "undecided"
    assert "never a substitute" in told["caution"]
    assert main(words(INCH_ENGINE)) == 0
    assert "never a substitute" in capsys.readouterr().out


def test_a_stretch_and_an_angle(capsys: pytest.CaptureFixture[str]) -> None:
    stretch = INCH_ENGINE | {"--preload": None, "--stretch": "0.012in", "--grip": "4in"}
    # E·A/L = 30e6 · 0.106308 / 4 = 797 310 lbf/in
    assert data(capsys, stretch)["preload_n"]["value"] / LBF == pytest.approx(9567.7, abs=0.1)
    angle = INCH_ENGINE | {
        "--preload": None,
        "--torque": "20lbf.ft",
        "--friction": "0.18",
        "--angle": "60deg",
        "--grip": "4in",
        "--load-share": "0.2",
    }
    # 240/(0.18·0.4375) + 1/6 · 1/14 · 797 310 · 0.8
    assert data(capsys, angle)["preload_n"]["value"] / LBF == pytest.approx(10641.05, abs=0.05)


def test_a_floor_of_the_pressure_is_told_as_one(capsys: pytest.CaptureFixture[str]) -> None:
    floor = INCH_ENGINE | {"--pressure": None, "--compression": "9.5", "--boost": "20psi"}
    told = data(capsys, floor)
    separation = next(each for each in told["verdicts"] if each["id"] == "separation")
    assert told["gas_is_floor"] is True
    assert separation["verdict"] == "undecided"
    assert "no combustion" in separation["because"]


def test_a_seed_adds_the_draws(capsys: pytest.CaptureFixture[str]) -> None:
    drawn = data(capsys, INCH_ENGINE | {"--seed": "7"})["draws"]
    assert [each["of"] for each in drawn] == ["clamp", "left", "body-at-least", "body-at-most"]
    assert data(capsys, INCH_ENGINE)["draws"] == []


def test_the_quarter_of_the_sheet_is_marked(capsys: pytest.CaptureFixture[str]) -> None:
    heights = data(capsys, INCH_ENGINE | {"--gasket": "0.050in"})["heights"]
    assert heights["quarter_mm"] == pytest.approx(0.0125 * 25.4)
    assert heights["today_mm"] == pytest.approx(0.0105 * 25.4)


@pytest.mark.parametrize(
    ("change", "named", "told"),
    [
        ({"--preload": None, "--torque": "65lbf.ft"}, "--friction", "nothing is computed"),
        ({"--preload": None}, "--preload", "75%"),
        ({"--friction": "0.18"}, "--friction", "torque"),
        ({"--torque": "65lbf.ft"}, "--torque", "not several"),
        ({"--grade": "10.9"}, "--grade", "5, 8"),
        ({"--grade": None}, "--grade", "proof strength"),
        ({"--proof-strength": "150ksi"}, "--proof-strength", "not several"),
        ({"--thread": "seven"}, "--thread", "7/16-14"),
        ({"--thread": "1/0-14"}, "--thread", "7/16-14"),
        ({"--thread": "7/16"}, "--thread", "7/16-14 / 7/16-20"),
        ({"--pressure-tol": "1500psi"}, "--pressure-tol", "smaller"),
        ({"--thread": "M13"}, "--thread", "pitch"),
        ({"--height": "0.050in"}, "--height", "as high as it is thick"),
        ({"--height": "tall"}, "--height", "tall"),
        ({"--ring": "4.3psi"}, "--ring", "psi"),
        ({"--pressure": None}, "--pressure", "floor"),
        ({"--copper": "brass"}, "--copper", "annealed"),
        ({"--boost": "10psi"}, "--boost", "--compression"),
        ({"--seed": "one"}, "--seed", "whole number"),
        ({"--load-share": "120%"}, "--load-share", "large"),
        ({"--by": "feel"}, "--by", "torque-estimated"),
    ],
)
def test_what_cannot_be_used_is_named_with_what_to_type(
    capsys: pytest.CaptureFixture[str], change: dict[str, str | None], named: str, told: str
) -> None:
    said = refusal(capsys, INCH_ENGINE | change)
    assert named in said
    assert told in said


def test_all_faults_are_told_together(capsys: pytest.CaptureFixture[str]) -> None:
    said = refusal(capsys, {"--thread": "M12x1.75", "--torque": "100N.m", "--wire": "1mm"})
    for option in ("--grade", "--friction", "--fasteners", "--ring", "--height", "--pressure"):
        assert option in said
