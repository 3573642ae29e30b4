"""Compression ratio."""

TEXTS: dict[str, str] = {
    "ratio.not_positive": "must be more than zero; type the measured diameter or length.",
    "ratio.negative": "cannot be negative; type the volume as a positive number.",
    "ratio.gasket_bore_inside": "is smaller than the bore; type the diameter of the hole "
    "in the sheet.",
    "ratio.no_clearance": "leaves no volume at top dead centre; type a smaller dome, or a deck "
    "clearance that is less negative.",
    "ratio.not_above_one": "must be more than 1; type a ratio such as 10.5.",
    "ratio.not_reachable": "no sheet gives this ratio; without any sheet it would be "
    "{highest:.2f}. Type a lower one, or a smaller chamber.",
    "ratio.needs_sheet": "give the thickness of the sheet, or --for-ratio with the ratio you want.",
    "ratio.left_out.crevice": "crevice above the top ring",
    "ratio.left_out.valve_reliefs": "valve reliefs, unless they are in the dish or dome",
    "ratio.left_out.gasket_land": "metal missing between bore and wire where the gasket "
    "bore is larger",
    "ratio.left_out.plug": "threads of the plug",
    "ratio.assumed.thickness": "the sheet keeps its thickness under clamp, away from the wire",
}
