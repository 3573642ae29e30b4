"""A check as a link: the same check again, decoded once, and nothing changed by a bad one."""

from urllib.parse import quote

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.errors import InputError
from mobile.app.state.entry import Entry, from_link, tap_leaf
from mobile.app.state.leaf_pad import pad_leaves
from mobile.app.state.link import link_of, texts_of
from mobile.app.state.told import form_texts, tell
from tests.app_without_page import AppWithoutPage

FULL = (
    "/check?go=0.011in&no-go=0.013in&gasket=0.040in&wire=0.041in&groove-width=0.040in"
    "&groove-depth=0.030in&shelf=0.032in,0.040in,0.050in,0.0646in"
)

thou = st.integers(60, 140).map(lambda tenth: f"{tenth / 10:g} thou")
sheets = st.lists(st.integers(20, 90), min_size=1, max_size=6, unique=True).map(
    lambda each: "; ".join(f"{size} thou" for size in sorted(each))
)


@st.composite
def entries(draw: st.DrawFn) -> Entry:
    """A check as the screen leaves it."""
    texts = {"go": draw(thou), "shelf": draw(sheets)}
    for field, low, high in (
        ("gasket", 20, 90),
        ("wire", 38, 44),
        ("groove-width", 38, 44),
        ("groove-depth", 25, 35),
    ):
        if draw(st.booleans()):
            texts[field] = f"{draw(st.integers(low, high))} thou"
    face = draw(st.sampled_from(("", "flat", "printed", "receiver")))
    if face:
        texts["face"] = face
    if face in ("printed", "receiver"):
        texts["face-depth"] = f"{draw(st.integers(1, 12))} thou"
    return Entry(texts=texts)


@settings(max_examples=150, deadline=None)
@given(entries())
def test_the_link_of_a_check_opens_the_same_check(entry: Entry) -> None:
    texts = texts_of(link_of(form_texts(entry)))
    assert texts is not None
    assert tell(from_link(Entry(), texts)).answer == tell(entry).answer


def test_a_stack_of_leaves_survives_its_plus() -> None:
    leaves = pad_leaves(Entry(), tell(Entry()))
    stack = next(leaf.stack for leaf in leaves if leaf.label == "10")
    entry = tap_leaf(Entry(), "go", stack)
    entry = Entry(texts={**entry.texts, "go": "0.0100 in + 0.0025 in"})
    link = link_of(form_texts(entry))
    assert "go=0.0100in%2B0.0025in" in link
    assert texts_of(link)["go"] == "0.0100 in + 0.0025 in"


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("0.0100in%2B0.0025in", "0.0100 in + 0.0025 in"),
        ("0.0100in+0.0025in", "0.0100 in + 0.0025 in"),
        ("0.011%20in", "0.011 in"),
    ],
)
def test_percent_signs_are_decoded_once_and_a_plus_stays_a_plus(written: str, read: str) -> None:
    assert texts_of(f"/check?go={written}")["go"] == read


def test_a_per_cent_sign_is_one() -> None:
    texts = texts_of("/check?go=0.011in&share=20%25")
    assert texts["share"] == "20 %"
    with pytest.raises(InputError, match="Largest share"):
        texts_of("/check?go=0.011in&share=20%2525")


@pytest.mark.parametrize(
    ("query", "named"),
    [
        ("bore=4in", "bore"),
        ("go=0.011in&go=0.012in", "go"),
        ("go=eleven", "Goes"),
        ("go=0.013in&no-go=0.011in", "Does not go"),
        ("go=0.011in&wire=12kg", "Wire"),
        ("wire=0.041in", "Goes"),
        ("go=%ff", "Goes"),
        ("go", "Goes"),
    ],
)
def test_a_bad_link_names_what_is_wrong_and_changes_nothing(query: str, named: str) -> None:
    phone = AppWithoutPage()
    phone.tap_leaf("go", 9)
    phone.app.go_to("more")
    before, writes = phone.app.entry, len(phone.kept)
    phone.app.follow(f"/check?{query}")
    assert named in phone.app.link_trouble
    assert phone.app.screen == "check"
    assert phone.app.entry == before
    assert len(phone.kept) == writes
    assert phone.app.preview is None


def test_a_link_fills_an_empty_check_at_once_and_is_used_up() -> None:
    phone = AppWithoutPage()
    phone.app.follow(FULL)
    assert phone.app.preview is None
    assert phone.app.shown("wire") == "0.041 in"
    assert phone.links_taken == 1


def test_over_an_entry_under_way_a_link_waits_for_a_word() -> None:
    phone = AppWithoutPage()
    phone.tap_leaf("go", 9)
    before = phone.app.entry
    phone.app.follow(FULL)
    assert phone.app.entry == before
    assert phone.app.asks()
    previewed = phone.app.previewed().answer
    assert previewed is not None
    assert previewed.suggestion.run.thickness == pytest.approx(0.050 * 25.4)
    assert phone.links_taken == 0
    phone.app.drop_link()
    assert (phone.app.entry, phone.links_taken) == (before, 1)


def test_what_a_used_link_pushed_aside_can_be_brought_back() -> None:
    phone = AppWithoutPage()
    phone.tap_leaf("go", 9)
    before = phone.app.entry
    phone.app.follow(FULL)
    phone.app.use_link()
    assert phone.app.entry != before
    phone.app.bring_back()
    assert phone.app.entry == before


def test_my_own_shelf_comes_back_with_the_next_check() -> None:
    phone = AppWithoutPage()
    own = phone.app.shown("shelf")
    phone.app.follow("/check?go=0.30mm&shelf=1mm,1.2mm&leaves=0.2mm,0.3mm,0.4mm")
    assert phone.app.shown("shelf") == "1 mm; 1.2 mm"
    assert phone.app.own_leaf_texts() == ("0.200 mm", "0.300 mm", "0.400 mm")
    phone.app.follow("/check?go=0.011in&shelf=0.060in")
    phone.app.use_link()
    phone.app.begin_anew()
    assert phone.app.shown("shelf") == own
    assert len(phone.app.own_leaf_texts()) > 3


def test_what_has_no_field_on_the_screen_is_named_and_can_be_taken_away() -> None:
    phone = AppWithoutPage()
    phone.app.follow("/check?go=0.011in&share=20%25&rule=guarded")
    assert phone.app.entry.beside() == ("share", "rule")
    phone.app.drop_text("rule")
    assert phone.app.entry.beside() == ("share",)


@pytest.mark.parametrize("route", ["/", "", "/check", "/elsewhere?go=0.011in"])
def test_other_routes_are_no_links(route: str) -> None:
    assert texts_of(route) is None


@given(st.text(max_size=30))
@settings(deadline=None)
def test_any_text_in_a_link_is_read_or_refused_in_words(value: str) -> None:
    phone = AppWithoutPage()
    phone.app.follow(f"/check?go={quote(value)}")
    assert bool(phone.app.link_trouble) != phone.app.entry.under_way()
