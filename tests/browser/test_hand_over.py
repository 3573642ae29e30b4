"""Two phones without a network hand a job to each other, with edits on both."""

from pathlib import Path

import pytest

from core.handover.parts import link, split
from core.records import read_parcel
from core.records.fold import Fold
from core.records.view import job_view
from tests.eight_cylinders import eight_cylinders, new_book
from tests.phone import NewPhone, Phone
from tests.scrolling import reach


@pytest.fixture(scope="module")
def job():
    """A job as the shop's computer has it."""
    return eight_cylinders(new_book(name="Shop"))


def ready(phone: Phone) -> Phone:
    """A phone that saw the app once and then lost the network."""
    phone.open()
    phone.wait_until_ready_for_offline()
    phone.context.grant_permissions(["clipboard-read", "clipboard-write"])
    phone.context.set_offline(True)
    phone.page.reload()
    phone.read_aloud()
    phone.phrase("way-jobs")
    return phone


def follow(phone: Phone, address: str) -> None:
    """Open a link in the running app."""
    phone.page.evaluate("(route) => { location.hash = route }", address.partition("#")[2])


def take(phone: Phone) -> str:
    """Take in what is shown; what it said it would bring."""
    shown = phone.phrase("incoming")
    reach(phone, "take-in")
    phone.phrase("told", holding="Taken in")
    return shown


def open_job(phone: Phone, job_id: str) -> None:
    reach(phone, f"job-{job_id}")
    phone.phrase("cylinder-1")


def link_of(phone: Phone, job_id: str) -> str:
    """The link as the other phone would get it pasted."""
    open_job(phone, job_id)
    reach(phone, "give")
    phone.phrase("job-sentence", holding="rings read")
    reach(phone, "copy-job-link")
    copied: str = phone.page.evaluate("() => navigator.clipboard.readText()")
    phone.tap("back")
    phone.phrase("cylinder-1")
    return copied


def file_of(phone: Phone, folder: Path) -> Path:
    """The job in hand as the file that the browser saves."""
    with phone.page.expect_download() as download:
        reach(phone, "export-job")
    path = folder / download.value.suggested_filename
    download.value.save_as(path)
    return path


def to_list(phone: Phone) -> None:
    phone.tap("back")
    phone.phrase("search")


def events_in(path: Path) -> dict[str, object]:
    parcel = read_parcel(path.read_bytes())
    parcel.refuse_if_faulty()
    (events,) = parcel.ledgers.values()
    return {event.id: event for event in events}


def test_a_job_goes_both_ways_twice_and_nothing_is_lost_or_doubled(
    new_phone: NewPhone, job, tmp_path: Path
) -> None:
    stand, track = ready(new_phone()), ready(new_phone())
    (whole,) = split({f"job-{job.id}": list(job.fold)})
    for phone in (stand, track):
        follow(phone, link(phone.address, whole))
        assert f"{len(job)} new entries" in take(phone)

    # Both change the same field, and each something of its own, without seeing the other.
    for phone, state, step in ((stand, "assembled", "run"), (track, "planned", "torqued")):
        open_job(phone, job.id)
        reach(phone, f"state-{state}")
        reach(phone, "steps")
        reach(phone, f"step-{step}")
        phone.tap("back")
        phone.phrase("cylinder-1")
        to_list(phone)

    # By link to the track: the preview names both values and nothing changed so far.
    follow(track, link_of(stand, job.id))
    preview = track.phrase("ledger-1", holding="Both are kept until you settle it")
    assert "planned here, assembled" in preview
    assert "2 new entries" in take(track)

    # By file back to the stand, chosen by the picker.
    open_job(track, job.id)
    from_track = file_of(track, tmp_path)
    to_list(stand)
    reach(stand, "take")
    with stand.page.expect_file_chooser() as chooser:
        reach(stand, "import")
    chooser.value.set_files(from_track)
    assert "2 new entries" in take(stand)

    # The same again changes nothing.
    follow(track, link_of(stand, job.id))
    assert "Nothing new" in track.phrase("ledger-1")
    take(track)

    from_stand = file_of(stand, tmp_path / "stand")
    here, there = events_in(from_stand), events_in(from_track)
    assert here == there
    assert len(here) == len(job) + 4
    assert set(here) >= {event.id for event in job.fold}
    told = job_view(Fold(here.values()))
    assert {each.id for each in told.steps if not each.done} == {"step/run", "step/torqued"}
    assert len(Fold(here.values()).rivals()) == 1


def test_codes_that_are_shown_are_read_off_the_screen_and_come_in(new_phone: NewPhone, job) -> None:
    """The picture on the glass, read by a general-purpose reader; one code is missing at first."""
    stand, track = ready(new_phone()), ready(new_phone())
    (whole,) = split({f"job-{job.id}": list(job.fold)})
    follow(stand, link(stand.address, whole))
    take(stand)
    open_job(stand, job.id)
    reach(stand, "give")
    phone_sentence = stand.phrase("job-sentence", holding="rings read")
    assert "Highest number 6 at 12 o'clock" in phone_sentence
    reach(stand, "codes")
    count = int(stand.phrase("code", holding=" of ").rpartition(" ")[2])
    assert 1 < count <= 4
    links = []
    for number in range(1, count + 1):
        stand.phrase("code", holding=f"Code {number} of {count}")
        links.append(read_off(stand))
        stand.tap("code-after")

    for each in links[1:]:
        follow(track, each)
    told = track.phrase("trouble", holding="Still to come")
    assert f"{count - 1} of {count} parts are here. Still to come: part 1." in told
    follow(track, links[0][:-9])
    assert f"Part 1 of {count} is cut or changed" in track.phrase("trouble", holding="is cut")
    follow(track, links[0])
    assert f"{len(job)} new entries" in take(track)


def read_off(phone: Phone) -> str:
    """What a reader makes of the screen."""
    import base64

    import numpy
    import zxingcpp

    picture = base64.b64encode(phone.page.screenshot()).decode()
    width, grey = phone.page.evaluate(GREY, picture)
    pixels = numpy.frombuffer(base64.b64decode(grey), dtype=numpy.uint8).reshape(-1, width)
    (found,) = zxingcpp.read_barcodes(pixels)
    return found.text


GREY = """async (picture) => {
  const bytes = Uint8Array.from(atob(picture), (c) => c.charCodeAt(0));
  const image = await createImageBitmap(new Blob([bytes], {type: "image/png"}));
  const canvas = new OffscreenCanvas(image.width, image.height);
  const context = canvas.getContext("2d");
  context.drawImage(image, 0, 0);
  const {data} = context.getImageData(0, 0, image.width, image.height);
  let grey = "";
  for (let at = 0; at < data.length; at += 4) grey += String.fromCharCode(data[at]);
  return [image.width, btoa(grey)];
}"""
