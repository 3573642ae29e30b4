"""Pure formulas, one topic a file; N, mm, MPa, rad and K inside."""
