"""How one height sits under every sheet on the shelf."""

from collections.abc import Sequence
from dataclasses import dataclass

from core.calc.gasket import (
    Face,
    HeadFace,
    HeightRule,
    Sheet,
    Standing,
    bite,
    height_to_gasket,
    largest_height,
    least_height,
    standing,
)
from core.calc.height import Height
from core.tables.half_widths import HalfWidths
from core.texts.length import Length
from core.texts.sentence import Sentence
from core.texts.share import Share, Sureness
from core.unit_types import Millimetre, Number
from core.verdict import TIE, Check, Verdict


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfRow:
    """One sheet under this height.

    Parameters
    ----------
    share
        Height as a share of thickness [1].
    low_share, high_share
        The same over the range of the height; none on a side that is not known [1].
    least, largest
        Heights this sheet takes [mm].
    verdict, word
        Of the check that decides: bite where it fails, else height to gasket.
    probability
        Of the same check [1].
    because
        The reason, with share, range and limit.
    head
        How far this sheet moves the head from the sheet on now, and what goes with it.
    """

    sheet: Sheet
    share: Number
    low_share: Number | None
    high_share: Number | None
    least: Millimetre
    largest: Millimetre
    verdict: Verdict
    word: str
    probability: Number | None
    because: Sentence
    head: Sentence | None
    height_check: Check
    bite_check: Check

    @property
    def takes_any(self) -> bool:
        """Whether there is a height that bites in this sheet and does not hold the head off it."""
        return self.least <= self.largest + TIE


def shelf_row(
    height: Height,
    sheet: Sheet,
    face: HeadFace,
    rule: HeightRule,
    half_widths: HalfWidths,
    on_now: Sheet | None = None,
) -> ShelfRow:
    """Judge one sheet.

    Parameters
    ----------
    on_now
        Sheet on the engine now, from which the head would move.

    Source
    ------
    As `height_to_gasket` and `bite`; with a receiver in the head *common practice, no source*: the
    trade does not agree which height counts, so both are told and nothing is decided.
    """
    wire = standing(height, face, half_widths.print_depth)
    height_check, bite_check = height_to_gasket(wire, sheet, rule), bite(wire, sheet, rule)
    decides = bite_check if bite_check.verdict is Verdict.FAIL else height_check
    receiver = face.face is Face.RECEIVER
    part = _part(height, wire, sheet)
    return ShelfRow(
        sheet=sheet,
        share=wire.value / sheet.thickness,
        low_share=_share(height.low, height, wire, sheet),
        high_share=_share(height.high, height, wire, sheet),
        least=least_height(sheet, rule.practice),
        largest=largest_height(sheet, rule.practice),
        verdict=Verdict.UNDECIDED if receiver else decides.verdict,
        word="undecided" if receiver else decides.word,
        probability=None if receiver else decides.probability,
        because=_receiver(part, wire, sheet, face, rule)
        if receiver
        else _because(decides, part, wire, sheet),
        head=head_moves(sheet, on_now),
        height_check=height_check,
        bite_check=bite_check,
    )


def _share(end: Millimetre | None, height: Height, wire: Standing, sheet: Sheet) -> Number | None:
    return None if end is None else (end - height.value + wire.value) / sheet.thickness


def _part(height: Height, wire: Standing, sheet: Sheet) -> Sentence:
    """Share of the sheet, with its range or its open side."""
    low, high = (_share(end, height, wire, sheet) for end in (height.low, height.high))
    return Sentence(
        f"share.{height.bound}",
        {
            "share": Share(wire.value / sheet.thickness),
            "sheet": Length(sheet.thickness),
            "low": Share(low or 0.0),
            "high": Share(high or 0.0),
        },
    )


def _because(decides: Check, part: Sentence, wire: Standing, sheet: Sheet) -> Sentence:
    return Sentence(
        f"because.{decides.id}.{decides.word}",
        {
            "part": part,
            "sheet": Length(sheet.thickness),
            "height": Length(wire.value),
            "limit": Share(decides.limit) if decides.unit == "1" else Length(decides.limit),
            "sure": Sureness(decides.probability or 0.0),
        },
    )


def _receiver(
    part: Sentence, wire: Standing, sheet: Sheet, face: HeadFace, rule: HeightRule
) -> Sentence:
    """The trade does not agree which height counts: the full one or what passes the receiver."""
    return Sentence(
        "because.receiver",
        {
            "part": part,
            "less": Share((wire.value - face.depth) / sheet.thickness),
            "limit": Share(rule.practice.largest_share),
        },
    )


def is_thinner(sheet: Sheet, on_now: Sheet | None) -> bool:
    """Whether a sheet brings the head down."""
    return on_now is not None and sheet.thickness < on_now.thickness - TIE


def head_moves(sheet: Sheet, on_now: Sheet | None) -> Sentence | None:
    """How far the head moves from where it is now, and what to look at; none where it stays."""
    if on_now is None or abs(sheet.thickness - on_now.thickness) <= TIE:
        return None
    moved = sheet.thickness - on_now.thickness
    return Sentence("suggest.up" if moved > 0 else "suggest.down", {"move": Length(abs(moved))})


def shelf_rows(
    height: Height,
    shelf: Sequence[Sheet],
    face: HeadFace,
    rule: HeightRule,
    half_widths: HalfWidths,
    on_now: Sheet | None = None,
) -> tuple[ShelfRow, ...]:
    """Judge every sheet, thinnest first.

    Source
    ------
    As `shelf_row`.
    """
    ordered = sorted(shelf, key=lambda sheet: sheet.thickness)
    return tuple(shelf_row(height, each, face, rule, half_widths, on_now) for each in ordered)
