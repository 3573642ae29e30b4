"""A quick check as a link: `/check?go=0.011in&no-go=0.013in&gasket=0.040in`."""

from collections.abc import Mapping, Sequence
from urllib.parse import quote, unquote

from core.errors import refuse
from core.forms.check_form import FIELDS, read_check
from core.number_text import split_list
from mobile.app.state.told import field_name

PATH = "/check"
SAFE = ".,;:"


def link_of(texts: Mapping[str, Sequence[str]]) -> str:
    """Route that opens these fields again."""
    pairs = (
        f"{field}={quote(texts[field][0].replace(' ', ''), safe=SAFE)}"
        for field in FIELDS
        if texts.get(field)
    )
    return f"{PATH}?{'&'.join(pairs)}"


def texts_of(route: str) -> dict[str, str] | None:
    """Fields of a link, percent-decoded once; none if the route is not one of a check.

    Raises
    ------
    InputError
        If a field is unknown, given twice or wrong; the sentence names it.
    """
    path, question, query = route.partition("?")
    if path != PATH or not question:
        return None
    texts: dict[str, str] = {}
    for pair in filter(None, query.split("&")):
        field, _, value = pair.partition("=")
        field = unquote(field)
        if field not in FIELDS or field in texts:
            raise refuse(field, "link.twice" if field in texts else "link.unknown")
        texts[field] = unquote(value)
    form = read_check({field: [each] for field, each in texts.items()}, field_name)
    return _as_entered({**texts, **form.echoes})


def _as_entered(texts: dict[str, str]) -> dict[str, str]:
    """The fields as the screen keeps them: head face and its depth apart, a list by semicolons."""
    face, _, depth = texts.pop("head-face", "").partition(":")
    shelf = "; ".join(split_list(texts.pop("shelf", ""), "")) if "shelf" in texts else ""
    own = {"face": face, "face-depth": depth, "shelf": shelf}
    return {**texts, **{field: text for field, text in own.items() if text}}
