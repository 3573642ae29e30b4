"""Many jobs at once: narrowed by engine, date, verdict and person, and two of them compared."""
