"""Which jobs of the list are shown: by engine, date, verdict and person."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields

from core.forms.kept_verdicts import judge_job, worst
from core.records import JobLine
from core.records.fold import Fold
from core.records.model import Shop
from core.records.view import job_view
from core.texts import text

DAY = 86_400_000
"""One day [ms]."""
AGES = ("7", "30", "365")
MOST_CHOICES = 8
OPEN = "open"
"""Verdict of a job in which nothing can be judged yet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Narrowed:
    """What is chosen; an empty text lets everything through.

    Parameters
    ----------
    age
        Touched within so many days.
    """

    engine: str = ""
    age: str = ""
    verdict: str = ""
    person: str = ""

    @property
    def any(self) -> bool:
        """Whether anything is chosen."""
        return any(getattr(self, each.name) for each in fields(self))

    @property
    def needs_facts(self) -> bool:
        """Whether the jobs themselves have to be read for it."""
        return bool(self.verdict or self.person)

    @property
    def words(self) -> str:
        """What is chosen, in words."""
        said = (
            self.engine,
            self.age and text("narrow.age.within", days=self.age),
            self.verdict and text(f"narrow.verdict.{self.verdict}"),
            self.person,
        )
        return ", ".join(filter(None, said))


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """What only a job itself tells, and the state of the job that told it."""

    stamp: str
    verdict: str
    people: tuple[str, ...]


def facts_of(stamp: str, fold: Fold, shop: Shop | None) -> Facts:
    """The verdict that decides a job, and everyone who entered something."""
    found = [each for bank in judge_job(job_view(fold), shop) for each in bank.findings]
    decides = worst(found)
    return Facts(
        stamp=stamp,
        verdict=decides.verdict.value if decides else OPEN,
        people=tuple(sorted({event.who for event in fold if event.who})),
    )


def lacking(lines: Iterable[JobLine], facts: Mapping[str, Facts]) -> tuple[JobLine, ...]:
    """Jobs whose facts are not known, or are older than the job."""
    return tuple(
        each for each in lines if each.id not in facts or facts[each.id].stamp != each.stamp
    )


def narrow(
    lines: Iterable[JobLine], chosen: Narrowed, facts: Mapping[str, Facts], now: int
) -> tuple[JobLine, ...]:
    """Jobs that are chosen; one whose facts are not known yet is not.

    Parameters
    ----------
    now
        The device's clock [ms since 1970, UTC].
    """
    return tuple(each for each in lines if _is_chosen(each, chosen, facts.get(each.id), now))


def _is_chosen(line: JobLine, chosen: Narrowed, facts: Facts | None, now: int) -> bool:
    if chosen.engine and line.engine != chosen.engine:
        return False
    if chosen.age and line.touched < now - int(chosen.age) * DAY:
        return False
    if not chosen.needs_facts:
        return True
    if facts is None:
        return False
    return chosen.verdict in ("", facts.verdict) and (
        not chosen.person or chosen.person in facts.people
    )


def engines(lines: Iterable[JobLine]) -> tuple[str, ...]:
    """Engines to choose from, the most frequent first."""
    counts = Counter(each.engine for each in lines if each.engine)
    return tuple(name for name, _ in counts.most_common(MOST_CHOICES))


def people(facts: Iterable[Facts]) -> tuple[str, ...]:
    """People to choose from, the most frequent first."""
    counts = Counter(name for each in facts for name in each.people)
    return tuple(name for name, _ in counts.most_common(MOST_CHOICES))
