"""How the sentences of the calculation stand on the screen."""


def sentence(said: object) -> str:
    """Words that begin a line.

    Examples
    --------
    >>> sentence("retorque cold")
    'Retorque cold'
    """
    words = str(said)
    return words[:1].upper() + words[1:]
