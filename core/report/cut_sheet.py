"""The cut sheet: one page of HTML that needs nothing else, inch and millimetre side by side."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from html import escape

from core.calc.cut import Band, CutAnswer, CutPlan, CutReading
from core.calc.cut_rule import Standpoint
from core.calc.joints import JointPlan
from core.calc.lands import Land, Rings, tight_spots
from core.calc.wire import Engine
from core.forms.cut_words import deck_cut_line, joint_lines, land_line, wire_lines
from core.texts import text
from core.texts.length import Length
from core.unit_types import Millimetre

CAUTIONS = ("main", "sharp", "machinery")
HOURS = (12, 3, 6, 9)
"""Clock places at which a groove is measured before the wire goes in."""
MARGIN: Millimetre = 8.0
"""Deck drawn beyond the outermost hole."""
STYLE = """
body{font:11pt/1.35 system-ui,sans-serif;margin:14mm;color:#000;background:#fff}
h1{font-size:18pt;margin:0}h2{font-size:12pt;margin:5mm 0 1mm}
table{border-collapse:collapse}td,th{border:1px solid #666;padding:.6mm 2mm;text-align:right}
td:first-child,th:first-child{text-align:left}.target{font-weight:700}
ul{margin:0;padding-left:5mm}svg{max-width:100%;height:auto}
h2,tr,svg{break-inside:avoid}h2{break-after:avoid}
.fill td{min-width:14mm;height:7mm}.open{border:2px solid #000;padding:2mm;font-weight:700}
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetBank:
    """One bank on the sheet.

    Parameters
    ----------
    title
        What the bank is called.
    joints
        None while no bolt is known.
    """

    title: str
    rings: Rings
    joints: JointPlan | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CutSheet:
    """What a machinist takes to the machine.

    Parameters
    ----------
    answer
        The groove, or both where the trade does not agree.
    engine
        Wire and rings; none while no centre diameter is known.
    spool, piece, deck_cut
        Wire at hand, and metal taken off the deck [mm].
    printed
        Date as a person reads it.
    """

    answer: CutAnswer
    standpoints: tuple[Standpoint, ...] = ()
    banks: tuple[SheetBank, ...] = ()
    engine: Engine | None = None
    spool: Millimetre | None = None
    piece: Millimetre | None = None
    deck_cut: Millimetre | None = None
    printed: str = ""


def cut_sheet(sheet: CutSheet) -> str:
    """The whole page; the same values give the same page."""
    title = text("cut_sheet.title")
    parts = [
        _element("h1", title),
        _element("p", text("cut_sheet.printed", date=sheet.printed)) if sheet.printed else "",
        *_groove(sheet),
        *(part for bank in sheet.banks for part in _bank(bank)),
        *_list("wire", _wire(sheet)),
        *_measured(sheet.banks),
        *_list("cautions", [text(f"caution.{each}") for each in CAUTIONS]),
    ]
    head = (
        '<meta charset="utf-8"><meta name="viewport" content="width=device-width">'
        f"{_element('title', title)}<style>{STYLE}</style>"
    )
    body = "\n".join(part for part in parts if part)
    return f'<!doctype html><html lang="en"><head>{head}</head><body>\n{body}\n</body></html>\n'


def _element(name: str, content: str, **attributes: str) -> str:
    told = "".join(f' {key}="{escape(value)}"' for key, value in attributes.items())
    return f"<{name}{told}>{escape(content)}</{name}>"


def _heading(key: str, **values: object) -> str:
    return _element("h2", text(f"cut_sheet.{key}", **values))


def _list(key: str, lines: Iterable[str]) -> tuple[str, ...]:
    items = "".join(_element("li", line) for line in lines)
    return (_heading(key), f"<ul>{items}</ul>") if items else ()


def _table(head: Sequence[str], rows: Iterable[Sequence[str]], style: str = "") -> str:
    cells = [_row("th", head), *(_row("td", row) for row in rows)]
    return f'<table class="{style}">{"".join(cells)}</table>'


def _row(kind: str, cells: Sequence[str]) -> str:
    return f"<tr>{''.join(_element(kind, cell) for cell in cells)}</tr>"


# ---- the groove ----


def _groove(sheet: CutSheet) -> Iterator[str]:
    if not sheet.answer.decided:
        yield f'<p class="open">{escape(text("cut_sheet.undecided"))}</p>'
    for reading in sheet.answer.readings:
        yield from _reading(reading)
        if sheet.deck_cut is not None:
            yield from _list("deck_cut", [deck_cut_line(reading.plan, sheet.deck_cut)])
    rules = (str(each) for point in sheet.standpoints for each in point.sentences)
    notes = (str(note) for note in sheet.answer.readings[0].plan.notes)
    yield from _list("before", [*rules, *notes])


def _reading(reading: CutReading) -> Iterator[str]:
    plan = reading.plan
    yield _heading("groove")
    yield _element("p", text("cut_sheet.for", wire=Length(plan.aim.wire.value),
                             sheet=Length(plan.aim.sheet.thickness), reading=reading.reading))
    head = tuple(text(f"cut_sheet.head.{key}") for key in ("size", "unit", "low", "target", "high"))
    yield _table(head, [*_sizes(plan), _shares(plan.share)])
    yield from _list("checks", [
        f"{text(f'check.{check.id}')}: {text(f'word.{check.word}')}" for check in plan.checks
    ])


def _sizes(plan: CutPlan) -> Iterator[tuple[str, ...]]:
    for key, band in (
        ("width", plan.width), ("depth", plan.depth), ("interference", plan.interference),
        ("height", plan.height), ("widest", plan.widest_point),
    ):
        ends = (band.low, band.target, band.high)
        name = text(f"cut.table.{key}")
        yield (name, text("cut_sheet.unit.in"), *map(_inch, ends))
        yield (name, text("cut_sheet.unit.mm"), *map(_mm, ends))


def _shares(band: Band) -> tuple[str, ...]:
    ends = (band.low, band.target, band.high)
    return (text("cut.table.share"), "", *(text("cut_sheet.share", value=each) for each in ends))


def _inch(value: Millimetre) -> str:
    return text("cut_sheet.inch", value=Length(value))


def _mm(value: Millimetre) -> str:
    return text("cut_sheet.mm", value=Length(value))


# ---- a bank ----


def _bank(bank: SheetBank) -> Iterator[str]:
    rings, layout = bank.rings, bank.rings.layout
    yield _heading("places", bank=bank.title)
    yield _element("p", text("cut_sheet.from", ring=Length(rings.centre_diameter)))
    yield _picture(bank)
    head = tuple(text(f"cut_sheet.head.{key}") for key in ("thing", "unit", "x", "y", "diameter"))
    things = [(text("cut_sheet.bore", name=b.name), b.x, b.y, b.diameter) for b in layout.bores]
    things += [(text("cut_sheet.hole", name=h.name), h.x, h.y, h.diameter) for h in layout.holes]
    yield _table(head, [row for name, *sizes in things for row in _both(name, sizes)])
    tight = [land_line(land) for land in tight_spots(rings)]
    yield from _list("tight", tight or [text("cut_sheet.roomy")])
    if bank.joints is not None:
        yield from _list("joints", joint_lines(bank.joints))


def _both(name: str, sizes: Sequence[Millimetre]) -> Iterator[tuple[str, ...]]:
    yield (name, text("cut_sheet.unit.in"), *map(_inch, sizes))
    yield (name, text("cut_sheet.unit.mm"), *map(_mm, sizes))


def _picture(bank: SheetBank) -> str:
    """The bank to scale in millimetres, y turned so that it runs up."""
    rings, layout = bank.rings, bank.rings.layout
    (left, low), (right, high) = layout.extent
    box = (left - MARGIN, -high - MARGIN, right - left + 2 * MARGIN, high - low + 2 * MARGIN)
    shapes = [_circle(b.x, b.y, b.diameter, "#888", 0.5) for b in layout.bores]
    shapes += [_circle(b.x, b.y, rings.centre_diameter, "#000", 1.2) for b in layout.bores]
    shapes += [_circle(h.x, h.y, h.diameter, "#888", 0.5) for h in layout.holes]
    shapes += [_svg_text(b.x, b.y, b.name) for b in layout.bores]
    shapes += [_mark(land) for land in tight_spots(rings)]
    if bank.joints is not None:
        shapes += [_joint_mark(*joint.at) for joint in bank.joints.joints]
    view = " ".join(f"{each:.2f}" for each in box)
    label = escape(text("cut_sheet.picture", bank=bank.title))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="{label}" '
        f'viewBox="{view}" width="{box[2]:.0f}mm">{"".join(shapes)}</svg>'
    )


def _circle(
    x: Millimetre, y: Millimetre, diameter: Millimetre, colour: str, width: Millimetre
) -> str:
    return (
        f'<circle cx="{x:.3f}" cy="{-y:.3f}" r="{0.5 * diameter:.3f}" fill="none" '
        f'stroke="{colour}" stroke-width="{width}"/>'
    )


def _svg_text(x: Millimetre, y: Millimetre, words: str) -> str:
    return (
        f'<text x="{x:.2f}" y="{-y:.2f}" font-size="14" text-anchor="middle" '
        f'dominant-baseline="middle">{escape(words)}</text>'
    )


def _mark(land: Land) -> str:
    (x1, y1), (x2, y2) = land.start, land.end
    return (
        f'<line x1="{x1:.3f}" y1="{-y1:.3f}" x2="{x2:.3f}" y2="{-y2:.3f}" '
        'stroke="#b00" stroke-width="3"/>'
    )


def _joint_mark(x: Millimetre, y: Millimetre) -> str:
    return f'<rect x="{x - 2:.2f}" y="{-y - 2:.2f}" width="4" height="4" fill="#000"/>'


# ---- wire, and what is filled in by hand ----


def _wire(sheet: CutSheet) -> tuple[str, ...]:
    if sheet.engine is None:
        return ()
    return wire_lines(sheet.engine, sheet.spool, sheet.piece)


def _measured(banks: Sequence[SheetBank]) -> Iterator[str]:
    """Empty cells for width and depth at four clock places of every groove."""
    names = [bore.name for bank in banks for bore in bank.rings.layout.in_order]
    if not names:
        return
    clock = [text("cut_sheet.clock", hour=hour) for hour in HOURS]
    rows = [
        (name, text(f"cut_sheet.{size}"), *("" for _ in HOURS))
        for name in names
        for size in ("width", "depth")
    ]
    yield _heading("measured")
    yield _table((text("cut_sheet.cylinder"), text("cut_sheet.by_hand"), *clock), rows, "fill")
