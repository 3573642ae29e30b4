"""Colours and sizes for the screen at hand."""

from dataclasses import dataclass, replace

from mobile.app.theme import Palette

FULL_WIDTH = 390.0
WIDE = 800.0
LOW = 640.0
ON_ITS_SIDE = 480.0
RAIL = 96.0
"""Width of the ways beside a wide screen [px]."""
LARGEST = 1.3
"""How much larger than on a usual phone text may become."""
ROOMY = 0.75
"""From this many letters, against a usual phone, things stand three in a row."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """How things look on this screen.

    Parameters
    ----------
    width, height
        Window [px].
    text_scale
        What the system multiplies text sizes with.
    """

    palette: Palette
    width: float
    height: float
    text_scale: float

    @property
    def wide(self) -> bool:
        """Whether two panes stand side by side."""
        return self.width >= WIDE or self.on_its_side

    @property
    def on_its_side(self) -> bool:
        """Whether a phone lies on its side: too low for answer and pad one over the other."""
        return self.height < ON_ITS_SIDE and self.width > self.height

    @property
    def pane(self) -> float:
        """Width of the pane that holds the answer [px]."""
        return min(self.width * 0.5, 520.0) if self.wide else self.width

    @property
    def low(self) -> bool:
        """Whether the answer leaves no room for four rows of keys."""
        return self.height < LOW

    @property
    def letters(self) -> float:
        """How many letters fit, against a usual phone at usual text size."""
        return self.pane / self.text_scale / FULL_WIDTH

    @property
    def roomy(self) -> bool:
        return self.letters > ROOMY

    def text(self, usual: float, least: float) -> float:
        """Text size before the system's scale: `usual` on a usual phone, never under `least`."""
        return max(least, usual * min(self.letters, LARGEST))

    @property
    def height_size(self) -> float:
        return self.text(34.0, 13.5)

    @property
    def title_size(self) -> float:
        return self.text(24.0, 16.0)

    @property
    def row_size(self) -> float:
        return self.text(19.0, 10.5)

    @property
    def body_size(self) -> float:
        return self.text(17.0, 12.0)

    @property
    def small_size(self) -> float:
        return self.text(14.0, 11.0)


def look_at(palette: Palette, width: float, height: float, text_scale: float) -> Look:
    """The look of a window; where two panes fit, the ways take their width from it."""
    whole = Look(palette=palette, width=width, height=height, text_scale=text_scale)
    beside = replace(whole, width=width - RAIL)
    return beside if beside.wide else whole
