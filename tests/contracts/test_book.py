"""What the book promises to the screens."""

import asyncio
import itertools
import random

import pytest

from core.errors import DamagedFile, InputError, NotSaved, StoreBusy
from core.records import STEPS, live, open_book, read_parcel
from core.records.model import (
    HeadFace,
    HeadFaceKind,
    JobState,
    Length,
    Measured,
    ReadingKind,
    Tapped,
    TemplateBank,
)
from core.records.pictures import FILE, name_of
from tests.homes import MemoryHome

NOON = 1_780_000_000_000
HOUR = 3_600_000


def run(coroutine):
    return asyncio.run(coroutine)


class Device:
    """A device with its disk and its clock."""

    def __init__(self, seed=1):
        self.files, self.held = {}, set()
        self.random = random.Random(seed)
        self.time = itertools.count(NOON, 1000)

    def open(self):
        home = MemoryHome(self.files, self.held)
        return run(open_book(home, lambda: next(self.time), self.random.randbytes))

    def kill(self):
        """The app ends without closing anything."""
        self.held.clear()


@pytest.fixture
def device():
    return Device()


def length(mm):
    return Length(typed=f"{mm} mm", mm=mm)


def measured(cylinder, go=0.25, **more):
    parts = {"kind": ReadingKind.LEAVES, "place": "12", "tapped": Tapped.BEFORE} | more
    return Measured(cylinder=cylinder, go=length(go), no_go=length(go + 0.05), **parts)


def begun(book, title="Pulling engine", **fields):
    job = run(book.new_job(title=title, **fields))
    job.add_bank("left", ("1", "3"), {"bore": length(101.6), "wire": length(1.04)})
    return job


def test_a_reading_is_there_after_the_app_was_killed_right_after_it(device):
    job = begun(device.open())
    cylinder = job.job.cylinders[0].id
    job.add_reading(measured(cylinder, rocks=True, instrument="instrument/1"))
    device.kill()
    again = run(device.open().open_job(job.id)).job
    assert again.cylinders[0].readings[0].measured == measured(
        cylinder, rocks=True, instrument="instrument/1"
    )


def test_a_reading_says_who_made_it_and_when_and_a_correction_is_told(device):
    book = device.open()
    book.name_device("Stand phone")
    job = begun(book)
    cylinder = job.job.cylinders[0].id
    job.add_reading(measured(cylinder))
    reading = job.job.cylinders[0].readings[0]
    assert (reading.who, reading.corrected) == ("Stand phone", False)
    assert NOON <= reading.at <= NOON + HOUR
    job.correct(reading.id, measured(cylinder, go=0.3))
    reading = job.job.cylinders[0].readings[0]
    assert reading.corrected
    assert [change.value.go.mm for change in job.history(reading.id, "measured")] == [0.25, 0.3]
    assert [change.stands for change in job.history(reading.id, "measured")] == [False, True]


def test_a_step_back_takes_the_reading_away_and_can_be_taken_back_after_a_restart(device):
    book = device.open()
    job = begun(book)
    job.add_reading(measured(job.job.cylinders[0].id))
    job.undo()
    assert job.job.cylinders[0].readings == ()
    book.close()
    job = run(device.open().open_job(job.id))
    job.redo()
    assert len(job.job.cylinders[0].readings) == 1
    assert not job.can_redo


def test_saving_a_reading_writes_its_own_file_once_and_no_other(device):
    book = device.open()
    job = begun(book)
    before = dict(device.files)
    job.add_reading(measured(job.job.cylinders[0].id))
    changed = {name for name in device.files if device.files[name] != before.get(name)}
    assert changed == {f"job-{job.id}"}
    assert device.files[f"job-{job.id}"].startswith(before[f"job-{job.id}"])


def test_deleting_is_a_mark_that_can_be_taken_off(device):
    book = device.open()
    job = begun(book)
    cylinder = job.job.cylinders[0].id
    job.delete(cylinder)
    assert [each.number for each in live(job.job.cylinders)] == ["3"]
    job.restore(cylinder)
    assert [each.number for each in live(job.job.cylinders)] == ["1", "3"]
    job.delete("job")
    book.refresh(job.id)
    assert book.jobs() == ()
    assert [line.title for line in book.jobs(deleted=True)] == ["Pulling engine"]


