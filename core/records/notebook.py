"""Small things this device keeps for itself: who it is, settings, drafts. Never exported."""

from core.records.event import Json
from core.records.journal import Journal
from core.records.port import Port

DEVICE = "device"
OLD_VALUES_KEPT = 200
PAIR = 2


class Notebook:
    """Values by key, each on the disk when `put` returns.

    Parameters
    ----------
    port
        The file.
    """

    def __init__(self, port: Port) -> None:
        self._journal = Journal(port, DEVICE, "")
        self._values: dict[str, Json] = {}
        batches = self._journal.load(go_on=True)
        for batch in batches:
            if isinstance(batch, list) and len(batch) == PAIR and isinstance(batch[0], str):
                self._take(batch[0], batch[1])
        self._entries = len(batches)
        self.told = self._journal.told

    def get(self, key: str) -> Json:
        """Value of a key; None if there is none."""
        return self._values.get(key)

    def put(self, key: str, value: Json) -> None:
        """Keep a value; None drops it.

        Raises
        ------
        NotSaved
            If the disk did not take it.
        """
        if self._entries > len(self._values) + OLD_VALUES_KEPT:
            self._journal.rewrite([name, kept] for name, kept in self._values.items())
            self._entries = len(self._values)
        self._journal.append([key, value])
        self._entries += 1
        self._take(key, value)

    def close(self) -> None:
        """Let go of the file."""
        self._journal.close()

    def _take(self, key: str, value: Json) -> None:
        if value is None:
            self._values.pop(key, None)
        else:
            self._values[key] = value
