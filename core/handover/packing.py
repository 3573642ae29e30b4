"""Events as few bytes as they allow, and back without loss.

The events are laid out by columns (all records, all fields, all values …), because like stands
beside like there and deflate (RFC 1951) finds it; a preset dictionary holds the words of the model,
so that a small job does not pay for them. A length whose text reads as its value travels as text
alone. A checksum over the events themselves tells whether they came back as they were.
"""

import base64
import json
import re
import zlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from hashlib import blake2b
from itertools import accumulate, groupby, pairwise
from typing import Any, cast

from core.errors import DamagedFile, InputError
from core.records.codec import event_from_json, event_to_json, from_bytes, to_bytes
from core.records.event import Event, Json
from core.records.parcel import LEDGER
from core.records.stamp import Stamp, read_stamp
from core.texts import text
from core.units import Bare, Dimension, Field, read_quantity

MOST_BYTES = 2_000_000
"""Longest text that is unfolded: a crafted link must not fill the memory."""
RAW = -15
GROUP_COLUMNS = ("later", "clock", "count", "author", "by", "size")
MADE_KEY = re.compile(r"[0-9a-f]{12}")
KEY_SIGNS = 12
LENGTH = "l"
RECORD = "r"
KEPT = "k"
MARKS = ({LENGTH}, {RECORD}, {KEPT})
ANY_LENGTH = Field(name="", dimension=Dimension.LENGTH, low=-1e6, high=1e6, bare=Bare.REFUSE)
Ledgers = Mapping[str, Sequence[Event]]
WRONG = (
    zlib.error, ValueError, LookupError, TypeError, AttributeError, RecursionError, StopIteration,
    InputError,
)  # fmt: skip
"""What bytes that `pack` did not give may run into."""

DICTIONARY = (
    b'"sum":"","ledgers":[["job-","undoes":{},"authors":["","who":["","clock":[0,0,0,0,0,0,"author":['
    b'0,0,0,0,0,0,0,"by":[0,0,0,0,0,0,0,"later":["indexes":{},"replaces":{"restores":{},"records":['
    b'"fields":["size":[1,1,1,1,1,2,3,1,1,1,2,2,2,2,2,3,2,2,"count":[1,1,1,1,1,1,2,3,2],"what":['
    b'"of":[0,0,0,0,0,1,1,1,2,2,2,3,3,3,4,4,4,5,5,5,6,6,6,7,7,7,8,9,10,11,12,13,14,15,16,17,18,19,'
    b'"limits","evidence/squeeze/decision/step/clearances","step/trial_squeeze","step/torqued",'
    b'"step/retorqued_cold","step/evidence_read","step/run","step/sheet_annealed",'
    b'"step/sheet_chosen","step/height_measured","step/tapped_down","step/pressed_in",'
    b'"step/ends_square","step/wire_cut","step/groove_measured","step/groove_cut",'
    b'"step/test_groove","step/wire_miked","step/deck_finished","reading/bank/cylinder/'
    b'"indicator","depth micrometer","caliper","instrument":"instrument/"values":[{"rocks":true,'
    b'"sheet_on","piston_deck","intake_valve","exhaust_valve","stroke","gasket_bore","chamber",'
    b'"highest_ratio","pushrod_length","torn down","assembled","planned","at work","printed",'
    b'"receiver","state","head_face","owner","engine","title","head","block","note","deleted",'
    b'"measured","done","reason","sheet","about","chosen","cylinder","soot@","water@","wire_again@'
    b'"print_depth@12","print_depth@6","sheet_annealed","joint","spool","order","name","bank",'
    b'"number","bore","centre_diameter","wire","groove_width@12","groove_width@3","groove_width@6",'
    b'"groove_width@9","groove_depth@12","groove_depth@3","groove_depth@6","groove_depth@9",'
    b'{"l":"0.041 in"},{"l":"0.0400 in"},{"l":"0.0310 in"},{"l":"1.02 mm"},true,true,true,false,'
    b'"place":"bridge","place":"joint before","place":"joint after","tapped":"before",'
    b'{"cylinder":"cylinder/","kind":"leaves","place":"12","tapped":"after",'
    b'"go":{"l":"0.010 in"},"no_go":{"l":"0.011 in"}},'
)
"""Words that deflate may point back to. Changing one of them makes another version."""


