"""`standproud check` and `gauges`: every option, every bad input, each in its own process."""

import pytest

from core.command.program import COMMANDS
from core.forms.check_form import FIELDS
from tests.shell import EXAMPLE, answer, refused, run

LEAVES = ("check", "--go", "0.011in", "--no-go", "0.013in")
KEYS = ["height", "checks", "shelf", "suggestion", "next_leaf", "say"]
HEIGHT = {"value_mm": float, "low_mm": float, "high_mm": float, "u_mm": float, "bound": str}
CHECK = {
    "id": str,
    "verdict": str,
    "word": str,
    "value": float,
    "limit": float,
    "unit": str,
    "probability": (float, type(None)),
    "rule": str,
    "source": str,
}
ROW = {
    "thickness_mm": float,
    "share": float,
    "verdict": str,
    "word": str,
    "probability": (float, type(None)),
    "because": str,
}
VERDICTS = {"pass", "fail", "undecided"}


def shaped(found: dict, wanted: dict) -> bool:
    return list(found) == list(wanted) and all(
        isinstance(found[key], kind) for key, kind in wanted.items()
    )


def by_id(told) -> dict[str, dict]:
    return {check["id"]: check for check in told["checks"]}


def test_the_example_has_exactly_these_keys_and_types():
    told = answer(*EXAMPLE)
    assert list(told) == KEYS
    assert shaped(told["height"], HEIGHT)
    ids = [check["id"] for check in told["checks"]]
    assert ids == ["height-to-gasket", "bite", "interference", "held", "seated"]
    assert all(shaped(check, CHECK) for check in told["checks"])
    assert {check["verdict"] for check in told["checks"]} <= VERDICTS
    assert all(shaped(row, ROW) for row in told["shelf"])
    assert shaped(told["suggestion"], {"thickness_mm": float, "sure_mm": float, "because": str})
    assert shaped(told["next_leaf"], {"stack": list, "decides": str})
    assert all(isinstance(leaf, str) for leaf in told["next_leaf"]["stack"])
    assert isinstance(told["say"], str)


def test_the_example_says_what_the_trade_would():
    told = answer(*EXAMPLE)
    assert told["height"]["value_mm"] == pytest.approx(12 * 0.0254)
    assert told["height"]["bound"] == "both"
    assert [row["word"] for row in told["shelf"]] == ["TOO HIGH", "BORDERLINE", "RUN, CLOSE", "RUN"]
    assert told["suggestion"]["thickness_mm"] == pytest.approx(0.050 * 25.4)
    assert told["suggestion"]["sure_mm"] == pytest.approx(0.0646 * 25.4)
    assert told["next_leaf"]["stack"] == ["0.0100 in", "0.0025 in"]
    assert told["say"].startswith("11 goes, 13 does not, call it 12. On the 40: borderline.")
    assert "Run the 50. Head goes up 10." in told["say"]


def test_a_reading_alone_leaves_out_what_cannot_be_checked():
    told = answer(*LEAVES)
    assert list(told) == KEYS
    assert (told["checks"], told["shelf"], told["next_leaf"]) == ([], [], None)
    assert (told["suggestion"]["thickness_mm"], told["suggestion"]["sure_mm"]) == (None, None)


@pytest.mark.parametrize(
    ("arguments", "bound", "value"),
    [
        (("--go", "11"), "lower", 0.2794),
        (("--no-go", ".011"), "upper", 0.2794),
        (("--go", "0,28 mm", "--no-go", "0,30 mm"), "both", 0.29),
        (("--go", "3/256 in", "--no-go", "1/64in"), "both", 0.3472656),
        (("--go", "0.010in+0.0025in", "--no-go", "0.013in"), "both", 0.325755),
        (("--snug", "0.012in"), "both", 0.3048),
        (("--height", "0.012in", "--u", "0.0003in"), "both", 0.3048),
        (("--caliper", "0.30mm"), "both", 0.30),
        (("--caliper", "0.30mm", "--caliper", "0.32mm", "--caliper", "0.31mm"), "both", 0.31),
        (("--caliper", "0.35mm", "--caliper-zero", "0.05mm"), "both", 0.30),
        (("--caliper", "0.25mm", "--caliper-zero", "-0.05mm"), "both", 0.30),
        (("--caliper-pair", "0.30mm", "--caliper-pair", "0.32mm"), "both", 0.31),
        (("--indicator", "12", "--indicator", "12.2"), "both", 0.30734),
        (("--go", "11", "--no-go", "13", "--indicator", "12.0"), "both", 0.3048),
    ],
)
def test_every_way_to_give_a_height(arguments, bound, value):
    height = answer("check", *arguments)["height"]
    assert height["bound"] == bound
    assert height["value_mm"] == pytest.approx(value, abs=1e-6)
    assert (height["low_mm"] is None) == (bound == "upper")
    assert (height["high_mm"] is None) == (bound == "lower")


