"""The calculations and the records. Knows no screen, no browser and no clock."""
