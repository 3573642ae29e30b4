"""The app's screens."""
