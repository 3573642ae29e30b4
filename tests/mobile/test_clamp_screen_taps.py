"""The clamp screen by taps, without a page: what is asked, what is computed, what is kept."""

import json
from collections.abc import Iterable

import pytest

from core.errors import RecordError
from mobile.app.engine.clamp import kept
from mobile.app.engine.clamp.choices import options
from mobile.app.engine.clamp.entry import ClampEntry
from mobile.app.engine.clamp.model import Clamp
from mobile.app.engine.clamp.told import tell

WEAK = (("size", "3/8"), ("thread", "3/8-16"), ("strength", "5"), ("tightened", "preload"))
STRONG = (("size", "7/16"), ("thread", "7/16-14"), ("strength", "8"))
SIZES = {"ring": "4.3", "wire": "41", "height": "10.5"}


class Hand:
    """Taps the screen, and knows what the disk took."""

    def __init__(self, metric: bool = False) -> None:
        self.disk: list[object] = []
        self.clamp = Clamp(
            keep=lambda entry: self.disk.append(json.loads(json.dumps(entry))),
            metric=lambda: metric,
        )

    def choose(self, picks: Iterable[tuple[str, str]]) -> None:
        for name, value in picks:
            self.clamp.choose(name, value)

    def type(self, name: str, digits: str) -> None:
        if self.clamp.entry.open_field != name:
            self.clamp.open_pad(name)
        for key in digits:
            self.clamp.press(key)
        self.clamp.done()

    def sizes(self, **more: str) -> None:
        for name, digits in {**SIZES, **more}.items():
            self.type(name.replace("_", "-"), digits)

    def verdicts(self) -> dict[str, str]:
        engine = self.clamp.told.engine
        assert engine is not None, (self.clamp.told.needs, self.clamp.told.faults)
        told = (engine.proof, *engine.weakest.judgements)
        return {each.check.id: str(each.check.verdict) for each in told}


def main_case(count: str = "4.25", picks: tuple[tuple[str, str], ...] = STRONG) -> Hand:
    hand = Hand()
    hand.choose((*picks, ("tightened", "preload")))
    hand.type("preload", "75")
    hand.choose([("around", "fasteners")])
    hand.type("fasteners", count)
    hand.choose([("peak", "pressure")])
    hand.type("pressure", "1500")
    hand.sizes()
    return hand


def test_the_main_case_by_taps_is_the_one_worked_by_hand() -> None:
    hand = main_case()
    engine = hand.clamp.told.engine
    assert engine is not None
    loads = engine.weakest.loads
    # 4.25 · 9567.73 lbf and 21783.0 lbf, worked apart from this program
    assert loads.clamp.value / 4.4482216152605 == pytest.approx(40662.8, abs=0.06)
    assert loads.gas / 4.4482216152605 == pytest.approx(21783.0, abs=0.06)
    assert hand.verdicts() == {
        "clamp-to-proof": "pass",
        "fastener-at-peak": "undecided",
        "separation": "pass",
        "beds": "pass",
    }


def test_a_weak_clamp_is_undecided_on_lifting_and_on_bedding() -> None:
    verdicts = main_case("4", WEAK[:3]).verdicts()
    assert (verdicts["separation"], verdicts["beds"]) == ("undecided", "undecided")


def test_nothing_is_computed_until_a_lubricant_is_chosen() -> None:
    hand = Hand()
    hand.choose((*STRONG, ("tightened", "torque")))
    hand.type("torque", "65")
    assert hand.clamp.entry.open_choice == "lubricant"
    assert "lubricant" not in hand.clamp.entry.choices
    hand.choose([("around", "fasteners")])
    hand.type("fasteners", "4.25")
    hand.choose([("peak", "pressure")])
    hand.type("pressure", "1500")
    hand.sizes()
    assert hand.clamp.told.needs == ("lubricant",)
    assert hand.clamp.told.engine is None
    hand.choose([("lubricant", "oil")])
    assert hand.verdicts()["clamp-to-proof"] == "fail"
    hand.choose([("lubricant", "oil")])
    assert hand.clamp.told.engine is None, "the same answer again takes it back"