def test_repeats_bring_a_wider_range_than_one_reading_of_a_sure_instrument():
    sure = ("--caliper-limit", "0.001mm", "--caliper-step", "0mm")
    one = answer("check", "--caliper", "0.30mm", *sure)["height"]
    two = answer("check", "--caliper", "0.29mm", "--caliper", "0.31mm", *sure)["height"]
    assert two["high_mm"] - two["low_mm"] > 20 * (one["high_mm"] - one["low_mm"])


def test_an_allowance_for_the_straightedge_widens_the_range_typed_or_assumed():
    plain, typed, assumed = (
        answer(*LEAVES, *more)["height"]
        for more in ((), ("--straightedge", "0.0003in"), ("--straightedge",))
    )
    assert typed == assumed
    assert typed["high_mm"] == pytest.approx(plain["high_mm"] + 0.00762)


def test_the_error_of_a_sheet_moves_the_probability_only():
    fair, vague = (
        answer(*LEAVES, "--gasket", "0.050in", "--gasket-tol", tolerance)["checks"][0]
        for tolerance in ("0.0005in", "0.004in")
    )
    assert fair["value"] == vague["value"]
    assert fair["probability"] > vague["probability"] > 0.5


def test_another_share_another_limit():
    check = answer(*LEAVES, "--gasket", "0.040in", "--share", "31%")["checks"][0]
    assert (check["limit"], check["verdict"]) == (pytest.approx(0.31), "pass")


def test_the_guarded_rule_and_its_confidence_are_named_and_decide():
    fifty = (*LEAVES, "--gasket", "0.050in")
    found = [
        by_id(answer(*fifty, *more))["height-to-gasket"]
        for more in ((), ("--rule", "guarded"), ("--rule", "guarded", "--confidence", "75%"))
    ]
    assert [check["verdict"] for check in found] == ["pass", "undecided", "pass"]
    assert [check["rule"] for check in found] == ["plain", "guarded", "guarded"]


def test_confidence_under_the_plain_rule_is_what_run_asks_for():
    sure = answer(*LEAVES, "--gasket", "0.050in", "--confidence", "0.75")["checks"][0]
    assert (sure["verdict"], sure["word"]) == ("pass", "RUN")


@pytest.mark.parametrize(
    ("face", "verdict", "flat"),
    [
        ("flat", "fail", False),
        ("printed:0.003in", "pass", False),
        ("receiver:0.010in", "undecided", False),
    ],
)
def test_the_head_face_is_asked_and_acted_on(face, verdict, flat):
    told = answer(*LEAVES, "--gasket", "0.040in", "--head-face", face)
    assert told["checks"][0]["verdict"] == verdict
    assert ("flat head face" in told["say"]) == flat
    assert "flat head face" in answer(*LEAVES, "--gasket", "0.040in")["say"]


def test_own_leaves_are_the_only_ones_named():
    leaves = "0.010in,0.0115in,0.0125in,0.014in"
    told = answer(*LEAVES, "--shelf", "0.050in", "--leaves", leaves)
    assert told["next_leaf"]["stack"] == ["0.0125 in"]


def test_closer_names_a_leaf_where_nothing_hangs_on_it():
    assert answer(*LEAVES)["next_leaf"] is None
    assert answer(*LEAVES, "--closer")["next_leaf"]["stack"] == ["0.0120 in"]


