"""A build that cannot go on: one sentence that says what to do."""


class BuildError(Exception):
    """The site could not be built."""
