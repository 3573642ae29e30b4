"""What the deck screens show."""
