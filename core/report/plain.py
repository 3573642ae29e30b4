"""What somebody typed, made fit for a line, a cell or the name of a file."""

import re
import unicodedata

FORMULA_STARTS = ("=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r", "\n")
"""What a spreadsheet may take for the beginning of a formula."""
LONGEST_NAME = 60
NAMES_OF_DEVICES = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)", re.IGNORECASE)
UNSEEN = re.compile(
    "[\x00-\x08\x0e-\x1f\x7f-\x84\x86-\x9f\xad\u061c\u180e\u200b-\u200f\u202a-\u202e"
    "\u2060-\u206f\ufeff\ufff9-\ufffb\ud800-\udfff]"
)
"""Signs that show nothing: controls, overrides of the direction, halves of a pair."""


def seen(typed: str) -> str:
    """Text without the signs that show nothing.

    Examples
    --------
    >>> seen("shown\\x00 as\\u202e typed")
    'shown as typed'
    """
    return UNSEEN.sub("", typed)


def one_line(typed: str) -> str:
    """Text in one line, without signs that show nothing.

    Examples
    --------
    >>> one_line("two\\nlines\\x00 and\\u202e more ")
    'two lines and more'
    """
    return " ".join(seen(typed).split())


def cell(typed: str) -> str:
    """Text that a spreadsheet shows and does not calculate.

    Examples
    --------
    >>> cell("=1+1"), cell("No. 3")
    ("'=1+1", 'No. 3')
    """
    line = one_line(typed)
    return f"'{line}" if line.startswith(FORMULA_STARTS) else line


def file_name(title: str, day: str, ending: str) -> str:
    """Name of a file: small letters, digits and dashes, so that no title leads elsewhere.

    Examples
    --------
    >>> file_name("../Pulling engine: Ünit 2", "2026-01-05", "html")
    'pulling-engine-unit-2-2026-01-05.html'
    """
    plain = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    slug = re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:LONGEST_NAME].strip("-")
    if not slug or NAMES_OF_DEVICES.fullmatch(slug):
        slug = f"job-{slug}".strip("-")
    return f"{slug}-{day}.{ending}"
