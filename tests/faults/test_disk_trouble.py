"""Full disk, failing flush, lost handle, jumping clock: told, nothing lost, works again."""

import asyncio
import random
from pathlib import Path

import pytest

from core.errors import NotSaved, StandproudError
from core.records import open_book
from core.records.file_storage import Disk, FileHome, FilePort
from core.records.model import Length
from core.records.store import EventStore
from mobile.opfs_storage import OpfsHome
from tests.homes import FakeDisk, FakeFolder, MemoryHome, at_call, broken, full

DAY = 86_400_000
NOON = 1_780_000_000_000


class OnDisk:
    kind = "folder"

    def __init__(self, tmp_path):
        self.place = FakeDisk()
        self.tmp_path = tmp_path

    def home(self):
        return FileHome(self.tmp_path, self.place)

    def lose(self):
        self.place.handles = dict.fromkeys(self.place.handles)


class InBrowser:
    kind = "browser"

    def __init__(self, tmp_path):
        self.place = FakeFolder()

    def home(self):
        return OpfsHome(self.place)

    def lose(self):
        for handle in self.place.handles:
            handle.lose()


@pytest.fixture(params=[OnDisk, InBrowser], ids=lambda each: each.kind)
def where(request, tmp_path):
    return request.param(tmp_path)


def ticking():
    times = iter(range(NOON, NOON + 10**9, 1000))
    return lambda: next(times)


def book_of(where, now=None):
    return asyncio.run(open_book(where.home(), now or ticking(), random.Random(3).randbytes))


def length(mm):
    return Length(typed=f"{mm} mm", mm=mm)


def begun(where):
    book = book_of(where)
    job = asyncio.run(book.new_job(title="Stand"))
    job.add_bank("left", "12", {"bore": length(100.0)})
    return book, job


def try_each_fault(where, error, work):
    """Let each later call that changes the disk fail once; `work` must tell and must go on."""
    index, told = 0, 0
    while True:
        book, job = begun(where)
        faults = where.place.faults
        faults.fail = at_call(len(faults.calls) + index, error())
        start = len(faults.calls)
        told += work(book, job, index)
        reached = len(faults.calls) > start + index
        faults.fail = lambda now, call: None
        kept = {event.id: event for event in job.fold}
        book.close()
        again = book_of(where)
        reread = asyncio.run(again.open_job(job.id))
        assert {event.id: event for event in reread.fold} == kept
        assert reread.told == ()
        again.close()
        if not reached:
            return index, told
        index += 1


@pytest.mark.parametrize("error", [full, broken])
def test_each_failing_call_while_saving_is_told_and_the_next_try_is_kept(where, error, counted):
    def work(book, job, index):
        told = 0
        for number in range(3):
            before = len(job)
            try:
                job.enter("job", note=f"try {index} {number}")
            except NotSaved:
                assert len(job) == before
                assert job.job.note != f"try {index} {number}"
                told += 1
                job.enter("job", note=f"try {index} {number}")
            assert job.job.note == f"try {index} {number}"
        return told

    calls, told = try_each_fault(where, error, work)
    counted(f"{error.__name__} disk while saving, {where.kind}: {calls} calls, {told} told, 0 lost")
    assert told >= 6


def test_a_full_disk_that_stays_full_keeps_telling_and_lets_everything_be_read(where):
    book, job = begun(where)

    def fail(now, call):
        if call in ("write", "create"):
            raise full()

    where.place.faults.fail = fail
    for _ in range(3):
        with pytest.raises(NotSaved, match="disk is full"):
            job.enter("job", note="no room")
    with pytest.raises(NotSaved, match="disk is full"):
        job.undo()
    assert job.job.title == "Stand"
    with pytest.raises(NotSaved):
        book.leave(job.id)
    assert asyncio.run(book.open_job(job.id)).job.title == "Stand"
    where.place.faults.fail = lambda now, call: None
    again = asyncio.run(book.open_job(job.id))
    again.enter("job", note="room again")
    book.close()
    book = book_of(where)
    assert asyncio.run(book.open_job(job.id)).job.note == "room again"
    book.close()


def test_a_lost_handle_is_told_and_opening_the_job_again_goes_on(where):
    book, job = begun(where)
    where.lose()
    with pytest.raises(NotSaved, match="Not saved"):
        job.enter("job", note="into the void")
    book.close()
    if where.kind == "browser":
        where.place.held.clear()
    book = book_of(where)
    job = asyncio.run(book.open_job(job.id))
    assert job.job.title == "Stand"
    assert job.job.note == ""
    job.enter("job", note="and on")
    job = asyncio.run(book.reopen(job.id))
    assert job.job.note == "and on"
    book.close()


