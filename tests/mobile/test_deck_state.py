"""The deck screens without a page: taps go to the state, and every part is drawn from it."""

import json
from collections.abc import Iterable
from typing import Any

import pytest

from core.errors import RecordError
from core.texts import text
from core.verdict import Verdict
from mobile.app.engine.deck import entry as entries
from mobile.app.engine.deck.entry import DeckEntry
from mobile.app.engine.deck.kept import as_json, from_json
from mobile.app.engine.deck.model import Deck
from mobile.app.engine.deck.paper import page_of
from mobile.app.engine.deck.picture import picture_phrase, place_lines, ring_line
from mobile.app.engine.deck.views.screen import SHOWN
from mobile.app.theme import LIGHT
from mobile.app.views.look import Look

EIGHT = {
    "cylinders": "8", "banks": "2", "bore": "4.500 in", "spacing": "4.900 in",
    "bolt-offset": "2.600 in", "bolt-hole": "0.530 in",
}  # fmt: skip
PLAN = {"wire": "0.0410 in", "gasket": "0.0500 in"}
NUMBERS = {"cylinders": "8", "banks": "2", "bore": "4.5", "spacing": "4.9"}
LOOK = Look(palette=LIGHT, width=390.0, height=844.0, text_scale=1.0)


def typed(deck: Deck, name: str, keys: str) -> None:
    deck.open_pad(name)
    deck.keys().clear()
    for key in keys:
        deck.keys().press(key)
    deck.keys().done()


def deck_with(**texts: str) -> Deck:
    deck = Deck()
    deck.take(DeckEntry(texts={**EIGHT, **{k.replace("_", "-"): v for k, v in texts.items()}}))
    return deck


def test_a_few_numbers_make_both_banks() -> None:
    deck = Deck()
    for name, keys in NUMBERS.items():
        assert not deck.told.banks
        typed(deck, name, keys)
    numbers = [[bore.name for bore in bank.layout.bores] for bank in deck.told.banks]
    assert numbers == [["1", "3", "5", "7"], ["2", "4", "6", "8"]]
    deck.choose("numbering", "in-turn")
    assert [b.name for b in deck.told.banks[1].layout.bores] == ["5", "6", "7", "8"]


def test_what_is_lacking_is_named() -> None:
    deck = Deck()
    typed(deck, "bore", "4.5")
    assert deck.told.lacks == ("cylinders", "spacing")


def test_nine_cylinders_in_two_banks_are_refused_in_words() -> None:
    deck = deck_with(cylinders="9")
    assert text("deck.odd_banks") in deck.told.faults[0]
    assert deck.told.banks == ()


def test_a_coordinate_is_edited_and_goes_back() -> None:
    deck = deck_with()
    before = deck.told.banks[0].layout.holes[0]
    deck.change(lambda e: entries.move(e, "left/bolt 1", "-2.45 in", "-2.6 in"))
    typed(deck, "y:left/bolt 1", "2.7")
    deck.open_pad("y:left/bolt 1")
    deck.keys().press("±")
    assert deck.told.banks[0].layout.holes[0].y == pytest.approx(-2.7 * 25.4)
    deck.change(lambda e: entries.put_back(e, "left/bolt 1"))
    assert deck.told.banks[0].layout.holes[0] == before


def test_places_typed_round_a_ring_are_judged_and_said() -> None:
    """Median of 10, 10, 10.2 and 12 thou is 10.1; 12 is 1.9 over it, beyond 1 thou."""
    deck = deck_with()
    deck.open_pad("height:3/12")
    for value in ("10", "10", "10.2", "12"):
        for key in value:
            deck.keys().press(key)
        deck.keys().done()
    assert deck.entry.open_field is None
    assert "PROUD SPOT" in ring_line("3", deck.entry, deck.told)
    proud = [line for line in place_lines("3", deck.told) if line.endswith("PROUD")]
    assert len(proud) == 1
    assert proud[0].startswith("9 o'clock 0.0120 in")
    assert "not read" in ring_line("1", deck.entry, deck.told)
    assert "PROUD SPOT" in picture_phrase(deck.entry, deck.told)


def test_a_trial_squeeze_is_a_layer_of_its_own() -> None:
    deck = deck_with(**{"height:3/12": "0.010 in", "print:3/12": "0.004 in"})
    assert deck.told.banks[0].map.rings[0].median == pytest.approx(0.254)
    deck.choose("layer", "print")
    assert deck.told.banks[0].map.rings[0].median == pytest.approx(0.1016)


def test_a_square_of_pairs_determines_nothing_and_says_so() -> None:
    """Four wires read round a square only in pairs: an even loop has no rank (derived)."""
    deck = deck_with(pair_go="0.010 in", pair_no_go="0.011 in")
    for first, second in (("1", "2"), ("2", "3"), ("3", "4"), ("4", "1")):
        pair = {"across": [first, second], "go": "0.010 in", "no_go": "0.011 in"}
        deck.take(entries.replace(deck.entry, pairs=(*deck.entry.pairs, pair)))
    found = deck.told.heights.found
    assert found is not None
    assert not any(found.height(name).determined for name in "1234")
    deck.change(lambda e: entries.tap_wire(e, "1"))
    deck.choose("with", "caliper")
    typed(deck, "pair-height", "10")
    deck.change(entries.add_pair)
    assert all(deck.told.heights.found.height(name).determined for name in "1234")


