"""What the readings of a job say: every ring, every bank, and what decides.

The worst finding decides and is named: a failure before something undecided, and of these the one
that comes first in the order of the work (does the wire hold, is it down, is it even, does the
sheet take it). Where all pass, the least sure one is named, and of equals the height to the sheet.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from statistics import median

from core.calc.evenness import even_bank, even_ring, is_proud, over_median
from core.calc.fit import held_check, interference_check, seat, tapped
from core.calc.gasket import Face, HeadFace, HeightRule, Sheet
from core.calc.height import Bound, Height
from core.calc.shelf import ShelfRow, shelf_row
from core.errors import InputError
from core.forms.kept_heights import (
    head_face,
    height_of,
    last_readings,
    measured_size,
    size_at,
)
from core.records.model import (
    Bank,
    Cylinder,
    Instrument,
    Job,
    Length,
    Place,
    Reading,
    Shop,
    Tapped,
)
from core.records.view import live
from core.tables.half_widths import ASSUMED_HALF_WIDTHS, HalfWidths
from core.unit_types import Millimetre
from core.verdict import Check, Verdict

SEVERITY = {Verdict.PASS: 0, Verdict.UNDECIDED: 1, Verdict.FAIL: 2}
FEWEST_PLACES = 2
SURE = 0.99
"""A pass this sure [1] is as good as any other."""
RULE = HeightRule()


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One answer about one place, one ring or one bank.

    Parameters
    ----------
    id
        Which check this is.
    cylinder
        Number of the cylinder, where it is about one.
    place
        Place on the ring that decides it, where one does.
    check
        Value against limit, where there are such.
    """

    id: str
    verdict: Verdict
    word: str
    cylinder: str = ""
    place: Place = ""
    check: Check | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadPlace:
    """One place of a ring with its last reading.

    Parameters
    ----------
    height
        None where the reading gives none: the straightedge rocks, or its leaves contradict.
    over_median
        Over the median of the ring; none while the ring has fewer than two heights [mm].
    proud
        Whether that is a proud spot.
    trouble
        Why the reading gives no height; empty where it gives one or rocks.
    """

    place: Place
    reading: Reading
    height: Height | None
    over_median: Millimetre | None = None
    proud: bool = False
    trouble: str = ""

    @property
    def rocks(self) -> bool:
        """Whether the straightedge rocks on it."""
        return self.reading.measured is not None and self.reading.measured.rocks


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgedRing:
    """One cylinder's ring.

    Parameters
    ----------
    places
        Places read so far, each with its last reading.
    findings
        In the order of the work.
    hammer
        For each place read before and after tapping: whether it was down.
    median
        Of its heights; none without any [mm].
    """

    cylinder: Cylinder
    places: tuple[ReadPlace, ...]
    findings: tuple[Finding, ...]
    hammer: tuple[Finding, ...]
    median: Millimetre | None

    @property
    def worst(self) -> Finding | None:
        """The finding that decides."""
        return worst(self.findings)

    @property
    def tap_again(self) -> tuple[Place, ...]:
        """Places to tap again: proud, or not down."""
        proud = [each.place for each in self.places if each.proud]
        up = [each.place for each in self.findings if each.word in NOT_DOWN]
        return tuple(dict.fromkeys((*proud, *up)))


NOT_DOWN = ("not-down", "tap-and-measure")


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgedBank:
    """One deck.

    Parameters
    ----------
    across
        Whether its rings are even; none with fewer than two rings read.
    findings
        What decides each ring, and `across`.
    """

    bank: Bank
    rings: tuple[JudgedRing, ...]
    across: Finding | None
    findings: tuple[Finding, ...]

    @property
    def worst(self) -> Finding | None:
        """The finding that decides."""
        return worst(self.findings)


def worst(findings: Iterable[Finding]) -> Finding | None:
    """The finding that decides; the first of equals."""
    return max(findings, key=_weight, default=None)


def _weight(finding: Finding) -> tuple[int, float, bool]:
    if finding.verdict is not Verdict.PASS:
        return SEVERITY[finding.verdict], 0.0, False
    told = finding.check.probability if finding.check else None
    doubt = 0.0 if told is None else max(0.0, SURE - told)
    return SEVERITY[Verdict.PASS], doubt, finding.id == "height-to-gasket"


