"""README.md shows what the program prints."""

from tests.readme import MADE, PART, README, current
from tests.shell import EXAMPLE_LINE

TEXT = README.read_text(encoding="utf-8")


def test_every_made_part_is_what_the_program_makes_now():
    assert current(TEXT) == TEXT, "run `python3 tests --readme` and read what changed"


def test_every_part_stands_there_once():
    assert sorted(part["name"] for part in PART.finditer(TEXT)) == sorted(MADE)


def test_the_command_shown_is_the_one_that_ran():
    shown = " ".join(TEXT.replace("\\\n", " ").split())
    assert f"python3 mobile {EXAMPLE_LINE}" in shown


def test_a_changed_part_is_found():
    assert current(TEXT.replace("call it 12", "call it 13")) == TEXT
