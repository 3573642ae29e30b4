"""Proof strength of standard fasteners by property class and by grade."""

from dataclasses import dataclass

from core.source import Source, Trust, published
from core.tables.threads import ThreadForm
from core.unit_types import INCH, KSI, Megapascal, Millimetre

SAE = published("SAE J429, proof strength")
SAE_LARGE = Source(Trust.MEMORY, "SAE J429, grade 5 over 1 in")
ISO = published("ISO 898-1:2013, stress under proof load")


@dataclass(frozen=True, slots=True, kw_only=True)
class Grade:
    """One row of a standard.

    Parameters
    ----------
    name
        As marked on the head.
    form
        Threads that the standard covers.
    proof
        Proof strength [MPa].
    above, up_to
        Nominal diameters of the row: over `above`, up to and with `up_to` [mm].
    """

    name: str
    form: ThreadForm
    proof: Megapascal
    above: Millimetre
    up_to: Millimetre
    source: Source


def _sae(name: str, ksi: float, above: float, up_to: float, source: Source = SAE) -> Grade:
    return Grade(
        name=name,
        form=ThreadForm.INCH,
        proof=ksi * KSI,
        above=above * INCH,
        up_to=up_to * INCH,
        source=source,
    )


def _iso(name: str, proof: Megapascal, above: Millimetre, up_to: Millimetre) -> Grade:
    return Grade(
        name=name, form=ThreadForm.METRIC, proof=proof, above=above, up_to=up_to, source=ISO
    )


GRADES: tuple[Grade, ...] = (
    _sae("5", 85.0, 0.0, 1.0),
    _sae("5", 74.0, 1.0, 1.5, SAE_LARGE),
    _sae("8", 120.0, 0.0, 1.5),
    _iso("8.8", 580.0, 0.0, 16.0),
    _iso("8.8", 600.0, 16.0, 39.0),
    _iso("9.8", 650.0, 0.0, 16.0),
    _iso("10.9", 830.0, 0.0, 39.0),
    _iso("12.9", 970.0, 0.0, 39.0),
)


def grade_names(form: ThreadForm) -> tuple[str, ...]:
    """Grades that a thread of this form can have, weakest first."""
    return tuple(dict.fromkeys(each.name for each in GRADES if each.form is form))


def find_grade(name: str, form: ThreadForm, diameter: Millimetre) -> Grade | None:
    """Row of the standard, or none if it has no such grade at this size.

    Parameters
    ----------
    diameter
        Nominal diameter [mm].

    Examples
    --------
    >>> find_grade("8.8", ThreadForm.METRIC, 18.0).proof
    600.0
    """
    return next(
        (
            each
            for each in GRADES
            if each.name == name and each.form is form and each.above < diameter <= each.up_to
        ),
        None,
    )
