"""The clamp under way as it lies on the disk."""

from dataclasses import asdict
from typing import Any

from mobile.app.engine.clamp.entry import ClampEntry

FORMAT = 1
KEY = "clamp"


def as_json(entry: ClampEntry) -> dict[str, Any]:
    """What is written on every tap."""
    return {"format": FORMAT, **asdict(entry)}


def from_json(kept: Any) -> ClampEntry:
    """The entry of the last tap; a new one where nothing was kept, or not by this format."""
    if not isinstance(kept, dict) or kept.get("format") != FORMAT:
        return ClampEntry()
    return ClampEntry(**{name: value for name, value in kept.items() if name != "format"})
