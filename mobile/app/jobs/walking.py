"""Taps on the way round the rings: each reading is on the disk before the app leads on."""

from dataclasses import replace

from core.calc.leaves import Stack
from core.errors import InputError
from core.forms.kept_words import place_words, reading_words
from core.records.model import Length, Measured, Place, ReadingKind, Tapped
from core.records.view import live
from core.texts import text
from core.units import Bare, read_quantity
from mobile.app.jobs.model import Jobs
from mobile.app.jobs.state import walk as walks
from mobile.app.jobs.state.quick import entry_at
from mobile.app.jobs.state.size_sheet import VALUE, VALUE_KINDS
from mobile.app.jobs.state.told import capital
from mobile.app.jobs.state.walk import Stop, Walk
from mobile.app.state import entry as entries
from mobile.app.state.entry import Entry
from mobile.app.state.keys import Keys, erased, pressed
from mobile.app.state.keys import strike as strike_keys
from mobile.app.state.leaf_pad import PadWindow
from mobile.app.state.told import Told, tell


class WalkPad:
    """The leaf pad's taps, for the place the walk is at."""

    def __init__(self, jobs: Jobs) -> None:
        self._jobs = jobs
        self.entry: Entry = the_walk(jobs).entry
        self.told: Told = tell(self.entry)
        self.window: PadWindow = jobs.window

    def move_pad(self, window: PadWindow) -> None:
        """Look at thinner or thicker leaves."""
        self._jobs.window = window

    def arm(self, side: str) -> None:
        """The next leaf tapped counts for this side."""
        _take(self._jobs, entries.arm(the_walk(self._jobs).entry, side))

    def tap_leaf(self, side: str, stack: Stack, window: PadWindow) -> None:
        """A leaf that goes or does not; with both sides the reading is made."""
        self._jobs.window = window
        _take(self._jobs, entries.tap_leaf(the_walk(self._jobs).entry, side, stack))
        if walks.both_sides(the_walk(self._jobs)):
            keep_leaves(self._jobs)

    def side_label(self, side: str) -> str:
        """What stands on a side."""
        return entries.side_label(self.entry, side)


def the_walk(jobs: Jobs) -> Walk:
    """The walk under way."""
    assert jobs.desk.walk is not None
    return jobs.desk.walk


def _take(jobs: Jobs, entry: Entry) -> None:
    jobs.move(replace(jobs.desk, walk=replace(the_walk(jobs), entry=entry)))


def begin(jobs: Jobs, cylinder: str, place: Place = "", tapped: Tapped | None = None) -> None:
    """Lead to a place, or to the first of a cylinder that was not read yet."""
    before = jobs.desk.walk or Walk(cylinder=cylinder)
    side = tapped or before.tapped
    order, read = walks.stops(jobs.the_job), walks.read_stops(jobs.the_job, side)
    stop = (cylinder, place) if place else walks.first_stop(order, cylinder, read)
    jobs.go("walk", cylinder=cylinder)
    _lead(jobs, replace(before, tapped=side), stop)


def _lead(jobs: Jobs, walk: Walk, stop: Stop | None) -> None:
    """Stand at a place with what is known of it; nowhere when all is read."""
    if stop is None:
        jobs.move(replace(jobs.desk, walk=replace(walk, place="", typing="", reading="")))
        return
    cylinder, place = stop
    found = jobs.cylinder_of(cylinder)
    assert found is not None
    reading = walks.reading_at(found, place, walk.tapped)
    entry = entry_at(jobs.the_job, found, place, jobs.app.entry, reading)
    there = replace(
        walk,
        cylinder=cylinder,
        place=place,
        entry=entry,
        typing="",
        reading=reading.id if reading else "",
    )
    jobs.window = PadWindow()
    jobs.move(replace(jobs.desk, cylinder=cylinder, walk=there))


def go_back(jobs: Jobs) -> None:
    """One place back."""
    walk = the_walk(jobs)
    before = walks.stop_before(walks.stops(jobs.the_job), walk.at)
    if before:
        _lead(jobs, walk, before)


def go_on(jobs: Jobs) -> None:
    """On to the next place; a reading with one side only is kept first."""
    walk = the_walk(jobs)
    measured = walks.leaves_measured(walk) if walk.by_leaves else None
    if measured and not walk.reading:
        keep(jobs, measured)
        return
    order = walks.stops(jobs.the_job)
    here = order.index(walk.at) + 1 if walk.at in order else 0
    _lead(jobs, walk, order[here] if here < len(order) else None)


def keep_leaves(jobs: Jobs) -> None:
    """Keep what the leaves say and lead on."""
    measured = walks.leaves_measured(the_walk(jobs))
    if measured:
        keep(jobs, measured)


