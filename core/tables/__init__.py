"""Numbers of standards and of practice as data, each with its source."""
