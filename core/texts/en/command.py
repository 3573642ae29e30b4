"""What the command line says about itself."""

TEXTS: dict[str, str] = {
    "command.about": "From a feeler reading to a sheet thickness, and what goes with it.",
    "command.check": "Judge a wire height: fit, seat, every sheet on the shelf, and the sheet to run.",
    "command.gauges": "For each sheet on the shelf: the leaf that must go and the leaf that must not.",
    "command.json": "print one JSON object instead of a table",
}
