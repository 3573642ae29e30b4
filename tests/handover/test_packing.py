"""Events as bytes and back: without loss, and without trust in what comes."""

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.errors import DamagedFile
from core.handover.packing import DICTIONARY, pack, unpack
from core.records.demo import demo_events
from core.records.event import Event
from tests.eight_cylinders import eight_cylinders, new_book

STAMPS = st.builds(
    lambda wall, count, author: f"{wall:011x}.{count:04x}.{author}",
    st.integers(0, 0xFFFFFFFFFFF),
    st.integers(0, 0xFFFF),
    st.from_regex(r"[a-z0-9]{1,16}-[0-9a-f]{4}", fullmatch=True),
)
IDS = st.builds(
    lambda stamp, index: f"{stamp}.{index}", STAMPS, st.from_regex(r"[0-9a-f]{1,4}", fullmatch=True)
)
LENGTHS = st.fixed_dictionaries(
    {
        "typed": st.sampled_from(("0.041 in", "1.02 mm", "3/64 in", "no size")),
        "mm": st.floats(0, 99),
    }
)
MARKS = st.sampled_from(
    ({"l": "0.041 in"}, {"r": 0}, {"k": {"l": "x"}}, {"k": 1}, "job", "cylinder/1")
)
VALUES = st.recursive(
    st.none() | st.booleans() | st.integers(0, 99) | st.text(max_size=9) | LENGTHS | MARKS,
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(st.sampled_from(("l", "r", "k", "typed", "mm", "go")), inner, max_size=3)
    ),
    max_leaves=6,
)
EVENTS = st.builds(
    Event,
    id=IDS,
    at=st.integers(0, 0xFFFFFFFFFFF),
    who=st.text(max_size=9),
    record=st.from_regex(r"[a-z_]{1,9}(/[a-z0-9_.-]{1,14})?", fullmatch=True)
    | st.sampled_from(("job", "cylinder/3fa90c11d2e4")),
    field=st.from_regex(r"[a-z_]{1,9}(@[a-z0-9 ]{1,9})?", fullmatch=True),
    value=VALUES,
    replaces=st.lists(IDS, max_size=2).map(tuple),
    undoes=st.just("") | STAMPS,
    restores=st.just("") | IDS,
)
LEDGERS = st.dictionaries(
    st.sampled_from(("shop", "job-demo", "job-1")),
    st.lists(EVENTS, max_size=6, unique_by=lambda event: event.id),
    max_size=3,
)


def sorted_by_id(ledgers):
    return {name: sorted(events, key=lambda each: each.id) for name, events in ledgers.items()}


@given(LEDGERS)
@settings(deadline=None)
def test_what_is_packed_comes_back_as_it_was(ledgers):
    assert repr(sorted_by_id(unpack(pack(ledgers)))) == repr(sorted_by_id(ledgers))


@given(st.binary(max_size=300))
@settings(deadline=None)
def test_any_other_bytes_are_refused_in_words(data):
    with pytest.raises(DamagedFile, match=r"Nothing was changed"):
        unpack(data)


def test_a_changed_byte_never_passes():
    packed = pack({"job-demo": list(demo_events())})
    rng = random.Random(1)
    for _ in range(400):
        at = rng.randrange(len(packed))
        changed = bytearray(packed)
        changed[at] ^= 1 << rng.randrange(8)
        with pytest.raises(DamagedFile):
            unpack(bytes(changed))


def test_a_text_that_unfolds_without_end_is_refused():
    import zlib

    deflate = zlib.compressobj(9, zlib.DEFLATED, -15, 9, zlib.Z_DEFAULT_STRATEGY, DICTIONARY)
    bomb = deflate.compress(b" " * 50_000_000) + deflate.flush()
    with pytest.raises(DamagedFile):
        unpack(bomb)


def test_a_whole_job_of_eight_cylinders_is_small():
    events = list(eight_cylinders(new_book()).fold)
    assert len(events) > 250
    assert len(pack({"job-1": events})) < 3000
