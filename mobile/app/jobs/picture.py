"""A picture taken with the phone, scaled down on the phone."""

from typing import Any

from core.errors import InputError, refuse
from core.texts import text

LONGEST_SIDE = 1600
QUALITY = 0.8


async def shrunk(data: bytes) -> bytes:
    """The picture as a JPEG whose longer side is at most 1,600 pixels, upright.

    Raises
    ------
    InputError
        If the browser cannot read the picture.
    """
    import js
    from pyodide.ffi import JsException, to_js

    try:
        raw = js.Blob.new(to_js([to_js(data)]))
        bitmap = await js.createImageBitmap(raw, _options(imageOrientation="from-image"))
        blob = await _drawn(bitmap)
        return bytes((await blob.arrayBuffer()).to_bytes())
    except JsException as error:
        raise unreadable() from error


def unreadable() -> InputError:
    """Error that says what to do with a picture that cannot be read."""
    return refuse(text("jobs.picture"), "jobs.picture.unreadable")


async def _drawn(bitmap: Any) -> Any:
    import js

    width, height = fitted(bitmap.width, bitmap.height)
    canvas = js.OffscreenCanvas.new(width, height)
    canvas.getContext("2d").drawImage(bitmap, 0, 0, width, height)
    bitmap.close()
    return await canvas.convertToBlob(_options(type="image/jpeg", quality=QUALITY))


def fitted(width: int, height: int) -> tuple[int, int]:
    """Size of a picture scaled to the longest side; a small one stays as it is [px].

    Examples
    --------
    >>> fitted(4000, 3000), fitted(300, 200)
    ((1600, 1200), (300, 200))
    """
    factor = min(1.0, LONGEST_SIDE / max(width, height))
    return max(1, round(width * factor)), max(1, round(height * factor))


def _options(**values: object) -> Any:
    import js
    from pyodide.ffi import to_js

    return to_js(values, dict_converter=js.Object.fromEntries)
