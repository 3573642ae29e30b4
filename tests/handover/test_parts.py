"""Parts of a hand-over: each says which it is, a cut one says that it is cut."""

from pathlib import Path

import pytest

from core.errors import DamagedFile, NewerFormat
from core.handover.codes import codes
from core.handover.parts import Waiting, find_parts, join, link, parts_kept, split
from core.records.demo import demo_events
from tests.eight_cylinders import eight_cylinders, new_book

ADDRESS = "https://shop.example/ring/"
KEPT = Path(__file__).parents[1] / "fixtures" / "handover" / "format-1.txt"
LEDGERS = {"job-demo": list(demo_events())}


def sorted_by_id(ledgers):
    return {name: sorted(events, key=lambda each: each.id) for name, events in ledgers.items()}


def test_a_link_in_a_message_is_found_whatever_stands_around_it():
    (part,) = split(LEDGERS)
    message = f"Here is the job:\n{link(ADDRESS, part)}\nsee you"
    assert find_parts(message).parts == (part,)
    assert find_parts(link(ADDRESS, part).lower()).parts == (part,)
    assert sorted_by_id(join(find_parts(message).parts)) == sorted_by_id(LEDGERS)


def test_parts_come_in_any_order_and_more_than_once_and_the_missing_ones_are_named():
    parts = split(LEDGERS, 300)
    assert len(parts) > 3
    waiting = Waiting()
    for part in (parts[2], parts[0], parts[2]):
        (whole,) = waiting.add([part])
    assert waiting.missing(whole) == (2, *range(4, len(parts) + 1))
    again = Waiting()
    again.add(parts_kept(waiting.texts()))
    again.add(parts[1:])
    assert again.missing(whole) == ()
    assert sorted_by_id(again.ledgers(whole)) == sorted_by_id(LEDGERS)
    again.drop(whole)
    assert again.texts() == ()


def test_two_jobs_on_their_way_do_not_mix():
    other = {"job-2": list(eight_cylinders(new_book()).fold)}
    waiting = Waiting()
    wholes = {waiting.add([part])[0] for each in (LEDGERS, other) for part in split(each, 700)}
    assert len(wholes) == 2
    names = {name for whole in wholes for name in waiting.ledgers(whole)}
    assert names == {"job-demo", "job-2"}


def test_every_cut_and_every_changed_sign_is_told_with_the_number_of_the_part():
    part = split(LEDGERS, 300)[1]
    written = str(part)
    start = written.rindex("-") + 1
    for end in range(start, len(written)):
        found = find_parts(written[:end])
        assert found.parts == ()
        assert found.faults == (f"Part 2 of {part.of} is cut or changed: get it again.",)
    for at in range(start, len(written)):
        sign = "A" if written[at] != "A" else "B"
        assert find_parts(written[:at] + sign + written[at + 1 :]).parts == ()


def test_a_number_that_was_changed_does_not_pass():
    part = split(LEDGERS, 300)[1]
    written = str(part).replace(f"-2-{part.of}-", f"-1-{part.of}-", 1)
    assert find_parts(written).parts == ()


def test_parts_that_do_not_belong_together_are_refused():
    mine, other = split(LEDGERS, 300), split({"job-1": LEDGERS["job-demo"]}, 300)
    with pytest.raises(DamagedFile, match="do not make what was sent"):
        join([*mine[:-1], other[len(mine) - 1]])


def test_a_newer_format_and_a_text_without_a_hand_over_are_refused_in_words():
    (part,) = split(LEDGERS)
    with pytest.raises(NewerFormat, match="Update the app"):
        find_parts(f"2{str(part)[1:]}")
    for nothing in ("", "hello", "https://shop.example/#/check?go=0.011in", "1-2-3-4"):
        with pytest.raises(DamagedFile, match="Copy the whole link"):
            find_parts(nothing)


def test_a_hand_over_kept_from_format_1_still_comes_in():
    (ledgers,) = [join(find_parts(KEPT.read_text()).parts)]
    assert sorted_by_id(ledgers) == sorted_by_id(LEDGERS)


@pytest.mark.parametrize("scale", [3, 4])
def test_a_job_of_eight_cylinders_is_read_off_at_most_four_codes(scale):
    """Read by a general-purpose reader from what the screen shows, at 3 and 4 px a module."""
    import numpy
    import zxingcpp

    ledgers = {"job-3fa90c11d2e4a0b1": list(eight_cylinders(new_book()).fold)}
    drawn = codes(ledgers, "https://ring.team-copper.example/standproud/")
    assert len(drawn) <= 4
    texts = []
    for code in drawn:
        assert len(code.rows) <= 97
        dark = numpy.pad(numpy.array(code.rows), 4)
        picture = numpy.where(dark, 0, 255).astype(numpy.uint8)
        enlarged = numpy.kron(picture, numpy.ones((scale, scale), dtype=numpy.uint8))
        (found,) = zxingcpp.read_barcodes(enlarged)
        texts.append(found.text)
    assert all(
        each.startswith("https://ring.team-copper.example/standproud/#/take?1-") for each in texts
    )
    parts = find_parts("\n".join(texts)).parts
    assert sorted_by_id(join(parts)) == sorted_by_id(ledgers)