@dataclass(frozen=True, slots=True, kw_only=True)
class Judging:
    """What all rings of a job are judged with.

    Parameters
    ----------
    sheet
        Sheet decided on, or on the engine now; none leaves the height to the sheet open.
    """

    face: HeadFace
    sheet: Sheet | None
    instruments: Mapping[str, Instrument]
    half_widths: HalfWidths = ASSUMED_HALF_WIDTHS


def judging(job: Job, shop: Shop | None, half_widths: HalfWidths = ASSUMED_HALF_WIDTHS) -> Judging:
    """What a job's rings are judged with, from the job itself and the shop's instruments."""
    sheet = decided_sheet(job)
    return Judging(
        face=head_face(job),
        sheet=Sheet(thickness=sheet.mm, half_width=half_widths.sheet_measured) if sheet else None,
        instruments={each.id: each for each in shop.instruments} if shop else {},
        half_widths=half_widths,
    )


def decided_sheet(job: Job) -> Length | None:
    """Sheet last decided on; where none was, the one on the engine now."""
    decided = [each for each in live(job.decisions) if each.sheet]
    if decided:
        return max(decided, key=lambda each: (each.at, each.id)).sheet
    return next((each.sheet_on for each in live(job.limits) if each.sheet_on), None)


def judge_job(job: Job, shop: Shop | None) -> tuple[JudgedBank, ...]:
    """Every bank that is not deleted."""
    by = judging(job, shop)
    return tuple(judge_bank(bank, by) for bank in live(job.banks))


def judge_bank(bank: Bank, by: Judging) -> JudgedBank:
    """Each ring of a bank, and whether they are even."""
    rings = tuple(judge_ring(each, by) for each in live(bank.cylinders))
    medians = [ring.median for ring in rings if ring.median is not None]
    across = None
    if len(medians) >= FEWEST_PLACES:
        across = found(even_bank(medians))
    decisive = [ring.worst for ring in rings if ring.worst]
    findings = (*decisive, *([across] if across else []))
    return JudgedBank(bank=bank, rings=rings, across=across, findings=findings)


def judge_ring(cylinder: Cylinder, by: Judging) -> JudgedRing:
    """Everything that a cylinder's sizes and readings say."""
    places = _places(cylinder, by)
    findings = (*_fit(cylinder, by), *_rocking(places), *_heights(cylinder, places, by))
    heights = _values(_two_sided(places))
    return JudgedRing(
        cylinder=cylinder,
        places=places,
        findings=tuple(replace(each, cylinder=cylinder.number) for each in findings),
        hammer=_hammer(cylinder, by),
        median=median(heights) if heights else None,
    )


def found(check: Check, place: Place = "") -> Finding:
    """A check as a finding."""
    return Finding(id=check.id, verdict=check.verdict, word=check.word, place=place, check=check)


def _places(cylinder: Cylinder, by: Judging) -> tuple[ReadPlace, ...]:
    read = [
        _read(place, reading, by) for place, reading in last_readings(cylinder.readings).items()
    ]
    whole = _two_sided(read)
    if len(whole) < FEWEST_PLACES:
        return tuple(read)
    over = dict(zip((each.place for each in whole), over_median(_values(whole)), strict=True))
    return tuple(
        replace(each, over_median=over[each.place], proud=is_proud(over[each.place]))
        if each.place in over
        else each
        for each in read
    )


def _read(place: Place, reading: Reading, by: Judging) -> ReadPlace:
    try:
        height = height_of(reading, by.instruments, by.half_widths)
    except InputError as error:
        return ReadPlace(place=place, reading=reading, height=None, trouble=str(error))
    return ReadPlace(place=place, reading=reading, height=height)


def _two_sided(places: Iterable[ReadPlace]) -> list[ReadPlace]:
    return [each for each in places if each.height and each.height.bound is Bound.BOTH]


