"""Colours of our own, copper and graphite, light for the sun and dark for the shop at night.

A test holds each pair of `PAIRS` to its contrast: 7:1 for values and verdicts, 4.5:1 for the rest.
"""

from dataclasses import dataclass

import flet as ft


@dataclass(frozen=True, slots=True, kw_only=True)
class Palette:
    """Colours by what they are for."""

    ground: str
    panel: str
    ink: str
    quiet: str
    line: str
    copper: str
    on_copper: str
    key: str
    passed: str
    failed: str
    undecided: str
    block: str
    sheet: str
    wire: str
    spread: str
    on_block: str
    on_sheet: str
    on_wire: str
    code_ground: str = "#FFFFFF"
    code_ink: str = "#000000"


LIGHT = Palette(
    ground="#FFFCF7",
    panel="#F3ECE1",
    ink="#17130E",
    quiet="#4A4238",
    line="#B9AC9A",
    copper="#7A3A12",
    on_copper="#FFFFFF",
    key="#E6DCCB",
    passed="#0A4F31",
    failed="#8C0F18",
    undecided="#5A3D00",
    block="#5C6066",
    sheet="#E2A273",
    wire="#D9DEE3",
    spread="#80FFFFFF",
    on_block="#FFFFFF",
    on_sheet="#17130E",
    on_wire="#17130E",
)
DARK = Palette(
    ground="#14110D",
    panel="#231E18",
    ink="#FBF4E9",
    quiet="#CFC3B2",
    line="#5C5246",
    copper="#F2B387",
    on_copper="#1D1107",
    key="#362E25",
    passed="#8FE8BC",
    failed="#FFB8B0",
    undecided="#FFD88A",
    block="#3D4146",
    sheet="#B26B38",
    wire="#C9D0D6",
    spread="#70FFFFFF",
    on_block="#FFFFFF",
    on_sheet="#100A05",
    on_wire="#17130E",
)

VALUE_PAIRS = (
    ("ink", "ground"),
    ("ink", "panel"),
    ("ink", "key"),
    ("passed", "ground"),
    ("failed", "ground"),
    ("undecided", "ground"),
    ("passed", "panel"),
    ("failed", "panel"),
    ("undecided", "panel"),
    ("on_copper", "copper"),
)
"""Foreground and background that carry values and verdicts: at least 7:1."""
WORD_PAIRS = (
    ("quiet", "ground"),
    ("quiet", "panel"),
    ("copper", "ground"),
    ("copper", "panel"),
    ("on_block", "block"),
    ("on_sheet", "sheet"),
    ("on_wire", "wire"),
)
"""Foreground and background of other words: at least 4.5:1."""


def theme(palette: Palette) -> ft.Theme:
    """What Flutter draws by itself, in our colours."""
    return ft.Theme(
        color_scheme=ft.ColorScheme(
            primary=palette.copper,
            on_primary=palette.on_copper,
            surface=palette.ground,
            on_surface=palette.ink,
            outline=palette.line,
            error=palette.failed,
        ),
        use_material3=True,
    )
