"""Files changed at random: the original records, or some of them with the rest told, or refused.

Found records are compared with the originals by id and body.
"""

import asyncio
import json
import random
from hashlib import blake2b

import pytest

from core.errors import DamagedFile, NewerFormat, RecordError
from core.records import open_book, read_parcel
from core.records.codec import event_to_json, to_bytes
from core.records.demo import demo_events
from core.records.job_book import JobBook
from core.records.ledger import Device, Pen
from core.records.lines import write_line
from core.records.parcel import ParcelWriter
from core.records.stamp import Clock
from core.records.store import EventStore
from tests.homes import MemoryHome, at_once

MUTATED_JOBS = 100_000
MUTATED_EXPORTS = 20_000
NOW = 1_790_000_000_000
PICTURE = bytes(range(256)) * 4


def some_actions():
    """The first actions of the demo job, as batches."""
    batches = {}
    for event in demo_events():
        batches.setdefault(event.action, []).append(event)
    some = list(batches.values())
    return [*some[:2], *some[5:12]]


def a_pen():
    clock = Clock("phone-0001", lambda: NOW)
    return Pen(
        device=Device(id="phone", name="P"), clock=clock, randomness=random.Random(8).randbytes
    )


def opened(home, pen, remembered=0):
    port = at_once(home.open("job-demo"))
    try:
        return JobBook(EventStore(port, "job", "demo"), pen, "demo", remembered)
    except RecordError:
        port.close()
        raise


def written():
    home = MemoryHome()
    book = opened(home, a_pen())
    for batch in some_actions():
        book.merge(batch)
    book.close()
    return home.files["job-demo"]


def mutate(data, rng, other):
    """One to three changes of a kind that disks, transfers and editors make."""
    for _ in range(rng.choice((1, 1, 1, 2, 3))):
        start = rng.randrange(len(data) + 1)
        end = min(len(data), start + rng.choice((1, 1, 2, 7, 40, 300, 2000)))
        piece = data[start:end]
        at = rng.randrange(len(data) + 1)
        match rng.randrange(9):
            case 0:
                bits = 1 << rng.randrange(8)
                data = data[:start] + bytes(b ^ bits for b in piece[:1]) + data[start + 1 :]
            case 1:
                data = data[:start] + rng.randbytes(len(piece)) + data[end:]
            case 2:
                data = data[:start] + data[end:]
            case 3:
                data = data[:start] + bytes(len(piece)) + data[end:]
            case 4:
                data = data[:at] + piece + data[at:]
            case 5:
                data = data[:start]
            case 6:
                data = data[:at] + rng.randbytes(len(piece)) + data[at:]
            case 7:
                lines = data.splitlines(keepends=True)
                rng.shuffle(lines)
                data = b"".join(lines[: rng.randrange(1, len(lines) + 1)]) if lines else data
            case _:
                data = data[:start] + other[start:end] + data[end:]
        if not data:
            return data
    return data


def bodies(events):
    return {event.id: json.dumps(event_to_json(event)) for event in events}


def test_changed_job_files(cases, counted):
    original = written()
    expected = bodies(event for batch in some_actions() for event in batch)
    other = b"".join(write_line(n, b'[{"id":"other"}]') for n in range(200))
    pen = a_pen()
    whole = some = refused = 0
    for seed in range(cases(MUTATED_JOBS)):
        changed = mutate(original, random.Random(seed), other)
        home = MemoryHome({"job-demo": changed})
        try:
            book = opened(home, pen, remembered=len(expected))
        except RecordError:
            assert home.files["job-demo"] == changed, seed
            refused += 1
            continue
        assert home.files["job-demo"] == changed, seed
        found = bodies(book.fold)
        assert found.items() <= expected.items(), seed
        assert found == expected or book.told, seed
        whole, some = whole + (found == expected), some + (found != expected)
        if seed % 5 == 0:
            book.enter("job", note="goes on")
            book.close()
            again = opened(home, pen)
            assert bodies(again.fold).items() >= found.items(), seed
            assert again.job.note == "goes on", seed
    counted(
        f"changed job files: {whole + some + refused}, of which {whole} opened whole, "
        f"{some} in part with the rest told, {refused} refused untouched"
    )
    assert whole
    assert some
    assert refused