def test_lines_are_never_a_pass_and_finish_has_both_units() -> None:
    deck = deck_with(**{"goes:diagonal": "0.0015 in", "stops:diagonal": "0.002 in"})
    assert deck.told.face.lines.check.verdict is Verdict.UNDECIDED
    typed(deck, "finish", "32")
    assert deck.told.face.roughness.micrometres == pytest.approx(0.8128)
    deck.choose("finish", "Rz")
    assert deck.told.face.finish is None
    assert "Rz cannot be turned into Ra" in deck.told.face.faults[0]


def test_a_grid_needs_four_places_off_one_line() -> None:
    """A bowl: four corners at 0 and the middle 2 thou low is 2 thou from flat (derived)."""
    deck = Deck()
    for x, y, z in (("0", "0", "0"), ("10", "0", "0"), ("0", "5", "0"), ("10", "5", "0")):
        point = {"x": f"{x} in", "y": f"{y} in", "z": f"{z} in"}
        deck.take(entries.replace(deck.entry, grid=(*deck.entry.grid, point)))
    for name, keys in (("grid-x", "5"), ("grid-y", "2.5"), ("grid-z", "2")):
        typed(deck, name, keys)
    deck.change(entries.add_point)
    assert deck.told.face.zone.value == pytest.approx(2 * 0.0254)
    assert deck.told.face.faults == ()


def test_the_cut_is_planned_with_its_wire_lands_and_joints() -> None:
    deck = deck_with(**PLAN, deck_cut="0.005 in")
    plan = deck.told.cut.answer.readings[0].plan
    assert plan.width.target == pytest.approx(0.040 * 25.4)
    assert plan.height.target == pytest.approx(0.012 * 25.4)
    assert len(deck.told.cut.engine.rings) == 8
    page = page_of(deck.told, "25 Nov 2026")
    assert "left bank" in page
    assert "right bank" in page
    assert "Cylinder 8: joint at" in page


def test_a_receiver_is_left_open_with_both_grooves() -> None:
    deck = deck_with(**PLAN, face_depth="0.004 in")
    deck.choose("face", "receiver")
    assert len(deck.told.cut.answer.readings) == 2
    assert [each.point for each in deck.told.standpoints] == ["receiver"]
    deck.choose("wire-in", "both")
    assert "both" in [each.point for each in deck.told.standpoints]


@pytest.mark.parametrize("face", ["printed", "receiver"])
def test_without_the_depth_in_the_head_no_groove_is_told(face: str) -> None:
    deck = deck_with(**PLAN)
    deck.choose("face", face)
    assert deck.told.cut is None
    assert deck.told.cut_faults == (text("face.lacks_depth"),)


@pytest.mark.parametrize("part", SHOWN)
@pytest.mark.parametrize("full", [False, True])
def test_every_part_is_drawn(part: str, full: bool) -> None:
    deck = deck_with(**PLAN, **{"height:3/12": "0.010 in"}) if full else Deck()
    deck.change(lambda e: entries.pick(e, "3"))
    assert list(SHOWN[part](deck, LOOK))


def test_a_disk_that_refuses_is_told() -> None:
    def refuse(_entry: object) -> None:
        raise RecordError("The disk is full.")

    deck = Deck(keep=refuse)
    typed(deck, "bore", "4.5")
    assert deck.trouble == "The disk is full."
    assert deck.entry.texts["bore"]


def test_the_entry_comes_back_as_it_was() -> None:
    deck = deck_with(**PLAN)
    deck.change(lambda e: entries.tap_wire(e, "1"))
    deck.change(lambda e: entries.add_rocking(entries.tap_wire(e, "2")))
    assert from_json(json.loads(json.dumps(as_json(deck.entry)))) == deck.entry


@pytest.mark.parametrize("kept", [None, "half", {}, {"format": 0}])
def test_another_format_begins_anew(kept: Any) -> None:
    assert from_json(kept) == DeckEntry()


def identifiers(control: Any) -> Iterable[str]:
    found = getattr(control, "identifier", None)
    if found:
        yield found
    inside = getattr(control, "controls", None) or []
    content = getattr(control, "content", None)
    for each in [*inside, *([content] if content is not None else [])]:
        yield from identifiers(each)


@pytest.mark.parametrize("part", SHOWN)
def test_identifiers_are_there_once(part: str) -> None:
    deck = deck_with(**PLAN, **{"height:3/12": "0.010 in"})
    names = [name for each in SHOWN[part](deck, LOOK) for name in identifiers(each)]
    assert len(names) == len(set(names))
