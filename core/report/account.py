"""Everything that a report tells of one job, gathered once."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime, tzinfo

from core.calc.choice import Choice, choose
from core.calc.gasket import Sheet
from core.calc.gauge_card import Gauge, gauge_card
from core.errors import InputError
from core.forms.kept_engine import KeptChoice, kept_choice, sheet_of
from core.forms.kept_verdicts import (
    Finding,
    JudgedBank,
    JudgedRing,
    ReadPlace,
    decided_sheet,
    judge_job,
    worst,
)
from core.records.job_book import JobBook
from core.records.ledger import Change, Rivals
from core.records.model import Job, Length, Shop
from core.records.view import live
from core.tables.half_widths import ASSUMED_HALF_WIDTHS
from core.tables.leaf_sets import INCH_SET, METRIC_SET, LeafSet
from core.tables.practice import HEIGHT

ON_THE_SHEET = ("height-to-gasket", "bite")


@dataclass(frozen=True, slots=True, kw_only=True)
class Printed:
    """When and where a report is made.

    Parameters
    ----------
    at
        The device's clock [ms since 1970, UTC].
    zone
        Zone in which times are told.
    device
        Name of the device.
    """

    at: int
    zone: tzinfo = UTC
    device: str = ""

    def day(self, at: int) -> str:
        """Day of a moment, as ISO 8601 writes it.

        Examples
        --------
        >>> Printed(at=0).day(1_767_607_200_000)
        '2026-01-05'
        """
        return f"{self._local(at):%Y-%m-%d}"

    def minute(self, at: int) -> str:
        """Day and minute of a moment.

        Examples
        --------
        >>> Printed(at=0).minute(1_767_607_200_000)
        '2026-01-05 10:00'
        """
        return f"{self._local(at):%Y-%m-%d %H:%M}"

    @property
    def zone_name(self) -> str:
        """The zone, as it stands beside the times."""
        return f"UTC{self._local(self.at):%z}"

    def _local(self, at: int) -> datetime:
        return datetime.fromtimestamp(at / 1000, self.zone)


@dataclass(frozen=True, slots=True, kw_only=True)
class Account:
    """A job and what it says.

    Parameters
    ----------
    banks
        Every ring judged, bank by bank.
    choice
        Sheets against every window; None where a word of the job is not known.
    choice_trouble
        Why there is no choice.
    gauges
        Leaf that must go and leaf that must not, sheet by sheet.
    leaf_set
        Leaves that the gauges are made of.
    sheet
        Sheet decided on, or on the engine.
    metric
        Whether the sheets were typed in mm.
    changes
        Everything ever entered.
    pictures
        Pictures by name, as far as they are on this device.
    """

    job: Job
    banks: tuple[JudgedBank, ...]
    choice: Choice | None
    choice_trouble: str
    gauges: tuple[Gauge, ...]
    leaf_set: LeafSet
    sheet: Length | None
    metric: bool
    changes: tuple[Change, ...]
    rivals: tuple[Rivals, ...]
    printed: Printed
    pictures: Mapping[str, bytes] = field(default_factory=dict)

    @property
    def rings(self) -> tuple[JudgedRing, ...]:
        """Every ring, bank by bank."""
        return tuple(ring for bank in self.banks for ring in bank.rings)

    @property
    def read(self) -> tuple[tuple[JudgedRing, ReadPlace], ...]:
        """Every place with a height, lowest first."""
        found = [(ring, place) for ring in self.rings for place in ring.places if place.height]
        return tuple(sorted(found, key=_height))

    @property
    def on_sheet(self) -> Finding | None:
        """What decides how the heights sit under the sheet; the least sure of equals."""
        found = [each for ring in self.rings for each in ring.findings if each.id in ON_THE_SHEET]
        return worst(sorted(found, key=_sureness))


def _height(read: tuple[JudgedRing, ReadPlace]) -> float:
    height = read[1].height
    return height.value if height else 0.0


def _sureness(finding: Finding) -> float:
    known = finding.check.probability if finding.check else None
    return 1.0 if known is None else known


def account(
    book: JobBook, shop: Shop | None, printed: Printed, pictures: Mapping[str, bytes] | None = None
) -> Account:
    """Gather what a job says.

    Parameters
    ----------
    shop
        What all jobs share: shelf, leaves and instruments.
    pictures
        Pictures by name, as far as they are here.
    """
    job = book.job
    kept, choice, trouble = _choice(job, shop)
    leaf_set = _leaf_set(shop, metric=bool(kept and kept.metric))
    sheet = decided_sheet(job)
    shelf = kept.shelf if kept and kept.shelf else _alone(sheet)
    return Account(
        job=job,
        banks=judge_job(job, shop),
        choice=choice,
        choice_trouble=trouble,
        gauges=gauge_card(shelf, leaf_set, HEIGHT),
        leaf_set=leaf_set,
        sheet=sheet,
        metric=bool(kept and kept.metric),
        changes=_changes(book),
        rivals=book.rivals(),
        printed=printed,
        pictures=pictures or {},
    )


def _choice(job: Job, shop: Shop | None) -> tuple[KeptChoice | None, Choice | None, str]:
    try:
        kept = kept_choice(job, shop)
        return kept, choose(kept.engine, kept.shelf, pairs=kept.pairs), ""
    except InputError as error:
        return None, None, str(error)


def _alone(sheet: Length | None) -> tuple[Sheet, ...]:
    return () if sheet is None else (sheet_of(sheet, ASSUMED_HALF_WIDTHS),)


def _leaf_set(shop: Shop | None, *, metric: bool) -> LeafSet:
    """The shop's own leaves in the unit in use, or a usual set."""
    for kept in live(shop.leaf_sets) if shop else ():
        if kept.leaves and kept.leaves[0].typed.endswith("mm") is metric:
            return LeafSet(leaves=tuple(sorted(each.mm for each in kept.leaves)), metric=metric)
    return METRIC_SET if metric else INCH_SET


def _changes(book: JobBook) -> tuple[Change, ...]:
    records: Sequence[str] = book.fold.records()
    every: Iterable[Change] = (each for record in records for each in book.changes(record))
    return tuple(sorted(every, key=lambda each: _order(each.event)))


def _order(event: str) -> tuple[str, int]:
    action, _, index = event.rpartition(".")
    return action, int(index, 16)
