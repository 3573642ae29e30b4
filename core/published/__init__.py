"""Published worked examples and handbook values as data, run by the tests and by the phone.

One file a topic; each holds `CASES`. The expected number is the source's own, never ours, and
agrees when it is met to half a unit of its last printed digit.
"""
