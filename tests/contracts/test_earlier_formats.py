"""Every format ever written opens, to the same events; the files in the fixtures never change."""

import asyncio
import json
import random
from pathlib import Path

import pytest

from core.records import open_book, read_parcel
from core.records.codec import FORMAT, event_to_json
from core.records.model import HeadFaceKind, ReadingKind
from tests.homes import MemoryHome

FIXTURES = Path(__file__).parents[1] / "fixtures" / "records"
FORMATS = sorted(FIXTURES.glob("format-*"))


@pytest.fixture(params=FORMATS, ids=lambda each: each.name)
def kept(request):
    folder = request.param
    expected = json.loads((folder / "expected.json").read_text())
    names = ("list", "device", "shop", f"job-{expected['id']}", f"picture-{expected['picture']}")
    return folder, expected, {name: (folder / name).read_bytes() for name in names}


def documents(events):
    return [event_to_json(event) for event in events]


def opened(files):
    home = MemoryHome(files)
    return asyncio.run(open_book(home, lambda: 1_790_000_000_000, random.Random(1).randbytes))


def test_a_fixture_is_kept_of_every_format():
    assert [each.name for each in FORMATS] == [f"format-{n}" for n in range(1, FORMAT + 1)]


def test_a_kept_book_opens_to_the_same_events_and_nothing_is_told(kept):
    _, expected, files = kept
    book = opened(files)
    job = asyncio.run(book.open_job(expected["id"]))
    assert documents(job.fold) == expected["job"]
    assert documents(book.shop.fold) == expected["shop"]
    assert (book.told, job.told) == ((), ())
    assert book.notebook.get("draft/x") == "kept"
    assert book.jobs()[0].title == "Kept in format 1"
    assert asyncio.run(book.pictures.get(expected["picture"])).endswith(b"of format 1")


def test_a_kept_book_shows_what_was_entered_and_goes_on(kept):
    _, expected, files = kept
    job = asyncio.run(opened(files).open_job(expected["id"]))
    cylinder = job.job.cylinders[0]
    assert job.job.head_face.kind is HeadFaceKind.PRINTED
    assert cylinder.groove_width["12"].mm == 1.016
    assert cylinder.readings[0].measured.kind is ReadingKind.CALIPER
    assert cylinder.evidence[0].soot == {"6": "none"}
    assert job.job.cylinders[1].deleted
    assert job.job.unread == ()
    job.enter("job", note="goes on")
    assert job.job.note == "goes on"


def test_a_kept_export_can_be_taken(kept):
    folder, expected, _ = kept
    parcel = read_parcel((folder / "export.jsonl").read_bytes())
    assert parcel.faults == []
    assert documents(parcel.ledgers[f"job-{expected['id']}"]) == expected["job"]
    assert documents(parcel.ledgers["shop"]) == expected["shop"]
    assert list(parcel.pictures) == [expected["picture"]]
