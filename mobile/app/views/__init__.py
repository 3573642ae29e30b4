"""Screens: a view is a function of state."""
