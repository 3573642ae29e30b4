"""Wire in a rectangular groove: derived values, worked out apart from this program."""

from collections.abc import Callable

from core.calc.groove import PressedWire, expected_height, room, squeezed_segment
from core.published.case import Case
from core.source import Source, derived

SEGMENTS = derived("plane geometry of a circle cut by two flats, area moved to the free top")
ELLIPSE = derived("ellipse of the circle's area, as wide as the groove")
CUT_CIRCLE = derived("plane geometry of a circle cut at deck level")

USUAL = PressedWire(wire=0.041, width=0.040, depth=0.030)
TIGHT = PressedWire(wire=0.041, width=0.038, depth=0.030)
THIN = PressedWire(wire=0.032, width=0.031, depth=0.022)
METRIC = PressedWire(wire=1.00, width=0.97, depth=0.75)


def _case(
    name: str, printed: str, unit: str, compute: Callable[[], float], source: Source = SEGMENTS
) -> Case:
    return Case(topic="groove", name=name, source=source, compute=compute, printed=printed,
                unit=unit)


def _heights(
    name: str, unit: str, pressed: PressedWire, printed: tuple[str, str, str, str]
) -> tuple[Case, ...]:
    floor, best, ceiling, segment = printed
    return (
        _case(f"{name}, floor", floor, unit, lambda: expected_height(pressed).floor),
        _case(f"{name}, best", best, unit, lambda: expected_height(pressed).best),
        _case(f"{name}, ceiling", ceiling, unit, lambda: expected_height(pressed).ceiling, ELLIPSE),
        _case(f"{name}, segment", segment, f"{unit}²", lambda: squeezed_segment(pressed)),
    )


CASES: tuple[Case, ...] = (
    *_heights("0.041 in 0.040", "in", USUAL,
              ("0.011000", "0.01115037", "0.01202500", "3.007394e-06")),
    *_heights("0.041 in 0.038", "in", TIGHT,
              ("0.011000", "0.01181637", "0.01423684", "1.551110e-05")),
    *_heights("0.032 in 0.031", "in", THIN,
              ("0.010000", "0.01017123", "0.01103226", "2.654132e-06")),
    *_heights("1.00 mm in 0.97", "mm", METRIC,
              ("0.250000", "0.25502771", "0.28092784", "2.438437e-03")),
    _case("0.041 in 0.040, wire below deck", "0.00103520", "in²",
          lambda: room(USUAL).wire_below_deck, CUT_CIRCLE),
    _case("0.041 in 0.040, widest point below deck", "0.0095", "in",
          lambda: USUAL.widest_point_below_deck, CUT_CIRCLE),
)
