"""English, one file an area; a key starts with the name of its area."""

from core.texts.en import (
    check,
    command,
    flatness,
    groove,
    heights,
    number,
    ratio,
    records,
    site,
    thermal,
    valve_gear,
    vee,
    wire,
)

TEXTS: dict[str, str] = {
    **check.TEXTS,
    **command.TEXTS,
    **flatness.TEXTS,
    **groove.TEXTS,
    **heights.TEXTS,
    **number.TEXTS,
    **ratio.TEXTS,
    **records.TEXTS,
    **site.TEXTS,
    **thermal.TEXTS,
    **valve_gear.TEXTS,
    **vee.TEXTS,
    **wire.TEXTS,
}
