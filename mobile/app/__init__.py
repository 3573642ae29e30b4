"""The app's screens."""

