"""What the clamp screen looks like."""
