"""The entry under way as it lies on the disk."""

from dataclasses import asdict
from typing import Any

from mobile.app.state.entry import Entry

FORMAT = 1
DRAFT = "draft"
"""Key of the entry among the device's notes."""


def as_json(entry: Entry) -> dict[str, Any]:
    """What is written on every tap."""
    return {"format": FORMAT, **asdict(entry)}


def from_json(kept: Any) -> Entry:
    """The entry of the last tap; a new one where nothing was kept, or not by this format."""
    if not isinstance(kept, dict) or kept.get("format") != FORMAT:
        return Entry()
    return Entry(**{name: value for name, value in kept.items() if name != "format"})
