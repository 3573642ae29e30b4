"""An option typed twice or blank is refused by name: neither value is taken for the other."""

import pytest

from tests.shell import run

OPTIONS = {
    "check": "--wire",
    "gauges": "--shelf",
    "ratio": "--bore",
    "vee": "--raise",
    "cut": "--wire",
    "clamp": "--ring",
}


@pytest.mark.parametrize(("command", "option"), OPTIONS.items())
@pytest.mark.parametrize("values", [("1in", "2in"), (" ",)])
def test_it_is_refused_by_name(command: str, option: str, values: tuple[str, ...]) -> None:
    words = [word for value in values for word in (option, value)]
    done = run(command, *words)
    assert done.returncode == 2
    assert done.stdout == ""
    assert done.stderr.count("\n") == 1
    assert f"argument {option}:" in done.stderr