def test_own_friction_asks_for_its_value() -> None:
    hand = Hand()
    hand.choose((*STRONG, ("tightened", "torque"), ("lubricant", "own")))
    assert "friction" in hand.clamp.told.needs


def test_the_screen_leads_through_what_is_needed() -> None:
    hand = Hand()
    hand.clamp.go_on()
    seen: list[str] = []
    typed = {"torque": "20", "fasteners": "4", "pressure": "1500", **SIZES}
    while (entry := hand.clamp.entry) and hand.clamp.told.needs:
        seen.append(entry.open_choice or entry.open_field or "")
        assert seen[-1] == hand.clamp.told.needs[0]
        if entry.open_choice:
            hand.choose([(entry.open_choice, options(entry.choices, seen[-1], False)[0].value)])
        else:
            hand.type(seen[-1], typed[seen[-1]])
    assert seen == [
        "size", "thread", "strength", "tightened", "torque", "lubricant", "around", "fasteners",
        "peak", "pressure", "ring", "wire", "height",
    ]  # fmt: skip


def test_leaving_a_field_empty_puts_the_pad_away() -> None:
    hand = Hand()
    hand.clamp.open_pad("ring")
    hand.clamp.done()
    assert hand.clamp.entry.open_field is None


def test_another_size_makes_thread_and_grade_void() -> None:
    hand = Hand()
    hand.choose((*STRONG, ("size", "M12")))
    assert hand.clamp.entry.choices == {"size": "M12"}
    assert [each.value for each in options({"size": "M12"}, "thread", True)] == [
        "M12x1.75", "M12x1.5", "M12x1.25",
    ]  # fmt: skip
    metric = options({"thread": "M12x1.75"}, "strength", True)
    assert [each.value for each in metric][:4] == ["8.8", "9.8", "10.9", "12.9"]


@pytest.mark.parametrize(
    ("field", "metric", "typed", "kept"),
    [
        ("torque", False, "65", "65 lbf·ft"),
        ("torque", True, "90", "90 N·m"),
        ("pressure", False, "1500", "1500 psi"),
        ("pressure", True, "100", "100 bar"),
        ("ring", False, "4.3", "4.3 in"),
        ("ring", True, "109", "109 mm"),
        ("height", False, "10.5", "10.5 thou"),
        ("height", False, ".0105", "0.0105 in"),
        ("height", True, ".27", "0.27 mm"),
        ("preload", False, "75", "75 %"),
        ("angle", False, "90", "90 °"),
        ("friction", False, ".18", "0.18"),
        ("proof-strength", False, "180", "180 ksi"),
    ],
)
def test_a_bare_number_takes_the_unit_in_force(
    field: str, metric: bool, typed: str, kept: str
) -> None:
    hand = Hand(metric)
    hand.type(field, typed)
    assert hand.clamp.entry.texts[field] == kept


def test_the_first_key_starts_anew_and_the_first_erase_takes_all() -> None:
    hand = main_case()
    hand.clamp.open_pad("fasteners")
    assert hand.clamp.entry.typing == "4.25"
    hand.clamp.press("5")
    assert hand.clamp.entry.texts["fasteners"] == "5"
    hand.clamp.press(".")
    hand.clamp.press("5")
    assert hand.clamp.entry.texts["fasteners"] == "5.5"
    hand.clamp.open_pad("preload")
    hand.clamp.erase()
    assert "preload" not in hand.clamp.entry.texts


def test_absurd_sizes_are_told_and_change_nothing_else() -> None:
    hand = main_case()
    hand.clamp.open_pad("ring")
    hand.clamp.press("9")
    hand.clamp.press("9")
    assert "Ring diameter" in hand.clamp.keys().told
    assert hand.clamp.told.needs == ("ring",)


def test_a_height_above_the_wire_is_refused_in_words() -> None:
    hand = main_case()
    hand.type("wire", "8")
    assert hand.clamp.told.engine is None
    assert "Wire height: the wire cannot stand as high" in " ".join(hand.clamp.told.faults)


