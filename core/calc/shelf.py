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
    standing,
)
from core.calc.height import Height
from core.tables.half_widths import HalfWidths
from core.texts.length import Length
from core.texts.sentence import Sentence
from core.texts.share import Share, Sureness
from core.unit_types import Millimetre, Number
from core.verdict import Check, Verdict


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfRow:
    """One sheet under this height.

    Parameters
    ----------
    share
        Height as a share of thickness [1].
    low_share, high_share
        The same over the range of the height; none on a side that is not known [1].
    verdict, word, probability
        Of the check that decides: bite where it fails, else height to gasket.
    because
        The reason, with share, range and limit.
    """

    sheet: Sheet
    share: Number
    low_share: Number | None
    high_share: Number | None
    verdict: Verdict
    word: str
    probability: float | None
    because: Sentence
    height_check: Check
    bite_check: Check


def shelf_row(
    height: Height, sheet: Sheet, face: HeadFace, rule: HeightRule, half_widths: HalfWidths
) -> ShelfRow:
    """Judge one sheet."""
    wire = standing(height, face, half_widths.print_depth)
    height_check, bite_check = height_to_gasket(wire, sheet, rule), bite(wire, sheet, rule)
    decides = bite_check if bite_check.verdict is Verdict.FAIL else height_check
    receiver = face.face is Face.RECEIVER
    return ShelfRow(
        sheet=sheet,
        share=wire.value / sheet.thickness,
        low_share=_share(height.low, height, wire, sheet),
        high_share=_share(height.high, height, wire, sheet),
        verdict=Verdict.UNDECIDED if receiver else decides.verdict,
        word="undecided" if receiver else decides.word,
        probability=None if receiver else decides.probability,
        because=_receiver(wire, sheet, face, rule) if receiver else _because(decides, wire, sheet),
        height_check=height_check,
        bite_check=bite_check,
    )


def _share(end: Millimetre | None, height: Height, wire: Standing, sheet: Sheet) -> Number | None:
    return None if end is None else (end - height.value + wire.value) / sheet.thickness


def _because(decides: Check, wire: Standing, sheet: Sheet) -> Sentence:
    return Sentence(
        f"because.{decides.id}.{decides.word}",
        {
            "share": Share(wire.value / sheet.thickness),
            "sheet": Length(sheet.thickness),
            "height": Length(wire.value),
            "limit": Share(decides.limit) if decides.unit == "1" else Length(decides.limit),
            "sure": Sureness(decides.probability or 0.0),
        },
    )


def _receiver(wire: Standing, sheet: Sheet, face: HeadFace, rule: HeightRule) -> Sentence:
    """The trade does not agree which height counts: the full one or what passes the receiver."""
    return Sentence(
        "because.receiver",
        {
            "share": Share(wire.value / sheet.thickness),
            "less": Share((wire.value - face.depth) / sheet.thickness),
            "limit": Share(rule.practice.largest_share),
        },
    )


def shelf_rows(
    height: Height,
    shelf: Sequence[Sheet],
    face: HeadFace,
    rule: HeightRule,
    half_widths: HalfWidths,
) -> tuple[ShelfRow, ...]:
    """Judge every sheet, thinnest first."""
    ordered = sorted(shelf, key=lambda sheet: sheet.thickness)
    return tuple(shelf_row(height, sheet, face, rule, half_widths) for sheet in ordered)
