"""Pictures, each a file named by the checksum of its content."""

import re
from hashlib import blake2b

from core.errors import DamagedFile
from core.records.port import Home
from core.texts import text

NAME = re.compile(r"[0-9a-f]{32}")
FILE = "picture-"


def name_of(data: bytes) -> str:
    """Name of a picture: 128 bits of BLAKE2b (RFC 7693) of its content."""
    return blake2b(data, digest_size=16).hexdigest()


class Pictures:
    """Pictures of one home; the same picture is kept once."""

    def __init__(self, home: Home) -> None:
        self._home = home

    async def put(self, data: bytes) -> str:
        """Keep a picture and return its name; it is on the disk then.

        Raises
        ------
        NotSaved
            If the disk did not take it.
        """
        name = name_of(data)
        port = await self._home.open(FILE + name)
        try:
            if port.read() != data:
                port.replace(data)
        finally:
            port.close()
        return name

    async def get(self, name: str) -> bytes:
        """A picture.

        Raises
        ------
        DamagedFile
            If it is not here, or is not what was kept.
        """
        port = await self._home.open(FILE + name)
        try:
            data = port.read()
        finally:
            port.close()
        if name_of(data) != name:
            key = "records.picture_damaged" if data else "records.picture_missing"
            raise DamagedFile(text(key, name=name[:8]))
        return data
