"""The choice of a sheet without a page: typed, kept, judged, moved, said."""

import json
import random
from dataclasses import fields, replace
from functools import partial

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import RecordError
from core.forms.limits_form import (
    AMOUNTS,
    COUNTS,
    CYLINDER,
    KINDS,
    TWO_AS_ONE,
    WORDS,
    YES,
    cylinder_of,
    limits_of,
    texts_of,
    value_of,
)
from core.records.model import Entry as Record
from core.records.model import Limits
from core.texts import text
from mobile.app.engine.sheet import entry as entries
from mobile.app.engine.sheet import sliders
from mobile.app.engine.sheet.basis import Basis
from mobile.app.engine.sheet.chart import phrase
from mobile.app.engine.sheet.entry import MOST_CYLINDERS, SheetEntry, as_json, from_json
from mobile.app.engine.sheet.fields import GROUP_OF_PART, GROUPS, OF_A_CYLINDER, shown_fields
from mobile.app.engine.sheet.figures import figures_of
from mobile.app.engine.sheet.found import Found, find
from mobile.app.engine.sheet.model import SheetChoice
from mobile.app.engine.sheet.swap_lines import swap_lines
from mobile.app.engine.sheet.views.answer import headline
from mobile.app.engine.start import begin
from mobile.app.state.sizes_form import SizesForm, open_field
from tests.app_without_page import AppWithoutPage

TRACK = "/check?go=0.011in&no-go=0.013in&gasket=0.040in&shelf=0.032in,0.040in,0.050in,0.0646in"


class AtTheStand:
    """The app with an engine under way, and a disk that keeps it."""

    def __init__(self, link: str = TRACK) -> None:
        self.disk: dict[str, object] = {}
        self.app = AppWithoutPage().app
        self.app.engine = begin(self.app, self.disk.get, self._put, lambda _task: None)
        self.app.follow(link)
        self.app.open_engine()

    def _put(self, key: str, value: object) -> None:
        self.disk[key] = json.loads(json.dumps(value))

    @property
    def sheet(self) -> SheetChoice:
        return self.app.engine.sheet

    @property
    def found(self) -> Found:
        return find(self.sheet.entry, self.sheet.basis)

    def type(self, **sizes: str) -> None:
        """Type into fields by the number pad; a minus is its sign key."""
        for name, typed in sizes.items():
            self.sheet.change(partial(opened, name=name))
            for key in typed:
                self.sheet.keys().press("±" if key == "-" else key)
            self.sheet.keys().done()


def opened(form: SizesForm, name: str) -> SizesForm:
    return open_field(form, name.replace("_", "-"))


@pytest.fixture
def stand() -> AtTheStand:
    return AtTheStand()


# ---- from the check ----


def test_the_check_gives_height_sheet_on_now_and_shelf(stand: AtTheStand) -> None:
    assert stand.app.screen == "engine"
    assert stand.app.engine.shown == "sheet"
    assert stand.sheet.entry.form.texts["sheet-on"] == "0.040 in"
    basis = stand.sheet.basis
    assert [each.standing.value for each in basis.rings] == pytest.approx([12 * 0.0254])
    assert len(basis.shelf) == 4


def test_another_reading_at_the_check_moves_the_window(stand: AtTheStand) -> None:
    before = stand.found.choice.overlap
    stand.app.follow(TRACK.replace("0.011", "0.009").replace("0.013", "0.011"))
    stand.app.use_link()
    after = stand.found.choice.overlap
    assert before
    assert after
    assert before.low
    assert after.low
    assert before.low.end.at / after.low.end.at == pytest.approx(12 / 10)


def test_the_way_back_leads_to_the_check(stand: AtTheStand) -> None:
    stand.sheet.leave()
    assert stand.app.screen == "check"


def test_without_a_reading_the_wire_is_left_out_and_the_rest_works() -> None:
    stand = AtTheStand("/check?shelf=0.032in,0.040in,0.050in")
    stand.type(sheet_on="40", piston_least="40", piston_deck="5")
    found = stand.found
    assert {each.part for each in found.choice.left_out} >= {"height-to-gasket", "bite"}
    assert [each.part for each in found.choice.windows] == ["piston-to-head"]
    assert headline(found.choice, metric=False)


# ---- typing and keeping ----


def test_a_piston_that_stands_proud_is_typed_with_the_sign_key(stand: AtTheStand) -> None:
    stand.type(piston_deck="-12")
    assert stand.sheet.entry.cylinders["1"]["piston-deck"] == "-12 thou"


