"""What the expected height of a pressed wire rests on."""

TEXTS: dict[str, str] = {
    "groove.no_size": "this size must be above zero; type what was measured, such as 0.041 in",
    "groove.assume.floor": "wire on the groove floor, floor flat, no burr under it",
    "groove.assume.walls": "walls parallel and rigid, nothing shaved off the wire",
    "groove.assume.plane": "the wire does not lengthen and does not spring back",
}
