"""The jobs' screens, each a function of state."""
