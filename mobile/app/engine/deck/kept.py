"""The deck under way as it lies on the disk."""

from dataclasses import asdict
from typing import Any

from mobile.app.engine.deck.entry import DeckEntry

FORMAT = 1
KEY = "deck"
TUPLES = ("pairs", "on", "grid")
"""What JSON gives back as a list."""


def as_json(entry: DeckEntry) -> dict[str, Any]:
    """What is written on every tap."""
    return {"format": FORMAT, **asdict(entry)}


def from_json(kept: Any) -> DeckEntry:
    """The entry of the last tap; a new one where nothing was kept, or not by this format."""
    if not isinstance(kept, dict) or kept.get("format") != FORMAT:
        return DeckEntry()
    return DeckEntry(
        **{
            name: tuple(value) if name in TUPLES else value
            for name, value in kept.items()
            if name != "format"
        }
    )
