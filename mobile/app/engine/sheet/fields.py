"""The numbers of an engine as the screen groups them, and what each takes."""

from collections.abc import Mapping

from core.forms.limits_form import CYLINDER, WORDS
from core.forms.limits_form import KINDS as LIMITS
from core.units import Bare, Dimension, Field

HEAT: Mapping[str, Field] = {
    "centre-diameter": Field(
        name="", dimension=Dimension.LENGTH, low=10.0, high=1000.0, bare=Bare.INCH
    ),
    "warmer": Field(
        name="",
        dimension=Dimension.TEMPERATURE_DIFFERENCE,
        low=0.0,
        high=1000.0,
        bare=Bare.FAHRENHEIT,
    ),
}
"""What only the look at heat asks for."""
KINDS: Mapping[str, Field] = {**LIMITS, **HEAT}
OF_A_CYLINDER = tuple(name for name in CYLINDER if name != "bore")
"""Fields that every cylinder has for itself."""
PUSHRODS, OVERHEAD_CAM = WORDS["valve-gear"]
GROUPS: Mapping[str, tuple[str, ...]] = {
    "sheet": ("sheet-on", "two-as-one"),
    "clearances": (
        "rod", "piston-least", "intake-least", "exhaust-least", "valve-tilt", *OF_A_CYLINDER,
    ),
    "compression": (
        "bore", "stroke", "gasket-bore", "chamber", "dish", "dome", "lowest-ratio",
        "highest-ratio",
    ),
    "valve-gear": (
        "valve-gear", "pushrod-length", "pushrod-tilt", "preload", "preload-least",
        "preload-most", "crank-teeth", "cam-teeth", "chain-pitch", "cam-centres", "lift-angle",
        "banks-on-chain", "most-retard", "most-advance",
    ),
    "intake": ("bank-angle", "face-angle", "largest-offset", "thickest-spacer"),
    "dowels": (
        "dowel-proud", "dowel-least", "block-material", "thread-diameter", "thread-engaged",
        "thread-least", "thread-room",
    ),
    "heat": ("centre-diameter", "warmer", "block-material"),
}  # fmt: skip
"""Fields of each group, in the order of the screen."""
GROUP_OF_PART = {
    "piston-to-head": "clearances",
    "intake-valve": "clearances",
    "exhaust-valve": "clearances",
    "ratio": "compression",
    "preload": "valve-gear",
    "intake-faces": "intake",
    "cam-timing": "valve-gear",
    "dowels": "dowels",
    "threads": "dowels",
}
"""The group whose numbers a part of the engine lacks; the wire height comes from the check."""
NEEDS = {
    "preload": PUSHRODS, "pushrod-length": PUSHRODS, "pushrod-tilt": PUSHRODS,
    "preload-least": PUSHRODS, "preload-most": PUSHRODS,
    "crank-teeth": OVERHEAD_CAM, "cam-teeth": OVERHEAD_CAM, "chain-pitch": OVERHEAD_CAM,
    "cam-centres": OVERHEAD_CAM, "lift-angle": OVERHEAD_CAM, "banks-on-chain": OVERHEAD_CAM,
    "most-retard": OVERHEAD_CAM, "most-advance": OVERHEAD_CAM,
}  # fmt: skip
"""Valve gear that a field belongs to."""
NAMED_BY = {
    "for-ratio": "lowest-ratio",
    "deck": "piston-deck",
    "retard": "most-retard",
    "cam-banks": "banks-on-chain",
    "ring": "centre-diameter",
    "wire": "wire",
    "groove-width": "groove-width",
    "groove-depth": "groove-depth",
}
"""Field of the screen that a calculation calls otherwise."""


def shown_fields(group: str, texts: Mapping[str, str]) -> tuple[str, ...]:
    """Fields of a group, without those of a valve gear that this engine has not."""
    gear = texts.get("valve-gear", "")
    return tuple(name for name in GROUPS[group] if NEEDS.get(name, gear) == gear)


def entered(group: str, texts: Mapping[str, str]) -> int:
    """How many of a group's shown fields are filled."""
    return sum(bool(texts.get(name)) for name in shown_fields(group, texts))
