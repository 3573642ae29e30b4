"""The Engine way as it was left."""

from collections.abc import Callable
from functools import partial
from typing import Any

from mobile.app.engine.clamp import kept
from mobile.app.engine.clamp.model import Clamp, Run
from mobile.app.engine.model import Engine


def begin(
    get: Callable[[str], Any],
    put: Callable[[str, Any], None],
    metric: Callable[[], bool],
    check: Callable[[], dict[str, str]],
    run: Run,
) -> Engine:
    """Everything that was under way, from the device's own notes."""
    clamp = Clamp(keep=partial(put, kept.KEY), run=run, metric=metric, check=check)
    clamp.restore(kept.from_json(get(kept.KEY)))
    return Engine(clamp=clamp)