def test_whoever_types_mm_is_answered_in_mm():
    told = answer("check", "--go", "0.25mm", "--no-go", "0.30mm", "--shelf", "1.1mm;1.2mm")
    assert told["next_leaf"]["stack"][0].endswith(" mm")
    assert "of 1.200 mm" in told["shelf"][1]["because"]
    assert told["say"].startswith("0.25 goes, 0.3 does not, call it 0.275.")


def test_the_table_for_a_person_shows_reading_spread_rule_source_and_caution():
    told = run(*EXAMPLE)
    assert (told.returncode, told.stderr) == (0, "")
    for part in (
        "Read as: go 0.011 in, no-go 0.013 in",
        "Height 0.0120 in · 0.305 mm, between 0.0108 and 0.0132 in",
        "Spread from: where between the two 96 %, error of the leaf set 4 %.",
        "JCGM 100:2008 (GUM), 4.3.7",
        "plain rule; common practice, no source",
        "A wire on the floor would stand 0.0112 in, not under 0.0110 in and not over 0.0120 in.",
        "24 % of 0.0500 in (22 % to 26 %), limit 25 %; 80 % sure.",
        "takes 0.0075 in to 0.0125 in",
        "makers' own data win",
    ):
        assert part in told.stdout, part


def test_a_bare_number_is_echoed_as_it_was_read():
    assert "Read as: go 11 thou, no-go 0.013 in" in run("check", "--go=11", "--no-go=.013").stdout


def test_readings_that_disagree_are_told():
    told = run("check", "--caliper", "0.40mm", "--indicator", "12", "--indicator", "12.1")
    assert "The readings disagree 7.4 times" in told.stdout
    assert "The readings disagree: measure again." in told.stdout


BAD = [
    ((), "--go"),
    (("--go", "nan"), "--go"),
    (("--go", "inf"), "--go"),
    (("--go", "1e400"), "--go"),
    (("--go", "1e-3"), "--go"),
    (("--go", "ten"), "--go"),
    (("--go", ""), "--go"),
    (("--go", "-11"), "--go"),
    (("--go", "0"), "--go"),
    (("--go", "11 psi"), "--go"),
    (("--go", "11 furlongs"), "--go"),
    (("--go", "11 mil"), "--go"),
    (("--go", "1,234"), "--go"),
    (("--go", "5 in"), "--go"),
    (("--go", "\x1b[31m11"), "--go"),
    (("--go",), "--go"),
    (("--go", "11", "--go", "12"), "--go"),
    (("--go", "4+4+4+4"), "--go"),
    (("--go", "13", "--no-go", "11"), "--no-go"),
    (("--go", "11", "--no-go", "11"), "--no-go"),
    (("--no-go", "6", "--indicator", "10"), "--no-go"),
    (("--go", "11", "--no-go", "12", "--indicator", "15"), "--no-go"),
    (("--go", "11", "--no-go", "12", "--snug", "9"), "--go"),
    (("--height", "12"), "--u"),
    (("--u", "0.3 thou"), "--height"),
    (("--caliper", "0.30mm", "--caliper", "0.30"), "--caliper"),
    (("--caliper", "0.30mm", "--caliper-zero", "0.4mm"), "--caliper"),
    (("--caliper", "0.30mm", "--caliper-limit", "1 in"), "--caliper-limit"),
    (("--caliper", "0.30mm", "--caliper-step", "-0.1mm"), "--caliper-step"),
    (("--indicator", "12 lbf"), "--indicator"),
    (("--caliper-pair", "x"), "--caliper-pair"),
    (("--snug", "12 N"), "--snug"),
    (("--go", "11", "--straightedge", "1 ft"), "--straightedge"),
    (("--go", "11", "--gasket", "40 in"), "--gasket"),
    (("--go", "11", "--gasket-tol", "0.1 in"), "--gasket-tol"),
    (("--go", "11", "--wire", "0"), "--wire"),
    (("--go", "11", "--groove-width", "40 cc"), "--groove-width"),
    (("--go", "11", "--groove-depth", "30 °C"), "--groove-depth"),
    (("--go", "11", "--shelf", ","), "--shelf"),
    (("--go", "11", "--shelf", ""), "--shelf"),
    (("--go", "11", "--shelf", "32,40"), "--shelf"),
    (("--go", "11", "--shelf", "0.032in,,0.04in"), "--shelf"),
    (("--go", "11", "--share", "0"), "--share"),
    (("--go", "11", "--share", "120%"), "--share"),
    (("--go", "11", "--rule", "strict"), "--rule"),
    (("--go", "11", "--confidence", "1"), "--confidence"),
    (("--go", "11", "--head-face", "round"), "--head-face"),
    (("--go", "11", "--head-face", "printed"), "--head-face"),
    (("--go", "11", "--head-face", "printed:deep"), "--head-face"),
    (("--go", "11", "--head-face", "flat:0.001in"), "--head-face"),
    (("--go", "11", "--leaves", "4 psi"), "--leaves"),
    (("--go", "11", "--leaves", ";".join(f"{n / 10}thou" for n in range(40, 110))), "--leaves"),
    (("--go", "11", "--sheet", "40"), "--sheet"),
]  # fmt: skip


