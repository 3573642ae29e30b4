"""The cut: values that follow from the trade's numbers, worked apart from this program."""

from collections.abc import Callable

from core.calc.cut import AfterDeckCut, Band, CutAim, CutPlan, after_deck_cut, plan_cut
from core.calc.fit import Measured
from core.calc.gasket import Sheet
from core.calc.groove import PressedWire
from core.published.case import Case
from core.source import Source, derived
from core.tables.cut_practice import CutPractice
from core.tables.practice import InterferencePractice
from core.units import from_unit, in_unit

SHARES = derived("24 % of 0.050 in, groove 0.001 in under the wire")
SPREAD = derived("root sum of squares of the limits of error over √3, GUM 4.3.7 and 5.1.2")
DECK = derived("depth goes one for one with the deck")


def _inch(value: float) -> float:
    return from_unit(value, "in")


def _usual() -> CutPlan:
    aim = CutAim(
        wire=Measured(value=_inch(0.041), half_width=_inch(0.0002)),
        sheet=Sheet(thickness=_inch(0.050), half_width=0.0),
    )
    return plan_cut(aim).readings[0].plan


def _straight_sided() -> CutPlan:
    """A wire that fits its groove without interference, so that the simple rule is exact."""
    aim = CutAim(
        wire=Measured(value=_inch(0.041), half_width=_inch(0.0003)),
        sheet=Sheet(thickness=_inch(0.050), half_width=0.0),
        practice=CutPractice(depth_tolerance=_inch(0.0005), width_tolerance=0.0),
        interference=InterferencePractice(aim=_inch(-0.001)),
    )
    return plan_cut(aim).readings[0].plan


def _after(removed: float) -> AfterDeckCut:
    pressed = PressedWire(wire=_inch(0.041), width=_inch(0.041), depth=_inch(0.030))
    sheet = Sheet(thickness=_inch(0.050), half_width=0.0)
    return after_deck_cut(pressed, _inch(removed), sheet, _inch(0.030))


def _case(
    name: str, printed: str, unit: str, compute: Callable[[], float], source: Source = SHARES
) -> Case:
    return Case(topic="cut", name=name, source=source, compute=compute, printed=printed, unit=unit)


def _in_inch(band: Callable[[CutPlan], Band], end: str) -> Callable[[], float]:
    return lambda: in_unit(getattr(band(_usual()), end), "in")


CASES: tuple[Case, ...] = (
    _case("groove width for 0.041 wire", "0.0400", "in", _in_inch(lambda p: p.width, "target")),
    _case("groove width at its low end", "0.0397", "in", _in_inch(lambda p: p.width, "low")),
    _case("groove width at its high end", "0.0403", "in", _in_inch(lambda p: p.width, "high")),
    _case("height for 0.050 sheet", "0.0120", "in", _in_inch(lambda p: p.height, "target")),
    _case("depth for 0.050 sheet, flanks moved up", "0.02915037", "in",
          _in_inch(lambda p: p.depth, "target")),
    _case("interference at its low end", "0.0005", "in",
          _in_inch(lambda p: p.interference, "low")),
    _case("share aimed for", "0.240", "1", lambda: _usual().share.target),
    _case("u of the height, simple rule", "0.00033665", "in",
          lambda: in_unit(_straight_sided().spread.u, "in"), SPREAD),
    _case("groove left of 0.030 after 0.005 off the deck", "0.0250", "in",
          lambda: in_unit(_after(0.005).depth_left or 0.0, "in"), DECK),
    _case("height after 0.005 off the deck", "0.0160", "in",
          lambda: in_unit(_after(0.005).height or 0.0, "in"), DECK),
)
