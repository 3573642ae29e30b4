"""What the quick check knows that the clamp asks for too."""

from core.units import in_unit
from mobile.app.state.entry import Entry
from mobile.app.state.told import Told

SHARED = ("wire", "gasket")


def known(entry: Entry, told: Told) -> dict[str, str]:
    """Wire, sheet, height and its uncertainty as texts, as far as the check knows them."""
    found = {name: entry.texts[name] for name in SHARED if entry.texts.get(name)}
    height = told.answer.asked.height if told.answer else None
    if height is None or height.low is None or height.high is None:
        return found
    shown = {"height": height.value, "u": height.u}
    unit, places = ("mm", 3) if entry.metric else ("in", 5)
    return found | {
        name: f"{in_unit(value, unit):.{places}f} {unit}" for name, value in shown.items()
    }