@pytest.mark.parametrize(("arguments", "option"), BAD, ids=lambda each: " ".join(each)[:40])
def test_bad_input_is_one_line_that_names_the_option(arguments, option):
    assert option in refused("check", *arguments)


@pytest.mark.parametrize("command", COMMANDS)
def test_help_lists_the_options(command):
    told = run(command, "--help")
    assert (told.returncode, told.stderr) == (0, "")
    assert "--json" in told.stdout


def test_help_says_what_each_option_takes():
    told = " ".join(run("check", "--help").stdout.split())
    for field in FIELDS:
        assert f"--{field} " in told
    assert "25% unless said" in told


def test_help_without_a_command_lists_the_commands():
    told = run("--help").stdout
    assert all(f" {command} " in told for command in COMMANDS)


def test_a_terminal_without_these_signs_gets_stand_ins():
    told = run(*EXAMPLE, PYTHONIOENCODING="ascii")
    assert (told.returncode, told.stderr) == (0, "")
    assert "0.0120 in ? 0.305 mm" in told.stdout


def test_all_faults_come_at_once():
    line = refused("check", "--go", "nan", "--gasket", "40 in", "--rule", "strict")
    assert all(option in line for option in ("--go", "--gasket", "--rule"))


def test_a_missing_or_unknown_command_is_refused():
    assert "measure" in refused("measure")


def test_the_gauge_card():
    told = answer("gauges", "--shelf", "0.0323in,0.040in,0.050in,0.020in")
    rows = [(each["must_go"], each["must_not_go"]) for each in told["gauges"]]
    assert rows == [
        (None, None),
        (["0.0060 in"], ["0.0080 in"]),
        (["0.0060 in"], ["0.0100 in"]),
        (["0.0050 in", "0.0025 in"], ["0.0100 in", "0.0025 in"]),
    ]
    assert list(told["gauges"][0]) == [
        "thickness_mm", "must_go", "must_not_go", "largest_mm", "least_mm",
    ]  # fmt: skip


def test_the_gauge_card_for_a_person_and_with_own_leaves():
    told = run("gauges", "--shelf", "1.0mm;1.2mm", "--leaves", "0.15mm;0.20mm;0.25mm;0.30mm")
    lines = [line.split("  ") for line in told.stdout.splitlines() if line.endswith("mm")]
    assert [line[0] for line in lines] == ["1.000 mm", "1.200 mm"]
    assert [line[-1].strip() for line in lines] == ["0.250 mm", "0.300 mm"]


@pytest.mark.parametrize(
    ("arguments", "option"),
    [((), "--shelf"), (("--shelf", ""), "--shelf"), (("--shelf", "0.04in", "--share", "x"),
      "--share"), (("--shelf", "0.04in", "--leaves", "nan in"), "--leaves")],
)  # fmt: skip
def test_a_gauge_card_refuses_by_name(arguments, option):
    assert option in refused("gauges", *arguments)
