"""The quick check by taps in a real browser: installed, closed, opened offline, killed."""

import time

from tests.phone import NewPhone, Phone, kill

KILL_WITHIN = 0.1
"""From the last tap to SIGKILL [s]."""
BEFORE_KILL = 60
"""What the app has to put a tap on the disk [ms]."""


def type_size(phone: Phone, field: str, keys: str) -> None:
    """Tap a field and its keys; a point is the key of that name."""
    phone.tap(f"in-{field}")
    for key in keys:
        phone.tap(f"key-{'point' if key == '.' else key}")
    phone.tap("key-done")


def test_the_whole_check_by_taps_offline_and_kept_when_the_browser_is_killed(
    new_phone: NewPhone,
) -> None:
    phone = new_phone(viewport={"width": 390, "height": 1500})
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.close()

    phone.open(offline=True)
    phone.read_aloud()
    assert "Tap the leaf that goes" in phone.phrase("height")
    assert "Bite needs: Sheet on now" in phone.phrase("verdict-bite")
    phone.tap("leaf-0.0110")
    assert phone.phrase("height", holding="over 0.0110 inch, 0.279 millimetre")
    assert "0.0500 inch: undecided, UNDECIDED" in phone.phrase("strip")
    phone.tap("stops-0.0130")
    assert phone.phrase("height", holding="0.0120 inch, 0.305 millimetre")
    assert "Run the 0.050 in" in phone.phrase("suggestion", holding="Run")
    for sheet, told in {
        "0.0320": "fail, TOO HIGH, 37 %",
        "0.0400": "fail, BORDERLINE, 30 %",
        "0.0500": "pass, RUN, CLOSE, 24 %",
        "0.0646": "pass, RUN, 19 %",
    }.items():
        assert told in phone.phrase(f"shelf-{sheet}")
        assert f"{sheet} inch: {told}" in phone.phrase("strip")
    assert "0.0100 in + 0.0025 in" in phone.phrase("next-leaf")

    type_size(phone, "gasket", "40")
    assert "fail, BORDERLINE. 30 % against limit 25 %" in phone.phrase(
        "verdict-height-to-gasket", holding="against"
    )
    type_size(phone, "wire", "41")
    type_size(phone, "groove-width", "40")
    assert "pass, HOLDS. 0.0010 in (0.025 mm) against limit 0.0005 in" in phone.phrase(
        "verdict-interference", holding="against"
    )
    type_size(phone, "groove-depth", ".03")
    assert "pass, WIDEST POINT BELOW DECK" in phone.phrase("verdict-held", holding="against")
    assert "against limit" in phone.phrase("verdict-seated", holding="against")
    assert "pass, BITES" in phone.phrase("verdict-bite")
    said = phone.phrase("say")
    assert "11 goes, 13 does not, call it 12." in said
    assert "Run the 50. Head goes up 10." in said

    victims = phone.processes()
    phone.tap("face-flat")
    last_tap = time.monotonic()
    phone.page.wait_for_timeout(BEFORE_KILL)
    kill(victims)
    assert time.monotonic() - last_tap < KILL_WITHIN
    phone.kill()

    phone.launch()
    phone.context.add_init_script(FIRST_PICTURE)
    phone.open(offline=True)
    phone.read_aloud()
    assert "last answer" in phone.page.evaluate("firstPicture")
    assert "0.0120 in" in phone.page.evaluate("firstPicture")
    assert phone.phrase("height", holding="0.0120 inch")
    for field, value in {"gasket": "40 thou", "wire": "41 thou", "groove-depth": "0.03 in"}.items():
        assert value in phone.phrase(f"in-{field}")
    assert "flat head face" not in phone.phrase("say", holding="Run the 50")


FIRST_PICTURE = """
addEventListener("DOMContentLoaded", () => requestAnimationFrame(() => {
  window.firstPicture = document.getElementById("first-picture").innerText;
}));
"""


def test_units_leaves_keys_and_the_gauge_card(phone: Phone) -> None:
    page = phone.open()
    phone.read_aloud()
    phone.tap("pick-no-go")
    phone.tap("leaf-0.0110")
    assert phone.phrase("height", holding="under 0.0110 inch")
    phone.tap("unit")
    assert phone.phrase("unit", holding="mm")
    phone.tap("in-go")
    assert phone.phrase("typed", holding="illimetres")
    page.keyboard.type("0,25")
    assert phone.phrase("in-go", holding="0.25 mm")
    page.keyboard.press("Backspace")
    assert phone.phrase("in-go", holding="0.2 mm")
    page.keyboard.press("Enter")
    phone.page.wait_for_function("() => !window.nodeOf('typed')")
    phone.tap("way-gauges")
    assert "must go" in phone.phrase("gauge-0.0500")
    phone.tap("way-more")
    assert "Ready for use without a network" in phone.phrase("offline", holding="Ready")
    phone.tap("way-about")
    assert "makers' own data win" in phone.phrase("cautions")
    phone.tap("way-more")
    phone.tap("way-shelf")
    phone.tap("drop-shelf-0.032in")
    phone.tap("way-check")
    phone.page.wait_for_function("() => window.nodeOf('strip')")
    assert "0.0320" not in phone.phrase("strip")


def test_a_second_window_says_that_the_check_is_kept_in_the_first_and_still_checks(
    phone: Phone,
) -> None:
    phone.open()
    phone.read_aloud()
    phone.tap("leaf-0.0110")
    assert phone.phrase("height", holding="0.0110")
    phone.context.new_page().goto(phone.address)
    phone.tab = 1
    phone.read_aloud()
    assert phone.phrase("not-kept", holding="kept in another window")
    phone.tap("leaf-0.0090")
    assert phone.phrase("height", holding="over 0.0090 inch")
    assert phone.phrase("not-kept", holding="kept in another window")
    phone.tab = 0
    assert phone.phrase("height", holding="0.0110")
    phone.page.close()
    phone.page.reload()
    phone.read_aloud()
    assert phone.phrase("height", holding="0.0110")
