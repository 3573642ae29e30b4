"""Bytes as texts that travel: a link, or several where one code would be too dense.

A part reads ``1-K7QX2M4A-2-4-ABC2DEF-…``: format, name of the whole, which part, of how many,
checksum of this part, data. Name and data are base32 (RFC 4648): only capitals and digits, so a
code draws them in its denser alphanumeric mode (11 bits for two signs, of which 10 carry data), a
link needs no escapes, and no messenger turns any of them into bold type or cuts a sign off the
end. base45 (RFC 9285) would save 6 % and needs a space and a per cent sign, which a link cannot
hold; base64url is a quarter denser as a plain link and a fifth less dense in a code.
"""

import base64
import binascii
import re
import zlib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from hashlib import blake2b

from core.errors import DamagedFile, NewerFormat, RecordError
from core.handover.packing import Ledgers, pack, unpack
from core.records.event import Event
from core.texts import text

FORMAT = 1
ROUTE = "/take"
NAME_BYTES = 5
SUM_BYTES = 4
MOST_PARTS = 99
PART = re.compile(
    r"\b(?P<format>\d{1,3})-(?P<name>[A-Z2-7]{8})-(?P<part>\d{1,2})-(?P<of>\d{1,2})"
    r"-(?P<sum>[A-Z2-7]{7})-(?P<data>[A-Z2-7]*)",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One part of a hand-over.

    Parameters
    ----------
    name
        Of the whole it belongs to.
    number, of
        Which part it is, counted from 1, and of how many.
    data
        Base32 of its bytes, without padding.
    """

    name: str
    number: int
    of: int
    data: str

    def __str__(self) -> str:
        whose = f"{FORMAT}-{self.name}-{self.number}-{self.of}"
        return f"{whose}-{_sum(whose, self.data)}-{self.data}"

    @property
    def whole(self) -> tuple[str, int]:
        """Parts of one whole share this; the same job may be split in several ways."""
        return self.name, self.of


def split(ledgers: Ledgers, most_signs: int | None = None) -> tuple[Part, ...]:
    """Parts of about equal size that carry these events.

    Parameters
    ----------
    most_signs
        Most signs of data in one part; all in one part if there is no such limit.
    """
    packed = pack(ledgers)
    data = _base32(packed)
    count = 1 if most_signs is None else max(1, -(-len(data) // most_signs))
    size = -(-len(data) // count)
    name = _name(packed)
    return tuple(
        Part(name=name, number=number + 1, of=count, data=data[number * size : (number + 1) * size])
        for number in range(count)
    )


def link(address: str, part: Part) -> str:
    """Address that opens the app with a part."""
    return f"{address}#{ROUTE}?{part}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """What a text holds.

    Parameters
    ----------
    parts
        Whole parts, each once.
    faults
        Sentences on parts that cannot be used.
    """

    parts: tuple[Part, ...]
    faults: tuple[str, ...]


def find_parts(written: str) -> Found:
    """Parts in any text: a link, several, or a message around them.

    Raises
    ------
    NewerFormat
        If a newer version wrote one.
    DamagedFile
        If no part is in it.
    """
    parts: dict[Part, None] = {}
    faults: dict[str, None] = {}
    for match in PART.finditer(written):
        if int(match["format"]) > FORMAT:
            raise NewerFormat(text("handover.newer", version=int(match["format"]), ours=FORMAT))
        part, told = _read(match)
        if told:
            faults[told] = None
        else:
            parts[part] = None
    if not parts and not faults:
        raise DamagedFile(text("handover.nothing"))
    return Found(parts=tuple(parts), faults=tuple(faults))


def _read(match: re.Match[str]) -> tuple[Part, str]:
    """A part, and what is wrong with it."""
    part = Part(
        name=match["name"].upper(),
        number=int(match["part"]),
        of=int(match["of"]),
        data=match["data"].upper(),
    )
    whose = f"{int(match['format'])}-{part.name}-{part.number}-{part.of}"
    if match["sum"].upper() != _sum(whose, part.data) or not 1 <= part.number <= part.of:
        return part, text("handover.part_damaged", part=part.number, of=part.of)
    return part, ""


@dataclass(slots=True)
class Waiting:
    """Parts that came so far, of one hand-over or several."""

    _wholes: dict[tuple[str, int], dict[int, Part]] = field(default_factory=dict)

    def add(self, parts: Iterable[Part]) -> tuple[tuple[str, int], ...]:
        """Keep parts; which wholes they belong to, in order."""
        touched: dict[tuple[str, int], None] = {}
        for part in parts:
            self._wholes.setdefault(part.whole, {})[part.number] = part
            touched[part.whole] = None
        return tuple(touched)

    def missing(self, whole: tuple[str, int]) -> tuple[int, ...]:
        """Numbers of the parts that have not come."""
        return tuple(n for n in range(1, whole[1] + 1) if n not in self._of(whole))

    def ledgers(self, whole: tuple[str, int]) -> dict[str, list[Event]]:
        """Events of a whole of which every part has come.

        Raises
        ------
        DamagedFile
            If the parts do not make what was packed.
        """
        return join(self._of(whole).values())

    def drop(self, whole: tuple[str, int]) -> None:
        """Forget the parts of a whole."""
        self._wholes.pop(whole, None)

    def texts(self) -> tuple[str, ...]:
        """Every part as text, to be kept by the device."""
        return tuple(str(part) for parts in self._wholes.values() for part in parts.values())

    def _of(self, whole: tuple[str, int]) -> Mapping[int, Part]:
        return self._wholes.get(whole, {})


def join(parts: Iterable[Part]) -> dict[str, list[Event]]:
    """Events of all parts of one whole.

    Raises
    ------
    DamagedFile
        If they do not make what was packed.
    """
    ordered = sorted(parts, key=lambda part: part.number)
    packed = _bytes("".join(part.data for part in ordered))
    if _name(packed) != ordered[0].name:
        raise DamagedFile(text("handover.sum_differs"))
    return unpack(packed)


def parts_kept(texts: Iterable[str]) -> Iterator[Part]:
    """Parts that `Waiting.texts` gave; what cannot be read is left out."""
    for each in texts:
        try:
            yield from find_parts(each).parts
        except RecordError:
            continue


def _name(packed: bytes) -> str:
    return _base32(blake2b(packed, digest_size=NAME_BYTES).digest())


def _sum(whose: str, data: str) -> str:
    """Checksum of one part: CRC-32 (ISO 3309)."""
    return _base32(zlib.crc32(f"{whose}-{data}".encode()).to_bytes(SUM_BYTES, "big"))


def _base32(data: bytes) -> str:
    return base64.b32encode(data).decode().rstrip("=")


def _bytes(data: str) -> bytes:
    try:
        return base64.b32decode(data + "=" * (-len(data) % 8))
    except binascii.Error as error:
        raise DamagedFile(text("handover.sum_differs")) from error
