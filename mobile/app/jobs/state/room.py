"""How much room is left on this device, and what is worth a warning before it hurts."""

from collections.abc import Iterator
from dataclasses import dataclass

from core.records import Backup
from core.texts import text
from mobile.app.jobs.state.when import DAY, when

MEGABYTE = 1e6
LITTLE_ROOM = 50 * MEGABYTE
OLD_BACKUP = 14 * DAY
MANY_JOBS = 3
"""Jobs that may have changed since the last backup before that is worth a warning."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """What the browser says of its storage [bytes]."""

    used: int
    granted: int

    @property
    def left(self) -> int:
        return max(0, self.granted - self.used)


def room_words(room: Room | None) -> str:
    """Room used and left, in MB."""
    if room is None:
        return text("jobs.room.unknown")
    used, left = (f"{each / MEGABYTE:.0f}" for each in (room.used, room.left))
    return text("jobs.room", used=used, left=left)


def backup_words(backup: Backup, now: int) -> str:
    """Age of the last backup, and what came since."""
    if backup.at is None:
        return text("jobs.backup.never", jobs=backup.jobs_since)
    return text("jobs.backup", when=when(backup.at, now), jobs=backup.jobs_since)


def warnings(room: Room | None, backup: Backup, kept: bool | None, now: int) -> Iterator[str]:
    """What to do before something is lost."""
    if room and room.left < LITTLE_ROOM:
        yield text("jobs.warn.room", left=f"{room.left / MEGABYTE:.0f}")
    if kept is False and backup.jobs_since:
        yield text("jobs.warn.not_kept")
    if backup.at is not None and backup.jobs_since and now - backup.at > OLD_BACKUP:
        yield text("jobs.warn.old_backup", when=when(backup.at, now))
    if backup.at is None and backup.jobs_since >= MANY_JOBS:
        yield text("jobs.warn.no_backup", jobs=backup.jobs_since)