@pytest.mark.parametrize(
    ("metric", "name", "typed", "read"),
    [
        (False, "bore", "4.125", "4.125 in"),
        (True, "bore", "105", "105 mm"),
        (False, "chamber", "64", "64 cc"),
        (True, "chamber", "64", "64 cc"),
        (False, "bank-angle", "90", "90 °"),
        (False, "highest-ratio", "10.5", "10.5"),
        (False, "preload", "30", "30 thou"),
        (True, "preload", "0.8", "0.8 mm"),
        (False, "warmer", "180", "180 °F"),
        (True, "warmer", "100", "100 °C"),
        (False, "crank-teeth", "18", "18"),
    ],
)
def test_a_bare_number_reads_as_its_field_means_it(
    stand: AtTheStand, metric: bool, name: str, typed: str, read: str
) -> None:
    if metric:
        stand.app.switch_unit()
    stand.type(**{name: typed})
    assert stand.sheet.entry.form.texts[name] == read


def test_teeth_are_whole_numbers(stand: AtTheStand) -> None:
    stand.sheet.change(partial(opened, name="crank-teeth"))
    for key in "18.5":
        stand.sheet.keys().press(key)
    assert "Crank teeth: 18.5 is not a whole number" in stand.sheet.keys().told
    assert "crank-teeth" not in stand.sheet.entry.form.texts


def test_every_tap_is_on_the_disk_and_comes_back(stand: AtTheStand) -> None:
    stand.type(bore="4.125", piston_deck="5")
    stand.sheet.add_cylinder()
    stand.type(piston_deck="7")
    stand.sheet.pick(1.27)
    again = begin(stand.app, stand.disk.get, stand._put, lambda _task: None)
    assert again.sheet.entry == stand.sheet.entry
    assert again.sheet.what_if.values == stand.sheet.what_if.values


def test_a_disk_that_refuses_is_told_and_the_entry_stays(stand: AtTheStand) -> None:
    def refuse(_entry: object) -> None:
        raise RecordError("the disk is full")

    stand.sheet.source = replace(stand.sheet.source, keep=refuse)
    stand.type(bore="4.125")
    assert stand.sheet.trouble == "the disk is full"
    assert stand.sheet.entry.form.texts["bore"] == "4.125 in"


@pytest.mark.parametrize("kept", [None, "x", {}, {"format": 99}])
def test_what_another_format_kept_is_left_alone(kept: object) -> None:
    assert from_json(kept) == SheetEntry()


@given(st.integers(0, 10_000))
def test_any_entry_survives_the_disk(seed: int) -> None:
    rng, entry = random.Random(seed), SheetEntry()
    for _ in range(rng.randrange(6)):
        entry = rng.choice(
            (
                entries.add_cylinder,
                entries.drop_cylinder,
                lambda each: entries.show_cylinder(each, rng.choice(list(each.cylinders))),
                lambda each: entries.choose_word(each, "rod", "steel"),
                lambda each: entries.show_group(each, rng.choice(list(GROUPS))),
                lambda each: entries.with_moves(each, {"deck-cut": rng.random()}),
            )
        )(entry)
    assert from_json(json.loads(json.dumps(as_json(entry)))) == entry


# ---- cylinders ----


def test_every_cylinder_keeps_its_own_numbers(stand: AtTheStand) -> None:
    stand.type(bore="4.125", piston_deck="5")
    stand.sheet.add_cylinder()
    assert "piston-deck" not in stand.sheet.entry.form.texts
    assert stand.sheet.entry.form.texts["bore"] == "4.125 in"
    stand.type(piston_deck="-2")
    stand.sheet.show_cylinder("1")
    assert stand.sheet.entry.form.texts["piston-deck"] == "5 thou"
    stand.type(piston_least="40")
    low = next(each.low for each in stand.found.now.windows if each.part == "piston-to-head")
    assert low
    assert low.decided_by == "cylinder 2"
    assert low.at / 0.0254 == pytest.approx(42.0)


def test_there_is_always_one_cylinder_and_never_too_many(stand: AtTheStand) -> None:
    stand.sheet.drop_cylinder()
    assert list(stand.sheet.entry.cylinders) == ["1"]
    for _ in range(20):
        stand.sheet.add_cylinder()
    assert len(stand.sheet.entry.cylinders) == MOST_CYLINDERS


# ---- the records ----


def test_every_limit_that_a_job_keeps_has_its_field() -> None:
    kept = {each.name for each in fields(Limits)} - {each.name for each in fields(Record)}
    names = {name for name in (*KINDS, *WORDS, TWO_AS_ONE) if name not in CYLINDER}
    assert kept == {name.replace("-", "_") for name in names}


def test_every_field_stands_in_a_group_and_every_part_leads_to_one() -> None:
    grouped = {name for names in GROUPS.values() for name in names}
    assert grouped >= {*KINDS, *WORDS, TWO_AS_ONE}
    assert set(GROUP_OF_PART.values()) <= set(GROUPS)
    assert all(text(f"field.{name}") for name in grouped)