@pytest.mark.parametrize(
    ("query", "found"),
    [
        ("", ["Öl pump", "Tractor", "Pulling engine"]),
        ("pull", ["Pulling engine"]),
        ("ÖL", ["Öl pump"]),
        ("v8 tra", ["Tractor"]),
        ("B-17", ["Tractor"]),
        ("planned", ["Öl pump", "Pulling engine"]),
        ("pull tractor", []),
    ],
)
def test_search_finds_jobs_that_hold_every_word_last_touched_first(device, query, found):
    book = device.open()
    begun(book)
    book.leave(begun(book, "Tractor", engine="V8", block="B-17", state=JobState.RUN).id)
    begun(book, "Öl pump")
    assert [line.title for line in book.jobs(query)] == found
    book.close()
    assert [line.title for line in device.open().jobs(query)] == found


def test_the_list_counts_and_is_up_to_date_after_the_app_was_killed(device):
    book = device.open()
    job = begun(book)
    job.add_reading(measured(job.job.cylinders[0].id))
    job.enter("job", state=JobState.AT_WORK)
    device.kill()
    (line,) = device.open().jobs()
    assert (line.cylinders, line.readings, line.state) == (2, 1, "at work")
    assert line.events == len(job)


def test_a_job_that_was_never_begun_is_not_listed(device):
    run(device.open().open_job("never"))
    device.kill()
    assert device.open().jobs() == ()


def test_a_second_window_is_told_and_gets_the_book_when_the_first_lets_go(device):
    book = device.open()
    with pytest.raises(StoreBusy):
        device.open()
    book.close()
    device.open().close()


def test_a_duplicate_keeps_what_stays_in_the_block_and_nothing_else(device):
    book = device.open()
    job = begun(book, engine="V8", block="B-17", note="old words")
    cylinder = job.job.cylinders[0].id
    job.enter_all([(cylinder, "groove_depth@3", length(0.78)), (cylinder, "joint", "5")])
    job.enter("job", head_face=HeadFace(kind=HeadFaceKind.FLAT), state=JobState.DONE)
    job.add_reading(measured(cylinder))
    job.tick(STEPS[0])
    job.add("evidence", cylinder=cylinder, sheet_annealed=1)
    copy = run(book.duplicate(job.id, title="Next"))
    new = copy.job
    assert (new.title, new.engine, new.block, new.copied_from) == ("Next", "V8", "B-17", job.id)
    assert new.state is JobState.PLANNED
    assert new.head_face is None
    assert (new.note, new.steps) == ("", ())
    first = new.cylinders[0]
    assert (first.number, first.joint, first.bore) == ("1", "5", length(101.6))
    assert first.groove_depth == {"3": length(0.78)}
    assert first.id != cylinder
    assert (first.readings, first.evidence) == ((), ())


def test_a_job_can_be_laid_out_from_a_template_of_the_shop(device):
    book = device.open()
    banks = (
        TemplateBank(name="left", cylinders=("1", "3")),
        TemplateBank(name="right", cylinders=("2",)),
    )
    book.shop.add("template", name="Vee", engine="V3", banks=banks, wire=length(1.04))
    book.close()
    book = device.open()
    (template,) = book.shop.shop.templates
    job = run(book.new_job(template=template, title="From template")).job
    assert [(bank.name, [c.number for c in bank.cylinders]) for bank in job.banks] == [
        ("left", ["1", "3"]),
        ("right", ["2"]),
    ]
    assert {cylinder.wire for cylinder in job.cylinders} == {length(1.04)}
    assert job.engine == "V3"