def keep_rocking(jobs: Jobs) -> None:
    """The straightedge rocks here."""
    keep(jobs, walks.rocking(the_walk(jobs)))


def keep(jobs: Jobs, measured: Measured) -> None:
    """Put a reading on the disk; only then is it shown as saved, and the app leads on."""
    walk, book = the_walk(jobs), jobs.job
    assert book is not None
    saved = jobs.attempt(
        lambda: book.correct(walk.reading, measured) if walk.reading else book.add_reading(measured)
    )
    if saved:
        order = walks.stops(jobs.the_job)
        read = walks.read_stops(jobs.the_job, walk.tapped)
        _lead(jobs, walk, walks.next_stop(order, walk.at, read))
        jobs.told = saved_words(jobs, measured)


def saved_words(jobs: Jobs, measured: Measured) -> str:
    """What is on the disk now."""
    cylinder = jobs.cylinder_of(measured.cylinder)
    return text(
        "jobs.walk.saved",
        cylinder=cylinder.number if cylinder else "",
        place=place_words(measured.place),
        read=reading_words(measured),
    )


def drop_reading(jobs: Jobs) -> None:
    """Delete the reading of this place; undo brings it back."""
    walk = the_walk(jobs)
    jobs.delete(walk.reading)
    _lead(jobs, walk, walk.at)


def choose_side(jobs: Jobs, tapped: Tapped) -> None:
    """Read before or after tapping."""
    begin(jobs, the_walk(jobs).cylinder, tapped=tapped)


def choose_kind(jobs: Jobs, kind: ReadingKind, instrument: str = "") -> None:
    """Read with leaves or with an instrument."""
    walk = replace(the_walk(jobs), kind=kind, instrument=instrument, typing="")
    jobs.move(replace(jobs.desk, walk=walk))


def go_to(jobs: Jobs, place: Place) -> None:
    """Straight to a place of this ring."""
    _lead(jobs, the_walk(jobs), (the_walk(jobs).cylinder, place))


# ---- a value typed, or sent by an instrument that types like a keyboard ----


def keys(jobs: Jobs) -> Keys:
    """What the number pad, or the instrument itself, types into."""
    walk = the_walk(jobs)
    return Keys(
        title=text(f"field.{VALUE}"),
        typed=walk.typing,
        told=_told(jobs),
        press=lambda key: _type(jobs, pressed(the_walk(jobs).typing, "", key)),
        erase=lambda: _type(jobs, erased(the_walk(jobs).typing)),
        clear=lambda: _type(jobs, ""),
        done=lambda: keep_value(jobs),
    )


def _type(jobs: Jobs, typing: str) -> None:
    jobs.move(replace(jobs.desk, walk=replace(the_walk(jobs), typing=typing)))


def _read(jobs: Jobs) -> Length:
    bare = Bare.MILLIMETRE if jobs.app.entry.metric else Bare.THOU_OR_INCH
    kind = replace(VALUE_KINDS[VALUE], name=text(f"field.{VALUE}"), bare=bare)
    typed = read_quantity(the_walk(jobs).typing, kind)
    return Length(typed=typed.echo, mm=typed.value)


def _told(jobs: Jobs) -> str:
    if not the_walk(jobs).typing:
        return text(f"pad.hint.{'mm' if jobs.app.entry.metric else 'in'}")
    try:
        return text("pad.read", read=_read(jobs).typed)
    except InputError as error:
        return str(error)


def keep_value(jobs: Jobs) -> None:
    """Keep the value and lead on; one that does not read changes nothing."""
    try:
        value = _read(jobs)
    except InputError as error:
        jobs.trouble = str(error)
        return
    keep(jobs, walks.value_measured(the_walk(jobs), value))


def strike(jobs: Jobs, label: str) -> None:
    """A key of a real keyboard, or of an instrument that types like one."""
    if jobs.desk.screen == "walk" and jobs.desk.walk and not jobs.desk.walk.by_leaves:
        strike_keys(keys(jobs), label)


def instruments(jobs: Jobs) -> tuple[tuple[ReadingKind, str, str], ...]:
    """Ways to read a value: kind, record and name; the shop's own, else one of each kind."""
    assert jobs.book is not None
    own = [
        (each.kind, each.id, each.name or _by(each.kind))
        for each in live(jobs.book.shop.shop.instruments)
        if each.kind
    ]
    plain = (ReadingKind.CALIPER, ReadingKind.INDICATOR)
    missing = [kind for kind in plain if kind not in {each[0] for each in own}]
    return (*own, *((kind, "", _by(kind)) for kind in missing))


def _by(kind: ReadingKind) -> str:
    return capital(text(f"kept.by.{kind.replace(' ', '-')}"))