def an_export():
    writer = ParcelWriter()
    lines = [writer.title()]
    lines += [writer.event("job-demo", event) for batch in some_actions() for event in batch]
    lines += [writer.picture(blake2b(PICTURE, digest_size=16).hexdigest(), PICTURE), writer.end()]
    return b"".join(lines)


def test_changed_exports(cases, counted):
    original = an_export()
    expected = bodies(event for batch in some_actions() for event in batch)
    other = b"".join(write_line(n, b'{"ledger":"job-x","event":{}}') for n in range(300))
    whole = some = refused = 0
    for seed in range(cases(MUTATED_EXPORTS)):
        changed = mutate(original, random.Random(seed), other)
        try:
            parcel = read_parcel(changed)
        except RecordError:
            refused += 1
            continue
        found = bodies(event for events in parcel.ledgers.values() for event in events)
        assert found.items() <= expected.items(), seed
        complete = found == expected and list(parcel.pictures.values()) == [PICTURE]
        assert complete or parcel.faults, seed
        whole, some = whole + (not parcel.faults), some + bool(parcel.faults)
    counted(
        f"changed export files: {whole + some + refused}, of which {whole} were whole after all, "
        f"{some} named the lines that are not, {refused} refused"
    )
    assert some
    assert refused


def a_book(files=None, seed=1):
    home = MemoryHome(files)
    ticking = iter(range(NOW, NOW + 10**9, 1000))
    return asyncio.run(open_book(home, lambda: next(ticking), random.Random(seed).randbytes))


def test_a_bad_export_is_refused_whole_with_line_and_reason_and_changes_nothing():
    data = an_export()
    lines = data.splitlines(keepends=True)
    lines[4] = lines[4].replace(b"Demo", b"Dumo", 1).replace(b"DEMO", b"DUMO", 1)
    book = a_book()
    with pytest.raises(DamagedFile, match=r"Nothing was taken: line 5: damaged"):
        asyncio.run(book.take(read_parcel(b"".join(lines))))
    assert book.jobs() == ()


def test_the_good_part_of_a_bad_export_is_taken_on_the_users_word_and_the_rest_is_named():
    lines = an_export().splitlines(keepends=True)
    del lines[5]
    parcel = read_parcel(b"".join(lines))
    assert [(fault.line, fault.reason.key) for fault in parcel.faults] == [
        (6, "records.line_missing")
    ]
    book = a_book()
    taken = asyncio.run(book.take(parcel, take_good_part=True))
    total = sum(len(batch) for batch in some_actions())
    assert len(taken["job-demo"].new) == total - 1
    assert len(book.jobs()) == 1


def test_an_export_cut_short_is_named_as_such():
    lines = an_export().splitlines(keepends=True)
    parcel = read_parcel(b"".join(lines[:-1]))
    assert [fault.reason.key for fault in parcel.faults] == ["records.cut_short"]


@pytest.mark.parametrize(
    "body",
    [
        b"[" * 100_000,
        b'{"ledger":"job-../../etc","event":{}}',
        b'{"ledger":"job-a","event":{"id":1}}',
        b'{"ledger":"job-a","event":[]}',
        b'{"ledger":"job-a","event":NaN}',
        b'{"picture":"../x","base64":""}',
        b'{"picture":"%b","base64":"AAAA"}' % (b"0" * 32),
        b'{"picture":"%b","base64":"*"}' % (b"0" * 32),
        b"\xff\xfe",
        b"1" * 5000,
        b"null",
    ],
)
def test_a_hostile_line_with_a_good_checksum_is_named_and_not_taken(body):
    title = ParcelWriter().title()
    parcel = read_parcel(title + write_line(1, body))
    assert parcel.faults[0].line == 2
    assert not parcel.ledgers
    assert not parcel.pictures


def a_hostile_event(**changes):
    document = {**event_to_json(demo_events()[0]), **changes}
    return write_line(1, json.dumps([document]).encode())


