"""`python3 tests`: set up on a fresh machine, then run every test, the real browser included."""

import sys
from pathlib import Path

if __name__ == "__main__":
    here = str(Path(__file__).resolve().parent)
    sys.path[:] = [str(Path(here).parent), *(p for p in sys.path if p != here)]
    from mobile.environment import restart_inside

    restart_inside("tests.runner", sys.argv[1:])
