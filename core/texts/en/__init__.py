"""English, one file an area; a key starts with the name of its area."""

from core.texts.en import command, groove, number, records

TEXTS: dict[str, str] = {
    **command.TEXTS,
    **groove.TEXTS,
    **number.TEXTS,
    **records.TEXTS,
}
