"""What is always in view: the sheet to run, or why there is none."""

import flet as ft

from core.calc.choice import Choice, reasons
from core.texts import text
from core.texts.share import Sureness
from core.verdict import Verdict
from mobile.app.engine.sheet.found import Found
from mobile.app.engine.sheet.shown import size
from mobile.app.views.look import Look
from mobile.app.views.parts import said, words
from mobile.app.views.verdict_sign import colour, sign


def answer(found: Found, look: Look, *, short: bool = False) -> ft.Control:
    """Headline with its sign, and the first reason where there is room."""
    choice, metric = found.choice, found.basis.metric
    line, verdict = headline(choice, metric), _verdict(choice)
    why = " ".join(each.said(metric=metric) for each in reasons(choice))
    if found.as_it_is != found.as_moved:
        line = text("sheet.headline.what_if", line=line)
    large = look.title_size if look.roomy else look.body_size
    parts: list[ft.Control] = [
        words(look, line, large, bold=True, colour=colour(look, verdict))
    ]
    if not short:
        parts.append(words(look, detail(found), look.small_size))
    face = ft.Row(
        [
            sign(look, verdict, "", 1.3 * large),
            ft.Column(parts, spacing=0, tight=True, expand=True),
        ],
        spacing=8,
    )
    return said("sheet-answer", f"{line}. {why}", face, live=True)


def headline(choice: Choice, metric: bool) -> str:
    """What to do, in a few words."""
    if choice.run is not None:
        return text("sheet.headline.run", sheet=_size(choice.run, metric))
    if choice.unchecked is not None:
        return text("sheet.headline.unchecked", sheet=_size(choice.unchecked, metric))
    if choice.conflict is not None:
        return text("sheet.headline.conflict")
    known = choice.overlap and (choice.overlap.low or choice.overlap.high)
    return text("sheet.headline.none_on_shelf" if known else "sheet.headline.nothing")


def _size(row, metric: bool) -> str:
    return size(row.candidate.sheet.thickness, metric)


def _verdict(choice: Choice) -> Verdict:
    if choice.run is not None:
        return Verdict.PASS
    return Verdict.FAIL if choice.conflict is not None else Verdict.UNDECIDED


def detail(found: Found) -> str:
    """The next thing to say: how sure, or the reason."""
    choice, metric = found.choice, found.basis.metric
    run = choice.run
    if run is None:
        return next(iter(reasons(choice))).said(metric=metric)
    sure = min((each.probability for each in run.parts), default=1.0)
    told = [text("sheet.sure", sure=Sureness(sure))]
    if choice.sure is not None and choice.sure is not run:
        told.append(text("sheet.surer", sheet=_size(choice.sure, metric)))
    if run.card is not None:
        told.append(run.card.head.said(metric=metric))
    return " ".join(told)
