"""Where a number comes from."""

from dataclasses import dataclass
from enum import StrEnum


class Trust(StrEnum):
    """How far a number is trusted."""

    PUBLISHED = "published"
    DERIVED = "derived"
    PRACTICE = "common practice, no source"
    MEMORY = "from memory"
    ASSUMED = "assumed"


@dataclass(frozen=True, slots=True)
class Source:
    """Origin of a number or a formula: how far it is trusted, and where it stands."""

    trust: Trust
    where: str = ""

    def __str__(self) -> str:
        return f"{self.where} ({self.trust})" if self.where else str(self.trust)


PRACTICE = Source(Trust.PRACTICE)
MEMORY = Source(Trust.MEMORY)
ASSUMED = Source(Trust.ASSUMED)


def published(where: str) -> Source:
    """Source for a standard, handbook or paper: edition and clause."""
    return Source(Trust.PUBLISHED, where)


def derived(where: str) -> Source:
    """Source for mathematics from stated assumptions."""
    return Source(Trust.DERIVED, where)
