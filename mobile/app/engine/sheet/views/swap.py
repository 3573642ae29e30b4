"""The swap card: from the sheet on now to the one looked at, and what moves with the head."""

import flet as ft

from core.calc.swap import head_moves
from core.texts import text
from core.verdict import Verdict
from mobile.app.engine.sheet.found import Found
from mobile.app.engine.sheet.shown import left_out, size
from mobile.app.engine.sheet.swap_lines import SwapLine, swap_lines
from mobile.app.views.look import Look
from mobile.app.views.parts import in_rows, panel, said, words
from mobile.app.views.verdict_sign import colour, sign

ROOM_FOR_TWO = 0.95
"""Letters, against a usual phone, from which two sizes stand side by side."""
CLEARANCES = ("piston-to-head", "intake-valve", "exhaust-valve")


def swap_card(found: Found, look: Look) -> ft.Control:
    """The card, or what it lacks."""
    row, on = found.row, found.as_it_is.sheet_on
    title = words(look, text("sheet.swap.title"), look.small_size, colour=look.palette.quiet)
    if row is None or on is None:
        line = text("sheet.swap.needs_sheet" if row is None else "sheet.swap.needs_on_now")
        lacking = said("swap-head", line, words(look, line, look.body_size))
        return panel(look, title, lacking)
    assert row.card is not None
    assert found.row_now is not None
    lines = swap_lines(found.row_now, row, found.basis.metric)
    told = [words(look, left_out(each), look.small_size) for each in row.card.left_out]
    wire = tuple(each for each in lines if each.name == "wire")
    others = [each for each in lines if each.name != "wire"]
    pairs = in_rows([_line(each, look) for each in others], look, gap=10.0, columns=_columns(look))
    controls = [_head(found, look), *(_line(each, look) for each in wire), *pairs, *told]
    return panel(look, title, *controls, *_caution(row.card.rise, lines, look), gap=6)


def _columns(look: Look) -> int:
    return 2 if look.letters > ROOM_FOR_TWO else 1


def _head(found: Found, look: Look) -> ft.Control:
    """Both sheets, and which way the head goes."""
    row, on = found.row, found.as_it_is.sheet_on
    assert row is not None
    assert row.card is not None
    assert on is not None
    metric = found.basis.metric
    then = size(row.candidate.sheet.thickness, metric)
    line = head_moves(row.card.rise).said(metric=metric)
    sizes = ft.Row(
        [
            words(look, size(on.thickness, metric), look.row_size, bold=True),
            _arrow(look),
            words(look, then, look.row_size, bold=True, colour=look.palette.copper),
        ],
        spacing=6,
    )
    moves = words(look, line, look.body_size, bold=True)
    phrase = text("sheet.swap.phrase", now=size(on.thickness, metric), then=then, head=line)
    return said("swap-head", phrase, ft.Column([sizes, moves], spacing=2, tight=True))


def _arrow(look: Look) -> ft.Icon:
    return ft.Icon(
        ft.Icons.ARROW_FORWARD, color=look.palette.quiet, size=look.body_size * look.text_scale
    )


def _line(line: SwapLine, look: Look) -> ft.Control:
    """What it is, small; under it what is now, what will be, and its sign."""
    tint = colour(look, line.verdict) if line.verdict else look.palette.ink
    values: list[ft.Control] = []
    if line.now:
        values += [words(look, line.now, look.body_size), _arrow(look)]
    values.append(words(look, line.then, look.body_size, bold=True, colour=tint))
    if line.verdict:
        values.append(sign(look, line.verdict, "", look.body_size))
    face = ft.Column(
        [
            words(look, line.what, look.small_size, colour=look.palette.quiet),
            ft.Row(values, spacing=3),
        ],
        spacing=0,
        tight=True,
    )
    return ft.Container(said(f"swap-{line.name}", line.phrase, face), expand=True)


def _caution(rise: float, lines: tuple[SwapLine, ...], look: Look) -> list[ft.Control]:
    """Where a piston or a valve may touch."""
    close = any(
        line.verdict is Verdict.FAIL and line.name in CLEARANCES for line in lines
    )
    if not close and rise >= 0.0:
        return []
    line = text("sheet.caution.touch" if close else "sheet.caution.down")
    face = ft.Row(
        [
            ft.Icon(
                ft.Icons.WARNING_AMBER, color=look.palette.failed, size=20 * look.text_scale
            ),
            words(look, line, look.body_size, bold=True, colour=look.palette.failed, expand=True),
        ],
        spacing=6,
    )
    return [said("sheet-caution", line, face, live=True)]

