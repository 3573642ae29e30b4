"""The Engine way: what the whole engine says about a sheet and its clamp."""
