"""However events meet, in whatever order and however often: same values, nothing dropped."""

import itertools
import random

from hypothesis import given, settings
from hypothesis import strategies as st

from core.records.codec import event_from_json, event_to_json, from_bytes, to_bytes
from core.records.event import Event
from core.records.fold import Fold
from core.records.job_book import JobBook
from core.records.ledger import Device, Pen
from core.records.model import JobState, Length
from core.records.stamp import DAY, Clock, Stamp, read_stamp
from core.records.store import EventStore
from tests.homes import MemoryHome, at_once

START = 1_800_000_000_000
RECORDS = ("cylinder/1", "cylinder/2", "job")
HISTORIES = 1_500


class Phone:
    """One device with its own, possibly wrong, clock."""

    def __init__(self, name, rng, home=None):
        self.rng = rng
        self.offset = rng.choice((0, 0, -DAY, DAY * 400, -DAY * 9000, rng.randrange(-5000, 5000)))
        self.stuck = rng.random() < 0.2
        self.home = home or MemoryHome()
        self.name = name
        self.open(0)

    def open(self, sitting):
        clock = Clock(f"{self.name}-{sitting:04x}", self.now)
        device = Device(id=self.name, name=self.name)
        pen = Pen(device=device, clock=clock, randomness=self.rng.randbytes)
        self.job = JobBook(EventStore(at_once(self.home.open("job-a")), "job", "a"), pen, "a")

    def reopen(self, sitting):
        self.job.close()
        self.open(sitting)

    def now(self):
        if self.rng.random() < 0.05:
            self.offset += self.rng.randrange(-DAY, DAY)
        moment = 0 if self.stuck else self.rng.randrange(100_000)
        return max(0, START + self.offset + moment)

    def write(self):
        record = self.rng.choice(RECORDS)
        value = self.rng.randrange(6)
        match self.rng.randrange(5):
            case 0:
                self.job.enter(record, deleted=bool(value % 2))
            case 1:
                self.job.enter(record, note="" if value == 0 else f"note {value}")
            case 2 if record != "job":
                length = Length(typed=f"{value} mm", mm=float(value))
                self.job.enter_all(
                    [(record, "groove_width@12", length), (record, "groove_width@3", length)]
                )
            case 3:
                self.job.enter("job", state=list(JobState)[value])
            case _:
                self.job.enter(record, note=None)


def play(seed, steps=14):
    """Some phones write, take back, settle, meet in part and lose replies; all events of all."""
    rng = random.Random(seed)
    phones = [Phone(name, rng) for name in ("a", "b", "c")[: rng.choice((2, 3))]]
    for step in range(steps):
        phone, other = rng.sample(phones, 2)
        match rng.randrange(8):
            case 0:
                phone.job.undo()
            case 1:
                phone.job.redo()
            case 2:
                events = list(other.job.fold)
                rng.shuffle(events)
                phone.job.merge(events[: rng.randrange(len(events) + 1)])
            case 3:
                phone.job.merge(other.job.fold)
                rivals = phone.job.rivals()
                if rivals:
                    choice = rng.choice(rivals)
                    phone.job.settle(rng.choice((choice.shown, *choice.others)))
            case 4:
                phone.reopen(step + 1)
            case _:
                phone.write()
    return phones


def all_events(phones):
    return list({event.id: event for phone in phones for event in phone.job.fold}.values())


def values(fold):
    return {
        (record, field): [(event.id, event.value) for event in fold.standing(record, field)]
        for record in fold.records()
        for field in fold.current(record)
    }


def meet(phones):
    for one, other in itertools.permutations(phones, 2):
        one.job.merge(other.job.fold)


def check_history(seed):
    phones = play(seed)
    events = all_events(phones)
    rng = random.Random(seed)
    folds = []
    for _ in range(3):
        shuffled = events + rng.choices(events, k=5) if events else []
        rng.shuffle(shuffled)
        folds.append(values(Fold(shuffled)))
    meet(phones)
    views = [values(phone.job.fold) for phone in phones]
    assert all(each == folds[0] for each in folds + views), seed
    assert len({repr(phone.job.job) for phone in phones}) == 1, seed
    check_nothing_is_dropped(events, phones[0].job.fold, seed)
    for phone in phones:
        phone.reopen(0xFFF)
        assert values(phone.job.fold) == folds[0], seed


def check_nothing_is_dropped(events, fold, seed):
    """A value is gone only if somebody who saw it replaced it."""
    replaced = {(e.record, e.field, old) for e in events for old in e.replaces}
    for event in events:
        stands = event in fold.standing(event.record, event.field)
        assert stands != ((event.record, event.field, event.id) in replaced), seed


def test_random_histories_end_alike_on_every_phone():
    for seed in range(HISTORIES):
        check_history(seed)


@settings(max_examples=60, deadline=None)
@given(st.integers(min_value=HISTORIES, max_value=2**40))
def test_more_random_histories(seed):
    check_history(seed)


@settings(max_examples=80, deadline=None)
@given(st.integers(0, 2**40))
def test_redo_after_undo_restores_every_value_and_undo_after_that_takes_it_back(seed):
    phone = play(seed)[0]
    before = shown(phone.job)
    undone = phone.job.undo()
    if undone is None:
        return
    after_undo = shown(phone.job)
    assert phone.job.can_redo
    phone.reopen(0xFFE)
    assert phone.job.redo() is not None
    assert shown(phone.job) == before
    assert phone.job.undo() is not None
    assert shown(phone.job) == after_undo


