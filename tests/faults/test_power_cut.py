"""The power is cut at every call and every byte of what was on its way, in both homes.

Whatever was acknowledged is there afterwards; of what was not, the whole or nothing; and the next
entry is kept.
"""

import asyncio
import contextlib
from pathlib import Path

import pytest

from core.records.event import Event
from core.records.file_storage import FilePort
from core.records.stamp import Stamp
from core.records.store import EventStore
from mobile.opfs_storage import OpfsHome
from tests.homes import FakeDisk, FakeFolder, FakeHandle, PowerCut, at_call

NAME = "job-x"


class OnDisk:
    kind = "folder"
    fresh = FakeDisk

    @staticmethod
    def open(disk):
        return FilePort(Path(NAME), disk)


class InBrowser:
    kind = "browser"
    fresh = FakeFolder

    @staticmethod
    def open(folder):
        return asyncio.run(OpfsHome(folder).open(NAME))


HOMES = pytest.mark.parametrize("home", [OnDisk, InBrowser], ids=lambda home: home.kind)


def event(number, part=0):
    return Event(
        id=f"{Stamp(1_700_000_000_000 + number, 0, 'phone-0001')}.{part:x}",
        at=1_700_000_000_000 + number,
        who="Ü",
        record=f"reading/{number}",
        field="note",
        value=f"Höhe {number}, part {part}, {'x' * number}",
    )


def action(number):
    return tuple(event(number, part) for part in range(number % 3 + 1))


def store(port):
    return EventStore(port, "job", "x")


def save_until_dark(port, count=4, start=0):
    """Acknowledged events, and those under way when the power went."""
    acknowledged, under_way = [], ()
    try:
        book = store(port)
        for number in range(start, start + count):
            under_way = action(number)
            book.insert(under_way)
            acknowledged += under_way
            under_way = ()
    except PowerCut:
        pass
    return acknowledged, under_way


def check(home, after, acknowledged, under_way):
    book = store(home.open(after))
    found = list(book.events())
    assert found in (acknowledged, [*acknowledged, *under_way])
    book.insert([event(99)])
    book.close()
    assert list(store(home.open(after)).events()) == [*found, event(99)]


def check_every_outcome(home, place, acknowledged, under_way):
    outcomes = 0
    for after in place.after_power_cut(NAME):
        check(home, after, acknowledged, under_way)
        outcomes += 1
    return outcomes


@HOMES
def test_power_cut_at_every_call_of_a_new_book(home, counted):
    outcomes = calls = 0
    while True:
        place = home.fresh()
        place.faults.fail = at_call(calls, PowerCut())
        try:
            port = home.open(place)
            acknowledged, under_way = save_until_dark(port)
        except PowerCut:
            acknowledged, under_way = [], ()
        outcomes += check_every_outcome(home, place, acknowledged, under_way)
        if len(place.faults.calls) <= calls:
            break
        calls += 1
    counted(f"power cut, new book, {home.kind}: {calls} calls, {outcomes} outcomes, none lost")
    assert calls > 8


@HOMES
def test_power_cut_while_a_torn_tail_is_cut_off(home, counted):
    """The rewrite that cuts a torn tail off is itself cut short at every call and byte."""
    outcomes = calls = 0
    while True:
        place = home.fresh()
        port = home.open(place)
        before, _ = save_until_dark(port, 2)
        port.append(b'[3,99,"torn')
        port.close()
        first = len(place.faults.calls)
        place.faults.fail = at_call(first + calls, PowerCut())
        acknowledged, under_way = [], ()
        with contextlib.suppress(PowerCut):
            acknowledged, under_way = save_until_dark(home.open(place), 2, start=7)
        outcomes += check_every_outcome(home, place, [*before, *acknowledged], under_way)
        if len(place.faults.calls) <= first + calls:
            break
        calls += 1
    counted(f"power cut, tail cut off, {home.kind}: {calls} calls, {outcomes} outcomes, none lost")
    assert calls > 5


@HOMES
def test_a_file_cut_at_every_byte_of_its_last_entry_keeps_the_others_and_tells(home, counted):
    place = home.fresh()
    port = home.open(place)
    book = store(port)
    for number in range(3):
        book.insert(action(number))
    size = len(port.read())
    book.insert(action(3))
    whole = port.read()
    for cut in range(size, len(whole)):
        place = home.fresh()
        port = home.open(place)
        port.append(whole[:cut])
        port.close()
        book = store(home.open(place))
        kept = [e for number in range(3) for e in action(number)]
        complete = cut == len(whole) - 1
        assert list(book.events()) == (kept + list(action(3)) if complete else kept)
        assert [told.key for told in book.told] == (
            [] if cut == size or complete else ["records.torn_tail"]
        )
        book.insert([event(50)])
        book.close()
        again = store(home.open(place))
        assert again.events()[-1] == event(50)
        assert again.told == ()
    counted(f"last entry cut at each of {len(whole) - size} bytes, {home.kind}: others kept, told")


@HOMES
def test_these_tests_notice_a_home_that_forgets_to_sync(home, monkeypatch):
    place = home.fresh()
    port = home.open(place)
    store(port).insert(action(0))
    for careless in (FakeDisk, FakeHandle):
        name = "sync" if careless is FakeDisk else "flush"
        monkeypatch.setattr(careless, name, lambda *_: None)
    acknowledged, under_way = save_until_dark(port)
    with pytest.raises(AssertionError):
        check_every_outcome(home, place, [*action(0), *acknowledged], under_way)
