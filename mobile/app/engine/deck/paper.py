"""The cut sheet of a deck entry."""

from core.report.cut_sheet import CutSheet, SheetBank, cut_sheet
from core.texts import text
from mobile.app.engine.deck.told import DeckTold

FILE_NAME = "cut-sheet.html"


def page_of(told: DeckTold, printed: str) -> str:
    """The page as HTML."""
    cut = told.cut
    assert cut is not None
    banks = tuple(
        SheetBank(
            title=text(f"deck.bank.{bank.layout.bank}"), rings=bank.rings, joints=bank.joints
        )
        for bank in told.banks
        if bank.rings is not None
    )
    return cut_sheet(
        CutSheet(
            answer=cut.answer,
            standpoints=told.standpoints,
            banks=banks,
            engine=cut.engine,
            spool=cut.spool,
            piece=cut.piece,
            deck_cut=cut.deck_cut,
            printed=printed,
        )
    )