def test_one_cylinder_may_have_its_own_height() -> None:
    hand = main_case()
    hand.type("cylinders", "4")
    hand.type("banks", "2")
    hand.clamp.show_cylinder("6")
    hand.type("own-height", "20")
    engine = hand.clamp.told.engine
    assert engine is not None
    assert [each.loads.cylinder.name for each in engine.cylinders] == list("12345678")
    assert engine.weakest.loads.cylinder.name == "6"
    hand.clamp.show_cylinder("5")
    hand.clamp.open_pad("own-height")
    assert hand.clamp.entry.typing == ""


def test_fasteners_from_their_places_are_shared_and_ordered() -> None:
    hand = main_case()
    hand.choose([("around", "pattern")])
    assert hand.clamp.told.needs == ("cylinders", "spacing", "between-above")
    for name, digits in (("cylinders", "4"), ("spacing", "4.4"), ("between-above", "2.5")):
        hand.type(name, digits)
    hand.type("between-below", "2.5")
    engine, form = hand.clamp.told.engine, hand.clamp.told.form
    assert engine is not None
    assert form is not None
    assert form.pattern is not None
    counts = [each.loads.cylinder.fasteners.count for each in engine.cylinders]
    assert counts == pytest.approx([3.0, 2.0, 2.0, 3.0])
    for _ in range(40):
        hand.clamp.turn(1)
    assert hand.clamp.entry.turns == 3 * 10, "three steps over ten fasteners"
    hand.type("spacing", "4.5")
    assert hand.clamp.entry.turns == 0, "another pattern begins anew"


def test_every_tap_is_kept_and_comes_back() -> None:
    hand = main_case()
    hand.clamp.show_part("curve")
    again = kept.from_json(hand.disk[-1])
    assert again == hand.clamp.entry
    fresh = Clamp()
    fresh.restore(again)
    assert fresh.told.engine is not None
    assert kept.from_json({"format": 0}) == kept.from_json(None) == ClampEntry()


def test_what_the_disk_refused_is_told() -> None:
    def refuse(_entry: object) -> None:
        raise RecordError("The disk is full.")

    clamp = Clamp(keep=refuse)
    clamp.choose("size", "7/16")
    assert clamp.trouble == "The disk is full."
    assert clamp.entry.choices == {"size": "7/16"}


def test_looking_elsewhere_computes_nothing_again() -> None:
    hand = main_case()
    before = hand.clamp.told
    hand.clamp.show_part("loads")
    hand.clamp.show_quantity("left")
    assert hand.clamp.told is before
    assert tell(hand.clamp.entry, before) is before


@pytest.mark.parametrize("tightened", ["torque", "preload", "angle", "stretch"])
def test_every_way_of_tightening_asks_for_its_own_and_computes(tightened: str) -> None:
    hand = Hand()
    hand.choose((*STRONG, ("tightened", tightened)))
    typed = {
        "torque": "30", "preload": "70", "angle": "45", "grip": "4", "load-share": ".2",
        "stretch": "6", "fasteners": "4.25", "pressure": "900",
    }  # fmt: skip
    picks = {"lubricant": "cadmium", "around": "fasteners", "peak": "pressure"}
    while hand.clamp.told.needs:
        name = hand.clamp.told.needs[0]
        if name in picks:
            hand.choose([(name, picks[name])])
        else:
            hand.type(name, {**typed, **SIZES}[name])
    assert hand.clamp.told.engine is not None, hand.clamp.told.faults


def test_a_floor_of_the_pressure_never_passes() -> None:
    hand = main_case()
    hand.choose([("peak", "compression")])
    hand.type("compression", "9")
    assert hand.verdicts()["separation"] == "undecided"


def test_a_printed_head_asks_for_its_depth() -> None:
    hand = main_case()
    hand.choose([("face", "printed")])
    assert hand.clamp.told.needs == ("face-depth",)
    hand.type("face-depth", "2")
    form = hand.clamp.told.form
    assert form is not None
    assert form.joint.face.depth == pytest.approx(0.002 * 25.4)
