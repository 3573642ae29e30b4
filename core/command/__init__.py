"""The command line of the calculations; knows no screen.

One file a command. Each offers `add_to(commands)`, which declares its options and sets `run`, a
function from parsed options to an `Answer`.
"""

from core.command.program import main

__all__ = ["main"]
