"""Findings on the screen: the one that decides large, the others below."""

import flet as ft

from core.forms.kept_verdicts import Finding, JudgedRing
from core.texts import text
from core.verdict import Verdict
from mobile.app.jobs.state.told import against, finding_phrase, finding_words, hammer_words, where
from mobile.app.views.look import Look
from mobile.app.views.parts import said, words
from mobile.app.views.verdict_sign import colour, sign


def decides(
    finding: Finding | None, none_yet: str, look: Look, name: str = "decides"
) -> ft.Control:
    """The finding that decides, large, and where."""
    if finding is None:
        return said(name, none_yet, words(look, none_yet, look.row_size))
    tint = colour(look, finding.verdict)
    lines: list[ft.Control] = [
        words(look, text(f"word.{finding.word}"), look.title_size, bold=True, colour=tint),
        words(look, text(f"check.{finding.id}"), look.body_size),
    ]
    place = where(finding)
    if place:
        lines.insert(0, words(look, place, look.body_size, bold=True))
    content = ft.Row(
        [
            sign(look, finding.verdict, finding.word, look.title_size * 1.5),
            ft.Column(lines, spacing=0, tight=True, expand=True),
        ],
        spacing=10,
    )
    return said(name, text("jobs.decides", what=finding_phrase(finding)), content, live=True)


def finding_row(finding: Finding, look: Look, name: str = "finding") -> ft.Control:
    """One finding with its word, place, value and limit."""
    tint = colour(look, finding.verdict)
    lines: list[ft.Control] = [
        words(look, finding_words(finding), look.body_size, bold=True, colour=tint),
    ]
    small = against(finding)
    if small:
        lines.append(words(look, small, look.small_size))
    return said(
        f"{name}-{finding.id}",
        finding_phrase(finding),
        ft.Row(
            [
                sign(look, finding.verdict, finding.word, look.row_size),
                ft.Column(lines, spacing=0, tight=True, expand=True),
            ],
            spacing=8,
            vertical_alignment=ft.CrossAxisAlignment.START,
        ),
    )


def ring_findings(ring: JudgedRing, look: Look) -> list[ft.Control]:
    """Every finding of a ring but the one that decides, which stands above."""
    rest = [each for each in ring.findings if each is not ring.worst]
    return [finding_row(each, look) for each in rest]


def hammer(ring: JudgedRing, look: Look) -> list[ft.Control]:
    """What the hammer did, place by place."""
    return [_hammer(each, number, look) for number, each in enumerate(ring.hammer, 1)]


def _hammer(finding: Finding, number: int, look: Look) -> ft.Control:
    line = hammer_words(finding)
    tint = look.palette.passed if finding.verdict is Verdict.PASS else look.palette.ink
    return said(f"hammer-{number}", line, words(look, line, look.body_size, colour=tint))