@pytest.mark.parametrize(
    "changes",
    [
        {"id": "x"},
        {"at": -1},
        {"at": True},
        {"who": 5},
        {"record": "job/../x"},
        {"field": ""},
        {"replaces": "abc"},
        {"replaces": [5]},
        {"undoes": 7},
        {"surprise": 1},
    ],
)
def test_an_event_that_is_none_is_told_and_left_out(changes):
    title = written().splitlines(keepends=True)[0]
    home = MemoryHome({"job-demo": title + a_hostile_event(**changes)})
    book = opened(home, a_pen())
    assert len(book) == 0
    assert [told.key for told in book.told] == ["records.unreadable_events"]


def test_a_value_that_this_version_cannot_read_is_kept_and_named():
    title = written().splitlines(keepends=True)[0]
    newer = [
        a_hostile_event(record="job", field="head_face", value={"kind": "of glass"}),
        a_hostile_event(record="job", field="title", value=[1, 2]),
        a_hostile_event(record="job", field="colour", value="red"),
        a_hostile_event(record="turbo/1", field="size", value=7),
        a_hostile_event(record="cylinder/1", field="bore", value={"typed": "x", "mm": "y"}),
        a_hostile_event(record="cylinder/1", field="groove_width", value={"typed": "x", "mm": 1}),
    ]
    for line in newer:
        book = opened(MemoryHome({"job-demo": title + line}), a_pen())
        assert len(book.job.unread) == 1
        assert book.told == ()


def test_a_newer_file_is_refused_whole_and_left_untouched():
    newer = write_line(0, b'{"standproud":"job","format":2,"of":"demo"}') + b"whatever comes then\n"
    home = MemoryHome({"job-demo": newer})
    with pytest.raises(NewerFormat, match="written by a newer version"):
        opened(home, a_pen())
    assert home.files["job-demo"] == newer


def test_a_file_of_another_job_is_refused():
    home = MemoryHome({"job-demo": write_line(0, b'{"standproud":"job","format":1,"of":"b"}')})
    with pytest.raises(DamagedFile, match="names something else"):
        opened(home, a_pen())


def test_a_job_whose_file_lost_its_end_between_two_lines_is_told():
    data = written()
    short = b"".join(data.splitlines(keepends=True)[:-3])
    book = opened(MemoryHome({"job-demo": short}), a_pen(), remembered=115)
    assert [told.key for told in book.told] == ["records.fewer_events"]


def test_a_lost_or_damaged_list_is_made_anew_from_the_jobs(cases, counted):
    files = {}
    book = a_book(files)
    for number in range(4):
        book.leave(asyncio.run(book.new_job(title=f"Engine {number}", engine="V8")).id)
    expected = book.jobs()
    book.close()
    rounds = cases(2_000)
    for seed in range(rounds):
        rng = random.Random(seed)
        changed = dict(files)
        changed["list"] = mutate(files["list"], rng, b"x" * 9000) if seed else b""
        found = a_book(changed, seed)
        asyncio.run(found.find_unlisted())
        assert {line.id for line in found.jobs()} == {line.id for line in expected}, seed
        for line in found.jobs():
            asyncio.run(found.open_job(line.id))
            found.leave(line.id)
        assert set(found.jobs()) == set(expected), seed
        found.close()
    counted(f"changed lists of jobs: {rounds}, every job is listed again")


def test_an_export_put_together_from_two_is_noticed_although_each_line_is_good():
    lines, others = (an_export().splitlines(keepends=True) for _ in range(2))
    event = demo_events()[90]
    others[4] = write_line(4, to_bytes({"ledger": "job-demo", "event": event_to_json(event)}))
    parcel = read_parcel(b"".join([*lines[:4], others[4], *lines[5:]]))
    assert [fault.reason.key for fault in parcel.faults] == ["records.sum_differs"]


def test_an_export_of_a_newer_version_is_refused_whole():
    newer = write_line(0, b'{"standproud":"export","format":2,"of":""}') + b"whatever"
    with pytest.raises(NewerFormat, match="Update the app"):
        read_parcel(newer)


def test_another_file_of_ours_is_not_taken_for_an_export():
    with pytest.raises(DamagedFile, match="names something else"):
        read_parcel(written())


@pytest.mark.parametrize("data", [b"", b"\0" * 999, b"PK\x03\x04 something else", b"{}"])
def test_a_file_of_something_else_is_refused(data):
    with pytest.raises(DamagedFile, match="can be read as ours"):
        read_parcel(data)