def shown(job):
    """Standing values of every field, a cleared field counting as one never entered."""
    found = {}
    for record in job.fold.records():
        for field in job.fold.current(record):
            standing = {repr(event.value) for event in job.fold.standing(record, field)}
            if standing != {"None"}:
                found[record, field] = standing
    return found


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 2**40), st.integers(1, 12))
def test_undoing_everything_leaves_what_others_entered(seed, count):
    rng = random.Random(seed)
    mine, other = Phone("a", rng), Phone("b", rng)
    other.write()
    mine.job.merge(other.job.fold)
    before = shown(mine.job)
    for _ in range(count):
        mine.write()
    while mine.job.undo():
        pass
    assert shown(mine.job) == before
    while mine.job.redo():
        pass
    while mine.job.undo():
        pass
    assert shown(mine.job) == before


def test_what_somebody_else_replaced_is_not_taken_back():
    rng = random.Random(1)
    mine, other = Phone("a", rng), Phone("b", rng)
    mine.job.enter("job", note="mine")
    other.job.merge(mine.job.fold)
    other.job.enter("job", note="theirs")
    mine.job.merge(other.job.fold)
    assert not mine.job.can_undo
    assert mine.job.undo() is None
    assert mine.job.job.note == "theirs"


def test_rivals_are_both_offered_with_who_and_when_and_settling_is_one_entry():
    rng = random.Random(2)
    mine, other = Phone("a", rng), Phone("b", rng)
    mine.job.enter("job", note="mine")
    other.job.enter("job", note="theirs")
    mine.job.merge(other.job.fold)
    (rivals,) = mine.job.rivals()
    both = (rivals.shown, *rivals.others)
    assert {(each.who, each.value) for each in both} == {("a", "mine"), ("b", "theirs")}
    theirs = next(each for each in both if each.who == "b")
    assert len(mine.job.settle(theirs).events) == 1
    assert mine.job.rivals() == ()
    assert mine.job.job.note == "theirs"
    other.job.merge(mine.job.fold)
    assert other.job.rivals() == ()
    mine.job.undo()
    assert len(mine.job.rivals()) == 1


def test_two_people_entering_the_same_value_do_not_disagree():
    rng = random.Random(3)
    mine, other = Phone("a", rng), Phone("b", rng)
    mine.job.enter("job", note="same")
    other.job.enter("job", note="same")
    mine.job.merge(other.job.fold)
    assert mine.job.rivals() == ()


def test_an_id_that_is_here_with_another_body_is_named_and_changes_nothing():
    rng = random.Random(4)
    mine = Phone("a", rng)
    event = mine.job.enter("job", note="first").events[0]
    document = event_to_json(event) | {"value": "other body"}
    merged = mine.job.merge([event_from_json(document)])
    assert merged.clashing == (event.id,)
    assert mine.job.job.note == "first"


def test_entering_what_stands_already_writes_nothing():
    mine = Phone("a", random.Random(5))
    assert mine.job.enter("job", note="x").events
    assert mine.job.enter("job", note="x").events == ()
    assert mine.job.enter("job", title=None).events == ()


def test_ids_that_replace_each_other_in_a_circle_still_show_one():
    ids = [f"{Stamp(START, n, 'x-0000')}.0" for n in (1, 2)]
    events = [
        Event(id=a, at=START, who="", record="job", field="note", value=a, replaces=(b,))
        for a, b in (ids, ids[::-1])
    ]
    assert Fold(events).standing("job", "note") == (events[1],)


json_values = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(2**53), 2**53)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(max_size=20),
    lambda inner: (
        st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=5), inner, max_size=4)
    ),
    max_leaves=12,
)


@settings(max_examples=200)
@given(json_values, st.integers(0, 2**43), st.text(max_size=20), st.integers(0, 0xFFFF))
def test_an_event_comes_back_as_it_was_written(value, at, who, count):
    stamp = Stamp(at, count, "ab-01f3")
    if any(0xD800 <= ord(letter) <= 0xDFFF for letter in who):
        return
    event = Event(
        id=f"{stamp}.0",
        at=at,
        who=who,
        record="job",
        field="note",
        value=value,
        replaces=(f"{stamp}.1",),
        undoes=str(stamp),
        restores=f"{stamp}.2",
    )
    again = event_from_json(from_bytes(to_bytes(event_to_json(event))))
    assert again == event
    assert repr(again.value) == repr(value)
    assert again.stamp == stamp


@settings(max_examples=200)
@given(st.lists(st.integers(0, 2**43), min_size=1, max_size=40))
def test_stamps_only_grow_whatever_the_clock_says_and_sort_as_their_texts(times):
    clock_times = iter(times)
    clock = Clock("ab-0001", lambda: next(clock_times))
    stamps = [clock.tick() for _ in times]
    assert stamps == sorted(set(stamps))
    assert sorted(map(str, stamps)) == list(map(str, stamps))
    assert list(map(read_stamp, map(str, stamps))) == stamps


def test_more_stamps_than_one_millisecond_holds_still_grow():
    clock = Clock("ab-0001", lambda: START)
    stamps = [clock.tick() for _ in range(70_000)]
    assert all(one < other for one, other in itertools.pairwise(stamps))


def test_a_stamp_dated_far_ahead_does_not_drag_this_clock_along_but_one_of_today_does():
    clock = Clock("ab-0001", lambda: START)
    clock.saw(Stamp(START + 400 * DAY, 0, "cd-0001"))
    assert clock.tick().wall == START
    clock.saw(Stamp(START + 5000, 7, "cd-0001"))
    assert clock.tick() == Stamp(START + 5000, 8, "ab-0001")
