"""From what a deck entry amounts to, to the picture and the lines that say the same."""

from core.calc.joints import Joint
from core.calc.ring_map import MappedPlace, RingSummary
from core.forms.deck_form import HOURS, TURN
from core.tables.cut_practice import LAND
from core.texts import text
from core.texts.length import Length
from mobile.app.drawing.deck_map import BankPicture, DeckPicture, RingSign, draw_deck
from mobile.app.engine.deck.entry import ZOOM, DeckEntry
from mobile.app.engine.deck.told import USUAL_WIDTH, BankTold, DeckTold, ring_checks, worst


def shown_banks(entry: DeckEntry, told: DeckTold) -> tuple[BankTold, ...]:
    """The bank that was chosen, or all."""
    return tuple(b for b in told.banks if entry.bank in (None, b.layout.bank)) or told.banks


def picture(
    entry: DeckEntry, told: DeckTold, width: float, height: float, words: float, metric: bool
) -> DeckPicture:
    """The map as it is seen through `width` × `height` [px]."""
    banks = [_bank(entry, bank, metric) for bank in shown_banks(entry, told)]
    return draw_deck(banks, width, height, words, ZOOM**entry.zoom)


def _bank(entry: DeckEntry, bank: BankTold, metric: bool) -> BankPicture:
    layout = bank.layout
    summaries = {ring.cylinder: ring for ring in bank.map.rings} if bank.map else {}
    widest = max(bore.diameter for bore in layout.bores)
    usual = widest + 2.0 * LAND.bore + USUAL_WIDTH
    return BankPicture(
        layout=layout,
        centre_diameter=bank.rings.centre_diameter if bank.rings else usual,
        title=text(f"deck.bank.{layout.bank}"),
        signs={
            bore.name: _sign(summaries.get(bore.name), entry, metric) for bore in layout.bores
        },
        joints=bank.joints.joints if bank.joints else (),
        tight=bank.tight,
        picked=entry.picked,
    )


def _sign(ring: RingSummary | None, entry: DeckEntry, metric: bool) -> RingSign:
    if ring is None:
        return RingSign(verdict=None)
    check = worst(ring_checks(ring, entry))
    median = Length(ring.median).shown(metric=metric)
    spread = Length(0.5 * ring.spread).shown(metric=metric)
    return RingSign(
        verdict=check.verdict,
        words=(
            text("deck.ring.median", median=median),
            text(f"word.{check.word}"),
            text("deck.ring.spread", spread=spread),
        ),
        summary=ring,
    )


# ---- the same in words ----


def ring_line(cylinder: str, entry: DeckEntry, told: DeckTold) -> str:
    """One ring as a line of the table."""
    ring = summary_of(cylinder, told)
    if ring is None:
        return text("deck.ring.unread_line", cylinder=cylinder)
    return text(
        "deck.ring.line",
        cylinder=cylinder,
        word=text(f"word.{worst(ring_checks(ring, entry)).word}"),
        median=Length(ring.median),
        spread=Length(ring.spread),
    )


def summary_of(cylinder: str, told: DeckTold) -> RingSummary | None:
    """What was read of a ring; none where nothing was."""
    bank = told.bank_of(cylinder)
    rings = bank.map.rings if bank and bank.map else ()
    return next((ring for ring in rings if ring.cylinder == cylinder), None)


def place_lines(cylinder: str, told: DeckTold) -> tuple[str, ...]:
    """Every place of a ring, and its joint."""
    ring, bank = summary_of(cylinder, told), told.bank_of(cylinder)
    places = tuple(map(_place_line, ring.places)) if ring else ()
    joints = bank.joints.joints if bank and bank.joints else ()
    return (*places, *(_joint_line(joint) for joint in joints if joint.cylinder == cylinder))


def _place_line(place: MappedPlace) -> str:
    line = text(
        "deck.ring.place",
        hour=round(place.reading.angle / TURN * HOURS) % HOURS or HOURS,
        value=Length(place.reading.value),
        over=Length(place.over_median),
    )
    return text("deck.ring.proud", place=line) if place.proud else line


def _joint_line(joint: Joint) -> str:
    return text("deck.ring.joint", clock=joint.clock, bolt=joint.bolt)


def bank_line(bank: BankTold) -> str:
    """How even the rings of a bank are."""
    name = text(f"deck.bank.{bank.layout.bank}").capitalize()
    if bank.map is None:
        return text("deck.bank.unread", bank=name)
    return text(
        "deck.bank.line",
        bank=name,
        word=text(f"word.{bank.map.check.word}"),
        spread=Length(bank.map.spread),
    )


def picture_phrase(entry: DeckEntry, told: DeckTold) -> str:
    """What the picture shows, in one phrase."""
    banks = shown_banks(entry, told)
    names = " and ".join(text(f"deck.bank.{bank.layout.bank}") for bank in banks)
    rings = " ".join(
        ring_line(bore.name, entry, told) for bank in banks for bore in bank.layout.in_order
    )
    return text("deck.map.picture", bank=names, rings=rings)