@pytest.mark.parametrize("error", [full, broken])
def test_a_replacing_write_that_fails_at_any_call_loses_nothing(error, counted):
    """Old content or new, and what is appended afterwards is never lost behind the switch."""
    outcomes = 0
    for kind in (FakeDisk, FakeFolder):
        for index in range(12):
            place = kind()
            port = port_of(place)
            port.append(b"old,")
            place.faults.fail = at_call(len(place.faults.calls) + index, error())
            possible = {b"old,", b"new,"}
            try:
                port.replace(b"new,")
                possible = {b"new,"}
            except NotSaved:
                pass
            try:
                port.append(b"then,")
                possible = {each + b"then," for each in possible}
            except NotSaved:
                # What was refused may be there whole; opening again tells.
                port.close()
                port = port_of(place)
                possible |= {each + b"then," for each in possible}
            assert port.read() in possible
            place.faults.fail = lambda now, call: None
            port.append(b"last")
            expected = port.read()
            for after in place.after_power_cut("notes"):
                assert port_of(after).read() == expected
                outcomes += 1
    counted(f"{error.__name__} disk while replacing, both homes: {outcomes} outcomes, none lost")


@pytest.mark.parametrize("kind", [FakeDisk, FakeFolder])
def test_what_is_left_of_a_long_failed_entry_never_follows_a_short_one(kind):
    place = kind()
    port = port_of(place)
    port.append(b"kept,")
    place.faults.fail = at_call(len(place.faults.calls), broken())
    with pytest.raises(NotSaved):
        port.append(b"a long entry that was not saved,")
    place.faults.fail = lambda now, call: None
    port.append(b"short")
    assert port.read() == b"kept,short"
    for after in place.after_power_cut("notes"):
        assert port_of(after).read() == b"kept,short"


def port_of(place):
    if isinstance(place, FakeDisk):
        return FilePort(Path("notes"), place)
    place.held.clear()
    return asyncio.run(OpfsHome(place).open("notes"))


def test_a_real_full_disk_is_told():
    """`/dev/full` is a real device on which every write finds the disk full."""
    if not Path("/dev/full").exists():
        pytest.skip("this system has no /dev/full")
    disk = Disk()
    handle = disk.open(Path("/dev/full"))
    with pytest.raises(OSError, match="No space left"):
        disk.write(handle, 0, b"x")
    disk.close(handle)


CLOCKS = {
    "goes back a day": [NOON, NOON - DAY, NOON - DAY],
    "back and forth": [NOON, NOON - 3 * DAY, NOON + 10, NOON - 5, NOON + 20],
    "stands still": [NOON] * 6,
    "a century ahead for a moment": [NOON, NOON + 36_500 * DAY, NOON + 100, NOON + 200],
    "starts at zero": [0, 0, 5, NOON],
}


@pytest.mark.parametrize("times", CLOCKS.values(), ids=CLOCKS)
def test_a_jumping_clock_neither_loses_nor_reorders_what_is_entered(times):
    clock = {"now": NOON}
    home = MemoryHome()
    book = asyncio.run(open_book(home, lambda: clock["now"], random.Random(5).randbytes))
    job = asyncio.run(book.new_job(title="Clock"))
    notes = []
    for turn, clock["now"] in enumerate(times):
        job.enter("job", note=f"note {turn}")
        notes.append(f"note {turn}")
        assert job.job.note == notes[-1]
    assert [change.value for change in job.history("job", "note")] == notes
    book.close()
    clock["now"] = NOON
    book = asyncio.run(open_book(home, lambda: clock["now"], random.Random(6).randbytes))
    job = asyncio.run(book.open_job(job.id))
    job.enter("job", note="after opening again")
    assert job.job.note == "after opening again"
    assert job.rivals() == ()
    assert len({event.id for event in job.fold}) == len(job)


def test_a_clock_that_went_back_is_told_once():
    clock = {"now": NOON}
    book = asyncio.run(open_book(MemoryHome(), lambda: clock["now"], random.Random(5).randbytes))
    job = asyncio.run(book.new_job(title="Clock"))
    assert job.enter("job", note="a").told == ()
    clock["now"] -= DAY
    assert [told.key for told in job.enter("job", note="b").told] == ["records.clock_went_back"]
    assert job.enter("job", note="c").told == ()


def test_entries_dated_far_ahead_are_told_with_the_name_of_who_made_them():
    clock = {"now": NOON + 400 * DAY}
    home = MemoryHome()
    book = asyncio.run(open_book(home, lambda: clock["now"], random.Random(5).randbytes))
    book.name_device("Track phone")
    job = asyncio.run(book.new_job(title="Clock"))
    book.close()
    clock["now"] = NOON
    book = asyncio.run(open_book(home, lambda: clock["now"], random.Random(6).randbytes))
    told = asyncio.run(book.open_job(job.id)).told
    assert ["Track phone" in str(sentence) for sentence in told] == [True]


def test_every_refusal_is_one_of_ours():
    with pytest.raises(StandproudError):
        EventStore(MemoryHomePort(b"x" * 300), "job", "x")


class MemoryHomePort:
    def __init__(self, data):
        self.data = data

    def read(self):
        return self.data
