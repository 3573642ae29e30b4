"""The parts of README.md that come from the program itself; `python3 tests --readme` writes them.

Each stands between `<!-- made: NAME -->` and `<!-- end -->`.
"""

import contextlib
import io
import re
import tempfile
from pathlib import Path

from core.command.program import main
from tests.limited_job import write_limited_job
from tests.shell import EXAMPLE
from tests.source_table import table

README = Path(__file__).resolve().parent.parent / "README.md"
PART = re.compile(r"(<!-- made: (?P<name>[a-z]+) -->\n)(?P<made>.*?)(\n<!-- end -->)", re.DOTALL)


def output(*arguments: str) -> str:
    """What a command prints, as a block."""
    printed = io.StringIO()
    with contextlib.redirect_stdout(printed):
        assert main(arguments) == 0
    return f"```\n{printed.getvalue().rstrip()}\n```"


CLAMP = (
    *("--thread", "7/16-14", "--grade", "8", "--torque", "65lbf.ft", "--friction", "0.18"),
    *("--fasteners", "4.25", "--ring", "4.300in", "--pressure", "1500psi"),
    *("--wire", "0.041in", "--height", "0.0105in", "--gasket", "0.040in"),
)
RATIO = (
    *("--bore", "4.125in", "--stroke", "3.75in", "--chamber", "64cc", "--dish", "5cc"),
    *("--deck", "0.005in", "--gasket-bore", "4.2in", "--gasket", "0.043in"),
)


def chosen() -> str:
    """What `choose` says of the demo job."""
    with tempfile.TemporaryDirectory() as place:
        return output("choose", str(write_limited_job(Path(place) / "job")))


MADE = {
    "check": lambda: output(*EXAMPLE),
    "gauges": lambda: output("gauges", "--shelf", "0.032in,0.040in,0.050in,0.0646in"),
    "ratio": lambda: output("ratio", *RATIO),
    "vee": lambda: output("vee", "--bank-angle", "90", "--face-angle", "80", "--raise", "0.010in"),
    "choose": chosen,
    "clamp": lambda: output("clamp", *CLAMP),
    "cases": table,
}


def current(readme: str) -> str:
    """The text with every made part as the program makes it now."""
    return PART.sub(lambda part: f"{part[1]}{MADE[part['name']]()}{part[4]}", readme)


def write() -> None:
    """Bring README.md up to date."""
    README.write_text(current(README.read_text(encoding="utf-8")), encoding="utf-8")
