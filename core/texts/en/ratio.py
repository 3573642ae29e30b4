"""Compression ratio."""

TEXTS: dict[str, str] = {
    "ratio.option.bore": "bore: 4.125in, 105 mm",
    "ratio.option.stroke": "stroke",
    "ratio.option.chamber": "volume of the chamber in the head: 64cc",
    "ratio.option.deck": "piston below the deck at top dead centre; negative if it stands proud",
    "ratio.option.gasket-bore": "hole in the sheet",
    "ratio.option.dish": "volume of the dish in the crown",
    "ratio.option.dome": "volume of the dome on the crown",
    "ratio.option.gasket": "thickness of the sheet",
    "ratio.option.for-ratio": "ratio that a sheet is asked for: 10.0",
    "ratio.row.ratio": "Compression ratio",
    "ratio.row.per_thou": "for each thou of sheet",
    "ratio.row.swept": "Swept volume",
    "ratio.row.clearance": "Clearance volume",
    "ratio.row.gasket": "of it in the sheet",
    "ratio.row.piston_to_head": "Piston to head, cold",
    "ratio.row.sheet": "Sheet for the ratio",
    "ratio.left_out": "Not in these figures: {parts}.",
    "ratio.not_positive": "must be more than zero; type the measured diameter or length.",
    "ratio.negative": "cannot be negative; type the volume as a positive number.",
    "ratio.gasket_bore_inside": "is smaller than the bore; type the diameter of the hole "
    "in the sheet.",
    "ratio.no_clearance": "leaves no volume at top dead centre; type a smaller dome, or a deck "
    "clearance that is less negative.",
    "ratio.not_above_one": "must be more than 1; type a ratio such as 10.5.",
    "ratio.not_reachable": "no sheet gives this ratio; without any sheet it would be "
    "{highest:.2f}. Type a lower one, or a smaller chamber.",
    "ratio.needs_sheet": "type the thickness of the sheet, or the ratio that a sheet is wanted for.",
    "ratio.left_out.crevice": "crevice above the top ring",
    "ratio.left_out.valve_reliefs": "valve reliefs, unless they are in the dish or dome",
    "ratio.left_out.gasket_land": "metal missing between bore and wire where the gasket "
    "bore is larger",
    "ratio.left_out.plug": "threads of the plug",
    "ratio.assumed.thickness": "the sheet keeps its thickness under clamp, away from the wire",
}
