"""Shares and probabilities that print themselves inside a sentence."""


class Share(float):
    """A part of one, shown as whole per cent.

    Examples
    --------
    >>> f"{Share(0.24)}"
    '24 %'
    """

    def __format__(self, spec: str) -> str:
        return f"{100.0 * self:{spec or '.0f'}} %"


class Sureness(float):
    """A probability, never shown as certain.

    Examples
    --------
    >>> f"{Sureness(0.8004)} · {Sureness(0.9999)} · {Sureness(0.0001)}"
    '80 % · over 99 % · under 1 %'
    """

    def __format__(self, spec: str) -> str:
        if self > 0.99:  # noqa: PLR2004
            return "over 99 %"
        return "under 1 %" if self < 0.01 else f"{100.0 * self:.0f} %"  # noqa: PLR2004