def _values(places: Iterable[ReadPlace]) -> list[Millimetre]:
    return [each.height.value for each in places if each.height]


def _fit(cylinder: Cylinder, by: Judging) -> list[Finding]:
    """Whether the groove holds the wire, at the place where it holds least."""
    wire = measured_size(cylinder.wire, by.half_widths.wire_measured)
    if wire is None:
        return []
    widths = {
        place: measured_size(size, by.half_widths.groove_width)
        for place, size in cylinder.groove_width.items()
    }
    depths = {
        place: measured_size(size, by.half_widths.groove_depth)
        for place, size in cylinder.groove_depth.items()
    }
    found_there = (
        [found(interference_check(wire, size), place) for place, size in widths.items() if size],
        [found(held_check(wire, size), place) for place, size in depths.items() if size],
    )
    return [decides for each in found_there if (decides := worst(each))]


def _rocking(places: Iterable[ReadPlace]) -> list[Finding]:
    return [
        Finding(id="rocks", verdict=Verdict.FAIL, word="rocks", place=each.place)
        for each in places
        if each.rocks
    ]


def _heights(cylinder: Cylinder, places: tuple[ReadPlace, ...], by: Judging) -> list[Finding]:
    seated = [each for place in places if (each := _seated(cylinder, place, by))]
    even = _even(_two_sided(places))
    on_sheet = _on_sheet(places, by)
    return [each for each in (worst(seated), even, *on_sheet) if each]


def _seated(cylinder: Cylinder, place: ReadPlace, by: Judging) -> Finding | None:
    wire = measured_size(cylinder.wire, by.half_widths.wire_measured)
    width = measured_size(size_at(cylinder.groove_width, place.place), by.half_widths.groove_width)
    depth = measured_size(size_at(cylinder.groove_depth, place.place), by.half_widths.groove_depth)
    if not (place.height and wire and width and depth):
        return None
    return found(seat(place.height, wire, width, depth).check, place.place)


def _even(whole: list[ReadPlace]) -> Finding | None:
    if len(whole) < FEWEST_PLACES:
        return None
    over = over_median(_values(whole))
    worst_place = max(zip(over, whole, strict=True), key=lambda pair: abs(pair[0]))[1]
    check = even_ring(over)
    return found(check, worst_place.place if check.verdict is Verdict.FAIL else "")


def _on_sheet(places: tuple[ReadPlace, ...], by: Judging) -> list[Finding]:
    """The sheet under the highest place, its bite under the lowest."""
    read = [each for each in places if each.height]
    if by.sheet is None or not read:
        return []
    ordered = sorted(read, key=lambda each: each.height.value if each.height else 0.0)
    high, low = _row(ordered[-1], by), _row(ordered[0], by)
    checks = ((high.height_check, ordered[-1]), (low.bite_check, ordered[0]))
    return [_unless_receiver(found(check, place.place), by) for check, place in checks]


def _row(place: ReadPlace, by: Judging) -> ShelfRow:
    assert place.height is not None
    assert by.sheet is not None
    return shelf_row(place.height, by.sheet, by.face, RULE, by.half_widths)


def _unless_receiver(finding: Finding, by: Judging) -> Finding:
    """With a receiver the trade does not agree on which height counts."""
    if by.face.face is not Face.RECEIVER or finding.check is None:
        return finding
    check = replace(finding.check, verdict=Verdict.UNDECIDED, word="undecided", probability=None)
    return found(check, finding.place)


def _hammer(cylinder: Cylinder, by: Judging) -> tuple[Finding, ...]:
    sides = {
        side: {
            place: each
            for place, reading in last_readings(_made(cylinder, side)).items()
            if (each := _read(place, reading, by).height) and each.bound is Bound.BOTH
        }
        for side in Tapped
    }
    before, after = sides[Tapped.BEFORE], sides[Tapped.AFTER]
    return tuple(
        replace(found(tapped(before[place], after[place]), place), cylinder=cylinder.number)
        for place in before
        if place in after
    )


def _made(cylinder: Cylinder, side: Tapped) -> list[Reading]:
    return [each for each in cylinder.readings if each.measured and each.measured.tapped is side]
