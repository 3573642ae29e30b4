"""Every sentence a person reads, by key, ready to be translated.

A language is a package beside `en` with the same keys and the same named places.
"""

from core.texts.en import TEXTS


def text(key: str, **values: object) -> str:
    """Sentence `key` with its named places filled.

    Raises
    ------
    KeyError
        If the catalogue lacks the key or a place is left unfilled.
    """
    return TEXTS[key].format(**values) if values else TEXTS[key]