def test_everything_of_the_shop_comes_back_as_entered(device):
    book = device.open()
    shop = book.shop
    spool = shop.add(
        "spool", name="S1", nominal=length(1.04), miked=tuple(map(length, (1.04, 1.05, 1.04)))
    )
    cutter = shop.add("cutter", name="C1", width=length(1.016))
    shop.add("test_groove", spool=spool, cutter=cutter, interference=length(0.02), holds=True)
    shop.add("sheet", thickness=length(1.27), material="soft copper", count=3)
    shop.add("leaf_set", name="L1", leaves=tuple(map(length, (0.25, 0.28))))
    shop.add("instrument", name="I1", kind=ReadingKind.CALIPER, resolution=length(0.01))
    before = shop.shop
    assert (len(before.spools), len(before.cutters), before.test_grooves[0].holds) == (1, 1, True)
    assert before.spools[0].miked[1] == length(1.05)
    device.kill()
    assert device.open().shop.shop == before


def test_a_value_that_does_not_fit_is_refused_by_name_and_changes_nothing(device):
    job = begun(device.open())
    cylinder = job.job.cylinders[0].id
    events = len(job)
    for field, value in [
        ("bore", "4 in"),
        ("bore", Length(typed="x", mm=float("nan"))),
        ("number", 5),
        ("groove_width", length(1.0)),
        ("bore@3", length(1.0)),
        ("colour", "red"),
        ("readings", ()),
    ]:
        with pytest.raises(InputError, match=field.replace("_", " ").partition("@")[0]):
            job.enter_all([(cylinder, "note", "also not kept"), (cylinder, field, value)])
    assert len(job) == events


def test_the_demo_job_is_marked_the_same_every_time_and_comes_back_when_deleted(device):
    book = device.open()
    demo = run(book.add_demo())
    assert demo.job.demo
    assert demo.job.unread == ()
    assert demo.job.unplaced == ()
    before = repr(demo.job)
    demo.delete("job")
    assert repr(run(book.add_demo()).job) == before
    assert len(book.jobs()) == 1
    assert book.jobs()[0].demo
    assert not demo.job.deleted
    other = run(Device(9).open().add_demo())
    assert repr(other.job) == before


def test_export_and_import_carry_everything_twice_over_and_both_ways(device):
    book, other_device = device.open(), Device(7)
    other = other_device.open()
    job = begun(book)
    picture = run(book.pictures.put(b"a picture"))
    job.add("evidence", cylinder=job.job.cylinders[0].id)
    evidence = job.job.cylinders[0].evidence[0].id
    job.enter_all([(evidence, f"pictures@{picture}", "print at three")])
    book.shop.add("sheet", thickness=length(1.27))
    data = run(book.export())
    for expected in (len(job), 0):
        parcel = read_parcel(data)
        incoming = {each.ledger: each for each in run(other.preview(parcel))}
        assert incoming[f"job-{job.id}"].new == expected
        assert incoming[f"job-{job.id}"].title == "Pulling engine"
        taken = run(other.take(parcel))
        assert len(taken[f"job-{job.id}"].new) == expected
    copy = run(other.open_job(job.id))
    assert repr(copy.job) == repr(job.job)
    assert repr(other.shop.shop) == repr(book.shop.shop)
    assert run(other.pictures.get(picture)) == b"a picture"
    copy.enter("job", note="from the track")
    job.enter("job", note="from the shop")
    parcel = read_parcel(run(other.export([job.id])))
    incoming = run(book.preview(parcel))
    assert incoming[0].differs == (("job", "note"),)
    assert job.job.note == "from the shop"
    run(book.take(parcel))
    (rivals,) = job.rivals()
    assert {rivals.shown.value, *(each.value for each in rivals.others)} == {
        "from the track",
        "from the shop",
    }


def test_looking_at_what_would_come_in_changes_nothing(device):
    book, other = device.open(), Device(7)
    begun(book)
    data = run(book.export())
    shown = other.open()
    before = dict(other.files)
    run(shown.preview(read_parcel(data)))
    assert other.files == before


def test_the_age_of_the_last_backup_counts_what_came_since(device):
    book = device.open()
    begun(book)
    assert (book.backup.at, book.backup.jobs_since) == (None, 1)
    run(book.export())
    at = book.backup.at
    assert at > NOON
    assert book.backup.jobs_since == 0
    run(book.add_demo())
    assert book.backup.jobs_since == 0
    book.leave(begun(book, "Later").id)
    assert book.backup.jobs_since == 1
    run(book.export([book.jobs()[0].id]))
    assert book.backup.at == at
    book.close()
    assert device.open().backup.at == at


