"""Which sheet: what every part of the engine allows, what each sheet costs, what would help."""
