"""When something was, in the fewest words."""

from datetime import datetime

from core.texts import text

DAY = 86_400_000
"""One day [ms]."""
A_WHILE = 30


def when(at: int, now: int) -> str:
    """A moment [ms since 1970, UTC] as this device's clock calls it.

    Examples
    --------
    >>> when(0, 10 * DAY), when(0, 90 * DAY)
    ('10 days ago', '1970-01-01')
    """
    then, today = datetime.fromtimestamp(at / 1e3), datetime.fromtimestamp(now / 1e3)
    days = (today.date() - then.date()).days
    if days == 0:
        return text("jobs.when.today", time=f"{then:%H:%M}")
    if days == 1:
        return text("jobs.when.yesterday", time=f"{then:%H:%M}")
    if 1 < days <= A_WHILE:
        return text("jobs.when.days", days=days)
    return f"{then:%Y-%m-%d}"


def moment(at: int) -> str:
    """Day and time, to the minute."""
    return f"{datetime.fromtimestamp(at / 1e3):%Y-%m-%d %H:%M}"