def pack(ledgers: Ledgers) -> bytes:
    """Events of these ledgers, as few bytes as they allow."""
    document = {
        "sum": checksum(ledgers),
        "ledgers": [[name, _columns(events)] for name, events in ledgers.items()],
    }
    deflate = zlib.compressobj(9, zlib.DEFLATED, RAW, 9, zlib.Z_DEFAULT_STRATEGY, DICTIONARY)
    return deflate.compress(to_bytes(document)) + deflate.flush()


def unpack(data: bytes) -> dict[str, list[Event]]:
    """Events of what `pack` gave.

    Raises
    ------
    DamagedFile
        If it is not that, or the events did not come back as they were.
    """
    try:
        document = cast(dict[str, Any], from_bytes(_inflated(data)))
        ledgers = {_ledger(name): _events(columns) for name, columns in document["ledgers"]}
        same = document["sum"] == checksum(ledgers)
    except WRONG as error:
        raise DamagedFile(text("handover.unreadable")) from error
    if not same:
        raise DamagedFile(text("handover.sum_differs"))
    return ledgers


def _inflated(data: bytes) -> bytes:
    inflate = zlib.decompressobj(RAW, DICTIONARY)
    unfolded = inflate.decompress(data, MOST_BYTES)
    if not inflate.eof:
        raise ValueError("cut short or too long")
    return unfolded


def _ledger(name: str) -> str:
    if not LEDGER.fullmatch(name):
        raise ValueError(name)
    return name


def checksum(ledgers: Ledgers) -> str:
    """BLAKE2b (RFC 7693), 64 bits, over the events in the order of their ids."""
    total = blake2b(digest_size=8)
    for name in sorted(ledgers):
        total.update(name.encode())
        for event in sorted(ledgers[name], key=lambda each: each.id):
            body = json.dumps(event_to_json(event), sort_keys=True, ensure_ascii=False)
            total.update(body.encode())
    return total.hexdigest()


class _Table:
    """Things that are named by their number from the second time on."""

    def __init__(self) -> None:
        self.numbers: dict[str, int] = {}

    def __call__(self, name: str) -> int:
        return self.numbers.setdefault(name, len(self.numbers))

    def names(self) -> list[Json]:
        return list(self.numbers)


@dataclass(frozen=True, slots=True)
class _Group:
    """What events of one tap share."""

    action: str
    at: int
    who: str
    undoes: str


def _group(event: Event) -> _Group:
    return _Group(event.action, event.at, event.who, event.undoes)


def _columns(events: Iterable[Event]) -> dict[str, Json]:
    ordered = sorted(events, key=_in_order)
    groups = [(key, list(members)) for key, members in groupby(ordered, _group)]
    numbers = {event.id: number for number, event in enumerate(ordered)}
    records, fields = _Table(), _Table()
    of = [records(event.record) for event in ordered]
    return {
        **_group_columns(groups),
        "indexes": _odd_indexes(groups),
        "of": [now - before for before, now in pairwise([0, *of])],
        "what": [fields(event.field) for event in ordered],
        "values": [_packed(event.value, records.numbers) for event in ordered],
        "replaces": {
            str(numbers[event.id]): [numbers.get(each, each) for each in event.replaces]
            for event in ordered
            if event.replaces
        },
        "restores": {
            str(numbers[event.id]): numbers.get(event.restores, event.restores)
            for event in ordered
            if event.restores
        },
        **_record_columns(records.numbers),
        "fields": fields.names(),
    }


def _in_order(event: Event) -> tuple[str, int]:
    action, _, index = event.id.rpartition(".")
    return action, int(index, 16)


def _record_columns(records: Iterable[str]) -> dict[str, Json]:
    """Kinds, and keys: those that are six random bytes in one run, others as they are."""
    parts = [record.partition("/") for record in records]
    made = [key for _, _, key in parts if MADE_KEY.fullmatch(key)]
    return {
        "kinds": [kind for kind, _, _ in parts],
        "keys": base64.b64encode(bytes.fromhex("".join(made))).decode(),
        "odd": {
            str(n): slash + key
            for n, (_, slash, key) in enumerate(parts)
            if not MADE_KEY.fullmatch(key)
        },
    }


def _records(columns: Mapping[str, Any]) -> list[str]:
    keys = base64.b64decode(columns["keys"], validate=True).hex()
    made = iter(range(0, len(keys), KEY_SIGNS))
    records = []
    for number, kind in enumerate(columns["kinds"]):
        odd = columns["odd"].get(str(number))
        start = 0 if odd is not None else next(made)
        records.append(kind + (f"/{keys[start : start + KEY_SIGNS]}" if odd is None else odd))
    return records


