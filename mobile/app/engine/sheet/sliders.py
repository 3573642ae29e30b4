"""What can be moved on trial, how far, and in which steps."""

from dataclasses import dataclass

from core.forms.volume_form import CC
from core.texts import text
from mobile.app.engine.sheet.chart import span_of
from mobile.app.engine.sheet.found import Found
from mobile.app.engine.sheet.shown import size, small

THOU = 0.0254
SHEET = "sheet"


@dataclass(frozen=True, slots=True, kw_only=True)
class Slider:
    """One thing that can be moved, in its base unit: mm, or mm³."""

    name: str
    low: float
    high: float
    step: float

    def placed(self, value: float) -> float:
        """The nearest step, within reach."""
        nearest = round(value / self.step) * self.step
        return min(max(nearest, self.low), self.high)


def sliders(found: Found) -> tuple[Slider, ...]:
    """What this engine knows enough of to be moved; the thickness of the sheet always."""
    engine, metric = found.as_it_is, found.basis.metric
    step = 0.01 if metric else 0.5 * THOU
    fine = 0.002 if metric else 0.1 * THOU
    low, high = span_of(found)
    every = {
        SHEET: Slider(name=SHEET, low=low, high=high, step=fine),
        "deck-cut": Slider(name="deck-cut", low=0.0, high=100 * step, step=step),
        "piston-lower": Slider(name="piston-lower", low=-50 * step, high=100 * step, step=step),
        "wire-higher": Slider(name="wire-higher", low=-50 * fine, high=50 * fine, step=fine),
        "chamber-larger": Slider(
            name="chamber-larger", low=-8.0 * CC, high=8.0 * CC, step=0.1 * CC
        ),
    }
    known = {
        "piston-lower": engine.pistons.decks or engine.valves.readings,
        "wire-higher": engine.rings,
        "chamber-larger": engine.ratio.cylinder,
    }
    return tuple(each for name, each in every.items() if known.get(name, True))


def told(slider: Slider, value: float, metric: bool) -> str:
    """Where a slider stands, in words."""
    if slider.name == SHEET:
        return size(value, metric)
    much = f"{abs(value) / CC:.1f} cc" if slider.name == "chamber-larger" else small(
        abs(value), metric
    )
    way = "down" if value < 0.0 else "up"
    return text(f"sheet.move.{slider.name}.{way}", much=much)
