"""The way round the rings: the app leads, saves before it says so, and one tap goes back."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import NotSaved
from core.records.model import Cylinder, ReadingKind, Tapped
from mobile.app.jobs import walking
from mobile.app.jobs.state import walk as walks
from tests.homes import MemoryPort
from tests.jobs_without_page import JobsWithoutPage

PLACES = ["12", "3", "joint before", "joint after", "6", "9", "bridge"]


@pytest.fixture
def walking_phone() -> JobsWithoutPage:
    phone = JobsWithoutPage()
    phone.tap("new-job", "fewer", "fewer", "begin")
    phone.tap("cylinder-1", "sizes", "joint-5", "back", "walk")
    return phone


def readings(phone: JobsWithoutPage):
    return [each for c in phone.jobs.the_job.cylinders for each in c.readings if not each.deleted]


def test_places_follow_the_clock_with_both_sides_of_the_joint_and_the_bridge():
    assert list(walks.places_of(Cylinder(id="c", joint="5"))) == PLACES
    unknown = walks.places_of(Cylinder(id="c"))
    assert list(unknown[:4]) == ["12", "3", "6", "9"]
    assert set(unknown) == set(PLACES)


@given(st.sampled_from([str(hour) for hour in range(1, 13)]))
def test_the_places_beside_the_joint_follow_each_other(joint):
    order = [p for p in walks.places_of(Cylinder(id="c", joint=joint)) if p not in walks.CLOCK]
    ring = walks.places_of(Cylinder(id="c", joint=joint))
    before, after = ring.index("joint before"), ring.index("joint after")
    between = (after - before) % (len(ring) - 1)
    assert between in (1, 2), ring
    assert order[-1] == "bridge"


@given(st.data())
def test_a_walk_ends_only_when_everything_is_read(data):
    order = [(c, p) for c in "ab" for p in ("12", "3", "6")]
    read: set = set()
    at = data.draw(st.sampled_from(order))
    while at is not None:
        read.add(at)
        at = walks.next_stop(order, at, read)
    assert read == set(order)


def test_a_reading_is_saved_the_moment_both_leaves_are_tapped_and_the_app_leads_on(walking_phone):
    phone = walking_phone
    phone.tap("leaf-0.0100")
    assert readings(phone) == []
    assert "told" not in phone.names()
    phone.tap("stops-0.0110")
    (saved,) = readings(phone)
    assert (saved.measured.go.typed, saved.measured.no_go.typed) == ("0.0100 in", "0.0110 in")
    assert "12 o'clock" in phone.phrase("told")
    assert phone.phrase("place").startswith("Now 3 o'clock")


def test_what_the_disk_refuses_is_not_told_as_saved_and_the_place_stays(walking_phone, monkeypatch):
    phone = walking_phone
    phone.tap("leaf-0.0100")

    def refuse(port: MemoryPort, data: bytes) -> None:
        raise NotSaved("Not saved: the disk is full.")

    with monkeypatch.context() as full:
        full.setattr(MemoryPort, "append", refuse)
        phone.tap("stops-0.0110")
        assert "told" not in phone.names()
        assert "full" in phone.phrase("trouble")
        assert phone.phrase("place").startswith("Now 12 o'clock")
        assert readings(phone) == []
    phone.tap("walk-place-next")
    assert len(readings(phone)) == 1
    assert "12 o'clock" in phone.phrase("told")


def test_one_tap_back_shows_the_reading_and_a_tap_on_a_leaf_corrects_it(walking_phone):
    phone = walking_phone
    phone.tap("leaf-0.0100", "stops-0.0120", "walk-place-before")
    assert phone.phrase("place").startswith("Now 12 o'clock")
    phone.tap("leaf-0.0110")
    (reading,) = readings(phone)
    assert reading.measured.go.typed == "0.0110 in"
    assert reading.corrected
    assert phone.phrase("place").startswith("Now 3 o'clock")
    values = [change.value.go.typed for change in phone.jobs.job.history(reading.id, "measured")]
    assert values == ["0.0100 in", "0.0110 in"]


def test_it_rocks_is_a_result(walking_phone):
    walking_phone.tap("walk-rocks")
    assert readings(walking_phone)[0].measured.rocks
    assert "rocks" in walking_phone.phrase("told")


def test_one_side_alone_is_kept_by_going_on(walking_phone):
    walking_phone.tap("leaf-0.0120", "walk-place-next")
    (reading,) = readings(walking_phone)
    assert reading.measured.go is not None
    assert reading.measured.no_go is None


def test_a_caliper_that_types_fills_the_place_and_moves_on(walking_phone):
    phone = walking_phone
    phone.tap("with-1")
    for key in [*"0.0105", "Enter"]:
        walking.strike(phone.jobs, key)
    (reading,) = readings(phone)
    assert reading.measured.kind is ReadingKind.CALIPER
    assert reading.measured.values[0].mm == pytest.approx(0.0105 * 25.4)
    assert phone.phrase("place").startswith("Now 3 o'clock")


def test_a_value_that_does_not_read_changes_nothing(walking_phone):
    phone = walking_phone
    phone.tap("with-1")
    for key in [*"900", "Enter"]:
        walking.strike(phone.jobs, key)
    assert readings(phone) == []
    assert "900" in phone.phrase("trouble")
    assert phone.phrase("place").startswith("Now 12 o'clock")


def test_keys_typed_while_leaves_are_in_the_hand_do_nothing(walking_phone):
    walking.strike(walking_phone.jobs, "1")
    assert walking_phone.jobs.desk.walk.typing == ""


def test_a_deleted_reading_comes_back_by_undo(walking_phone):
    phone = walking_phone
    phone.tap("leaf-0.0100", "stops-0.0110", "walk-place-before", "drop-reading")
    assert readings(phone) == []
    phone.tap("undo")
    assert len(readings(phone)) == 1


def test_the_whole_engine_is_walked_and_then_says_so(walking_phone):
    phone = walking_phone
    for _ in range(2 * len(PLACES)):
        assert "walk-done" not in phone.names()
        phone.tap("leaf-0.0100", "stops-0.0110")
    assert "walk-done" in phone.names()
    assert len(readings(phone)) == 2 * len(PLACES)


def test_the_proud_place_is_tapped_again_and_told_before_and_after(walking_phone):
    phone = walking_phone
    for _ in range(3):
        phone.tap("leaf-0.0100", "stops-0.0110")
    phone.tap("leaf-0.0120", "stops-0.0130", "back")
    assert "tap-again-joint-after" in phone.names()
    phone.tap("tap-again-joint-after")
    assert phone.jobs.desk.walk.tapped is Tapped.AFTER
    phone.tap("leaf-0.0100", "stops-0.0110", "back")
    assert "tap-again-joint-after" not in phone.names()
    assert "was not down" in phone.phrase("hammer-1")


def test_in_the_pocket_and_out_again_the_leaf_tapped_last_is_still_there(walking_phone):
    walking_phone.tap("leaf-0.0100", "stops-0.0110", "leaf-0.0090")
    again = walking_phone.after_a_kill()
    assert again.app.screen == "jobs"
    assert again.phrase("place").startswith("Now 3 o'clock")
    again.tap("stops-0.0100")
    assert len(readings(again)) == 2
