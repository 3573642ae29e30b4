"""At the engine stand: ten seconds, one hand, no job set up yet; offline, by taps alone."""

from tests.phone import NewPhone, Phone

PLACES = ("12", "3", "before the joint", "after the joint", "6", "9", "bridge")


def read_here(phone: Phone, go: str, stops: str, place: str) -> None:
    """Lay two leaves at the place the app leads to; it says what it saved, then leads on."""
    assert place in phone.phrase("place", holding=place)
    phone.tap(f"leaf-{go}")
    phone.tap(f"stops-{stops}")
    assert f"{go} in goes, {stops} in does not" in phone.phrase("told", holding=place)


def type_size(phone: Phone, field: str, keys: str) -> None:
    phone.tap(f"in-{field}")
    for key in keys:
        phone.tap(f"key-{'point' if key == '.' else key}")
    phone.tap("key-done")


def test_from_the_first_leaf_to_a_ring_tapped_down_and_its_sheet(new_phone: NewPhone) -> None:
    phone = new_phone(viewport={"width": 390, "height": 1900})
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.close()
    phone.open(offline=True)
    phone.read_aloud()
    ten_seconds_and_kept(phone)
    groove_as_measured(phone)
    round_the_ring(phone)
    tapped_and_read_again(phone)
    sheet_decided(phone)
    the_battery_falls_out(phone)


def ten_seconds_and_kept(phone: Phone) -> None:
    """Two taps name the sheet; a job is begun from it, and nothing is typed."""
    phone.tap("leaf-0.0100")
    phone.tap("stops-0.0110")
    assert "Run the 0.050 in" in phone.phrase("suggestion", holding="Run")
    phone.tap("keep-in-job")
    phone.tap("keep-in-new")
    phone.tap("place-12")
    assert "Saved with cylinder 1" in phone.phrase("told", holding="Saved")


def groove_as_measured(phone: Phone) -> None:
    """Wire, groove and joint, as they were before the wire went in."""
    phone.tap("sizes")
    for field, keys in (("wire-size", "41"), ("width-12", "40"), ("depth-12", "30.7")):
        type_size(phone, f"job-{field}", keys)
    phone.tap("joint-5")
    phone.tap("back")


def round_the_ring(phone: Phone) -> None:
    """The app leads; one tap goes back, a rocking straightedge is a result."""
    phone.tap("walk")
    read_here(phone, "0.0120", "0.0130", "3 o'clock")
    phone.tap("walk-place-before")
    assert "0.0120 in goes" in phone.phrase("ring", holding="0.0120")
    assert "3 o'clock" in phone.phrase("place", holding="3 o'clock")
    phone.tap("walk-place-next")
    phone.tap("walk-rocks")
    assert "straightedge rocks" in phone.phrase("told", holding="before the joint")
    for place in ("after the joint", "6 o'clock", "9 o'clock", "the bridge"):
        read_here(phone, "0.0100", "0.0110", place)
    phone.phrase("walk-done")
    phone.tap("back")
    assert "ROCKS: THIS RING IS HIGH" in phone.phrase("decides", holding="ROCKS")


def tapped_and_read_again(phone: Phone) -> None:
    """The proud place is tapped and read again; what the hammer did is told in words."""
    phone.tap("tap-again-3")
    read_here(phone, "0.0100", "0.0110", "3 o'clock")
    phone.tap("back")
    phone.tap("readings")
    assert "3 o'clock" in phone.phrase("reading-1", holding="after tapping")
    phone.tap("back")
    hammer = phone.phrase("hammer-1", holding="lower")
    assert "3 o'clock: was not down, it went 0.0020 in (0.051 mm) lower" in hammer


def sheet_decided(phone: Phone) -> None:
    """Where it rocked is read again with leaves; then the ring passes under its sheet."""
    phone.tap("walk")
    place = phone.phrase("place")
    for _ in PLACES:
        if "before the joint" in place:
            break
        phone.tap("walk-place-next")
        place = phone.new_phrase("place", place)
    read_here(phone, "0.0100", "0.0110", "before the joint")
    phone.tap("back")
    phone.tap("back")
    phone.tap("sheet")
    phone.tap("run-0.050-in")
    assert "run the 0.050 in" in phone.phrase("told", holding="Saved")
    phone.tap("back")
    assert "Cylinder 1" in phone.phrase("engine-decides", holding="pass")


def the_battery_falls_out(phone: Phone) -> None:
    """Everything that was said to be saved is there."""
    phone.kill()
    phone.open(offline=True)
    phone.read_aloud()
    assert "Cylinder 1" in phone.phrase("engine-decides", holding="pass")
    phone.tap("cylinder-1")
    phone.tap("readings")
    phone.phrase("reading-9")
    phone.forgive()