SAMPLES = {
    **dict.fromkeys(KINDS, "1.5 in"),
    **dict.fromkeys(AMOUNTS, "20 °"),
    **dict.fromkeys(("chamber", "dish", "dome"), "5 cc"),
    **dict.fromkeys(("lowest-ratio", "highest-ratio"), "9.5"),
    **dict.fromkeys(COUNTS, "3"),
    **dict.fromkeys(CYLINDER, "0.09 in"),
    **{name: words[0] for name, words in WORDS.items()},
    TWO_AS_ONE: YES,
    "bore": "4.125 in",
    "sheet-on": "0.040 in",
}
SMALL = (
    "piston-least", "intake-least", "exhaust-least", "largest-offset", "preload",
    "preload-least", "preload-most", "thickest-spacer",
)  # fmt: skip
SAMPLES |= dict.fromkeys(SMALL, "0.05 in")


@given(st.sets(st.sampled_from(sorted(SAMPLES))))
def test_what_is_typed_comes_back_from_the_records_as_it_was(names: set[str]) -> None:
    typed = {name: SAMPLES[name] for name in names if name not in CYLINDER}
    assert texts_of(limits_of(typed)) == typed
    own = {name: SAMPLES[name] for name in names if name in CYLINDER}
    assert texts_of(cylinder_of("3", own)) == own


def test_a_field_that_is_cleared_is_kept_as_nothing() -> None:
    nothing = Limits(id="")
    for name in (*KINDS, *WORDS, TWO_AS_ONE):
        if name not in CYLINDER:
            assert value_of(name, "") == getattr(nothing, name.replace("-", "_"))


# ---- what it says ----


def test_the_swap_card_of_the_track_engine(stand: AtTheStand) -> None:
    """12 of 40 is 30 %, 12 of 50 is 24 %; 5 below deck and 40 is 45, with 50 it is 55."""
    stand.type(piston_deck="5")
    found = stand.found
    assert found.row
    assert found.row_now
    lines = {each.name: each for each in swap_lines(found.row_now, found.row, metric=False)}
    assert (lines["wire"].now, lines["wire"].then) == ("30 % BORDERLINE", "24 % RUN, CLOSE")
    assert (lines["piston-to-head"].now, lines["piston-to-head"].then) == ("0.0450", "0.0550 in")


def test_what_lacks_a_number_says_which(stand: AtTheStand) -> None:
    stand.sheet.choose_word("valve-gear", "overhead cam")
    told = phrase(stand.found.choice, metric=False)
    assert "Cam timing: left out, needs sprockets, pitch and centres of the cam drive" in told
    assert "Piston to head: left out, needs piston to deck at top dead centre" in told


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ({"bank-angle": "90", "face-angle": "45"}, "Face angle: at 45 degrees"),
        ({"bank-angle": "190", "face-angle": "80"}, "Bank angle: must be more than 0"),
        ({"bank-angle": "90", "face-angle": "20"}, "Face angle: no manifold sits"),
    ],
)
def test_an_intake_side_that_cannot_be_solved_is_refused_by_field_and_the_rest_works(
    stand: AtTheStand, typed: dict[str, str], named: str
) -> None:
    stand.type(**typed, largest_offset="20")
    found = stand.found
    assert named in phrase(found.choice, metric=False)
    figures = figures_of(stand.sheet.entry, found)
    assert [each.wrong for each in figures["intake"]] == [True]
    assert named in figures["intake"][0].value
    assert found.choice.run
    assert [each.part for each in found.choice.windows] == ["height-to-gasket", "bite"]


def test_a_range_typed_the_wrong_way_round_is_refused_by_field(stand: AtTheStand) -> None:
    stand.type(
        bore="4.125", stroke="3.75", chamber="64", gasket_bore="4.2", piston_deck="5",
        lowest_ratio="12", highest_ratio="10",
    )  # fmt: skip
    assert "Lowest ratio: is more than the most" in phrase(stand.found.choice, metric=False)
    assert stand.found.choice.conflict is None


def test_one_chain_over_two_banks_is_refused_by_field(stand: AtTheStand) -> None:
    stand.sheet.choose_word("valve-gear", "overhead cam")
    stand.type(
        crank_teeth="18", cam_teeth="36", chain_pitch="0.375", cam_centres="9",
        banks_on_chain="2", most_retard="1",
    )  # fmt: skip
    assert "Banks a chain: one chain over two banks" in phrase(stand.found.choice, metric=False)


