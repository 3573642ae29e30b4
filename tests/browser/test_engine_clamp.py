"""The clamp by taps in a real browser, offline: will yield, undecided, the main case, the draws."""

from tests.clamp_taps import pick, type_into, type_open
from tests.phone import NewPhone, Phone

TALL = {"width": 390, "height": 1900}


def test_will_it_hold_by_taps_offline_and_kept(new_phone: NewPhone) -> None:
    phone = new_phone(viewport=TALL)
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.close()

    open_clamp(phone)
    assert "theirs win" in phone.phrase("clamp-caution")
    nothing_before_a_lubricant_is_chosen(phone)
    will_yield(phone)
    weak_clamp_is_undecided(phone)
    main_case(phone)
    draws_beside_first_order(phone)
    phone.close()

    open_clamp(phone)
    assert "Fastener at peak: UNDECIDED" in phone.phrase("clamp-answer", holding="One cylinder")
    assert phone.phrase("spread-shares", holding="Clamp 40700 lbf")


def open_clamp(phone: Phone) -> None:
    phone.open(offline=True)
    phone.read_aloud()
    phone.tap("way-engine")
    phone.tap("engine-clamp")


def nothing_before_a_lubricant_is_chosen(phone: Phone) -> None:
    phone.tap("clamp-answer")
    pick(phone, size="3/8", thread="3/8-16", strength="5", tightened="torque")
    type_open(phone, "Torque", "28")
    assert "0.17–0.35" in phone.phrase("pick-lubricant-zinc")
    phone.tap("choose-around")
    pick(phone, around="fasteners")
    type_into(phone, "fasteners", "Per cylinder", "4")
    phone.tap("choose-peak")
    pick(phone, peak="pressure")
    type_into(phone, "pressure", "Pressure", "1500")
    type_into(phone, "ring", "Ring diameter", "4.3")
    type_into(phone, "wire", "Wire", "41")
    type_into(phone, "height", "Wire height", "10.5")
    phone.tap("choose-lubricant")
    assert "Still needed: Lubricant." in phone.phrase("clamp-answer", holding="Still needed")
    for part in ("loads", "curve", "spread", "tighten"):
        phone.tap(f"clamp-{part}")
        phone.phrase(f"clamp-{part}")
        assert figures(phone) == []
    phone.tap("clamp-answer")


def figures(phone: Phone) -> list[str]:
    """Identifiers on the screen that carry a figure."""
    found: list[str] = phone.page.evaluate(
        "() => [...document.querySelectorAll('[flt-semantics-identifier]')]"
        ".map((node) => node.getAttribute('flt-semantics-identifier'))"
    )
    shown = ("bar-", "verdict-", "height-load", "spread-", "steps", "drawn-")
    return [each for each in found if each.startswith(shown)]


def will_yield(phone: Phone) -> None:
    """28 lbf·ft oiled: 28·12/(0.10·0.375) = 8960 lbf at the slippery end, proof 6587 lbf."""
    pick(phone, lubricant="oil")
    assert "Clamp to proof: WILL YIELD" in phone.phrase("clamp-answer", holding="One cylinder")
    phone.tap("clamp-loads")
    told = phone.phrase("verdict-clamp-to-proof", holding="will yield")
    assert "136.0 % at the low-friction end" in told
    assert "To change: aim at no more than" in told
    assert "Guarded rule" in told
    phone.tap("clamp-entry")


def weak_clamp_is_undecided(phone: Phone) -> None:
    """4 · 0.75 · 6587 lbf = 19760 lbf on 21783 lbf of gas; bedding takes 9740 to 35100 lbf."""
    phone.tap("choose-tightened")
    pick(phone, tightened="preload")
    type_open(phone, "Share of proof", "75")
    phone.tap("clamp-loads")
    bar = phone.phrase("bar-1", holding="Clamp 19800 pounds")
    assert "wire 9730 to 19800" in bar
    assert "gas 21800" in bar
    for check, settle in (
        ("separation", "of the doubt comes from the"),
        ("beds", "measure the hardness of this sheet"),
    ):
        told = phone.phrase(f"verdict-{check}", holding="undecided, UNDECIDED")
        assert "To settle it: " in told
        assert settle in told
    phone.tap("clamp-curve")
    assert "slack at 0.0027 in by the hardest" in phone.phrase("height-load")
    phone.tap("clamp-entry")


def main_case(phone: Phone) -> None:
    """4.25 · 9567.7 lbf = 40663 lbf."""
    phone.tap("choose-size")
    pick(phone, size="7/16", thread="7/16-14", strength="8")
    type_into(phone, "fasteners", "Per cylinder", "4.25")
    type_into(phone, "gasket", "Sheet", "40")
    phone.tap("clamp-loads")
    assert "Clamp 40700 pounds" in phone.phrase("bar-1", holding="40700")
    for check, word in (
        ("clamp-to-proof", "BELOW PROOF"),
        ("separation", "HOLDS DOWN"),
        ("beds", "BEDS"),
    ):
        assert f"pass, {word}" in phone.phrase(f"verdict-{check}", holding="pass")
    assert "give the part of the gas load" in phone.phrase("verdict-fastener-at-peak")
    phone.tap("clamp-curve")
    assert "A quarter of the sheet is 0.0100 in" in phone.phrase("height-load", holding="quarter")
    phone.tap("clamp-tighten")
    assert "one fastener at a time" in phone.phrase("retorque").lower()


def draws_beside_first_order(phone: Phone) -> None:
    phone.tap("clamp-spread")
    assert "from way of tightening" in phone.phrase("spread-shares")
    phone.tap("draw")
    assert "first order" in phone.phrase("drawn-clamp", holding="spread")
    assert "drawn" in phone.phrase("drawn-body-at-least")
