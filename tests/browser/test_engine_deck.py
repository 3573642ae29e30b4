"""From a few numbers to the printed cut sheet, at the machine and without a network."""

from pathlib import Path

from tests.phone import Phone

NUMBERS = {
    "cylinders": "8", "banks": "2", "bore": "4.5", "spacing": "4.9",
    "bolt-offset": "2.6", "bolt-hole": ".53",
}  # fmt: skip
PLAN = {"wire": "41", "gasket": "50"}
PAD = '[flt-semantics-identifier="typed"]'


def type_size(phone: Phone, name: str, keys: str) -> None:
    phone.tap(f"in-deck-{name}")
    phone.phrase("typed", holding=":")
    for key in keys:
        phone.tap("key-point" if key == "." else f"key-{key}")
    phone.tap("key-done")
    phone.page.wait_for_selector(PAD, state="detached")
    phone.phrase(f"in-deck-{name}", holding=f"{float(keys):g}")


def test_from_a_few_numbers_to_the_cut_sheet_offline(phone: Phone, tmp_path: Path) -> None:
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.close()
    phone.open(offline=True)
    phone.read_aloud()
    phone.tap("way-engine")
    phone.tap("engine-deck")
    for name, keys in NUMBERS.items():
        type_size(phone, name, keys)
    phone.tap("deck-map")
    said = phone.phrase("deck-picture", holding="Cylinder 8: not read.")
    assert "left bank and right bank from above" in said
    phone.tap("deck-cut")
    for name, keys in PLAN.items():
        type_size(phone, name, keys)
    assert "0.0400 in · 1.016 mm" in phone.phrase("deck-cut-width-0")
    page = saved_sheet(phone, tmp_path / "sheet.html")
    for line in ("0.0400", "1.016", "Cylinder 8: joint at", "right bank", "Cautions"):
        assert line in page
    kept_after_closing(phone)


def saved_sheet(phone: Phone, path: Path) -> str:
    with phone.page.expect_download() as download:
        phone.tap("deck-save")
    download.value.save_as(path)
    return path.read_text(encoding="utf-8")


def kept_after_closing(phone: Phone) -> None:
    phone.close()
    phone.open(offline=True)
    phone.read_aloud()
    phone.tap("way-engine")
    phone.tap("engine-deck")
    phone.tap("deck-cut")
    assert "0.0120 in" in phone.phrase("deck-cut-height-0")
