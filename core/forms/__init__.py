"""From what was typed to what is calculated; every fault of a form at once."""
