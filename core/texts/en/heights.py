"""Words of the heights from single and pair readings."""

TEXTS: dict[str, str] = {
    "heights.same_place": "two wires at one place make no span; type where each wire is crossed",
    "heights.unknown_wire": "wire {wire} is not in the list of wires; add it there, or name one that is",
    "heights.no_spread": "this spread must be above zero; type it, such as 0.0003 in",
}
