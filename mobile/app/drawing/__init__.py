"""Pictures as pure functions: from values to shapes in pixels, without a screen."""
