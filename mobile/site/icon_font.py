"""The icon font, cut to the icons our screens name and those the engine draws by itself."""

import re
from collections.abc import Iterable
from pathlib import Path

from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

from mobile.site.failure import BuildError
from mobile.site.places import ROOT

NAMED = re.compile(r"\bIcons\.([A-Z][A-Z0-9_]*)")
STYLES = ("outlined", "rounded", "sharp")
PLAIN = "baseline"
# Drawn by the engine's own back buttons, menus, lists, fields and pickers.
ENGINE_ICONS = (
    "ACCESS_TIME",
    "ARROW_BACK",
    "ARROW_BACK_IOS_NEW_ROUNDED",
    "ARROW_DROP_DOWN",
    "ARROW_DROP_UP",
    "ARROW_LEFT",
    "ARROW_RIGHT",
    "ARROW_UPWARD",
    "CALENDAR_TODAY",
    "CANCEL",
    "CHECK",
    "CHEVRON_LEFT",
    "CHEVRON_RIGHT",
    "CLEAR",
    "CLOSE",
    "DRAG_HANDLE",
    "EDIT",
    "EDIT_OUTLINED",
    "EXPAND_LESS",
    "EXPAND_MORE",
    "FIRST_PAGE",
    "KEYBOARD_ARROW_DOWN",
    "KEYBOARD_ARROW_UP",
    "KEYBOARD_OUTLINED",
    "LAST_PAGE",
    "MENU",
    "MORE_HORIZ",
    "MORE_VERT",
    "SEARCH",
    "WARNING",
)


def cut_icon_font(path: Path) -> None:
    """Leave only the icons in use in the font, in place.

    Raises
    ------
    BuildError
        If a screen names an icon that the font has not under this name.
    """
    # The time of the build is left out: the same sources give the same bytes.
    font = TTFont(path, recalcTimestamp=False)
    wanted = glyphs({*named_icons(), *ENGINE_ICONS}, font.getGlyphOrder())
    options = Options()
    options.glyph_names = False
    options.desubroutinize = True
    subsetter = Subsetter(options)
    subsetter.populate(glyphs=wanted)
    subsetter.subset(font)
    font.save(path)


def named_icons() -> set[str]:
    """Names of the icons in the sources of our screens."""
    sources = (ROOT / "mobile").rglob("*.py")
    return {name for source in sources for name in NAMED.findall(source.read_text("utf-8"))}


def glyphs(icons: Iterable[str], known: Iterable[str]) -> list[str]:
    wanted = {glyph(icon) for icon in icons}
    unknown = wanted.difference(known)
    if unknown:
        raise BuildError(f"The icon font has no {', '.join(sorted(unknown))}: name another icon.")
    return sorted(wanted)


def glyph(icon: str) -> str:
    """Name of an icon's glyph: the icon's, with its style."""
    name = icon.lower()
    return name if name.endswith(STYLES) else f"{name}_{PLAIN}"
