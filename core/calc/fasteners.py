"""Threads and the load a fastener is proved to."""

import math
import re
from dataclasses import dataclass
from fractions import Fraction

from core.errors import InputError, refuse
from core.source import Source, published
from core.tables.property_classes import find_grade, grade_names
from core.tables.threads import INCH_THREADS, METRIC_PITCHES, STRESS_AREA_FACTOR, ThreadForm
from core.unit_types import (
    INCH,
    Megapascal,
    Millimetre,
    Newton,
    NewtonPerMillimetre,
    SquareMillimetre,
)

MM_PER_INCH = Fraction(254, 10)
YIELD_TO_PROOF = 0.85
STEEL_MODULUS: Megapascal = 206842.71879504
"""30 million psi: Shigley's Mechanical Engineering Design, 9th ed., Table A-5."""
SHIGLEY_PROOF = published("Shigley's Mechanical Engineering Design, 9th ed., p. 442")
INCH_TEXT = re.compile(
    r"(?P<size>\d+/\d+|\d*[.,]?\d+)\s*(?:in|\")?\s*-\s*(?P<per_inch>\d+)\s*(?:UNC|UNF)?", re.I
)
METRIC_TEXT = re.compile(
    r"M\s*(?P<size>\d+(?:[.,]\d+)?)(?:\s*[x×]\s*(?P<pitch>\d*[.,]?\d+))?", re.I
)
SIZES: tuple[Millimetre, Millimetre] = (4.0, 40.0)
PITCHES: tuple[Millimetre, Millimetre] = (0.35, 5.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Thread:
    """A screw thread.

    Parameters
    ----------
    name
        As it is written.
    diameter
        Nominal diameter [mm].
    pitch
        Pitch [mm].
    """

    name: str
    form: ThreadForm
    diameter: Millimetre
    pitch: Millimetre


def read_thread(typed: str, field: str) -> Thread:
    """Thread from its designation; a metric size alone means its coarse pitch.

    Raises
    ------
    InputError
        If it is no designation, or no thread of a cylinder head.

    Source
    ------
    Designations of ISO 261 and ASME B1.1, *from memory*.

    Examples
    --------
    >>> thread = read_thread("M12", "thread")
    >>> thread.name, thread.diameter, thread.pitch
    ('M12x1.75', 12.0, 1.75)
    >>> read_thread("7/16-14", "thread").diameter
    11.1125
    """
    tidy = typed.strip()
    if match := INCH_TEXT.fullmatch(tidy):
        return _checked(_inch(match), field, typed)
    if match := METRIC_TEXT.fullmatch(tidy):
        return _checked(_metric(match, field, typed), field, typed)
    if tidy in INCH_THREADS:
        choices = " / ".join(f"{tidy}-{per_inch}" for per_inch in INCH_THREADS[tidy])
        raise refuse(field, "clamp.thread.per_inch", choices=choices)
    raise refuse(field, "clamp.thread.unread", typed=typed)


def _inch(match: re.Match[str]) -> Thread:
    size, per_inch = match["size"].replace(",", "."), int(match["per_inch"])
    denominator = int(size.partition("/")[2] or 1)
    if denominator == 0 or per_inch == 0:
        return Thread(name=match[0], form=ThreadForm.INCH, diameter=0.0, pitch=0.0)
    return Thread(
        name=f"{size}-{per_inch}",
        form=ThreadForm.INCH,
        diameter=float(Fraction(size) * MM_PER_INCH),
        pitch=INCH / per_inch,
    )


def _metric(match: re.Match[str], field: str, typed: str) -> Thread:
    size = float(match["size"].replace(",", "."))
    if match["pitch"] is None and size not in METRIC_PITCHES:
        raise refuse(field, "clamp.thread.pitch", typed=typed)
    pitch = float(match["pitch"].replace(",", ".")) if match["pitch"] else METRIC_PITCHES[size][0]
    return Thread(name=f"M{size:g}x{pitch:g}", form=ThreadForm.METRIC, diameter=size, pitch=pitch)


def _checked(thread: Thread, field: str, typed: str) -> Thread:
    sound = (
        SIZES[0] <= thread.diameter <= SIZES[1]
        and PITCHES[0] <= thread.pitch <= PITCHES[1]
        and thread.pitch < 0.3 * thread.diameter
    )
    if not sound:
        raise refuse(field, "clamp.thread.size", typed=typed)
    return thread


def stress_area(thread: Thread) -> SquareMillimetre:
    """Tensile stress area [mm²].

    Source
    ------
    ASME B1.1, first form (0.9743 over the threads per inch); ISO 898-1:2013 (0.9382 pitches).

    Examples
    --------
    >>> round(stress_area(read_thread("M10x1.5", "thread")), 1)
    58.0
    """
    diameter = thread.diameter - STRESS_AREA_FACTOR[thread.form] * thread.pitch
    return 0.25 * math.pi * diameter**2


@dataclass(frozen=True, slots=True, kw_only=True)
class Fastener:
    """A bolt or stud and what it is proved to.

    Parameters
    ----------
    area
        Tensile stress area [mm²].
    proof_strength
        Stress it carries without taking a set [MPa].
    source
        Where the strength comes from.
    """

    thread: Thread
    area: SquareMillimetre
    proof_strength: Megapascal
    source: Source

    @property
    def proof_load(self) -> Newton:
        """Load it carries without taking a set [N].

        Source
        ------
        ISO 898-1:2013, SAE J429: stress area times proof strength.
        """
        return self.area * self.proof_strength


def standard_fastener(thread: Thread, grade: str, field: str) -> Fastener:
    """Fastener of a standard grade or property class.

    Raises
    ------
    InputError
        If the standard has no such grade for this thread.

    Source
    ------
    The standard of the grade, as its row says.
    """
    row = find_grade(grade, thread.form, thread.diameter)
    if row is None:
        raise _no_such_grade(thread, grade, field)
    return Fastener(
        thread=thread, area=stress_area(thread), proof_strength=row.proof, source=row.source
    )


def _no_such_grade(thread: Thread, grade: str, field: str) -> InputError:
    names = ", ".join(grade_names(thread.form))
    return refuse(field, "clamp.grade.unknown", typed=grade, thread=thread.name, grades=names)


def own_fastener(thread: Thread, proof_strength: Megapascal, source: Source) -> Fastener:
    """Fastener with its maker's proof strength [MPa].

    Source
    ------
    The fastener's maker.
    """
    return Fastener(
        thread=thread, area=stress_area(thread), proof_strength=proof_strength, source=source
    )


def proof_from_yield(yield_strength: Megapascal) -> Megapascal:
    """Proof strength where only the yield strength is known [MPa].

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., p. 442: about 85 % of yield.
    """
    return YIELD_TO_PROOF * yield_strength


@dataclass(frozen=True, slots=True, kw_only=True)
class Grip:
    """The part of a stud that stretches.

    Parameters
    ----------
    length
        Whole length that stretches [mm].
    shank
        Plain part of it, at nominal diameter [mm].
    """

    length: Millimetre
    shank: Millimetre = 0.0


def stud_stiffness(fastener: Fastener, grip: Grip) -> NewtonPerMillimetre:
    """Axial stiffness of a steel stud [N/mm].

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., eq. 8-17, as restated: plain and
    threaded part in series.
    """
    shank_area = 0.25 * math.pi * fastener.thread.diameter**2
    threaded = grip.length - grip.shank
    return STEEL_MODULUS / (grip.shank / shank_area + threaded / fastener.area)
