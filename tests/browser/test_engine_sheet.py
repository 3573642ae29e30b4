"""Three engines worked through by taps in a real browser, offline: windows, words, what would help.

The engines are those worked by hand in `tests/calc/test_windows_engines.py`. A clearance is judged
by the guarded rule, so its end lies inside the plain one by 1.644854 × spread; worked beside each.
"""

import pytest

from tests.phone import NewPhone, Phone

TALL = {"width": 390, "height": 2800}
V8 = "#/check?go=0.011in&no-go=0.013in&gasket=0.040in&shelf=0.032in,0.040in,0.050in,0.0646in"
DIESEL = "#/check?go=0.34mm&no-go=0.36mm&gasket=1.4mm&shelf=1.0mm,1.2mm,1.4mm,1.6mm"
SINGLE = "#/check?go=0.24mm&no-go=0.26mm&gasket=1.0mm&shelf=0.8mm,1.0mm,1.2mm,1.5mm"

KEYS = {".": "point", "-": "sign"}


@pytest.fixture
def offline_phone(new_phone: NewPhone) -> Phone:
    """A phone that saw the app once and has no network since."""
    phone = new_phone(viewport=TALL)
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.close()
    return phone


def open_engine(phone: Phone, link: str) -> None:
    phone.open(link, offline=True)
    phone.read_aloud()
    phone.phrase("suggestion")
    phone.tap("open-engine")
    phone.phrase("sheet-answer")


def type_into(phone: Phone, group: str, **sizes: str) -> None:
    """Open a group and type into its fields; a minus is the sign key."""
    names = [name.replace("_", "-") for name in sizes]
    open_group(phone, group, f"in-{names[0]}")
    for name, typed in zip(names, sizes.values(), strict=True):
        phone.tap(f"in-{name}")
        phone.phrase("typed")
        for key in typed:
            phone.tap(f"key-{KEYS.get(key, key)}")
        phone.tap("key-done")
        phone.page.wait_for_function("() => !nodeOf('typed')")


def open_group(phone: Phone, group: str, holding: str) -> None:
    """Show a group of numbers; the tap on an open one would close it."""
    phone.tap("sheet-numbers")
    phone.phrase("group-heat")
    if not phone.page.evaluate("(id) => Boolean(nodeOf(id))", holding):
        phone.tap(f"group-{group}")


def test_a_boosted_v8(offline_phone: Phone) -> None:
    """12 thou: from 12 / 0.25 = 48 to 12 / 0.15 = 80; run 50, head up 10, as TRACK and BLOWN.

    Piston 5 below: 40 - 5 = 35 with steel rods; guard 1.644854 × √(0.3² + 0.5²) / √3 = 0.554.
    Bore 4.125, stroke 3.75, chamber 64, dish 5, hole 4.2: Vs 821.25 cc, under 50 thou of sheet
    Vc = 69 + 1.095 + 11.351 = 81.446 cc: ratio 11.08; under 40 thou, 79.176 cc: 11.37. For 11.2:
    Vc = 821.24 / 10.2 = 80.514 cc, 10.419 cc of it under the hole at 0.22703 cc a thou: 45.89.
    """
    phone = offline_phone
    open_engine(phone, V8)
    assert "Run the 0.0500 in" in phone.phrase("sheet-answer")
    assert "From 0.0400 in to 0.0500 in: Head goes up 10 thou." in phone.phrase("swap-head")
    assert "30 % BORDERLINE, then 24 % RUN, CLOSE" in phone.phrase("swap-wire")
    told = phone.phrase("windows-chart")
    assert "Wire height: 0.0480 in or thicker" in told
    assert "Bite: 0.0800 in or thinner" in told
    assert "All allow 0.0480 in to 0.0800 in" in told

    phone.tap("sheet-numbers")
    phone.tap("choose-rod-steel")
    type_into(phone, "clearances", piston_deck="5")
    type_into(
        phone, "compression",
        bore="4.125", stroke="3.75", gasket_bore="4.2", chamber="64", dish="5",
        highest_ratio="11.2",
    )  # fmt: skip
    phone.tap("sheet-choice")
    told = phone.phrase("windows-chart", holding="Piston to head: 0.0356 in or thicker")
    assert "Compression ratio: 0.0459 in or thicker" in told
    assert "0.0450, then 0.0550 in" in phone.phrase("swap-piston-to-head")
    assert "11.37, then 11.08" in phone.phrase("swap-ratio")
    assert "RUN, CLOSE" in phone.phrase("sheet-0.0500")
    assert "Compression ratio" in phone.phrase("sheet-0.0400", holding="not for")

    what_if_cuts_the_deck(phone)
    phone.close()
    phone.open(offline=True)
    phone.read_aloud()
    phone.tap("way-engine")
    assert "Piston to head: 0.0356 in or thicker" in phone.phrase("windows-chart")


