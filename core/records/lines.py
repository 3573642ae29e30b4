"""Lines that know their number, their length and their checksum.

A line is JSON: ``[number,length,"checksum",body]``. The checksum covers number and body, so that a
line that was changed, moved or cut is noticed, and reading goes on at the next good line. Line 0
says what the file is and in which format the rest is written; it never changes its own form.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from hashlib import blake2b

HEAD = re.compile(rb'\[(\d{1,9}),(\d{1,9}),"([0-9a-f]{16})",')
CLOSE = b"]"
END = b"\n"


@dataclass(frozen=True, slots=True)
class Line:
    """One good line."""

    number: int
    body: bytes


@dataclass(frozen=True, slots=True)
class Gap:
    """Bytes that are no good line.

    Parameters
    ----------
    line
        Which line of the file, counted from 1, as an editor shows it.
    start, size
        Where it lies [bytes].
    """

    line: int
    start: int
    size: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Scan:
    """What a file holds.

    Parameters
    ----------
    lines, gaps
        Good lines and what lies between them.
    torn
        Size of an unfinished line at the end, which is not among the gaps [bytes].
    """

    lines: tuple[Line, ...]
    gaps: tuple[Gap, ...]
    torn: int


def checksum(number: int, body: bytes) -> str:
    """Checksum of a line."""
    return blake2b(b"%d:%b" % (number, body), digest_size=8, person=b"standproud").hexdigest()


def write_line(number: int, body: bytes) -> bytes:
    """One line, with its end.

    Examples
    --------
    >>> write_line(1, b"[]").endswith(b",[]]\\n")
    True
    """
    seal = checksum(number, body).encode()
    return b'[%d,%d,"%b",%b]\n' % (number, len(body), seal, body)


def scan(data: bytes) -> Scan:
    """Every good line of a file, and every stretch that is none."""
    lines: list[Line] = []
    gaps: list[tuple[int, int]] = []
    for start, end, line in _stretches(data):
        if line:
            lines.append(line)
        elif gaps and gaps[-1][1] == start:
            gaps[-1] = (gaps[-1][0], end)
        else:
            gaps.append((start, end))
    torn = 0
    if gaps and gaps[-1][1] == len(data) and not data.endswith(END):
        start, end = gaps.pop()
        torn = end - start
    named = tuple(Gap(data.count(END, 0, start) + 1, start, end - start) for start, end in gaps)
    return Scan(lines=tuple(lines), gaps=named, torn=torn)


def _stretches(data: bytes) -> Iterator[tuple[int, int, Line | None]]:
    position = 0
    while position < len(data):
        line, end = _line_at(data, position)
        if line is None:
            following = HEAD.search(data, position + 1)
            end = following.start() if following else len(data)
        yield position, end, line
        position = end


def _line_at(data: bytes, position: int) -> tuple[Line | None, int]:
    match = HEAD.match(data, position)
    if not match:
        return None, position
    number, length = int(match[1]), int(match[2])
    end = match.end() + length
    body = data[match.end() : end]
    if data[end : end + 1] != CLOSE or checksum(number, body) != match[3].decode():
        return None, position
    end += 1
    return Line(number, body), end + (data[end : end + 1] == END)
