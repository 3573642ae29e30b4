"""Lines that a person reads about heights from single and pair readings."""

from collections.abc import Sequence

from core.calc.pair_heights import Heights, Undetermined
from core.calc.passed_over import Crossing, Laid
from core.texts import text
from core.texts.length import Length


def group_line(group: Undetermined) -> str:
    """Why no height of a group is determined, and what would settle it."""
    if len(group.free) == 1:
        return text("heights.unread", wire=group.names[0])
    up = ", ".join(name for name, move in group.free if move > 0)
    down = ", ".join(name for name, move in group.free if move < 0)
    key = "heights.see_saw" if down else "heights.together"
    return text(key, wires=", ".join(group.names), up=up, down=down)


def scatter_line(found: Heights) -> str:
    """Whether the readings agree."""
    said = text(f"heights.agreement.{found.agreement}")
    if found.p is None:
        return said
    return text("heights.scatter", chi2=found.chi2, dof=found.dof, p=found.p, said=said)


def suspect_lines(found: Heights) -> tuple[str, ...]:
    """Readings worth a second look."""
    suspects = (
        text("heights.suspect", name=each.reading.name, value=Length(each.reading.value),
             fitted=Length(each.fitted))
        for each in found.residuals
        if each.suspect
    )
    outside = (
        text("heights.outside", name=each.reading.name)
        for each in found.residuals
        if each.reading.outside
    )
    return (*suspects, *outside)


def rocked_line(rocked: Laid, over: Sequence[str]) -> str:
    """A straightedge that rocks, and the wires it rocks over."""
    key = "heights.rocked" if over else "heights.rocked_over_nothing"
    return text(key, first=rocked.first, second=rocked.second, over=", ".join(over))


def crossing_line(crossing: Crossing) -> str:
    """A wire that a straightedge passed over."""
    margin = Length(crossing.found.margin if crossing.found else 0.0)
    sure = crossing.found.p_above if crossing.found else 0.0
    return text(f"heights.crossing.{crossing.outcome}", reading=crossing.laid.name,
                over=crossing.over, first=crossing.laid.first, second=crossing.laid.second,
                margin=margin, sure=sure)
