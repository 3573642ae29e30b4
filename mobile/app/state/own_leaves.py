"""The leaf sets of the user: one marked in inch, one in mm."""

from functools import cache

from core.forms.check_form import HEIGHT_FIELD
from core.tables.leaf_sets import INCH_SET, METRIC_SET, LeafSet
from core.units import read_list
from mobile.app.state.entry import Entry


def leaves_field(metric: bool) -> str:
    """Field that holds the set in this unit."""
    return "own-leaves-mm" if metric else "own-leaves-in"


def leaf_set(entry: Entry) -> LeafSet:
    """The leaves of a link, else the user's own in the unit in force, else those to start with."""
    text = entry.texts.get("leaves") or entry.texts.get(leaves_field(entry.metric))
    if not text:
        return METRIC_SET if entry.metric else INCH_SET
    return _read(text, entry.metric)


@cache
def _read(text: str, metric: bool) -> LeafSet:
    leaves = {each.value for each in read_list(text, HEIGHT_FIELD)}
    return LeafSet(leaves=tuple(sorted(leaves)), metric=metric)
