"""Will it hold: fasteners, gas, wire and sheet of an engine, on the screen."""