def _group_columns(groups: Sequence[tuple[_Group, list[Event]]]) -> dict[str, Json]:
    stamps = [read_stamp(key.action) for key, _ in groups]
    walls = [0, *(stamp.wall for stamp in stamps)]
    authors, who = _Table(), _Table()
    return {
        "later": [now - before for before, now in pairwise(walls)],
        "clock": [key.at - stamp.wall for (key, _), stamp in zip(groups, stamps, strict=True)],
        "count": [stamp.count for stamp in stamps],
        "author": [authors(stamp.author) for stamp in stamps],
        "by": [who(key.who) for key, _ in groups],
        "size": [len(members) for _, members in groups],
        "undoes": {str(n): key.undoes for n, (key, _) in enumerate(groups) if key.undoes},
        "authors": authors.names(),
        "who": who.names(),
    }


def _odd_indexes(groups: Sequence[tuple[_Group, list[Event]]]) -> dict[str, Json]:
    """Places within an action that are not simply counted up from 0."""
    odd: dict[str, Json] = {}
    number = 0
    for _, members in groups:
        for place, event in enumerate(members):
            index = event.id.rpartition(".")[2]
            if index != f"{place:x}":
                odd[str(number)] = index
            number += 1
    return odd


def _events(columns: Mapping[str, Any]) -> list[Event]:
    ids, records = list(_ids(columns)), _records(columns)
    of = accumulate(columns["of"])
    made: list[dict[str, Json]] = []
    for number, ((id_, group), record) in enumerate(zip(ids, of, strict=True)):
        replaces = columns["replaces"].get(str(number), [])
        restores = columns["restores"].get(str(number), "")
        made.append(
            {
                "id": id_,
                "at": group.at,
                "who": group.who,
                "record": _at(records, record),
                "field": _at(columns["fields"], columns["what"][number]),
                "value": _unpacked(columns["values"][number], records),
                "replaces": [_id(ids, each) for each in replaces],
                "undoes": group.undoes,
                "restores": _id(ids, restores),
            }
        )
    return [event_from_json(each) for each in made]


def _ids(columns: Mapping[str, Any]) -> Iterator[tuple[str, _Group]]:
    wall = number = 0
    rows = zip(*(columns[name] for name in GROUP_COLUMNS), strict=True)
    for group, (later, clock, count, author, by, size) in enumerate(rows):
        wall += later
        stamp = Stamp(wall, count, _at(columns["authors"], author))
        undoes = columns["undoes"].get(str(group), "")
        shared = _Group(str(stamp), wall + clock, _at(columns["who"], by), undoes)
        for place in range(min(size, len(columns["of"]) - number)):
            index = columns["indexes"].get(str(number), f"{place:x}")
            yield f"{stamp}.{index}", shared
            number += 1


def _at(names: Sequence[str], number: int) -> str:
    if number < 0:
        raise LookupError(number)
    return names[number]


def _id(ids: Sequence[tuple[str, _Group]], reference: int | str) -> str:
    if isinstance(reference, str):
        return reference
    if reference < 0:
        raise LookupError(reference)
    return ids[reference][0]


def _packed(value: Json, records: Mapping[str, int]) -> Json:
    """A value with lengths as text alone and records by number; what looks so is marked as kept."""
    if isinstance(value, str) and value in records:
        return {RECORD: records[value]}
    if isinstance(value, list):
        return [_packed(each, records) for each in value]
    if not isinstance(value, dict):
        return value
    if value.keys() == {"typed", "mm"} and _reads_as(value["typed"], value["mm"]):
        return {LENGTH: value["typed"]}
    inner: dict[str, Json] = {name: _packed(each, records) for name, each in value.items()}
    return {KEPT: inner} if inner.keys() in MARKS else inner


def _unpacked(value: Json, records: Sequence[str]) -> Json:
    if isinstance(value, list):
        return [_unpacked(each, records) for each in value]
    if not isinstance(value, dict):
        return value
    if value.keys() == {RECORD}:
        return _at(records, cast(int, value[RECORD]))
    if value.keys() == {LENGTH}:
        typed = cast(str, value[LENGTH])
        return {"typed": typed, "mm": _mm(typed)}
    inner = value[KEPT] if value.keys() == {KEPT} else value
    return {name: _unpacked(each, records) for name, each in cast(dict[str, Json], inner).items()}


def _reads_as(typed: Json, mm: Json) -> bool:
    try:
        return isinstance(typed, str) and isinstance(mm, float) and _mm(typed) == mm
    except InputError:
        return False


def _mm(typed: str) -> float:
    return read_quantity(typed, ANY_LENGTH).value
