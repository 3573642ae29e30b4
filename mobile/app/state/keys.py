"""What the number pad types into, whatever the screen."""

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Keys:
    """One field being typed.

    Parameters
    ----------
    title
        Name of the field.
    typed
        What has been typed so far.
    told
        How it is understood, or what to type.
    press
        Adds to what is typed.
    erase
        Takes the last key back.
    clear
        Takes everything back.
    done
        Closes the pad.
    stacks
        Whether a second leaf may be laid on the first.
    signed
        Whether the size may lie below zero.
    next
        Goes on to the next field; none where there is none.
    """

    title: str
    typed: str
    told: str
    press: Callable[[str], None]
    erase: Callable[[], None]
    clear: Callable[[], None]
    done: Callable[[], None]
    stacks: bool = False
    signed: bool = False
    next: Callable[[], None] | None = None


SIGN = "±"
NAMED = {
    ".": ".",
    ",": ".",
    "Decimal": ".",
    "+": " + ",
    "Add": " + ",
    "-": SIGN,
    "Subtract": SIGN,
}


def strike(keys: Keys, label: str) -> None:
    """A key of a real keyboard, by what Flutter calls it; others do nothing."""
    key = label.removeprefix("Numpad ")
    done = {"Enter": keys.done, "Escape": keys.done, "Backspace": keys.erase, "Delete": keys.clear}
    sign = key if key.isdecimal() and key.isascii() else NAMED.get(key)
    if key in done:
        done[key]()
    elif sign and {" + ": keys.stacks, SIGN: keys.signed}.get(sign, True):
        keys.press(sign)


def pressed(typing: str, kept: str, key: str) -> str:
    """What stands after a key; the first key over a kept text with its unit starts anew."""
    if key == SIGN:
        return typing.removeprefix("-") if typing.startswith("-") else f"-{typing}"
    fresh = typing == kept and _with_unit(typing)
    return f"{'' if fresh else typing}{key}"


def erased(typing: str) -> str:
    """What stands after the last key is taken back, or the whole text with its unit."""
    return "" if _with_unit(typing) else typing[:-1]


def _with_unit(typing: str) -> bool:
    return typing[-1:].isalpha() or typing.endswith("°")