def what_if_cuts_the_deck(phone: Phone) -> None:
    """Each cut of half a thou asks for half a thou more of sheet over the piston: 35.55 + 0.5."""
    phone.tap("more-deck-cut")
    phone.phrase("what-if", holding="deck cut by 0.5 thou")
    phone.phrase("windows-chart", holding="Piston to head: 0.0361 in or thicker")
    assert "What if: Run the 0.0500 in" in phone.phrase("sheet-answer")
    drag(phone, "slide-wire-higher", 0.9)
    phone.phrase("what-if", holding="wire higher by")
    phone.page.wait_for_function(
        "() => !phraseOf('windows-chart').includes('Wire height: 0.0480 in')"
    )
    phone.tap("what-if-back")
    phone.phrase("windows-chart", holding="Piston to head: 0.0356 in or thicker")


def drag(phone: Phone, identifier: str, to: float) -> None:
    """Draw a slider's thumb from its middle to a part of its way."""
    box = phone.box(identifier)
    y = box["y"] + box["height"] / 2
    phone.page.mouse.move(box["x"] + box["width"] / 2, y)
    phone.page.mouse.down()
    phone.page.mouse.move(box["x"] + to * box["width"], y, steps=8)
    phone.page.mouse.up()


def test_an_inline_diesel_that_no_sheet_fits(offline_phone: Phone) -> None:
    """As DIESEL: from 0.35 / 0.25 = 1.4; a ratio of 16 asks for 0.635: 0.765 apart; 6.25 cc."""
    phone = offline_phone
    open_engine(phone, DIESEL)
    type_into(phone, "clearances", piston_deck="-0.30", piston_least="0.9")
    type_into(
        phone, "compression",
        bore="100", stroke="120", gasket_bore="102", chamber="0", dish="60", lowest_ratio="16",
    )  # fmt: skip
    phone.tap("sheet-choice")
    assert "No sheet fits this engine" in phone.phrase("sheet-answer", holding="No sheet")
    told = phone.phrase("conflict")
    assert "Wire height asks for 1.400 mm or more" in told
    assert "Compression ratio for 0.635 mm or less: 0.765 mm apart" in told
    assert "Chamber smaller by 6.3 cc" in phone.phrase("change-chamber-smaller")
    assert phone.page.locator('[flt-semantics-identifier^="change-"]').count() == 1
    assert "No overlap: 0.765 mm apart" in phone.phrase("windows-chart")


def test_an_air_cooled_single_with_an_overhead_cam(offline_phone: Phone) -> None:
    """As SINGLE: from 0.25 / 0.25 = 1.0; a degree of the crank is 0.480 of rise: to 1.480."""
    phone = offline_phone
    open_engine(phone, SINGLE)
    open_group(phone, "valve-gear", "choose-valve-gear-overhead-cam")
    phone.tap("choose-valve-gear-overhead-cam")
    phone.phrase("in-crank-teeth")
    type_into(
        phone, "valve-gear",
        crank_teeth="18", cam_teeth="36", chain_pitch="9.525", cam_centres="220", most_retard="1",
    )  # fmt: skip
    phone.tap("sheet-choice")
    told = phone.phrase("windows-chart", holding="Cam timing: 1.480 mm or thinner")
    assert "All allow 1.000 mm to 1.480 mm" in told
    assert "Run the 1.000 mm" in phone.phrase("sheet-answer")
    assert "25 % RUN, CLOSE" in phone.phrase("sheet-0.0394")
    phone.tap("sheet-0.0591")
    assert "fail" in phone.phrase("swap-cam", holding="Cam later, at the crank: 1.04°")
    one_chain_for_two_banks_is_refused(phone)


def one_chain_for_two_banks_is_refused(phone: Phone) -> None:
    type_into(phone, "valve-gear", banks_on_chain="2")
    phone.tap("sheet-choice")
    refused = phone.phrase("lacks-cam-timing")
    assert "Banks a chain: one chain over two banks" in refused
    assert "Run the 1.000 mm" in phone.phrase("sheet-answer")
