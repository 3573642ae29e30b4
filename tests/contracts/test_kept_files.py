"""What every home of kept files promises; each test runs over all of them."""

import asyncio
import random

import pytest

from core.errors import NotSaved, StoreBusy
from core.records.file_storage import FileHome
from mobile.opfs_storage import OpfsHome
from tests.homes import FakeFolder, MemoryHome


class MemoryPlace:
    def __init__(self, tmp_path):
        self.files, self.held = {}, set()

    def home(self):
        return MemoryHome(self.files, self.held)


class FilePlace:
    def __init__(self, tmp_path):
        self.folder = tmp_path / "book"

    def home(self):
        return FileHome(self.folder)


class BrowserPlace:
    def __init__(self, tmp_path):
        self.folder = FakeFolder()

    def home(self):
        return OpfsHome(self.folder)


@pytest.fixture(params=[MemoryPlace, FilePlace, BrowserPlace])
def place(request, tmp_path):
    return request.param(tmp_path)


def opened(place, name="notes"):
    home = place.home()
    return home, asyncio.run(home.open(name))


def close(home, port):
    port.close()
    home.close()


def kept(place, name="notes"):
    home, port = opened(place, name)
    data = port.read()
    close(home, port)
    return data


def test_a_new_file_is_empty(place):
    assert kept(place) == b""


def test_what_was_appended_is_there_in_order_after_reopening(place):
    home, port = opened(place)
    port.append(b"one,")
    port.append(b"two")
    close(home, port)
    assert kept(place) == b"one,two"


def test_appending_goes_on_after_reopening(place):
    for part in (b"one,", b"two,", b"three"):
        home, port = opened(place)
        port.append(part)
        close(home, port)
    assert kept(place) == b"one,two,three"


def test_replacing_leaves_only_the_new_content_and_appending_goes_on(place):
    home, port = opened(place)
    port.append(b"old and long")
    port.replace(b"new,")
    assert port.read() == b"new,"
    port.append(b"more")
    close(home, port)
    assert kept(place) == b"new,more"


def test_a_file_can_be_replaced_again_and_again(place):
    for turn in range(5):
        home, port = opened(place)
        port.replace(b"%d" % turn)
        close(home, port)
        assert kept(place) == b"%d" % turn


def test_a_new_file_can_be_replaced(place):
    home, port = opened(place)
    port.replace(b"first")
    close(home, port)
    assert kept(place) == b"first"


def test_every_byte_value_and_a_megabyte_come_back(place):
    data = random.Random(4).randbytes(1 << 20) + bytes(range(256))
    home, port = opened(place)
    port.append(data)
    close(home, port)
    assert kept(place) == data


def test_a_second_window_is_told_that_the_book_is_open(place):
    home, port = opened(place)
    with pytest.raises(StoreBusy):
        opened(place)
    close(home, port)
    assert kept(place) == b""


def test_names_are_those_of_the_files_made(place):
    home = place.home()
    ports = [asyncio.run(home.open(name)) for name in ("job-1", "job-2", "list")]
    assert set(asyncio.run(home.names())) >= {"job-1", "job-2", "list"}
    for port in ports:
        port.replace(b"x")
        port.close()
    assert set(asyncio.run(home.names())) == {"job-1", "job-2", "list"}
    home.close()


def test_a_lost_file_says_not_saved_and_opening_it_again_helps(place):
    home, port = opened(place)
    port.append(b"kept,")
    port.close()
    for save in (port.append, port.replace):
        with pytest.raises(NotSaved):
            save(b"lost")
    again = asyncio.run(home.open("notes"))
    again.append(b"and more")
    close(home, again)
    assert kept(place) == b"kept,and more"


@pytest.mark.parametrize("seed", range(20))
def test_any_order_of_calls_ends_as_in_a_list_of_bytes(place, seed):
    rng = random.Random(seed)
    expected = b""
    home, port = opened(place)
    for _ in range(40):
        data = rng.randbytes(rng.randrange(0, 200))
        match rng.randrange(4):
            case 0:
                port.replace(data)
                expected = data
            case 1:
                close(home, port)
                home, port = opened(place)
            case _:
                port.append(data)
                expected += data
        assert port.read() == expected
    close(home, port)
    assert kept(place) == expected