def test_compression_says_what_a_thou_is_worth_and_what_it_leaves_out(stand: AtTheStand) -> None:
    """Bore² · stroke · π/4 over what is left, worked here in cubic inches of 16.387064 cc."""
    stand.type(
        bore="4.125", stroke="3.75", chamber="64", dish="5", gasket_bore="4.2", piston_deck="5"
    )
    stand.sheet.pick(0.043 * 25.4)
    told = figures_of(stand.sheet.entry, stand.found)["compression"]
    rows = {each.what: each.value for each in told}
    ratio = rows["Compression ratio with 0.0430 in"]
    volume = 0.25 * 3.14159265 * (4.125**2 * 3.75) * 16.387064
    clearance = 64 + 5 + 0.25 * 3.14159265 * (4.125**2 * 0.005 + 4.2**2 * 0.043) * 16.387064
    assert float(ratio.split(" ±")[0]) == pytest.approx(1 + volume / clearance, abs=0.006)
    less = volume / clearance**2 * 0.25 * 3.14159265 * 4.2**2 * 0.001 * 16.387064
    assert float(rows["What a thou of sheet is worth"]) == pytest.approx(-less, abs=0.0006)
    assert any("threads of the plug" in each.value for each in told)


def test_heat_is_ignored_where_it_is_hundredths_of_a_thou_and_shown_where_it_matters() -> None:
    """4.3 in ring, 304 in iron, 180 °F warmer: π·4.3·100·(17.3-10.8)e-6 = 8.8 thou at the joint."""
    stand = AtTheStand(TRACK + "&wire=0.041in&groove-width=0.040in&groove-depth=0.030in")
    assert "Needs: Ring diameter" in figures_of(stand.sheet.entry, stand.found)["heat"][0].value
    stand.type(centre_diameter="4.3", warmer="180")
    stand.sheet.choose_word("block-material", "iron")
    rows = {each.what: each.value for each in figures_of(stand.sheet.entry, stand.found)["heat"]}
    assert rows["Wire over groove width changes by"] == "hundredths of a thou: ignore"
    assert rows["Gap at the joint changes by"] == "-8.8 thou"


# ---- what if ----


def test_a_slider_moves_the_picture_and_leaves_what_was_measured(stand: AtTheStand) -> None:
    stand.type(piston_deck="5", piston_least="40")
    wire = next(each for each in sliders.sliders(stand.found) if each.name == "wire-higher")
    before = stand.sheet.entry
    stand.sheet.what_if.slide(wire, -0.0254)
    assert stand.sheet.entry == before
    stand.sheet.settle()
    found = stand.found
    assert found.now.overlap
    assert found.choice.overlap
    assert found.now.overlap.low
    assert found.choice.overlap.low
    assert found.now.overlap.low.end.at / 0.0254 == pytest.approx(48.0)
    assert found.choice.overlap.low.end.at / 0.0254 == pytest.approx(44.0)
    stand.sheet.put_back()
    assert stand.found.choice == stand.found.now
    assert stand.sheet.entry.form == before.form


def test_a_sheet_of_any_thickness_can_be_looked_at(stand: AtTheStand) -> None:
    other = next(each for each in sliders.sliders(stand.found) if each.name == "sheet")
    stand.sheet.step(other, 45 * 0.0254)
    row = stand.found.row
    assert row
    assert row.candidate.sheet.thickness / 0.0254 == pytest.approx(45.0)
    assert row.fit
    assert row.fit.word == "borderline"


@given(st.floats(-20.0, 20.0))
def test_a_slider_stays_in_reach_and_on_its_steps(value: float) -> None:
    slider = sliders.Slider(name="deck-cut", low=0.0, high=1.27, step=0.0127)
    placed = slider.placed(value)
    assert 0.0 <= placed <= 1.27
    assert placed / 0.0127 == pytest.approx(round(placed / 0.0127))


def test_sliders_stand_for_what_is_known(stand: AtTheStand) -> None:
    names = [each.name for each in sliders.sliders(stand.found)]
    assert names == ["sheet", "deck-cut", "wire-higher"]
    stand.type(
        bore="4.125", stroke="3.75", chamber="64", gasket_bore="4.2", piston_deck="5"
    )
    names = [each.name for each in sliders.sliders(stand.found)]
    assert names == ["sheet", "deck-cut", "piston-lower", "wire-higher", "chamber-larger"]


# ---- the screen's groups ----


def test_a_valve_gear_shows_only_its_own_fields() -> None:
    none = shown_fields("valve-gear", {})
    pushrods = shown_fields("valve-gear", {"valve-gear": "pushrods"})
    cam = shown_fields("valve-gear", {"valve-gear": "overhead cam"})
    assert none == ("valve-gear",)
    assert {"preload", "pushrod-tilt"} <= set(pushrods)
    assert {"crank-teeth", "banks-on-chain"} <= set(cam)
    assert not set(pushrods) & set(cam) - {"valve-gear"}
    assert set(OF_A_CYLINDER) == {"piston-deck", "intake-valve", "exhaust-valve"}


def test_an_empty_app_shows_the_sheet_without_anything() -> None:
    found = find(SheetEntry(), Basis(metric=False))
    assert found.row is None
    assert headline(found.choice, metric=False) == "Nothing limits the sheet yet"
