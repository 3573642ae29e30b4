"""At the track: no network for days, an engine to re-gasket in an hour, a decision to defend."""

import struct
import zlib
from pathlib import Path

from tests.phone import NewPhone, Phone

TALL = {"width": 390, "height": 2600}


def picture(path: Path, width: int = 3000, height: int = 2000) -> Path:
    """A PNG larger than what a job keeps (PNG specification, 2nd edition)."""

    def chunk(kind: bytes, body: bytes) -> bytes:
        whole = kind + body
        return struct.pack(">I", len(body)) + whole + struct.pack(">I", zlib.crc32(whole))

    rows = b"".join(b"\0" + bytes((y % 251, 90, 40)) * width for y in range(height))
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    body = chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")
    path.write_bytes(b"\x89PNG\r\n\x1a\n" + body)
    return path


def write(phone: Phone, words: str) -> None:
    """Type into the field in front by the system's keyboard, and keep it."""
    phone.phrase("words")
    phone.page.locator("input:focus, textarea:focus").wait_for(state="attached")
    phone.page.keyboard.type(words)
    phone.phrase("keep-words")
    phone.page.wait_for_function(
        "(words) => [...document.querySelectorAll('input, textarea')]"
        ".some((each) => each.value === words)",
        arg=words,
    )
    phone.tap("keep-words")


def type_size(phone: Phone, field: str, keys: str) -> None:
    phone.tap(f"in-{field}")
    for key in keys:
        phone.tap(f"key-{'point' if key == '.' else key}")
    phone.tap("key-done")


def test_a_torn_down_engine_is_read_decided_and_handed_to_another_phone(
    new_phone: NewPhone, tmp_path: Path
) -> None:
    phone = new_phone(viewport=TALL, accept_downloads=True)
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.close()
    phone.open(offline=True)
    phone.read_aloud()
    named_and_laid_out(phone)
    evidence_first(phone, picture(tmp_path / "wide.png"))
    read_by_a_typing_caliper(phone)
    a_decision_to_defend(phone)
    file = days_later_out_as_one_file(phone, tmp_path)
    phone.close()
    taken_in_at_the_shop(new_phone(viewport=TALL), file)


def named_and_laid_out(phone: Phone) -> None:
    """Who writes is asked once; the engine is laid out in a few taps."""
    phone.tap("way-jobs")
    phone.tap("name-device")
    write(phone, "Crew phone")
    phone.tap("new-job")
    phone.tap("banks-2")
    phone.tap("numbering-odd")
    assert "1, 3, 5, 7 | 2, 4, 6, 8" in phone.phrase("layout", holding="|")
    phone.tap("begin")
    phone.tap("identity")
    phone.tap("words-engine")
    write(phone, "Eight, on alcohol")
    phone.tap("face-printed")
    type_size(phone, "job-face-depth", "2")
    phone.tap("back")


def evidence_first(phone: Phone, image: Path) -> None:
    """Torn down: the caution that water asks for, sizes, words, a picture scaled down here."""
    phone.tap("state-torn-down")
    phone.tap("cylinder-3")
    phone.tap("evidence")
    assert "plugs out" in phone.phrase("water-caution")
    type_size(phone, "job-again-12", "9.5")
    phone.tap("water-6")
    write(phone, "A trace towards the valley.")
    with phone.page.expect_file_chooser() as chooser:
        phone.tap("take-picture")
    chooser.value.set_files(image)
    phone.phrase("told", holding="Picture saved")
    assert kept_picture(phone) == [1600, 1067]
    phone.tap("back")


def read_by_a_typing_caliper(phone: Phone) -> None:
    """A caliper that types like a keyboard fills each place and the app moves on."""
    phone.tap("walk")
    phone.tap("with-1")
    for place, value in (("12 o'clock", "0.0098"), ("3 o'clock", "0.0101")):
        phone.phrase("place", holding=place)
        phone.page.keyboard.type(value, delay=20)
        phone.phrase("typed", holding=value)
        phone.page.keyboard.press("Enter")
        phone.phrase("told", holding=place)
    phone.tap("back")
    phone.tap("back")


def a_decision_to_defend(phone: Phone) -> None:
    """Which sheet, who, when, why."""
    phone.tap("sheet")
    phone.tap("run-0.040-in")
    phone.tap("decision-1")
    write(phone, "Print of two, so it bites by eight.")
    assert "Crew phone" in phone.phrase("decision-1", holding="bites by eight")
    phone.tap("back")
    assert "Height to sheet" in phone.phrase("engine-decides", holding="Cylinder 3")


def days_later_out_as_one_file(phone: Phone, folder: Path) -> Path:
    """Still no network: it is all there, and goes out as one file."""
    phone.close()
    phone.open(offline=True)
    phone.read_aloud()
    phone.phrase("engine-decides", holding="Cylinder 3")
    with phone.page.expect_download() as download:
        phone.tap("export-job")
    file = folder / download.value.suggested_filename
    download.value.save_as(file)
    assert file.suffix == ".jsonl"
    return file


def taken_in_at_the_shop(shop: Phone, file: Path) -> None:
    """What the file brings is shown first; then it is all there, with who."""
    shop.open()
    shop.read_aloud()
    shop.tap("way-jobs")
    shop.tap("take")
    with shop.page.expect_file_chooser() as chooser:
        shop.tap("import")
    chooser.value.set_files(file)
    assert "Nothing is taken in yet" in shop.phrase("incoming", holding="new entries")
    shop.tap("take-in")
    shop.phrase("told", holding="Taken in")
    shop.tap(job_name(shop))
    shop.tap("cylinder-3")
    shop.tap("evidence")
    assert "A trace towards the valley." in shop.phrase("water-6", holding="valley")
    assert kept_picture(shop) == [1600, 1067]
    assert "Crew phone" in shop.phrase("signed")


def job_name(phone: Phone) -> str:
    """Identifier of the only job of the list."""
    names: list[str] = phone.page.evaluate(
        "() => [...document.querySelectorAll('[flt-semantics-identifier^=\"job-\"]')]"
        ".map((each) => each.getAttribute('flt-semantics-identifier'))"
    )
    (name,) = names
    return name


def kept_picture(phone: Phone) -> list[int]:
    """Width and height of the picture on the disk, once it is shown."""
    phone.phrase("picture-1", holding="Picture 1")
    size: list[int] = phone.python(PICTURE_SIZE)
    return size


PICTURE_SIZE = """
import gc, js
from mobile.app.jobs.model import Jobs
from pyodide.ffi import to_js
gc.unfreeze()
jobs = next(each for each in gc.get_objects() if isinstance(each, Jobs))
cylinder = jobs.cylinder
(name,) = cylinder.evidence[-1].pictures
data = await jobs.book.pictures.get(name)
bitmap = await js.createImageBitmap(js.Blob.new(to_js([to_js(data)])))
to_js([bitmap.width, bitmap.height])
"""
