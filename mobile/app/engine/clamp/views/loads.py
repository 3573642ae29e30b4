"""Load bars of every cylinder, and the verdicts of one."""

import flet as ft
import flet.canvas as cv

from core.calc.clamp import CylinderLoads
from core.calc.clamp_verdicts import Judgement
from core.calc.engine_clamp import EngineClamp, JudgedCylinder
from core.texts import text
from core.texts.force import Force
from core.texts.share import Sureness
from core.verdict import Check
from mobile.app.drawing.load_bar import BarLabels, bar_of, draw_load_bar
from mobile.app.engine.clamp.model import Clamp
from mobile.app.engine.clamp.told import shown_cylinder
from mobile.app.engine.clamp.views.picture_size import inner_width, picture_text
from mobile.app.engine.clamp.views.wording import sentence
from mobile.app.views.look import Look
from mobile.app.views.parts import button, panel, said, words
from mobile.app.views.section_view import drawn
from mobile.app.views.verdict_sign import colour, sign

BAR_HEIGHT = 74.0


def loads_part(clamp: Clamp, look: Look) -> list[ft.Control]:
    """Bars, weakest marked; then every verdict of the cylinder shown, and the caution whole."""
    engine = clamp.told.engine
    assert engine is not None
    shown = shown_cylinder(clamp.entry, engine)
    return [
        *(_bar(clamp, engine, each, each is shown, look) for each in engine.cylinders),
        words(look, text("clamp.bar.key"), look.small_size, colour=look.palette.quiet),
        words(
            look,
            text("clamp.screen.verdicts", cylinder=shown.loads.cylinder.name),
            look.row_size,
            bold=True,
        ),
        *(_verdict(each, clamp.metric(), look) for each in (engine.proof, *shown.judgements)),
        words(look, text("clamp.caution"), look.body_size),
    ]


def _bar(
    clamp: Clamp, engine: EngineClamp, judged: JudgedCylinder, shown: bool, look: Look
) -> ft.Control:
    loads = judged.loads
    name = loads.cylinder.name
    weakest = judged is engine.weakest and len(engine.cylinders) > 1
    check = judged.worst.check
    title = text(f"clamp.bar.{'weakest' if weakest else 'title'}", cylinder=name)
    size = picture_text(look)
    height = max(BAR_HEIGHT, 4.6 * size)
    width = inner_width(look) - 16.0
    shapes = draw_load_bar(bar_of(loads, engine.scale), _labels(size), width, height)
    tint = look.palette.ink
    head = ft.Row(
        [
            sign(look, check.verdict, check.word, look.row_size),
            words(look, title, look.body_size, bold=True, colour=tint, expand=True),
        ],
        spacing=6,
    )
    picture = cv.Canvas(
        width=width, height=height, shapes=[drawn(each, look.palette) for each in shapes]
    )
    return ft.Row(
        [
            button(
                look,
                f"bar-{name}",
                _phrase(loads, title, text(f"word.{check.word}")),
                ft.Column([head, picture], spacing=2, tight=True),
                lambda: clamp.show_cylinder(name),
                height=height + 1.5 * max(look.body_size, look.row_size) * look.text_scale + 14.0,
                expand=True,
                ring=shown and len(engine.cylinders) > 1,
                colour=look.palette.panel,
                selected=shown,
            )
        ]
    )


def _labels(size: float) -> BarLabels:
    return BarLabels(
        gas=text("clamp.bar.gas"),
        proof=text("clamp.bar.proof"),
        wire=text("clamp.bar.wire"),
        body=text("clamp.bar.body"),
        size=size,
    )


def _phrase(loads: CylinderLoads, title: str, word: str) -> str:
    return text(
        "clamp.bar.phrase",
        title=title,
        word=word,
        clamp=Force(loads.clamp.value),
        wire_low=Force(loads.wire.low),
        wire_high=Force(loads.wire.high),
        body_low=Force(loads.body.low),
        body_high=Force(loads.body.high),
        gas=Force(loads.gas),
    )


def _verdict(judgement: Judgement, metric: bool, look: Look) -> ft.Control:
    check = judgement.check
    title, word = text(f"check.{check.id}"), text(f"word.{check.word}")
    because = sentence(judgement.because.said(metric=metric))
    ways, rule = _ways(judgement, metric), _rule(check)
    result = f"{title}: {text(f'verdict.{check.verdict}')}, {word}."
    quiet = look.palette.quiet
    lines = ft.Column(
        [
            words(look, title, look.small_size, colour=quiet),
            words(look, word, look.row_size, bold=True, colour=colour(look, check.verdict)),
            words(look, because, look.body_size),
            *(words(look, way, look.body_size, bold=True) for way in ways),
            words(look, rule, look.small_size, colour=quiet),
            words(
                look,
                text("clamp.screen.source", source=check.source),
                look.small_size,
                colour=quiet,
            ),
        ],
        spacing=2,
        tight=True,
        expand=True,
    )
    return said(
        f"verdict-{check.id}",
        " ".join((result, because, *ways, rule)),
        panel(look, _beside_sign(check, lines, look)),
    )


def _beside_sign(check: Check, lines: ft.Column, look: Look) -> ft.Row:
    mark = sign(look, check.verdict, check.word, look.row_size * 1.3)
    return ft.Row([mark, lines], spacing=10, vertical_alignment=ft.CrossAxisAlignment.START)


def _rule(check: Check) -> str:
    """Which rule gave the verdict, and how sure it is."""
    sure = (
        text("clamp.screen.no_probability")
        if check.probability is None
        else text("table.sure", sure=Sureness(check.probability))
    )
    return sentence(text("clamp.screen.rule", rule=text(f"rule.{check.rule}"), sure=sure))


def _ways(judgement: Judgement, metric: bool) -> list[str]:
    """What would settle it, and what to change."""
    return [
        text(f"clamp.screen.{key}", what=told.said(metric=metric))
        for key, told in (("settle", judgement.settle), ("change", judgement.change))
        if told is not None
    ]