def test_a_damaged_or_missing_picture_is_told_and_does_not_keep_a_backup_from_being_made(device):
    book = device.open()
    job = begun(book)
    name = run(book.pictures.put(b"picture"))
    assert name == name_of(b"picture")
    device.files[FILE + name] = b"pictura"
    with pytest.raises(DamagedFile, match="not what was kept"):
        run(book.pictures.get(name))
    with pytest.raises(DamagedFile, match="not on this device"):
        run(book.pictures.get("0" * 32))
    evidence = job.add("evidence", cylinder=job.job.cylinders[0].id)
    job.enter_all([(evidence, f"pictures@{name}", "lost")])
    parcel = read_parcel(run(book.export()))
    assert parcel.faults == []
    assert parcel.pictures == {}
    run(book.pictures.put(b"picture"))
    assert read_parcel(run(book.export())).pictures == {name: b"picture"}


def test_one_job_that_cannot_be_opened_is_told_and_leaves_the_others_alone(device):
    book = device.open()
    bad, good = begun(book, "Bad"), begun(book, "Good")
    device.kill()
    device.files[f"job-{bad.id}"] = b"\0" * 5000
    book = device.open()
    assert {line.title: bool(line.trouble) for line in book.jobs()} == {"Bad": True, "Good": False}
    assert [told.key for told in book.told] == ["records.job_unreadable"]
    with pytest.raises(DamagedFile, match="left untouched"):
        run(book.open_job(bad.id))
    assert device.files[f"job-{bad.id}"] == b"\0" * 5000
    assert run(book.open_job(good.id)).job.title == "Good"


def test_drafts_and_settings_stay_on_this_device(device):
    book = device.open()
    book.notebook.put("draft/check", {"go": "11"})
    book.notebook.put("units", "inch")
    book.notebook.put("units", None)
    for turn in range(500):
        book.notebook.put("view", turn)
    device.kill()
    again = device.open()
    assert again.notebook.get("draft/check") == {"go": "11"}
    assert again.notebook.get("units") is None
    assert again.notebook.get("view") == 499
    assert len(device.files["device"]) < 30_000
    assert b"draft" not in run(again.export())


def test_a_device_keeps_its_key_and_its_name_and_two_devices_differ(device):
    book = device.open()
    book.name_device("Stand phone")
    key = book.device.id
    book.close()
    again = device.open()
    assert (again.device.id, again.device.name) == (key, "Stand phone")
    assert Device(2).open().device.id != key


def test_a_cloned_device_never_makes_an_id_twice(device):
    job_id = begun(device.open()).id
    device.kill()
    clone = Device(33)
    clone.files.update(device.files)
    one, two = run(device.open().open_job(job_id)), run(clone.open().open_job(job_id))
    one.enter("job", note="one")
    two.enter("job", note="two")
    merged = one.merge(two.fold)
    assert merged.clashing == ()
    assert len(one.rivals()) == 1


def test_the_list_is_tidied_when_most_of_it_is_old(device):
    for turn in range(700):
        book = device.open()
        job = run(book.open_job("1")) if turn else run(book.new_job(title="Only"))
        if turn == 0:
            job_id = job.id
        else:
            book.leave("1")
        book.close()
    assert [line.id for line in device.open().jobs()] == [job_id]
    assert len(device.files["list"]) < 700 * 60


def test_leaving_with_a_full_disk_is_told_and_the_next_start_reads_the_job(device, monkeypatch):
    book = device.open()
    job = begun(book)

    def refuse(*_):
        raise NotSaved("full")

    monkeypatch.setattr(book._index, "_append", refuse)
    job.enter("job", title="Changed")
    with pytest.raises(NotSaved):
        book.leave(job.id)
    device.kill()
    assert [line.title for line in device.open().jobs()] == ["Changed"]


def test_every_step_has_words_and_its_cautions_have_too():
    for step in STEPS:
        assert step.words
        assert all(step.caution_words)
    assert len({step.key for step in STEPS}) == len(STEPS)
