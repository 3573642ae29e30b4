"""A job on its way in: link, text and file are one way, and a missing part is named."""


import pytest

from core.errors import DamagedFile, StandproudError
from core.handover.parts import link, split
from core.records.demo import DEMO_JOB, demo_events
from mobile.app.handover.taking import is_hand_over, take
from tests.eight_cylinders import finish, new_book

LEDGERS = {f"job-{DEMO_JOB}": list(demo_events())}
ADDRESS = "https://shop.example/"


def ids(taken):
    return {event.id for events in taken.parcel.ledgers.values() for event in events}


@pytest.fixture(scope="module")
def file():
    book = new_book()
    finish(book.add_demo())
    return finish(book.export([DEMO_JOB]))


def test_link_text_and_file_bring_the_same(file):
    (whole,) = split(LEDGERS)
    written = link(ADDRESS, whole)
    route = written.partition("#")[2]
    assert is_hand_over(route)
    assert not is_hand_over("/check?go=0.011in")
    takings = [take(each, None) for each in (route.encode(), f"Look: {written}".encode(), file)]
    expected = {event.id for event in demo_events()}
    # The demo in a book has one entry more: it was brought back, as if it had been deleted.
    assert [ids(each) >= expected for each in takings] == [True] * 3
    assert [each.line for each in takings] == [""] * 3


def test_parts_are_kept_until_the_last_is_here_and_the_missing_ones_are_named():
    parts = split(LEDGERS, 400)
    first = take(str(parts[1]).encode(), None)
    assert first.parcel is None
    others = [n for n in range(1, len(parts) + 1) if n != 2]
    named = ", ".join(map(str, others))
    assert first.line == f"1 of {len(parts)} parts are here. Still to come: part {named}."
    rest = "\n".join(str(part) for part in parts if part.number != 2)
    last = take(rest.encode(), list(first.waiting))
    assert ids(last) == {event.id for event in demo_events()}
    assert last.waiting == ()


def test_a_cut_part_is_told_beside_what_is_missing():
    parts = split(LEDGERS, 400)
    text = f"{parts[0]} {str(parts[1])[:-5]}"
    told = take(text.encode(), None).line
    assert told.startswith(f"Part 2 of {len(parts)} is cut or changed: get it again.")
    assert "Still to come: part 2, 3" in told


def test_a_cut_file_shows_its_good_part_and_its_faults(file):
    for cut in (file[:-300], file[10:]):
        taken = take(cut, None)
        assert taken.parcel is not None
        assert taken.parcel.faults


@pytest.mark.parametrize("junk", [b"", b"\xff\xfe\x00", b"hello", b"{", b"[1]", b"PK\x03\x04"])
def test_anything_else_is_refused_in_words(junk):
    with pytest.raises(StandproudError, match=r"[a-z]{3}"):
        take(junk, None)


def test_what_the_device_kept_and_cannot_read_does_not_stand_in_the_way():
    (whole,) = split(LEDGERS)
    for kept in ("a text", [1, None, "nothing"], {"a": 1}, ["1-AAAAAAAA-1-2-AAAAAAA-"]):
        assert ids(take(str(whole).encode(), kept))


def test_parts_that_turn_out_not_to_fit_are_forgotten():
    mine, other = split(LEDGERS, 400), split({"job-1": LEDGERS[f"job-{DEMO_JOB}"]}, 400)
    parts = [*mine[:-1], other[len(mine) - 1]]
    renamed = [
        str(type(each)(name=mine[0].name, number=each.number, of=each.of, data=each.data))
        for each in parts
    ]
    with pytest.raises(DamagedFile, match="get all of them again"):
        take("\n".join(renamed).encode(), None)
